package cutplan

import (
	"slices"

	"sawbill/stock"
)

// Estimate is rough lumber to ask for, and what is to come of it: blanks for
// which no layout is made, since the boards are not known yet. It is no part of
// the plan's cost and bound.
type Estimate struct {
	stock.Estimate
	Blanks []Wanted
}

// Wanted is a blank that is wanted Count times.
type Wanted struct {
	Blank int // index into Plan.Bill
	Count int
}

// estimate takes out of the unplaced what rough lumber for sale will give, for
// which nothing else is offered than boards on hand. Blanks that were marked before keep
// their marks; so many marks were given.
func (p *Plan) estimate(marked bool, marks int) {
	if len(p.Job.Rough) == 0 || len(p.Unplaced) == 0 {
		return
	}
	p.reblank(marked, marks)
	of := make([][]Wanted, len(p.Job.Rough))
	var unplaced []Unplaced
	for _, m := range p.Unplaced {
		r, found := p.Job.RoughFor(p.Bill[m.Blank].Blank)
		if !found {
			unplaced = append(unplaced, m)
			continue
		}
		i := slices.Index(p.Job.Rough, r)
		of[i] = append(of[i], Wanted{m.Blank, m.Count})
	}
	p.Unplaced = unplaced
	for i, wanted := range of {
		if wanted == nil {
			continue
		}
		p.Estimates = append(p.Estimates, p.EstimateOf(p.Job.Rough[i], wanted))
	}
}

// EstimateOf is how much rough lumber to ask for, for blanks of the plan's bill.
func (p *Plan) EstimateOf(rough stock.Rough, wanted []Wanted) Estimate {
	var blanks []stock.Blank
	for _, w := range wanted {
		b := p.Bill[w.Blank].Blank
		b.Count = w.Count
		blanks = append(blanks, b)
	}
	return Estimate{rough.Estimate(blanks), wanted}
}
