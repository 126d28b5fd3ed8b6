// Package columns proves bounds by column generation and, on the way, makes
// the patterns that good plans are built of (Gilmore and Gomory, Oper. Res. 9,
// 1961; 13, 1965; citations from memory).
package colgen

import (
	"math/rand/v2"

	"sawbill/nest/internal/instance"
	"sawbill/nest/internal/lowerbound"
	"sawbill/nest/internal/pool"
	"sawbill/nest/internal/pricing"
	"sawbill/nest/internal/setcover"
)

// Generator raises a bound.Floor. It works in small portions, so that it can
// share a processor with other engines and still take the same course on every
// machine.
//
// For any prices v of the kinds, let V(s) be the value of the most valuable
// pattern of stock s. The pieces of every plan hold all that is wanted, so
//
//	sum over s of V(s) times the pieces of s >= sum over k of v(k) times the demand of k
//
// which is a [bound.Cut]. Good prices come from two linear programmes: first
// the cheapest fractional plan; then, for the counts that the floor rests on,
// the least share of them that is enough in fractions. If that is no more than
// all of them, no cut of this kind raises the floor further.
//
// Where exact grids would take long, patterns are made on coarse inner ones, and
// once these have no more to say the prices are tried on outer ones, for a cut
// that holds. Then all that is gone through again on finer grids.
//
// Patterns are priced by [pricing.Grid], which knows the number of levels of
// cuts where it is small, and the first cut, but not how often a part is
// wanted. A narrowest rip asks for nothing more: every part is at least as wide
// as it lies, or else as wide as the stock, so every strip that holds one is.
// Once grids have no more to say, patterns that count their parts do (see
// strict), and all is gone through a last time; these are looked for among what
// other engines have come upon first (see reap). Counts that are enough even then
// are decided about by a search for whole patterns (see exact): either they make
// a plan, or the floor passes by them.
type Generator struct {
	in      *instance.Instance
	bound   *lowerbound.Bound
	pool    *pool.Pool // patterns of other engines; nil if there is none
	seed    uint64
	items   [][]pricing.Item // per stock
	columns *columnSet

	grids     gridLevel
	master    restrictedMaster
	values    []int64 // the duals as integers, per kind
	smoothing dualSmoothing
	round     pricingRound
	filling   fillPricing

	pastPrices  []setcover.Prices // at which bounded pricing ran, the latest last
	enumeration *enumeration      // nil unless it decides about counts

	dives    diving
	plans    []*instance.Plan // found since the last NewPlans
	reported int              // columns that NewPatterns has passed on

	work int64 // the rest of the present portion
	done bool  // the bound rises no further
}

// priceScale is about what the best pattern is worth in the whole numbers in
// which prices are exact.
const priceScale = 1 << 36

// New makes a generator, or nil where even coarse grids to price on would take
// more than mostWork comparisons each time. It reads the harvest, if there is
// one, which must not change while it works.
func New(in *instance.Instance, bound *lowerbound.Bound, maxWork int64, seed uint64, patterns *pool.Pool) *Generator {
	g := &Generator{
		in: in, bound: bound, pool: patterns, seed: seed, columns: newColumnSet(in), values: make([]int64, len(in.Kinds)),
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

// UsesBoundedPricing reports whether the generator has made all that comes easily: grids have
// no more to say.
func (g *Generator) UsesBoundedPricing() bool { return g.round.bounded || g.done }

// DivesWithinCounts reports whether dives keep within the counts that the floor rests on. They
// find more plans than walks do then.
func (g *Generator) DivesWithinCounts() bool {
	return g.master.counts != nil && g.small() && g.anySlowPricing()
}

// AddPlan makes patterns of the layouts of a plan.
func (g *Generator) AddPlan(p *instance.Plan) {
	for _, l := range p.Layouts {
		g.columns.add(l.Stock, l.Root)
	}
}

// roundingStream keeps the random numbers of dives apart from others'.
const roundingStream = 1 << 32

// NewPatterns calls f with every pattern made since the last call that keeps to all
// rules of its stock.
func (g *Generator) NewPatterns(f func(stock int, root instance.Piece)) {
	for ; g.reported < len(g.columns.patterns); g.reported++ {
		if p := &g.columns.patterns[g.reported]; p.Feasible {
			f(p.Stock, p.Root)
		}
	}
}

// NewPlans returns the plans made since the last call by rounding the fractional
// one; they may lack some parts.
func (g *Generator) NewPlans() []*instance.Plan {
	plans := g.plans
	g.plans = nil
	return plans
}

// Work carries on for about that many comparisons, with the bound and with whole
// plans: one after each programme as long as both price on the same grids; then
// half and half.
func (g *Generator) Work(work int64) {
	g.work += work
	for g.work > 0 {
		budget := g.work
		if g.diveNext() {
			g.work = g.dives.current.advance(min(g.work, portion)) + max(0, g.work-portion)
			g.dives.work += budget - g.work
			if g.dives.current.done {
				g.plans = append(g.plans, g.dives.current.partial.plan)
				g.dives.support = g.dives.current.choice.firstSupport
				g.dives.current = nil
				if g.done && !g.DivesWithinCounts() {
					break // one at a time: a search completes each, which takes long in large jobs
				}
			}
			continue
		}
		g.improveBound(max(0, g.work-portion))
		g.dives.boundWork += budget - g.work
	}
	g.work = min(g.work, 0) // what was overdrawn is paid back next time
}

// portion is how long dive and bound go on by turns.
const portion = 1 << 20

// diveNext reports whether it is a dive's turn, and begins one if need be.
func (g *Generator) diveNext() bool {
	if g.separatePricers() && !g.done && g.dives.work > g.dives.boundWork {
		return false
	}
	if g.dives.current == nil && (g.separatePricers() || g.done) {
		g.dives.current = g.newDive()
	}
	return g.dives.current != nil
}

// separatePricers reports whether dives and bound have pricers of their own, so that they
// can go on by turns.
func (g *Generator) separatePricers() bool { return &g.grids.dives[0] != &g.round.pricers[0] }

// improveBound goes on with the bound until no more than stop is left of the work.
func (g *Generator) improveBound(stop int64) {
	for g.work > stop && !g.done && (g.dives.current == nil || g.separatePricers()) {
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
			p.setLimits(g.demandOf)
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

func (g *Generator) demandOf(kind int) int { return g.in.Kinds[kind].Demand }
