package colgen

import (
	"math"
	"slices"

	"sawbill/nest/internal/lowerbound"
	"sawbill/nest/internal/setcover"
)

// pricingRound is one pricing of every stock at the same values.
type pricingRound struct {
	pricers   []pricer // the grids, or bounded pricers
	bounded   bool     // pricers respect demand
	trialDone bool     // it is known whether bounded pricing is slow
	proving   bool     // on the outer grids
	stock     int      // in progress; len(pricers) between rounds
	started   bool     // on that stock
	added     bool     // a new column
}

// dualSmoothing pulls duals towards those of the best bound so far, which keeps them from
// oscillating. Wentges, Int. Trans. Oper. Res. 4, 1997; from memory.
type dualSmoothing struct {
	center []float64 // duals of the best bound; nil before there is one
	best   float64   // that bound
	off    bool      // use the master's own duals
}

// solveMaster solves the master and rounds its duals to integer values.
func (g *Generator) solveMaster() {
	g.addColumns()
	before := g.master.lp.Work()
	rows := int64(len(g.values) + len(g.round.pricers))
	g.master.lp.Solve(int(min(4*(rows+25), maxPivoting/(rows*rows)+1)))
	g.work -= g.master.lp.Work() - before
	if g.masterDone() {
		return
	}
	prices := g.master.lp.Duals()
	for k := range g.values {
		p := prices[k]
		if g.smoothing.center != nil && !g.smoothing.off && !g.round.bounded {
			p = float64(smoothingWeight*g.smoothing.center[k]) + float64((1-smoothingWeight)*p)
		}
		g.values[k] = max(0, int64(math.Round(p*g.master.scale)))
	}
	if g.round.bounded && (g.priceFromPool() || g.priceByFilling()) {
		return // solve the master again with these
	}
	g.startPricing(false)
}

// startPricing starts a round of pricing.
func (g *Generator) startPricing(proving bool) {
	g.round.proving, g.round.stock, g.round.started, g.round.added = proving, 0, false, false
}

// maxPivoting limits the operations of one call of the simplex method. If it stops before the
// optimum, its duals serve as well.
const maxPivoting = 1 << 24

// smoothingWeight is the weight of the smoothing center.
const smoothingWeight = 0.6

// masterDone reports whether the present master can raise the bound no further, and starts the
// next one.
func (g *Generator) masterDone() bool {
	value := g.master.lp.Value()
	switch {
	case g.master.counts == nil && float64(g.bound.Value()) >= value*(1-1e-9):
	case g.master.counts != nil && !g.round.bounded && value < 1:
		g.refine() // these counts are enough for a fractional plan
		return true
	default:
		return false
	}
	g.nextCounts()
	return true
}

// nextCounts starts the share master of the counts at which the bound is attained now.
func (g *Generator) nextCounts() {
	if g.master.counts == nil && g.dives.current == nil {
		g.dives.current = g.newDive()
	}
	if counts := g.bound.Counts(); counts != nil && (g.grids.outer == nil || g.grids.work == g.grids.maxWork || g.small()) {
		g.startMaster(counts)
	} else {
		g.refine()
	}
}

// finishPricing adds the best pattern of the stock just priced. After the last stock it adds
// the inequality, and decides what follows.
func (g *Generator) finishPricing(p pricer) {
	if root, ok := p.best(); ok && g.columns.add(g.round.stock, root) {
		g.round.added = true
	}
	if g.pricingDominates() {
		for _, root := range p.more() {
			g.columns.add(g.round.stock, root)
		}
	}
	g.round.stock++
	g.round.started = false
	if g.round.stock < len(g.round.pricers) {
		return
	}
	if g.endTrial() {
		return
	}
	pricers := g.round.pricers
	if g.round.proving {
		pricers = g.grids.outer
	}
	inequality := lowerbound.Inequality{Coef: make([]int64, len(pricers)), RHS: g.demandValue(), Values: slices.Clone(g.values), Counted: g.demand}
	for s, p := range pricers {
		inequality.Coef[s] = p.upperBound()
	}
	if g.round.bounded {
		g.rememberPrices(inequality)
	}
	proven := g.round.proving || g.grids.outer == nil
	excluded := proven && g.bound.Add(inequality)
	switch {
	case g.master.counts != nil && excluded:
		g.nextCounts()
	case g.round.added && !g.round.proving:
		g.moveCenter(inequality)
		g.smoothing.off = false
		if g.gapClosed() {
			g.proveOnOuterGrids()
		}
	case !g.smoothing.off && g.smoothing.center != nil && !g.round.proving && !g.round.bounded:
		g.smoothing.off = true // the smoothed duals found no column: price at the true ones
	case !proven:
		g.proveOnOuterGrids()
	case g.master.counts == nil:
		g.nextCounts()
	default:
		g.refine()
	}
}

// rememberPrices keeps the values of an inequality for enumeration.
func (g *Generator) rememberPrices(inequality lowerbound.Inequality) {
	if len(g.pastPrices) == maxSeen {
		g.pastPrices = g.pastPrices[1:]
	}
	g.pastPrices = append(g.pastPrices, setcover.Prices{Values: slices.Clone(g.values), Capacity: inequality.Coef})
}

// moveCenter keeps the values of an inequality if it gives the best bound so far.
func (g *Generator) moveCenter(inequality lowerbound.Inequality) {
	if g.master.counts != nil {
		return
	}
	rate := math.Inf(1)
	for s, st := range g.in.Stock {
		if inequality.Coef[s] > 0 && st.Price > 0 {
			rate = min(rate, float64(st.Price)/float64(inequality.Coef[s]))
		}
	}
	if good := float64(inequality.RHS) * rate; good > g.smoothing.best && !math.IsInf(good, 1) {
		g.smoothing.best = good
		g.smoothing.center = g.smoothing.center[:0]
		for _, v := range g.values {
			g.smoothing.center = append(g.smoothing.center, float64(v)/g.master.scale)
		}
	}
}
