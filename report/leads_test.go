package report

import (
	"strings"
	"testing"
)

// Of many sheets the setups lead, with diagrams behind them, of few the layouts with their
// steps; who asks for the other gets it too.
func TestWhatLeadsIsChosenByTheJob(t *testing.T) {
	for _, test := range []struct {
		job                       string
		pages                     Pages
		setups, diagrams, layouts bool
	}{
		{"kitchen-run", SawPages, true, true, false},
		{"kitchen-run", SawPages | LayoutPages, true, false, true},
		{"four-scripts", SawPages, false, false, true},
		{"four-scripts", SawPages | SetupPages, true, false, true},
	} {
		e := trial(t, test.job)
		said := map[string]bool{}
		for _, page := range lay(e.plan, Options{Pages: test.pages}).Pages {
			for _, text := range page.Texts() {
				said[text.String] = true
				said["layouts"] = said["layouts"] || strings.HasPrefix(text.String, "layout 1 of ")
			}
		}
		if said["Setups"] != test.setups || said["Diagrams"] != test.diagrams || said["layouts"] != test.layouts {
			t.Errorf("%s, pages %b: setups %v, diagrams %v, layouts %v", test.job, test.pages, said["Setups"], said["Diagrams"], said["layouts"])
		}
	}
}
