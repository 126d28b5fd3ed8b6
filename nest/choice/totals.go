package choice

import (
	"slices"

	"sawbill/stock"
)

// Total is the cost of a whole job under one choice for each material.
type Total struct {
	Cost stock.Money
	// Bound is what none of the choices that were to be had costs less than.
	Bound stock.Money
	// Choices are indices into the Choices of each material.
	Choices []int
}

// Best takes the best choice of each material.
func (c *Comparison) Best() Total {
	t, _ := c.total(func(Choice) bool { return true })
	return t
}

// All takes what a plan with all offers and all that is on hand gives.
func (c *Comparison) All() Total {
	t, _ := c.total(func(o Choice) bool { return o.All })
	return t
}

// From takes the best complete choice that buys from one seller alone; what
// names no seller is to be had anywhere. It returns false where a material has
// none.
func (c *Comparison) From(seller string) (Total, bool) {
	return c.total(func(o Choice) bool {
		elsewhere := func(s string) bool { return s != seller }
		return o.Plan.Complete() && !slices.ContainsFunc(o.Sellers, elsewhere)
	})
}

// Sellers lists who offers anything, in the order of the job.
func (c *Comparison) Sellers() []string {
	var all []string
	for _, s := range c.Job.Stock {
		if s.Seller != "" && !slices.Contains(all, s.Seller) {
			all = append(all, s.Seller)
		}
	}
	return all
}

// total adds up the first choice of each material that will do. Another one that will do
// may offer more and be found at no less, and yet not be proven: the least bound counts.
func (c *Comparison) total(do func(Choice) bool) (Total, bool) {
	var t Total
	for _, m := range c.Materials {
		at := slices.IndexFunc(m.Choices, do)
		if at < 0 {
			return Total{}, false
		}
		t.Choices = append(t.Choices, at)
		t.Cost += m.Choices[at].Plan.Cost
		taken := m.Choices[at]
		bound := taken.Plan.Bound
		for _, c := range m.Choices[at:] {
			if do(c) && c.RelaxedSources == taken.RelaxedSources && c.Plan.Complete() {
				bound = min(bound, c.Plan.Bound)
			}
		}
		t.Bound += bound
	}
	return t, true
}
