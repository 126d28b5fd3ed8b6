package colgen

import (
	"math"
	"slices"

	"sawbill/nest/internal/lowerbound"
	"sawbill/nest/internal/setcover"
)

// solveMaster solves the programme and turns its prices into whole numbers.
func (g *Generator) solveMaster() {
	g.addColumns()
	before := g.lp.Work()
	rows := int64(len(g.values) + len(g.pricers))
	g.lp.Solve(int(min(4*(rows+25), maxPivoting/(rows*rows)+1)))
	g.work -= g.lp.Work() - before
	if g.masterDone() {
		return
	}
	prices := g.lp.Duals()
	for k := range g.values {
		p := prices[k]
		if g.stabilityCenter != nil && !g.unsmoothed && !g.bounded {
			p = float64(smoothing*g.stabilityCenter[k]) + float64((1-smoothing)*p)
		}
		g.values[k] = max(0, int64(math.Round(p*g.scale)))
	}
	if g.bounded && (g.priceFromPool() || g.priceByFilling()) {
		return // to the programme with these
	}
	g.startPricing(false)
}

// startPricing starts pricing all stock.
func (g *Generator) startPricing(proving bool) {
	g.proving, g.stock, g.started, g.added = proving, 0, false, false
}

// maxPivoting is the greatest number of operations of one visit to the
// simplex; where it stops before the optimum its prices serve all the same.
const maxPivoting = 1 << 24

// smoothing pulls prices towards those of the best cut so far, which keeps
// them from jumping about (Wentges, Int. Trans. Oper. Res. 4, 1997; from
// memory).
const smoothing = 0.6

// masterDone reports whether there is nothing to learn from further prices of the
// present programme, and turns to the next one.
func (g *Generator) masterDone() bool {
	value := g.lp.Value()
	switch {
	case g.counts == nil && float64(g.bound.Value()) >= value*(1-1e-9):
	case g.counts != nil && !g.bounded && value < 1:
		g.refine() // these counts are enough in fractions
		return true
	default:
		return false
	}
	g.nextCounts()
	return true
}

// nextCounts goes on to the counts that the floor rests on now.
func (g *Generator) nextCounts() {
	if g.counts == nil && g.dive == nil {
		g.dive = g.newDive()
	}
	if counts := g.bound.Counts(); counts != nil && (g.outerGrids == nil || g.gridWork == g.maxGridWork || g.small()) {
		g.startMaster(counts)
	} else {
		g.refine()
	}
}

// finishPricing takes the best pattern of the stock just priced.
func (g *Generator) finishPricing(p pricer) {
	if root, ok := p.best(); ok && g.columns.add(g.stock, root) {
		g.added = true
	}
	if g.pricingDominates() {
		for _, root := range p.more() {
			g.columns.add(g.stock, root)
		}
	}
	g.stock++
	g.started = false
	if g.stock < len(g.pricers) {
		return
	}
	if g.endTrial() {
		return
	}
	pricers := g.pricers
	if g.proving {
		pricers = g.outerGrids
	}
	cut := lowerbound.Inequality{Coef: make([]int64, len(pricers)), RHS: g.demandValue()}
	for s, p := range pricers {
		cut.Coef[s] = p.upperBound()
	}
	if g.bounded {
		g.rememberPrices(cut)
	}
	proven := g.proving || g.outerGrids == nil
	excluded := proven && g.bound.Add(cut)
	switch {
	case g.counts != nil && excluded:
		g.nextCounts()
	case g.added && !g.proving:
		g.moveCenter(cut)
		g.unsmoothed = false
		if g.gapClosed() {
			g.proveOnOuterGrids()
		}
	case !g.unsmoothed && g.stabilityCenter != nil && !g.proving && !g.bounded:
		g.unsmoothed = true // the smoothed prices showed nothing; try the true ones
	case !proven:
		g.proveOnOuterGrids()
	case g.counts == nil:
		g.nextCounts()
	default:
		g.refine()
	}
}

// rememberPrices keeps the prices of a cut for the search for whole plans.
func (g *Generator) rememberPrices(c lowerbound.Inequality) {
	if len(g.pastPrices) == maxSeen {
		g.pastPrices = g.pastPrices[1:]
	}
	g.pastPrices = append(g.pastPrices, setcover.Prices{Values: slices.Clone(g.values), Capacity: c.Coef})
}

// moveCenter remembers the prices of the cut that says most about the price.
func (g *Generator) moveCenter(c lowerbound.Inequality) {
	if g.counts != nil {
		return
	}
	rate := math.Inf(1)
	for s, st := range g.in.Stock {
		if c.Coef[s] > 0 && st.Price > 0 {
			rate = min(rate, float64(st.Price)/float64(c.Coef[s]))
		}
	}
	if good := float64(c.RHS) * rate; good > g.centerValue && !math.IsInf(good, 1) {
		g.centerValue = good
		g.stabilityCenter = g.stabilityCenter[:0]
		for _, v := range g.values {
			g.stabilityCenter = append(g.stabilityCenter, float64(v)/g.scale)
		}
	}
}
