package report

import (
	"slices"
	"testing"
)

// Each set has a name and brings pages of its own: those of another set do not have
// their headings.
func TestEverySetOfPagesHasAName(t *testing.T) {
	for _, name := range PageNames() {
		set, found := PagesNamed(name)
		if !found || set == 0 {
			t.Errorf("%s names no pages", name)
		}
		laid := lay(bench(), Options{Case: chest(), Pages: set})
		if len(laid.Pages) == 0 {
			t.Errorf("%s brings no pages", name)
		}
		if got := len(lay(bench(), Options{Case: chest()}).Pages); (len(laid.Pages) >= got) != (name == "all") {
			t.Errorf("%s: %d pages, %d without a choice", name, len(laid.Pages), got)
		}
	}
	if _, found := PagesNamed("paper"); found {
		t.Error("paper names pages")
	}
}

// Two sets give the pages of both, in the order of the work.
func TestSetsOfPagesAddUp(t *testing.T) {
	sections := func(of Pages) (all []string) {
		for _, b := range lay(bench(), Options{Case: chest(), Pages: of}).Bookmarks {
			if b.Level == 0 {
				all = append(all, b.Title)
			}
		}
		return all
	}
	if got, want := sections(LabelPages|StorePages), append(sections(StorePages), sections(LabelPages)...); !slices.Equal(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
}

// Where a plan has nothing of what is asked for, its first page is there.
func TestAPlanIsNeverWithoutAPage(t *testing.T) {
	if laid := lay(bench(), Options{Pages: CasePages}); len(laid.Pages) != 1 || !says(laid.Pages[0], "what to buy") {
		t.Errorf("%d pages", len(laid.Pages))
	}
}
