package report

import (
	"strings"
	"testing"

	"sawbill/stock"
)

// Each kind of cut of a sheet says which face lies up: at the saw's fence and stop, and
// where a guided saw breaks the sheet down. Up on a table saw, down under a hand-held saw:
// woodworkingtips.com, etips 010810 and 010817.
func TestWhichFaceLiesUpIsSaidForEachKindOfCut(t *testing.T) {
	for _, e := range examples(t) {
		marked, sheets := false, false
		for _, l := range e.plan.Layouts {
			sheets = sheets || l.Stock.Kind == stock.Sheet && !staysWhole(l)
			for _, s := range e.plan.Steps(l) {
				marked = marked || s.Breakdown()
			}
		}
		page := string(HTML(e.plan, Options{Case: e.design}))
		for said, want := range map[string]bool{
			"good face up at the saw":                         sheets,
			"Panels lie good face up at the saw.":             sheets,
			"or up under a splinter guard.":                   marked,
			"beyond the saw; good face down, or up under a s": marked,
		} {
			if strings.Contains(page, said) != want {
				t.Errorf("%s: %q is said: %v", e.name, said, !want)
			}
		}
	}
}
