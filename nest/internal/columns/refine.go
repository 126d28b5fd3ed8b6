package columns

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

// mostDiving is the work of the finest grids that dives price on: what more would
// gain is less than what other dives do.
const mostDiving = 1 << 26

// finerOuter is how much more work goes into a bound than into a pattern: fewer
// bounds are needed.
const finerOuter = 8

// lay makes the grids of the first level and reports whether that can be done.
func (g *Generator) lay() bool {
	if g.grids = g.lines(); g.grids != nil {
		g.diving = g.grids
		return true
	}
	g.spend = min(exactWork, g.most)
	if g.small() {
		g.spend = min(smallWork, g.most)
	}
	if g.grids = g.fine(g.spend); g.grids != nil {
		g.diving = g.grids
		return true
	}
	g.nearness = nearness
	for g.spend = min(firstWork, g.most); ; g.spend = min(finer*g.spend, g.most) {
		if g.coarse() || g.spend == g.most {
			return g.grids != nil
		}
	}
}

func (g *Generator) rules(s int) pricing.Rules {
	return pricing.Rules{Stages: g.in.Stages, First: g.in.Stock[s].First}
}

// fine lays out exact grids that take no more than work; nil if there are none.
func (g *Generator) fine(work int64) (grids []pricer) {
	for s, st := range g.in.Stock {
		grid := pricing.NewGrid(st.L, st.W, g.items[s], g.rules(s), work)
		if grid == nil {
			return nil
		}
		work -= grid.Work()
		grids = append(grids, loose{grid})
	}
	return grids
}

// coarse lays out inner and outer grids, the work shared out among the stock.
// It reports whether there are any.
func (g *Generator) coarse() bool {
	inner := g.shareOut(pricing.NewInner, g.spend)
	outer := g.shareOut(pricing.NewOuter, min(finerOuter*g.spend, g.most))
	if inner == nil || outer == nil {
		return false
	}
	g.grids, g.outer = inner, outer
	if g.diving == nil || g.spend <= mostDiving {
		g.diving = inner
	}
	return true
}

func (g *Generator) shareOut(lay func(l, w int64, items []pricing.Item, rules pricing.Rules, work int64) *pricing.Grid, work int64) (grids []pricer) {
	for s, st := range g.in.Stock {
		grid := lay(st.L, st.W, g.items[s], g.rules(s), work/int64(len(g.in.Stock)-s))
		if grid == nil {
			return nil
		}
		work = max(0, work-grid.Work())
		grids = append(grids, loose{grid})
	}
	return grids
}

// near reports whether inner grids have little more to say about the cheapest
// fractional plan, in proportion to how coarse they are.
func (g *Generator) near() bool {
	return g.outer != nil && g.counts == nil && g.lp.Value()-g.best < g.best*g.nearness
}

// prove tries the best prices, so far as the inner grids tell, on the outer
// ones.
func (g *Generator) prove() {
	for k, v := range g.center {
		g.values[k] = max(0, int64(math.Round(v*g.scale)))
	}
	g.round(true)
}

// small reports whether there are so few parts that patterns that count them say
// more than finer grids, and sooner.
func (g *Generator) small() bool {
	parts := 0
	for _, kd := range g.in.Kinds {
		parts += kd.Count
	}
	return parts <= fewParts
}

const fewParts = 100

// refine goes through the programmes once more with finer pricers; where there
// are none, all is done.
func (g *Generator) refine() {
	switch {
	case g.strict:
		if counts := g.floor.Counts(); counts != nil {
			g.exact = g.newExact(counts)
		}
		g.done = g.exact == nil
		return
	case g.outer != nil && g.spend < g.most && !g.small():
		g.spend = min(finer*g.spend, g.most)
		g.nearness /= 2
		if grids := g.fine(g.spend); grids != nil {
			g.grids, g.outer = grids, nil
		} else {
			g.coarse()
		}
	default:
		pricers := g.tighten()
		if pricers == nil {
			g.done = true
			return
		}
		// The cheapest fractional plan takes many such pricings and says no more
		// than that these counts are excluded.
		g.pricers, g.outer, g.strict = pricers, nil, true
		g.programme(g.floor.Counts())
		return
	}
	g.pricers = g.grids
	g.programme(nil)
}
