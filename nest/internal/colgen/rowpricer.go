package colgen

import (
	"iter"
	"slices"

	"sawbill/nest/internal/instance"
	"sawbill/nest/internal/knapsack1d"
	"sawbill/nest/internal/pricing"
)

// rowPricer prices rows along the length of a stock that all its parts span. They respect
// demand and every rule.
type rowPricer struct {
	*knapsack1d.Search
	stock  instance.Stock
	items  []pricing.Item
	values []int64
	above  int64
	spent  int64
	rows   [][]int // of the listing, each per item
	ended  bool    // the listing is complete
}

// rowPricers returns a pricer of rows for each stock. It returns nil unless every part is as
// wide as any stock it may come from, in its orientation there.
func (g *Generator) rowPricers() (all []pricer) {
	for s, st := range g.in.Stock {
		if st.FirstCut == instance.Rip || g.in.Stages < 1 {
			return nil
		}
		var items []knapsack1d.Item
		for _, it := range g.items[s] {
			switch {
			case it.Orientations == instance.Upright && it.W == st.W:
				items = append(items, knapsack1d.Item{Size: it.L})
			case it.Orientations == instance.Turned && it.L == st.W:
				items = append(items, knapsack1d.Item{Size: it.W})
			default:
				return nil
			}
		}
		row := &rowPricer{Search: knapsack1d.New(st.L, items), stock: st, items: g.items[s]}
		row.Halt = g.stop
		all = append(all, row)
	}
	return all
}

func (p *rowPricer) setLimits(demand []int) {
	p.Limit(func(item int) int { return demand[p.items[item].Kind] })
}

func (p *rowPricer) start(values []int64, above int64) {
	p.values, p.above = append(p.values[:0], values...), above
}

func (p *rowPricer) advance(work int64) (left int64, done bool) {
	p.spent = p.Solve(p.values, p.above)
	return work - p.spent, true
}

func (p *rowPricer) best() (root instance.Piece, ok bool) {
	if _, ok := p.Best(); !ok {
		return root, false
	}
	return p.piece(p.Times), true
}

// piece returns the stock cut into a row.
func (p *rowPricer) piece(times func(item int) int) instance.Piece {
	root := instance.Piece{L: p.stock.L, W: p.stock.W, Dir: instance.Crosscut, Kind: instance.Leftover}
	left := p.stock.L
	for i, it := range p.items {
		part := instance.Piece{L: it.L, W: it.W, Kind: it.Kind}
		if it.Orientations == instance.Turned {
			part = instance.Piece{L: it.W, W: it.L, Kind: it.Kind, Turned: true}
		}
		for range times(i) {
			root.Children = append(root.Children, part)
			left -= part.L
		}
	}
	if left > 0 {
		root.Children = append(root.Children, instance.Piece{L: left, W: p.stock.W, Kind: instance.Leftover})
	}
	return instance.Normalize(root)
}

func (p *rowPricer) more() []instance.Piece { return nil }

func (p *rowPricer) effort() int64 { return p.spent }

func (p *rowPricer) upperBound() int64 { return p.Bound() }

func (p *rowPricer) startListing(values []int64, above int64) {
	p.start(values, above)
	p.rows = nil
}

func (p *rowPricer) advanceListing(work int64) (left int64, done bool) {
	var looked int64
	looked, p.ended = p.List(p.values, p.above, maxListing/4, func(times []int) bool {
		p.rows = append(p.rows, slices.Clone(times))
		return len(p.rows) <= maxPatterns
	})
	return work - 4*looked, true
}

func (p *rowPricer) listing() (patterns iter.Seq[listedPattern], ok bool) {
	return func(yield func(listedPattern) bool) {
		for _, times := range p.rows {
			if !yield(listedRow{p, times}) {
				return
			}
		}
	}, p.ended
}

// listedRow is a row of a listing.
type listedRow struct {
	of    *rowPricer
	times []int
}

func (r listedRow) Count(item int) int { return r.times[item] }

func (r listedRow) Piece() instance.Piece {
	return r.of.piece(func(item int) int { return r.times[item] })
}
