package choice

import (
	"testing"

	"sawbill/nest/cutplan"
	"sawbill/stock"
)

// North's plan at 50.00 is proven for one size, not for both, so North's bound is 45.00.
// Much thicker boards for 30.00 do not count, nor does a choice that lacks blanks.
func TestATotalClaimsNoMoreThanItsWidestChoice(t *testing.T) {
	plan := func(cost, bound stock.Money) *cutplan.Plan { return &cutplan.Plan{Cost: cost, Bound: bound} }
	lacking := plan(20_00, 20_00)
	lacking.Unplaced = []cutplan.Unplaced{{Count: 1}}
	c := &Comparison{Materials: []Material{{Choices: []Choice{
		{Plan: plan(50_00, 50_00), Sellers: []string{"North"}},
		{Plan: plan(50_00, 45_00), Sellers: []string{"North"}},
		{Plan: plan(60_00, 40_00), Sellers: []string{"South"}},
		{Plan: plan(30_00, 30_00), Sellers: []string{"North"}, RelaxedSources: true},
		{Plan: lacking, Sellers: []string{"North"}},
	}}}}
	if north, _ := c.From("North"); north.Cost != 50_00 || north.Bound != 45_00 {
		t.Errorf("North %+v", north)
	}
	if best := c.Best(); best.Cost != 50_00 || best.Bound != 40_00 {
		t.Errorf("best %+v", best)
	}
}
