package cutplan

import (
	"slices"

	"sawbill/stock"
)

// Estimate is rough lumber to ask for, and the blanks that it gives. These blanks have no
// layout, since the boards are not known yet. The plan's cost and bound leave it out.
type Estimate struct {
	stock.Estimate
	Blanks []Wanted
}

// Wanted is a blank to be cut Count times.
type Wanted struct {
	Blank int // index into Plan.Bill
	Count int
}

// estimate moves blanks from Unplaced to Estimates if rough lumber for sale gives them and
// only boards on hand compete with it. Blanks that have marks keep them; marks is the
// number of marks given so far.
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

// EstimateOf returns the rough lumber to ask for, for blanks of the plan's bill.
func (p *Plan) EstimateOf(rough stock.Rough, wanted []Wanted) Estimate {
	var blanks []stock.Blank
	for _, w := range wanted {
		b := p.Bill[w.Blank].Blank
		b.Count = w.Count
		blanks = append(blanks, b)
	}
	return Estimate{rough.Estimate(blanks), wanted}
}
