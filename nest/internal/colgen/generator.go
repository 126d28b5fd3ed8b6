// Package colgen proves lower bounds by column generation, and makes the patterns that good
// plans consist of. Gilmore and Gomory, Oper. Res. 9, 1961, and 13, 1965; from memory.
package colgen

import (
	"math/rand/v2"

	"sawbill/nest/internal/halt"
	"sawbill/nest/internal/instance"
	"sawbill/nest/internal/lowerbound"
	"sawbill/nest/internal/pool"
	"sawbill/nest/internal/pricing"
	"sawbill/nest/internal/search"
	"sawbill/nest/internal/setcover"
)

// Generator raises a [lowerbound.Bound]. It works in small portions, so that it shares a
// processor with other methods and still takes the same course on every machine.
//
// Let v be any values of the kinds, and V(s) the value of the best pattern of stock s. Every
// plan meets the demand, so this inequality is valid (a [lowerbound.Inequality]):
//
//	sum over s of V(s) times the pieces of s >= sum over k of v(k) times the demand of k
//
// Two masters give good values. The cost master is the cheapest fractional plan. The share
// master follows, for the counts at which the bound is attained. It is the smallest share of
// them that is enough for a fractional plan. If that share is at most 1, no inequality of this
// kind raises the bound.
//
// The masters run at up to three levels of pricing:
//
//   - If exact grids take too long, coarse inner grids give patterns. When these find none,
//     outer grids at the same values give the valid inequality. Finer grids follow.
//   - [pricing.Grid] respects the stages, if they are few, and the first cut, but not demand.
//     It need not check the narrowest rip. A part is at least as wide, or as wide as the stock,
//     and so is every strip that holds one.
//   - Bounded pricing respects demand as well; see boundedPricer. The pool and fillers are
//     priced before; see priceFromPool.
//
// If counts are still enough for a fractional plan, an enumeration of their patterns decides:
// it finds a plan, or excludes the counts.
type Generator struct {
	instance.Queue // of plans by dives and enumeration

	in      *instance.Instance
	bound   *lowerbound.Bound
	pool    *pool.Pool // patterns of other methods; nil if there is none
	seed    uint64
	stop    halt.Signal
	demand  []int            // per kind
	items   [][]pricing.Item // per stock
	fillers []*search.Filler // per stock; nil before the first use
	columns *columnSet

	grids     gridLevel
	master    restrictedMaster
	values    []int64 // the duals as integers, per kind
	smoothing dualSmoothing
	round     pricingRound

	pastPrices  []setcover.Prices // at which bounded pricing ran, the latest last
	enumeration *enumeration      // nil unless it decides about counts

	dives diving

	work int64 // the rest of the present portion
	done bool  // the bound rises no further
}

// priceScale is about the integer value of the best pattern.
const priceScale = 1 << 36

// New returns a generator, or nil if pricing on even coarse grids takes more than maxWork
// comparisons each time. The pool, patterns, may be nil, and must not change while the
// generator works. Once stop is on, New returns nil and Work returns soon.
func New(in *instance.Instance, bound *lowerbound.Bound, maxWork int64, seed uint64, patterns *pool.Pool, stop halt.Signal) *Generator {
	g := &Generator{
		in: in, demand: in.Demands(), bound: bound, pool: patterns, seed: seed, stop: stop, columns: newColumnSet(in), values: make([]int64, len(in.Kinds)),
		grids: gridLevel{maxWork: maxWork}, dives: diving{rng: rand.NewPCG(seed, roundingStream)},
	}
	for s := range in.Stock {
		var items []pricing.Item
		for k, kd := range in.Kinds {
			if kd.Orientations[s] != 0 {
				items = append(items, pricing.Item{L: kd.L, W: kd.W, Orientations: kd.Orientations[s], Kind: k})
			}
		}
		g.items = append(g.items, items)
	}
	if !g.layGrids() {
		return nil
	}
	g.round.pricers = g.grids.patterns
	g.startMaster(nil)
	return g
}

// UsesBoundedPricing reports whether grids find nothing more.
func (g *Generator) UsesBoundedPricing() bool { return g.round.bounded || g.done }

// DivesWithinCounts reports whether dives stay within the counts at which the bound is
// attained. They then find more plans than walks do.
func (g *Generator) DivesWithinCounts() bool {
	return g.master.counts != nil && g.small() && g.anySlowPricing()
}

// AddPlan makes columns of the layouts of a plan.
func (g *Generator) AddPlan(p *instance.Plan) {
	for _, l := range p.Layouts {
		g.columns.add(l.Stock, l.Root)
	}
}

// roundingStream separates the random numbers of dives from others.
const roundingStream = 1 << 32

// NewPatterns calls f with every feasible pattern made since the last call.
func (g *Generator) NewPatterns(f func(stock int, root instance.Piece)) {
	for ; g.columns.reported < len(g.columns.patterns); g.columns.reported++ {
		if p := &g.columns.patterns[g.columns.reported]; p.Feasible {
			f(p.Stock, p.Root)
		}
	}
}

// Work goes on for about so many comparisons, with the bound and with dives. There is one dive
// after each master while both price on the same grids; then they share the work equally.
func (g *Generator) Work(work int64) {
	g.work += work
	for g.work > 0 && !g.stop.On() {
		budget := g.work
		if g.diveNext() {
			g.work = g.dives.current.advance(min(g.work, portion)) + max(0, g.work-portion)
			g.dives.work += budget - g.work
			if g.dives.current.done {
				g.Put(g.dives.current.partial.plan)
				g.dives.support = g.dives.current.choice.firstSupport
				g.dives.current = nil
				if g.done && !g.DivesWithinCounts() {
					break // one at a time: the search completes each, which takes long in large jobs
				}
			}
			continue
		}
		g.improveBound(max(0, g.work-portion))
		g.dives.boundWork += budget - g.work
	}
	g.work = min(g.work, 0) // the next call works that much less
}

// portion is the work after which dive and bound take turns.
const portion = 1 << 20

// diveNext reports whether it is a dive's turn, and starts one if there is none.
func (g *Generator) diveNext() bool {
	if g.separatePricers() && !g.done && g.dives.work > g.dives.boundWork {
		return false
	}
	if g.dives.current == nil && (g.separatePricers() || g.done) {
		g.dives.current = g.newDive()
	}
	return g.dives.current != nil
}

// separatePricers reports whether dives and bound have pricers of their own, so that they can
// take turns.
func (g *Generator) separatePricers() bool { return &g.grids.dives[0] != &g.round.pricers[0] }

// improveBound works on the bound until no more than stop of the work is left.
func (g *Generator) improveBound(stop int64) {
	for g.work > stop && !g.done && !g.stop.On() && (g.dives.current == nil || g.separatePricers()) {
		if g.enumeration != nil {
			g.decideCounts(stop)
			continue
		}
		if g.round.stock == len(g.round.pricers) {
			g.solveMaster()
			continue
		}
		p := g.round.pricers[g.round.stock]
		if g.round.proving {
			p = g.grids.outer[g.round.stock]
		}
		if !g.round.started {
			values := make([]int64, len(g.items[g.round.stock]))
			for i, it := range g.items[g.round.stock] {
				values[i] = g.values[it.Kind]
			}
			above := g.threshold(g.round.stock)
			p.setLimits(g.demand)
			if p, ok := p.(*boundedPricer); ok {
				p.budget = g.pricingBudget(g.round.stock)
			}
			p.start(values, above)
			g.round.started = true
		}
		left, done := p.advance(g.work - stop)
		g.work = left + stop
		if done {
			g.finishPricing(p)
		}
	}
}
