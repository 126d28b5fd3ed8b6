package columns

import (
	"math"
	"slices"

	"sawbill/nest/internal/bound"
	"sawbill/nest/internal/whole"
)

// begin solves the programme and turns its prices into whole numbers.
func (g *Generator) begin() {
	g.load()
	before := g.lp.Work()
	rows := int64(len(g.values) + len(g.pricers))
	g.lp.Solve(int(min(4*(rows+25), mostPivoting/(rows*rows)+1)))
	g.work -= g.lp.Work() - before
	if g.settled() {
		return
	}
	prices := g.lp.Prices()
	for k := range g.values {
		p := prices[k]
		if g.center != nil && !g.unsmoothed && !g.strict {
			p = float64(smoothing*g.center[k]) + float64((1-smoothing)*p)
		}
		g.values[k] = max(0, int64(math.Round(p*g.scale)))
	}
	if g.strict && (g.reap() || g.fill()) {
		return // to the programme with these
	}
	g.round(false)
}

// round starts pricing all stock.
func (g *Generator) round(proving bool) {
	g.proving, g.stock, g.started, g.added = proving, 0, false, false
}

// mostPivoting is the greatest number of operations of one visit to the
// simplex; where it stops before the optimum its prices serve all the same.
const mostPivoting = 1 << 24

// smoothing pulls prices towards those of the best cut so far, which keeps
// them from jumping about (Wentges, Int. Trans. Oper. Res. 4, 1997; from
// memory).
const smoothing = 0.6

// settled reports whether there is nothing to learn from further prices of the
// present programme, and turns to the next one.
func (g *Generator) settled() bool {
	value := g.lp.Value()
	switch {
	case g.counts == nil && float64(g.floor.Price()) >= value*(1-1e-9):
	case g.counts != nil && !g.strict && value < 1:
		g.refine() // these counts are enough in fractions
		return true
	default:
		return false
	}
	g.turn()
	return true
}

// turn goes on to the counts that the floor rests on now.
func (g *Generator) turn() {
	if g.counts == nil && g.dive == nil {
		g.dive = g.newDive()
	}
	if counts := g.floor.Counts(); counts != nil && (g.outer == nil || g.spend == g.most || g.small()) {
		g.programme(counts)
	} else {
		g.refine()
	}
}

// finish takes the best pattern of the stock just priced.
func (g *Generator) finish(p pricer) {
	if root, ok := p.pattern(); ok && g.pool.add(g.stock, root) {
		g.added = true
	}
	if g.laborious() {
		for _, root := range p.others() {
			g.pool.add(g.stock, root)
		}
	}
	g.stock++
	g.started = false
	if g.stock < len(g.pricers) {
		return
	}
	if g.judge() {
		return
	}
	pricers := g.pricers
	if g.proving {
		pricers = g.outer
	}
	cut := bound.Cut{Worth: make([]int64, len(pricers)), Need: g.need()}
	for s, p := range pricers {
		cut.Worth[s] = p.worth()
	}
	if g.strict {
		g.remember(cut)
	}
	proven := g.proving || g.outer == nil
	excluded := proven && g.floor.Add(cut)
	switch {
	case g.counts != nil && excluded:
		g.turn()
	case g.added && !g.proving:
		g.recenter(cut)
		g.unsmoothed = false
		if g.near() {
			g.prove()
		}
	case !g.unsmoothed && g.center != nil && !g.proving && !g.strict:
		g.unsmoothed = true // the smoothed prices showed nothing; try the true ones
	case !proven:
		g.prove()
	case g.counts == nil:
		g.turn()
	default:
		g.refine()
	}
}

// remember keeps the prices of a cut for the search for whole plans.
func (g *Generator) remember(c bound.Cut) {
	if len(g.seen) == mostSeen {
		g.seen = g.seen[1:]
	}
	g.seen = append(g.seen, whole.Prices{Values: slices.Clone(g.values), Worth: c.Worth})
}

// recenter remembers the prices of the cut that says most about the price.
func (g *Generator) recenter(c bound.Cut) {
	if g.counts != nil {
		return
	}
	rate := math.Inf(1)
	for s, st := range g.in.Stock {
		if c.Worth[s] > 0 && st.Price > 0 {
			rate = min(rate, float64(st.Price)/float64(c.Worth[s]))
		}
	}
	if good := float64(c.Need) * rate; good > g.best && !math.IsInf(good, 1) {
		g.best = good
		g.center = g.center[:0]
		for _, v := range g.values {
			g.center = append(g.center, float64(v)/g.scale)
		}
	}
}
