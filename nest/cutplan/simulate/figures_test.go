package simulate_test

import (
	"path/filepath"
	"testing"

	"sawbill/nest/cutplan/simulate"
	"sawbill/stock"
)

// Inches on metric jobs, and the other way round: nearly every figure is rounded.
func TestPrintedFiguresGiveTheBlanks(t *testing.T) {
	for _, folder := range []string{"testdata", "../../../testdata/jobs"} {
		names, err := filepath.Glob(folder + "/*.toml")
		if err != nil || len(names) < 9 {
			t.Fatalf("%d jobs, error %v", len(names), err)
		}
		for _, name := range names {
			p := planned(t, name)
			for _, r := range []stock.Ruler{{}, {Units: stock.Inches}, {Units: stock.Inches, Denominator: 16}, {Units: stock.Inches, Denominator: 64}} {
				worst, err := simulate.Figures(p, r)
				if err != nil {
					t.Errorf("%s in %s: %v", filepath.Base(name), r.Units, err)
				}
				t.Logf("%s in %s, 1/%d: a blank is off by %s mm at most", filepath.Base(name), r.Units, r.Denominator, worst.Decimal())
			}
		}
	}
}
