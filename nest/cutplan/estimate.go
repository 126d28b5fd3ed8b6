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

// estimated splits what could not be cut: an estimate is made of what rough
// lumber for sale will give, for which nothing else is offered than boards on
// hand; the rest is unplaced.
func estimated(job stock.Job, bill []Blank, missing []Unplaced) (unplaced []Unplaced, estimates []Estimate) {
	of := make([][]Wanted, len(job.Rough))
	for _, m := range missing {
		r, found := job.RoughFor(bill[m.Blank].Blank)
		if !found {
			unplaced = append(unplaced, m)
			continue
		}
		i := slices.Index(job.Rough, r)
		of[i] = append(of[i], Wanted{m.Blank, m.Count})
	}
	for i, wanted := range of {
		if wanted == nil {
			continue
		}
		var blanks []stock.Blank
		for _, w := range wanted {
			b := bill[w.Blank].Blank
			b.Count = w.Count
			blanks = append(blanks, b)
		}
		estimates = append(estimates, Estimate{job.Rough[i].Estimate(blanks), wanted})
	}
	return unplaced, estimates
}
