// Package choice compares the offers that could be bought for a job. It takes each
// material under every sensible set of offers, with and without stock on hand. Package
// cutplan plans and verifies each choice.
//
// No two materials compete for the same stock, so each is compared by itself. The best of
// the job is the best of each of its materials.
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

// Material is one material of the job under its choices. Complete choices come first, then
// those that lack the fewest blanks. Ties are sorted by known prices, net cost, pieces,
// sellers and setups. The first choice is the best.
type Material struct {
	Name    string
	Choices []Choice
	// Substitutes lists replacements for the offers that the best choice buys, in the
	// order of its purchases. An offer has one if a complete choice does without it.
	Substitutes []Substitute
}

// Best is the first choice.
func (m Material) Best() Choice { return m.Choices[0] }

// Choice is one set of offers that may be bought, and its plan.
type Choice struct {
	// Offers lists indices into Job.Stock, rising. Among equal pieces only the cheapest is
	// offered.
	Offers []int
	OnHand bool // stock on hand may be cut too
	All    bool // every offer, and the stock on hand
	// RelaxedSources: the choice cuts stock that the full set of offers rules out, such as
	// boards much thicker than needed. It is never the best.
	RelaxedSources bool
	// Plan is for this material alone: its Job has the parts and the stock of this choice.
	Plan *cutplan.Plan

	Pieces  int      // bought
	Sellers []string // of the purchases, sorted; stock without a seller is left out
	Offcuts int      // offcuts kept
	// Worth is the credit for the offcuts kept, if their stock was bought.
	Worth stock.Money
	// Weight is the weight of the purchases in kg; 0 if the density is unknown.
	Weight float64
	Cuts   int // made, each as often as its layout is cut
	Setups int // settings of fence or stop, gathered over all layouts

	// DominatedBy is the index of a choice that is better in net cost, pieces, sellers or
	// setups, and no worse in the others. It is -1 if there is none.
	DominatedBy int
}

// Net is the cost less the worth of the offcuts kept.
func (c Choice) Net() stock.Money { return c.Plan.Cost - c.Worth }

// Unplaced returns the number of blanks that the plan does not cut.
func (c Choice) Unplaced() int { return unplaced(c.Plan) }

func unplaced(p *cutplan.Plan) int {
	n := 0
	for _, u := range p.Unplaced {
		n += u.Count
	}
	return n
}

// Priced reports whether every purchase has a price, so that the cost is complete.
func (c Choice) Priced() bool { return len(c.Plan.Unpriced) == 0 }

// bought returns how many pieces of s the plan buys.
func (c Choice) bought(s stock.Stock) int {
	n := 0
	for _, b := range c.Plan.Buy {
		if b.Stock == s {
			n += b.Count
		}
	}
	return n
}

// Substitute replaces an offer that is sold out.
type Substitute struct {
	Offer  stock.Stock
	Choice int         // index into Material.Choices: the best without the offer
	Extra  stock.Money // its cost above the best choice
}
