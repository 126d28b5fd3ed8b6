package report

import (
	"strings"
	"testing"

	"sawbill/report/internal/drawing"
	"sawbill/stock"
	"sawbill/stock/casework"
)

// Story sticks are printed where there are slides or pins, each page with a line to measure
// and how to print it.
func TestStickPagesSayHowToPrintThem(t *testing.T) {
	p := bench()
	c := chest()
	o := Options{Case: c, Pages: StickPages}
	if got := len(lay(p, o).Pages); got != 1 || strings.Contains(textOf(lay(p, o).Pages[0]), "Story sticks") {
		t.Errorf("%d pages without slides or pins", got)
	}
	c.Marks = []casework.Mark{{What: casework.SlideLine, Spots: []casework.Spot{{Face: casework.Face{Side: casework.Inner}}},
		Measure: casework.Measure{From: casework.Face{Side: casework.Lower, Extent: casework.End}, At: []stock.Length{120 * stock.Millimeter, 340 * stock.Millimeter}}}}
	for _, page := range lay(p, o).Pages {
		said := textOf(page)
		for _, want := range []string{"Print at 100 %", "Measure: this line 100 mm, joining lines 220 mm apart."} {
			if !strings.Contains(said, want) {
				t.Errorf("a page of sticks does not say %q:\n%s", want, said)
			}
		}
		if err := drawing.CheckLegible(page); err != nil {
			t.Error(err)
		}
	}
}

// textOf is all that is written on a page.
func textOf(page drawing.Drawing) string {
	var said []string
	for _, t := range page.Texts() {
		said = append(said, t.String)
	}
	return strings.Join(said, "\n")
}
