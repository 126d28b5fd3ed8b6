package report

import (
	"strings"
	"testing"

	"sawbill/report/internal/drawing"
)

// Names in signs that the fonts lack have stand-ins on all pages, which is said on one; the
// other scripts stay, and so do the plan and its code.
func TestNamesInSignsThatTheFontsLack(t *testing.T) {
	e := trial(t, "four-scripts")
	o := whole(Options{})
	laid := lay(e.plan, o)
	said := 0
	var all strings.Builder
	for n, page := range laid.Pages {
		var words strings.Builder
		for _, text := range page.Texts() {
			words.WriteString(text.String + " ")
		}
		if len(page.Missing) > 0 || strings.ContainsRune(words.String(), drawing.Replacement) {
			t.Errorf("page %d lacks %q", n+1, string(page.Missing))
		}
		said += strings.Count(words.String(), aboutStandIns[:40])
		all.WriteString(words.String())
	}
	if said != 1 {
		t.Errorf("it is said %d times", said)
	}
	for _, there := range []string{"part H", "part K", "material 1", "stock 1", "côté", "ράφι", "стенка", Identity(e.plan, o)} {
		if !strings.Contains(all.String(), there) {
			t.Errorf("the pages do not say %q", there)
		}
	}
	if laid.Title != "Étagère, ράφι, полка" || e.plan.Job.Title != "Étagère, ράφι, полка, 棚" || e.plan.Bill[7].Part.Name != "棚板" {
		t.Errorf("the title is %q; the plan says %q, %q", laid.Title, e.plan.Job.Title, e.plan.Bill[7].Part.Name)
	}
	if _, warned, err := PDF(e.plan, o); err != nil || len(warned) != 1 || !strings.Contains(warned[0], `"棚板" part H`) {
		t.Errorf("%q, %v", warned, err)
	}
	if page := string(HTML(e.plan, o)); !strings.Contains(page, "棚板") || strings.Contains(page, aboutStandIns[:40]) {
		t.Error("the page for a screen has stand-ins")
	}
}
