package columns

import (
	"iter"

	"sawbill/nest/internal/instance"
	"sawbill/nest/internal/knapsack"
	"sawbill/nest/internal/pricing"
)

// pricer looks for valuable patterns of one stock, in portions.
type pricer interface {
	// limit says how often a part may come, to pricers that count.
	limit(count func(kind int) int)
	// start begins to look for a pattern worth more than above; some pricers
	// find the best one whatever it is worth.
	start(values []int64, above int64)
	advance(work int64) (left int64, done bool)
	// pattern is the one found, if any.
	pattern() (root instance.Piece, ok bool)
	// others are further valuable patterns, as many as help.
	others() []instance.Piece
	// effort is about what one pricing takes, in comparisons.
	effort() int64
	// worth is what no pattern is worth more than.
	worth() int64
}

// counter is a pricer that counts. It can also list every pattern worth more than
// above, but for those that hold no part oftener than another one does.
type counter interface {
	pricer
	startAll(values []int64, above int64)
	advanceAll(work int64) (left int64, done bool)
	// all are those listed; not ok where there were too many.
	all() (patterns iter.Seq[listed], ok bool)
}

// listed is a pattern of a list.
type listed interface {
	Count(item int) int
	Piece() instance.Piece
}

// loose prices patterns in which parts may come more often than they are
// wanted.
type loose struct{ *pricing.Grid }

func (p loose) limit(func(int) int) {}

func (p loose) start(values []int64, _ int64) { p.Start(values) }

func (p loose) advance(work int64) (left int64, done bool) { return p.Advance(work) }

func (p loose) pattern() (root instance.Piece, ok bool) {
	if p.Best() == 0 {
		return root, false
	}
	return p.Pattern()
}

func (p loose) others() []instance.Piece {
	const few = 2 // more of these help little
	return p.Others(few)
}

func (p loose) effort() int64 { return p.Work() }

func (p loose) worth() int64 { return p.Best() }

// strict prices patterns in which no part comes more often than it is wanted,
// and which keep to the rules of their stock.
type strict struct {
	*knapsack.Search
	enough int64 // work of a pricing
	spent  int64
	first  int64 // spent when there was one; 0 before
}

// newStrict prices stock s; nil where that cannot be.
func newStrict(in *instance.Instance, s int, items []knapsack.Item, tableWork, enough int64) *strict {
	st := in.Stock[s]
	rules := knapsack.Rules{Stages: in.Stages, First: st.First, Narrowest: st.Narrowest}
	k := knapsack.New(st.L, st.W, items, rules, mostRects, tableWork)
	if k == nil {
		return nil
	}
	return &strict{Search: k, enough: enough}
}

// limit is set for good by newStrict.
func (p *strict) limit(func(int) int) {}

func (p *strict) start(values []int64, above int64) {
	p.spent, p.first = 0, 0
	p.StartSome(values, above)
}

// Work for one pattern: once there is one it serves, best or not, after little;
// without one it is looked for until enough is spent.
const (
	little = 1 << 16
	plenty = 16 // patterns of one pricing
	enough = 1 << 28
	// mostRects are some 40 MB.
	mostRects = 1 << 18
	tableWork = 1 << 22
)

func (p *strict) advance(work int64) (left int64, done bool) {
	for work > 0 {
		portion := min(work, little)
		left, done := p.Advance(portion)
		p.spent += portion - left
		work -= portion - left
		if p.first == 0 && p.Found() > 0 {
			p.first = p.spent
		}
		switch {
		case done, p.spent >= p.enough, p.first > 0 && p.spent >= little && (p.Found() >= plenty || p.spent >= p.first+p.first/4):
			return work, true
		}
	}
	return work, false
}

func (p *strict) pattern() (root instance.Piece, ok bool) {
	if _, ok := p.Best(); !ok {
		return root, false
	}
	return p.Pattern(), true
}

func (p *strict) startAll(values []int64, above int64) { p.StartAll(values, above) }

func (p *strict) advanceAll(work int64) (left int64, done bool) { return p.Advance(work) }

func (p *strict) all() (patterns iter.Seq[listed], ok bool) {
	return func(yield func(listed) bool) {
		for f := range p.All {
			if !yield(f) {
				return
			}
		}
	}, p.Proven()
}

func (p *strict) others() (all []instance.Piece) {
	for f := range p.All {
		all = append(all, f.Piece())
		if len(all) == plenty {
			break
		}
	}
	return all
}

func (p *strict) effort() int64 { return p.spent }

func (p *strict) worth() int64 { return p.Bound() }

// tighten makes pricers that count, one for each stock; nil where they cannot
// be.
func (g *Generator) tighten() (all []pricer) {
	if _, counts := g.grids[0].(counter); counts {
		return g.grids
	}
	for s := range g.in.Stock {
		var items []knapsack.Item
		for _, it := range g.items[s] {
			items = append(items, knapsack.Item{L: it.L, W: it.W, Lies: it.Lies, Count: g.in.Kinds[it.Kind].Count, Kind: it.Kind})
		}
		p := newStrict(g.in, s, items, tableWork, enough)
		if p == nil {
			return nil
		}
		all = append(all, p)
	}
	return all
}
