package choice

import (
	"testing"

	"sawbill/nest/cutplan"
	"sawbill/stock"
)

// What is sold at North for 50.00 is proven of its one size, not of both: then nothing
// above 45.00 is proven of North. That boards much thicker would do for 30.00 is another
// matter, as is what cannot give every blank.
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
