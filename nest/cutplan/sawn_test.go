package cutplan_test

import (
	"context"
	"testing"

	"sawbill/nest/cutplan"
	"sawbill/nest/cutplan/simulate"
	"sawbill/stock"
)

// Random jobs, of sheets and boards, trimmed or not, within the reach of several saws.
// The figures of a ruler in millimeters and of one in inches give the blanks too.
func TestRandomPlansAreSawnByTheirRows(t *testing.T) {
	named := 0
	for seed := range uint64(330) {
		p, err := cutplan.Make(context.Background(), cutplan.RandomJob(seed), cutplan.Options{Iterations: 20})
		if err != nil {
			t.Fatal(err)
		}
		if err := simulate.Check(p); err != nil {
			t.Errorf("seed %d: %v", seed, err)
		}
		for _, r := range []stock.Ruler{{}, {Units: stock.Inches}} {
			if _, err := simulate.Figures(p, r); err != nil {
				t.Errorf("seed %d in %s: %v", seed, r.Units, err)
			}
		}
		for _, l := range p.Layouts {
			if l.Root.Use == cutplan.Part && len(p.Steps(l)) > 0 {
				named++
			}
		}
	}
	t.Logf("%d blanks are free once their stock is trimmed", named)
}
