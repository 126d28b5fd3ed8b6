package columns

import (
	"cmp"
	"slices"

	"sawbill/nest/internal/instance"
	"sawbill/nest/internal/whole"
)

// exact decides whether there is a whole plan within counts that are enough in
// fractions. For each stock it lists every pattern that can be part of one, by
// the prices that rule out most, and then searches for a cover.
type exact struct {
	g        *Generator
	wanted   []int // per kind
	pieces   []int // per stock
	prices   []whole.Prices
	above    []int64 // per stock: patterns are worth more than this
	by       []int   // per stock: at these prices; -1 where nothing is ruled out
	stock    int     // patterns are listed of
	started  bool
	spent    int64
	patterns []whole.Pattern
	found    []listed      // of each pattern
	search   *whole.Search // once all are listed
}

// Limits of what is tried. Beyond them nothing is decided.
const (
	mostParts    = 1 << 10
	mostPatterns = 1 << 16
	mostListing  = 1 << 30 // comparisons, for each stock
	mostDeciding = 1 << 36
	mostPrices   = 8  // to rule patterns out by
	mostSeen     = 64 // to choose them from
	sifting      = 2  // of them by the search, whose programmes soon rule out more
)

// newExact sets out to decide about counts; nil where the job is too large or
// there is not as much stock.
// Stock that costs nothing may be used as far as there is any: counts with more
// of it cost the same.
func (g *Generator) newExact(counts []int) *exact {
	e := &exact{g: g, pieces: slices.Clone(counts)}
	parts := 0
	for _, kd := range g.in.Kinds {
		e.wanted = append(e.wanted, kd.Count)
		parts += kd.Count
	}
	if parts > mostParts {
		return nil
	}
	for s, st := range g.in.Stock {
		if counts[s] > st.Limit {
			return nil // there is too little for any plan
		}
		if st.Price == 0 {
			e.pieces[s] = min(st.Limit, parts)
		}
	}
	e.choosePrices()
	for s := range e.pieces {
		above, by := e.threshold(s)
		e.above = append(e.above, above)
		e.by = append(e.by, by)
	}
	return e
}

// choosePrices takes the cuts that leave the pieces the least slack in
// proportion to their worth, areas among them.
func (e *exact) choosePrices() {
	tightness := func(p *whole.Prices) float64 {
		return float64(p.Slack(e.wanted, e.pieces)) / float64(max(p.Slack(nil, e.pieces), 1))
	}
	all := append(slices.Clone(e.g.seen), whole.Areas(e.g.in))
	slices.SortStableFunc(all, func(a, b whole.Prices) int {
		return cmp.Compare(tightness(&a), tightness(&b))
	})
	e.prices = all[:min(len(all), mostPrices)]
}

// threshold is what every pattern of stock s in a plan is worth more than, by
// the prices at which that says most.
func (e *exact) threshold(s int) (above int64, by int) {
	by, best := -1, 0.0
	for i := range e.prices {
		p := &e.prices[i]
		least := p.Worth[s] - p.Slack(e.wanted, e.pieces)
		if least <= 0 {
			continue
		}
		if share := float64(least) / float64(p.Worth[s]); share > best {
			best, above, by = share, least-1, i
		}
	}
	return above, by
}

// advance carries on for about work comparisons.
func (e *exact) advance(work int64) (left int64, done bool) {
	for work > 0 && e.stock < len(e.pieces) {
		var ok bool
		if work, ok = e.list(work); !ok {
			return work, true
		}
	}
	if e.stock < len(e.pieces) || work <= 0 {
		return work, false
	}
	if e.search == nil {
		e.search = whole.New(e.wanted, e.pieces, e.patterns, e.prices[:min(len(e.prices), sifting)])
		e.spent = 0
	}
	left, done = e.search.Advance(work)
	e.spent += work - left
	return left, done || e.spent > mostDeciding
}

// list goes on listing the patterns of a stock; not ok where there are too
// many.
func (e *exact) list(work int64) (left int64, ok bool) {
	s := e.stock
	if e.pieces[s] == 0 {
		e.stock++
		return work, true
	}
	k := e.g.pricers[s].(counter)
	items := e.g.items[s]
	if !e.started {
		values := make([]int64, len(items))
		for n, it := range items {
			values[n] = 1
			if e.by[s] >= 0 {
				values[n] = e.prices[e.by[s]].Values[it.Kind]
			}
		}
		k.limit(e.g.wanted)
		k.startAll(values, e.above[s])
		e.started, e.spent = true, 0
	}
	left, done := k.advanceAll(work)
	e.spent += work - left
	if !done {
		return left, e.spent < mostListing
	}
	patterns, ok := k.all()
	if !ok {
		return left, false
	}
	for f := range patterns {
		p := whole.Pattern{Stock: s}
		for n, it := range items {
			if times := f.Count(n); times > 0 {
				p.Counts = append(p.Counts, whole.Count{Kind: it.Kind, Times: times})
			}
		}
		e.patterns = append(e.patterns, p)
		e.found = append(e.found, f)
		left -= int64(4 * len(items))
		if len(e.patterns) > mostPatterns {
			return left, false
		}
	}
	e.stock++
	e.started = false
	return left, true
}

// excluded reports whether there is no plan.
func (e *exact) excluded() bool { return e.search != nil && e.search.Impossible() }

// plan is the one found, if any.
func (e *exact) plan() (plan *instance.Plan, ok bool) {
	if e.search == nil {
		return nil, false
	}
	chosen, ok := e.search.Found()
	if !ok {
		return nil, false
	}
	in := e.g.in
	plan = &instance.Plan{Missing: make([]int, len(in.Kinds))}
	cut := make([]int, len(in.Kinds))
	for _, n := range chosen {
		s := e.patterns[n].Stock
		root := instance.Compact(in.Cap(e.found[n].Piece(), cut))
		plan.Layouts = append(plan.Layouts, instance.Layout{Stock: s, Root: root})
		plan.Cost = plan.Cost.Plus(in.CostOf(s), 1)
	}
	return plan, true
}

// decide goes on deciding about the counts that the floor rests on, until no
// more than stop is left of the work.
func (g *Generator) decide(stop int64) {
	left, done := g.exact.advance(g.work - stop)
	g.work = left + stop
	if !done {
		return
	}
	e := g.exact
	g.exact = nil
	if plan, ok := e.plan(); ok {
		g.plans = append(g.plans, plan)
		g.done = true
		return
	}
	if !e.excluded() {
		g.done = true
		return
	}
	limits := e.pieces
	for s, st := range g.in.Stock {
		if st.Price == 0 {
			limits[s] = st.Limit
		}
	}
	g.floor.Exclude(limits)
	if counts := g.floor.Counts(); counts != nil {
		g.programme(counts)
	} else {
		g.done = true
	}
}
