package choice

import (
	"slices"

	"sawbill/stock"
)

// Total is the cost of a whole job under one choice for each material.
type Total struct {
	Cost stock.Money
	// Bound is a lower bound on the cost of every choice that qualifies.
	Bound stock.Money
	// Choices lists one index into Material.Choices for each material.
	Choices []int
}

// Best returns the total of the best choice of each material.
func (c *Comparison) Best() Total {
	t, _ := c.total(func(Choice) bool { return true })
	return t
}

// From returns the total of the best complete choices that buy from one seller alone.
// Stock without a seller is sold everywhere. It returns false if a material has no such
// choice.
func (c *Comparison) From(seller string) (Total, bool) {
	return c.total(func(o Choice) bool {
		elsewhere := func(s string) bool { return s != seller }
		return o.Plan.Complete() && !slices.ContainsFunc(o.Sellers, elsewhere)
	})
}

// Sellers lists the sellers of the job's offers, in the order of the job.
func (c *Comparison) Sellers() []string {
	var all []string
	for _, s := range c.Job.Stock {
		if s.Seller != "" && !slices.Contains(all, s.Seller) {
			all = append(all, s.Seller)
		}
	}
	return all
}

// total adds up the first choice of each material that qualifies. A later one may have
// more offers, an equal cost and a lower bound, so the lowest bound counts.
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
