package choice

import (
	"context"
	"fmt"
	"slices"

	"sawbill/nest/cutplan"
	"sawbill/nest/cutplan/sellercuts"
	"sawbill/stock"
)

// Replacement is what to buy where an offer that a plan buys is sold out.
type Replacement struct {
	Offer stock.Stock
	// Plan is of the offer's material alone, without the offer.
	Plan  *cutplan.Plan
	Extra stock.Money // its cost above what the plan buys of that material
	// RelaxedSources: it cuts stock much thicker than needed, for want of other.
	RelaxedSources bool
}

// Instead plans, for each purchase of p, its material without that offer. An offer without
// which some blanks are not cut, or whose price or replacement has none, is left out; so
// are all where p itself is not complete. Errors are those of sellercuts.Make.
func Instead(ctx context.Context, p *cutplan.Plan, o Options) ([]Replacement, error) {
	if !p.Complete() {
		return nil, nil
	}
	var all []Replacement
	for _, b := range p.Buy {
		without := everything(p.Job)
		without.offers = slices.DeleteFunc(without.offers, func(i int) bool { return p.Job.Stock[i] == b.Stock })
		material := b.Stock.Material
		job := without.job(p.Job, material)
		if b.Stock.Price == 0 || len(job.Stock) == 0 {
			continue
		}
		made, err := sellercuts.Make(ctx, job, cutplan.Options{Seed: o.Seed, Iterations: o.Iterations})
		if err != nil {
			return nil, fmt.Errorf("planning %s without %s: %w", material, b.Stock.Name, err)
		}
		if !made.Complete() || len(made.Unpriced) > 0 {
			continue
		}
		full := everything(p.Job).job(p.Job, material)
		all = append(all, Replacement{Offer: b.Stock, Plan: made, Extra: made.Cost - costOf(p, material), RelaxedSources: !isRestriction(made.Job, full)})
	}
	return all, nil
}

// costOf is what p pays for one material, cuts by the seller included.
func costOf(p *cutplan.Plan, material string) stock.Money {
	cost := stock.Money(0)
	for _, b := range p.Buy {
		if b.Stock.Material == material {
			cost += b.Cost
		}
	}
	for _, d := range p.AtSeller {
		if d.Stock.Material == material {
			cost += d.Cost
		}
	}
	return cost
}
