package colgen

import (
	"iter"

	"sawbill/nest/internal/halt"
	"sawbill/nest/internal/instance"
	"sawbill/nest/internal/knapsack"
	"sawbill/nest/internal/pricing"
)

// pricer finds valuable patterns of one stock, in portions.
type pricer interface {
	// setLimits sets the demand, for pricers that respect it.
	setLimits(demand []int)
	// start begins to look for a pattern worth more than above. Some pricers find the best one,
	// whatever it is worth.
	start(values []int64, above int64)
	advance(work int64) (left int64, done bool)
	// best returns the best pattern found, if any.
	best() (root instance.Piece, ok bool)
	// more returns further valuable patterns, as many as help.
	more() []instance.Piece
	// effort returns about what one pricing takes, in comparisons.
	effort() int64
	// upperBound returns a value that no pattern exceeds.
	upperBound() int64
}

// listingPricer respects demand. It can also list every pattern worth more than above, except
// patterns that are part of another one.
type listingPricer interface {
	pricer
	startListing(values []int64, above int64)
	advanceListing(work int64) (left int64, done bool)
	// listing returns the patterns; not ok if there are too many.
	listing() (patterns iter.Seq[listedPattern], ok bool)
}

// listedPattern is a pattern of a listing.
type listedPattern interface {
	Count(item int) int
	Piece() instance.Piece
}

// gridPricer prices patterns that may exceed the demand.
type gridPricer struct{ *pricing.Grid }

func (p gridPricer) setLimits([]int) {}

func (p gridPricer) start(values []int64, _ int64) { p.Start(values) }

func (p gridPricer) advance(work int64) (left int64, done bool) { return p.Advance(work) }

func (p gridPricer) best() (root instance.Piece, ok bool) {
	if p.Best() == 0 {
		return root, false
	}
	return p.Pattern()
}

func (p gridPricer) more() []instance.Piece {
	const few = 2 // more do not help
	return p.Others(few)
}

func (p gridPricer) effort() int64 { return p.Work() }

func (p gridPricer) upperBound() int64 { return p.Best() }

// boundedPricer prices patterns that respect demand and all rules of their stock.
type boundedPricer struct {
	*knapsack.Search
	budget     int64 // of work for one pricing
	spent      int64
	firstFound int64 // work before there was a pattern; 0 until then
}

// newBoundedPricer returns a pricer for stock s; nil if that is not possible.
func newBoundedPricer(in *instance.Instance, s int, items []pricing.Item, demand []int, tableWork, budget int64, stop halt.Signal) *boundedPricer {
	st := in.Stock[s]
	var counted []knapsack.Item
	for _, it := range items {
		counted = append(counted, knapsack.Item{L: it.L, W: it.W, Orientations: it.Orientations, Count: demand[it.Kind], Kind: it.Kind})
	}
	rules := knapsack.Rules{Stages: in.Stages, FirstCut: st.FirstCut, NarrowestRip: st.NarrowestRip}
	k := knapsack.New(st.L, st.W, counted, rules, maxRects, tableWork)
	if k == nil {
		return nil
	}
	k.Halt = stop
	return &boundedPricer{Search: k, budget: budget}
}

// setLimits does nothing: newBoundedPricer sets the demand.
func (p *boundedPricer) setLimits([]int) {}

func (p *boundedPricer) start(values []int64, above int64) {
	p.spent, p.firstFound = 0, 0
	p.StartSome(values, above)
}

// Work of one pricing. After minPricing any pattern serves, best or not. Without one, pricing
// goes on up to the budget.
const (
	minPricing = 1 << 16
	maxMore    = 16 // patterns that more returns
	fullBudget = 1 << 28
	// about 40 MB
	maxRects  = 1 << 18
	tableWork = 1 << 22
)

func (p *boundedPricer) advance(work int64) (left int64, done bool) {
	for work > 0 && !p.Halt.On() {
		portion := min(work, minPricing)
		left, done := p.Advance(portion)
		p.spent += portion - left
		work -= portion - left
		if p.firstFound == 0 && p.Found() > 0 {
			p.firstFound = p.spent
		}
		switch {
		case done, p.spent >= p.budget, p.firstFound > 0 && p.spent >= minPricing && (p.Found() >= maxMore || p.spent >= p.firstFound+p.firstFound/4):
			return work, true
		}
	}
	return work, false
}

func (p *boundedPricer) best() (root instance.Piece, ok bool) {
	if _, ok := p.Best(); !ok {
		return root, false
	}
	return p.Pattern(), true
}

func (p *boundedPricer) startListing(values []int64, above int64) { p.StartAll(values, above) }

func (p *boundedPricer) advanceListing(work int64) (left int64, done bool) { return p.Advance(work) }

func (p *boundedPricer) listing() (patterns iter.Seq[listedPattern], ok bool) {
	return func(yield func(listedPattern) bool) {
		for f := range p.All {
			if !yield(f) {
				return
			}
		}
	}, p.Proven()
}

func (p *boundedPricer) more() (all []instance.Piece) {
	for f := range p.All {
		all = append(all, f.Piece())
		if len(all) == maxMore {
			break
		}
	}
	return all
}

func (p *boundedPricer) effort() int64 { return p.spent }

func (p *boundedPricer) upperBound() int64 { return p.Bound() }

// boundedPricers returns pricers that respect demand, per stock; nil if that is not possible.
func (g *Generator) boundedPricers() (all []pricer) {
	if _, counts := g.grids.patterns[0].(listingPricer); counts {
		return g.grids.patterns
	}
	for s := range g.in.Stock {
		p := newBoundedPricer(g.in, s, g.items[s], g.demand, tableWork, fullBudget, g.stop)
		if p == nil {
			return nil
		}
		all = append(all, p)
	}
	return all
}
