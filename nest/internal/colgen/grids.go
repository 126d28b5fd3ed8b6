package colgen

import (
	"math"

	"sawbill/nest/internal/pricing"
)

// The comparisons that one pricing may take: exactWork where the grids are
// exact at that, smallWork where patterns that count follow soon. Else it is
// firstWork, so that many pricings are made soon, and at each level finer times as
// much as before; the level ends where its best cut is nearness of the price below
// the programme's, and half of that at the next.
const (
	exactWork = 1 << 25
	smallWork = 1 << 23
	firstWork = 1 << 20
	finer     = 8
	nearness  = 1.0 / 64
)

// maxDiving is the work of the finest grids that dives price on: what more would
// gain is less than what other dives do.
const maxDiving = 1 << 26

// finerOuter is how much more work goes into a bound than into a pattern: fewer
// bounds are needed.
const finerOuter = 8

// gridLevel is the grids on which columns are priced, as fine as the generator has made
// them so far.
type gridLevel struct {
	patterns []pricer // their patterns fit; per stock
	outer    []pricer // whose values are never too low; nil if patterns are exact
	dives    []pricer // on which dives price
	// work is the comparisons that one pricing on all grids may take, maxWork the limit
	// for the finest ones.
	work, maxWork int64
	// gapTolerance ends a level: the relative gap between its master and its best bound.
	gapTolerance float64
}

// layGrids makes the grids of the first level and reports whether that can be done.
func (g *Generator) layGrids() bool {
	if g.grids.patterns = g.rowPricers(); g.grids.patterns != nil {
		g.grids.dives = g.grids.patterns
		return true
	}
	g.grids.work = min(exactWork, g.grids.maxWork)
	if g.small() {
		g.grids.work = min(smallWork, g.grids.maxWork)
	}
	if g.grids.patterns = g.exactGrids(g.grids.work); g.grids.patterns != nil {
		g.grids.dives = g.grids.patterns
		return true
	}
	g.grids.gapTolerance = nearness
	for g.grids.work = min(firstWork, g.grids.maxWork); ; g.grids.work = min(finer*g.grids.work, g.grids.maxWork) {
		if g.coarseGrids() || g.grids.work == g.grids.maxWork {
			return g.grids.patterns != nil
		}
	}
}

func (g *Generator) rules(s int) pricing.Rules {
	return pricing.Rules{Stages: g.in.Stages, FirstCut: g.in.Stock[s].FirstCut}
}

// exactGrids lays out exact grids that take no more than work; nil if there are none.
func (g *Generator) exactGrids(work int64) (grids []pricer) {
	for s, st := range g.in.Stock {
		grid := pricing.NewGrid(st.L, st.W, g.items[s], g.rules(s), work)
		if grid == nil {
			return nil
		}
		work -= grid.Work()
		grids = append(grids, gridPricer{grid})
	}
	return grids
}

// coarseGrids lays out inner and outer grids, the work shared out among the stock.
// It reports whether there are any.
func (g *Generator) coarseGrids() bool {
	inner := g.divideWork(pricing.NewInner, g.grids.work)
	outer := g.divideWork(pricing.NewOuter, min(finerOuter*g.grids.work, g.grids.maxWork))
	if inner == nil || outer == nil {
		return false
	}
	g.grids.patterns, g.grids.outer = inner, outer
	if g.grids.dives == nil || g.grids.work <= maxDiving {
		g.grids.dives = inner
	}
	return true
}

func (g *Generator) divideWork(lay func(l, w int64, items []pricing.Item, rules pricing.Rules, work int64) *pricing.Grid, work int64) (grids []pricer) {
	for s, st := range g.in.Stock {
		grid := lay(st.L, st.W, g.items[s], g.rules(s), work/int64(len(g.in.Stock)-s))
		if grid == nil {
			return nil
		}
		work = max(0, work-grid.Work())
		grids = append(grids, gridPricer{grid})
	}
	return grids
}

// gapClosed reports whether inner grids have little more to say about the cheapest
// fractional plan, in proportion to how coarse they are.
func (g *Generator) gapClosed() bool {
	return g.grids.outer != nil && g.master.counts == nil && g.master.lp.Value()-g.smoothing.best < g.smoothing.best*g.grids.gapTolerance
}

// proveOnOuterGrids tries the best prices, so far as the inner grids tell, on the outer
// ones.
func (g *Generator) proveOnOuterGrids() {
	for k, v := range g.smoothing.center {
		g.values[k] = max(0, int64(math.Round(v*g.master.scale)))
	}
	g.startPricing(true)
}

// small reports whether there are so few parts that patterns that count them say
// more than finer grids, and sooner.
func (g *Generator) small() bool {
	parts := 0
	for _, kd := range g.in.Kinds {
		parts += kd.Demand
	}
	return parts <= fewParts
}

const fewParts = 100

// refine goes through the programmes once more with finer pricers; where there
// are none, all is done.
func (g *Generator) refine() {
	switch {
	case g.round.bounded:
		if counts := g.bound.Counts(); counts != nil {
			g.enumeration = g.newEnumeration(counts)
		}
		g.done = g.enumeration == nil
		return
	case g.grids.outer != nil && g.grids.work < g.grids.maxWork && !g.small():
		g.grids.work = min(finer*g.grids.work, g.grids.maxWork)
		g.grids.gapTolerance /= 2
		if grids := g.exactGrids(g.grids.work); grids != nil {
			g.grids.patterns, g.grids.outer = grids, nil
		} else {
			g.coarseGrids()
		}
	default:
		pricers := g.boundedPricers()
		if pricers == nil {
			g.done = true
			return
		}
		// The cheapest fractional plan takes many such pricings and says no more
		// than that these counts are excluded.
		g.round.pricers, g.grids.outer, g.round.bounded = pricers, nil, true
		g.startMaster(g.bound.Counts())
		return
	}
	g.round.pricers = g.grids.patterns
	g.startMaster(nil)
}
