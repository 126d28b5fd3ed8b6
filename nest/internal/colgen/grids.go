package colgen

import (
	"math"

	"sawbill/nest/internal/halt"
	"sawbill/nest/internal/pricing"
)

// Comparisons of one pricing on all grids. Exact grids may take exactWork, or smallWork if
// bounded pricing follows soon. Coarse grids take firstWork at the first level, so that many
// pricings are made soon, and finer times as much at each next level. A level ends when its
// relative gap is nearness; the next level halves that.
const (
	exactWork = 1 << 25
	smallWork = 1 << 23
	firstWork = 1 << 20
	finer     = 8
	nearness  = 1.0 / 64
)

// maxDiving is the work of the finest grids on which dives price. More dives gain more than
// finer grids do.
const maxDiving = 1 << 26

// finerOuter is how much more work outer grids may take, since they are used less often.
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

// layGrids makes the grids of the first level, and reports whether that is possible.
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
		if g.coarseGrids() || g.grids.work == g.grids.maxWork || g.stop.On() {
			return g.grids.patterns != nil
		}
	}
}

func (g *Generator) rules(s int) pricing.Rules {
	return pricing.Rules{Stages: g.in.Stages, FirstCut: g.in.Stock[s].FirstCut}
}

// exactGrids returns exact grids that take at most work; nil if there are none.
func (g *Generator) exactGrids(work int64) (grids []pricer) {
	for s, st := range g.in.Stock {
		grid := pricing.NewGrid(st.L, st.W, g.items[s], g.rules(s), work, g.stop)
		if grid == nil {
			return nil
		}
		work -= grid.Work()
		grids = append(grids, gridPricer{grid})
	}
	return grids
}

// coarseGrids makes inner and outer grids, and reports whether there are any.
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

func (g *Generator) divideWork(lay func(l, w int64, items []pricing.Item, rules pricing.Rules, work int64, stop halt.Signal) *pricing.Grid, work int64) (grids []pricer) {
	for s, st := range g.in.Stock {
		grid := lay(st.L, st.W, g.items[s], g.rules(s), work/int64(len(g.in.Stock)-s), g.stop)
		if grid == nil {
			return nil
		}
		work = max(0, work-grid.Work())
		grids = append(grids, gridPricer{grid})
	}
	return grids
}

// gapClosed reports whether the inner grids have priced the cost master closely enough for
// their coarseness.
func (g *Generator) gapClosed() bool {
	return g.grids.outer != nil && g.master.counts == nil && g.master.lp.Value()-g.smoothing.best < g.smoothing.best*g.grids.gapTolerance
}

// proveOnOuterGrids prices the best values so far on the outer grids.
func (g *Generator) proveOnOuterGrids() {
	for k, v := range g.smoothing.center {
		g.values[k] = max(0, int64(math.Round(v*g.master.scale)))
	}
	g.startPricing(true)
}

// small reports whether parts are so few that bounded pricing is better and sooner than finer
// grids.
func (g *Generator) small() bool { return g.in.Parts() <= fewParts }

const fewParts = 100

// refine starts the masters again with finer pricers, or ends them if there are none.
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
		// The cost master takes many bounded pricings and excludes no more than these counts.
		g.round.pricers, g.grids.outer, g.round.bounded = pricers, nil, true
		g.startMaster(g.bound.Counts())
		return
	}
	g.round.pricers = g.grids.patterns
	g.startMaster(nil)
}
