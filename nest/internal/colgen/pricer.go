package colgen

import (
	"iter"

	"sawbill/nest/internal/instance"
	"sawbill/nest/internal/knapsack"
	"sawbill/nest/internal/pricing"
)

// pricer looks for valuable patterns of one stock, in portions.
type pricer interface {
	// limit says how often a part may come, to pricers that count.
	setLimits(count func(kind int) int)
	// start begins to look for a pattern worth more than above; some pricers
	// find the best one whatever it is worth.
	start(values []int64, above int64)
	advance(work int64) (left int64, done bool)
	// pattern is the one found, if any.
	best() (root instance.Piece, ok bool)
	// others are further valuable patterns, as many as help.
	more() []instance.Piece
	// effort is about what one pricing takes, in comparisons.
	effort() int64
	// worth is what no pattern is worth more than.
	upperBound() int64
}

// listingPricer is a pricer that counts. It can also list every pattern worth more than
// above, but for those that hold no part oftener than another one does.
type listingPricer interface {
	pricer
	startListing(values []int64, above int64)
	advanceListing(work int64) (left int64, done bool)
	// all are those listed; not ok where there were too many.
	listing() (patterns iter.Seq[listedPattern], ok bool)
}

// listedPattern is a pattern of a list.
type listedPattern interface {
	Count(item int) int
	Piece() instance.Piece
}

// gridPricer prices patterns in which parts may come more often than they are
// wanted.
type gridPricer struct{ *pricing.Grid }

func (p gridPricer) setLimits(func(int) int) {}

func (p gridPricer) start(values []int64, _ int64) { p.Start(values) }

func (p gridPricer) advance(work int64) (left int64, done bool) { return p.Advance(work) }

func (p gridPricer) best() (root instance.Piece, ok bool) {
	if p.Best() == 0 {
		return root, false
	}
	return p.Pattern()
}

func (p gridPricer) more() []instance.Piece {
	const few = 2 // more of these help little
	return p.Others(few)
}

func (p gridPricer) effort() int64 { return p.Work() }

func (p gridPricer) upperBound() int64 { return p.Best() }

// boundedPricer prices patterns in which no part comes more often than it is wanted,
// and which keep to the rules of their stock.
type boundedPricer struct {
	*knapsack.Search
	budget     int64 // work of a pricing
	spent      int64
	firstFound int64 // spent when there was one; 0 before
}

// newBoundedPricer prices stock s; nil where that cannot be.
func newBoundedPricer(in *instance.Instance, s int, items []knapsack.Item, tableWork, enough int64) *boundedPricer {
	st := in.Stock[s]
	rules := knapsack.Rules{Stages: in.Stages, FirstCut: st.FirstCut, NarrowestRip: st.NarrowestRip}
	k := knapsack.New(st.L, st.W, items, rules, maxRects, tableWork)
	if k == nil {
		return nil
	}
	return &boundedPricer{Search: k, budget: enough}
}

// setLimits is set for good by newStrict.
func (p *boundedPricer) setLimits(func(int) int) {}

func (p *boundedPricer) start(values []int64, above int64) {
	p.spent, p.firstFound = 0, 0
	p.StartSome(values, above)
}

// Work for one pattern: once there is one it serves, best or not, after little;
// without one it is looked for until enough is spent.
const (
	minPricing = 1 << 16
	maxMore    = 16 // patterns of one pricing
	fullBudget = 1 << 28
	// maxRects are some 40 MB.
	maxRects  = 1 << 18
	tableWork = 1 << 22
)

func (p *boundedPricer) advance(work int64) (left int64, done bool) {
	for work > 0 {
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

// boundedPricers makes pricers that count, one for each stock; nil where they cannot
// be.
func (g *Generator) boundedPricers() (all []pricer) {
	if _, counts := g.grids.patterns[0].(listingPricer); counts {
		return g.grids.patterns
	}
	for s := range g.in.Stock {
		var items []knapsack.Item
		for _, it := range g.items[s] {
			items = append(items, knapsack.Item{L: it.L, W: it.W, Orientations: it.Orientations, Count: g.in.Kinds[it.Kind].Demand, Kind: it.Kind})
		}
		p := newBoundedPricer(g.in, s, items, tableWork, fullBudget)
		if p == nil {
			return nil
		}
		all = append(all, p)
	}
	return all
}
