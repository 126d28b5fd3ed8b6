package colgen

import (
	"cmp"
	"slices"

	"sawbill/nest/internal/instance"
	"sawbill/nest/internal/setcover"
)

// enumeration decides whether there is an integer plan within counts that are enough for a
// fractional one. For each stock it lists every pattern that can be part of such a plan. By
// reduced costs, a plan's patterns lose at most the slack. Set covering then decides.
//
// It decides jobs of some fifty parts on five or six sheets. If a sheet holds twenty parts
// there are too many patterns, and it decides nothing.
type enumeration struct {
	g          *Generator
	pieces     []int // per stock
	prices     []setcover.Prices
	thresholds []int64 // per stock: its patterns are worth more than this
	pricedBy   []int   // per stock: index of the prices for the threshold; -1 if they exclude nothing
	stock      int     // listed now
	started    bool
	spent      int64
	patterns   []setcover.Pattern
	found      []listedPattern  // per pattern
	search     *setcover.Search // nil until all stock is listed
}

// Limits of an enumeration. Beyond them it decides nothing.
const (
	maxParts         = 1 << 10
	maxPatterns      = 1 << 16
	maxListing       = 1 << 30 // comparisons, for each stock
	maxDeciding      = 1 << 36
	maxListingPrices = 8  // of which the best is taken for each stock
	maxSeen          = 64 // from which these are chosen
	maxSearchPrices  = 2  // in the set covering, whose relaxations soon exclude more
)

// newEnumeration starts to decide about counts; nil if the job is too large or there is less
// stock. Free stock is limited only by what there is, since more of it costs nothing.
func (g *Generator) newEnumeration(counts []int) *enumeration {
	e := &enumeration{g: g, pieces: slices.Clone(counts)}
	parts := g.in.Parts()
	if parts > maxParts {
		return nil
	}
	for s, st := range g.in.Stock {
		if counts[s] > st.Limit {
			return nil // no plan has them
		}
		if st.Price == 0 {
			e.pieces[s] = min(st.Limit, parts)
		}
	}
	e.choosePrices()
	for s := range e.pieces {
		above, by := e.threshold(s)
		e.thresholds = append(e.thresholds, above)
		e.pricedBy = append(e.pricedBy, by)
	}
	return e
}

// choosePrices takes the prices that leave the counts the least relative slack, from those of
// past pricing and the areas.
func (e *enumeration) choosePrices() {
	tightness := func(p *setcover.Prices) float64 {
		return float64(p.Slack(e.g.demand, e.pieces)) / float64(max(p.Slack(nil, e.pieces), 1))
	}
	all := append(slices.Clone(e.g.pastPrices), setcover.AreaPrices(e.g.in))
	slices.SortStableFunc(all, func(a, b setcover.Prices) int {
		return cmp.Compare(tightness(&a), tightness(&b))
	})
	e.prices = all[:min(len(all), maxListingPrices)]
}

// threshold returns the best lower limit on the value of every pattern of stock s in a plan,
// and the prices that give it.
func (e *enumeration) threshold(s int) (above int64, by int) {
	by, best := -1, 0.0
	for i := range e.prices {
		p := &e.prices[i]
		least := p.Capacity[s] - p.Slack(e.g.demand, e.pieces)
		if least <= 0 {
			continue
		}
		if share := float64(least) / float64(p.Capacity[s]); share > best {
			best, above, by = share, least-1, i
		}
	}
	return above, by
}

// advance goes on for about work comparisons.
func (e *enumeration) advance(work int64) (left int64, done bool) {
	for work > 0 && e.stock < len(e.pieces) && !e.g.stop.On() {
		var ok bool
		if work, ok = e.enumerate(work); !ok {
			return work, true
		}
	}
	if e.stock < len(e.pieces) || work <= 0 {
		return work, false
	}
	if e.search == nil {
		e.search = setcover.New(e.g.demand, e.pieces, e.patterns, e.prices[:min(len(e.prices), maxSearchPrices)])
		e.search.Halt = e.g.stop
		e.spent = 0
	}
	left, done = e.search.Advance(work)
	e.spent += work - left
	return left, done || e.spent > maxDeciding
}

// enumerate goes on listing the patterns of a stock; not ok if there are too many.
func (e *enumeration) enumerate(work int64) (left int64, ok bool) {
	s := e.stock
	if e.pieces[s] == 0 {
		e.stock++
		return work, true
	}
	k := e.g.round.pricers[s].(listingPricer)
	items := e.g.items[s]
	if !e.started {
		values := make([]int64, len(items))
		for n, it := range items {
			values[n] = 1
			if e.pricedBy[s] >= 0 {
				values[n] = e.prices[e.pricedBy[s]].Values[it.Kind]
			}
		}
		k.setLimits(e.g.demand)
		k.startListing(values, e.thresholds[s])
		e.started, e.spent = true, 0
	}
	left, done := k.advanceListing(work)
	e.spent += work - left
	if !done {
		return left, e.spent < maxListing
	}
	patterns, ok := k.listing()
	if !ok {
		return left, false
	}
	for f := range patterns {
		p := setcover.Pattern{Stock: s}
		for n, it := range items {
			if times := f.Count(n); times > 0 {
				p.Counts = append(p.Counts, setcover.Count{Kind: it.Kind, Times: times})
			}
		}
		e.patterns = append(e.patterns, p)
		e.found = append(e.found, f)
		left -= int64(4 * len(items))
		if len(e.patterns) > maxPatterns {
			return left, false
		}
	}
	e.stock++
	e.started = false
	return left, true
}

// infeasible reports whether there is no plan.
func (e *enumeration) infeasible() bool { return e.search != nil && e.search.Infeasible() }

// plan returns the plan found, if any.
func (e *enumeration) plan() (plan *instance.Plan, ok bool) {
	if e.search == nil {
		return nil, false
	}
	chosen, ok := e.search.Solution()
	if !ok {
		return nil, false
	}
	in := e.g.in
	plan = &instance.Plan{Missing: make([]int, len(in.Kinds))}
	placed := make([]int, len(in.Kinds))
	for _, n := range chosen {
		in.AddLayout(plan, e.patterns[n].Stock, e.found[n].Piece(), placed)
	}
	return plan, true
}

// decideCounts goes on with the enumeration until no more than stop of the work is left.
func (g *Generator) decideCounts(stop int64) {
	left, done := g.enumeration.advance(g.work - stop)
	g.work = left + stop
	if !done {
		return
	}
	e := g.enumeration
	g.enumeration = nil
	if plan, ok := e.plan(); ok {
		g.Put(plan)
		g.done = true
		return
	}
	if !e.infeasible() {
		g.done = true
		return
	}
	limits := e.pieces
	for s, st := range g.in.Stock {
		if st.Price == 0 {
			limits[s] = st.Limit
		}
	}
	g.bound.Exclude(limits)
	if counts := g.bound.Counts(); counts != nil {
		g.startMaster(counts)
	} else {
		g.done = true
	}
}
