package report

import (
	"strings"
	"testing"
)

// A rest of few cuts takes one page, which says all that the cuts take; more cuts take the
// usual pages.
func TestARestOfFewCutsIsOneSheet(t *testing.T) {
	for _, test := range []struct {
		job      string
		happened []string
	}{
		{"bookcase", []string{"spoiled G"}},
		{"bookcase", []string{"spoiled G", "spoiled F"}},
		{"wall-cabinet", []string{"spoiled side"}},
		{"record-shelves", []string{"spoiled A"}},
		{"van-shelves", []string{"spoiled A"}},
		{"potting-bench", []string{"spoiled A"}},
		{"workbench", []string{"spoiled B"}},
		{"plan-chest", []string{"spoiled A"}},
	} {
		t.Run(test.job+" "+strings.Join(test.happened, ", "), func(t *testing.T) {
			p, o := restOf(t, "../testdata/jobs/"+test.job+".toml", test.happened...)
			cuts := 0
			for i := range p.Layouts {
				cuts += len(p.StepRows(i))
			}
			pages := lay(p, o).Pages
			bench := 0
			if o.Case != nil && len(o.remaining(p).Case.Marks) > 0 {
				bench = 1
			}
			if cuts <= 3 && len(pages) > 1+bench {
				t.Errorf("%d rows of cuts take %d pages", cuts, len(pages))
			}
			var said strings.Builder
			for _, text := range pages[0].Texts() {
				said.WriteString(text.String + "\n")
			}
			for _, there := range []string{"REST: ", "The rest of plan K7F2M", deferral, "Layout 1: ", p.Bill[0].Mark} {
				if cuts <= 3 && !strings.Contains(strings.ReplaceAll(said.String(), "\n", " "), strings.ReplaceAll(there, "\n", " ")) {
					t.Errorf("the sheet does not say %q", there)
				}
			}
			t.Logf("%d rows of cuts, %d pages", cuts, len(pages))
		})
	}
}

// A sheet of the rest is for who asks for the usual pages; others that are asked for follow.
func TestMorePagesFollowTheSheetOfARest(t *testing.T) {
	p, o := restOf(t, "../testdata/jobs/bookcase.toml", "spoiled G")
	o.Pages = UsualPages | LabelPages
	with := len(lay(p, o).Pages)
	o.Pages = SawPages
	if saw := len(lay(p, o).Pages); with != 2 || saw < 2 {
		t.Errorf("with labels %d pages, of the saw alone %d", with, saw)
	}
}
