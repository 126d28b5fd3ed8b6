package choice

import (
	"context"
	"testing"

	"sawbill/nest/cutplan"
	"sawbill/stock"
)

// A dear plan with both lengths takes over a cheaper one with one of them. The bound of
// the latter rises to the bound with both. A thick board, which a thin one forbids, shares
// nothing.
func TestPlansAndBoundsAreInherited(t *testing.T) {
	short, long := board("short", "", 2000, 500), board("long", "", 3000, 800)
	thick := board("thick", "", 2000, 300)
	thick.Thickness = 50 * mm
	tests := []struct {
		reason      string
		few, many   stock.Job
		cost, bound stock.Money
	}{
		{"both lengths", shelves(short), shelves(short, long), 1500, 1300},
		{"a thick board beside a thin one", shelves(thick), shelves(short, thick), 9000, 0},
	}
	for _, tt := range tests {
		few, err := cutplan.Make(context.Background(), tt.few, cutplan.Options{Iterations: 100})
		if err != nil {
			t.Fatal(err)
		}
		few.Bound = 0
		many := *few
		many.Job, many.Cost, many.Bound = tt.many, 9000, 1300
		plans := []*cutplan.Plan{few, &many}
		inherit(plans)
		if plans[1].Cost != tt.cost || plans[1].Bound != 1300 || len(plans[1].Job.Stock) != 2 || plans[0].Bound != tt.bound {
			t.Errorf("%s: cost %v, bounds %v and %v", tt.reason, plans[1].Cost, plans[0].Bound, plans[1].Bound)
		}
	}
}
