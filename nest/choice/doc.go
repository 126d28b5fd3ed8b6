// Package choice compares what could be bought for a job: each material under
// every sensible set of offers, with and without what is on hand, each planned
// by cutplan and so verified.
//
// No two materials compete for the same stock, so each is compared by itself, and
// the best of the job is the best of each of its materials.
package choice

import (
	"sawbill/nest/cutplan"
	"sawbill/stock"
)

// Comparison is a job under its choices.
type Comparison struct {
	Job       stock.Job
	Materials []Material // in the order of the job's parts
}

// Material is one material of the job under its choices: those that lack the
// fewest blanks first, the complete ones before all, of those the ones with all
// prices known, then by net cost, pieces, sellers and setups. The first is the best.
type Material struct {
	Name    string
	Choices []Choice
	// Substitutes are for each offer that the best choice buys, in the order
	// of its purchases, where there is a complete choice without it.
	Substitutes []Substitute
}

// Best is the first choice.
func (m Material) Best() Choice { return m.Choices[0] }

// Choice is one set of offers that may be bought, and its plan.
type Choice struct {
	// Offers are indices into Job.Stock, rising. Of equal pieces only the
	// cheapest is offered.
	Offers []int
	OnHand bool // what is on hand may be cut too
	All    bool // nothing is left out
	// RelaxedSources is cut as nobody would who has all the offers to choose from: out of boards
	// much thicker than need be, or resawn another way. It is never the best.
	RelaxedSources bool
	// Plan is of this material alone: its Job has the parts and the stock of
	// this choice.
	Plan *cutplan.Plan

	Pieces  int      // bought
	Sellers []string // bought from, sorted; what names no seller is to be had from any
	Offcuts int      // offcuts kept
	// Worth is what the offcuts kept count for, of stock that is bought.
	Worth stock.Money
	// Weight of what is bought, in kg; 0 where the density is not known.
	Weight float64
	Cuts   int // made, each as often as its layout is cut
	Setups int // settings of fence or stop, gathered over all layouts

	// DominatedBy is the index of a choice that is no worse in net cost, pieces,
	// sellers and setups and better in one of them; -1 if there is none.
	DominatedBy int
}

// Net is the cost less what is kept.
func (c Choice) Net() stock.Money { return c.Plan.Cost - c.Worth }

// Missing is how many blanks the plan does not give.
func (c Choice) Missing() int { return missing(c.Plan) }

func missing(p *cutplan.Plan) int {
	n := 0
	for _, u := range p.Unplaced {
		n += u.Count
	}
	return n
}

// Priced reports whether all that is bought has a price, so that the cost tells
// what is paid.
func (c Choice) Priced() bool { return len(c.Plan.Unpriced) == 0 }

// bought is how many pieces of s the plan buys.
func (c Choice) bought(s stock.Stock) int {
	n := 0
	for _, b := range c.Plan.Buy {
		if b.Stock == s {
			n += b.Count
		}
	}
	return n
}

// Substitute is what to take when an offer is sold out.
type Substitute struct {
	Offer  stock.Stock
	Choice int         // index into Material.Choices: the best without the offer
	Extra  stock.Money // its cost beyond that of the best
}
