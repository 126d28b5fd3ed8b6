// Package columns proves bounds by column generation and, on the way, makes
// the patterns that good plans are built of (Gilmore and Gomory, Oper. Res. 9,
// 1961; 13, 1965; citations from memory).
package colgen

import (
	"math/rand/v2"

	"sawbill/nest/internal/instance"
	"sawbill/nest/internal/lowerbound"
	"sawbill/nest/internal/master"
	"sawbill/nest/internal/pool"
	"sawbill/nest/internal/pricing"
	"sawbill/nest/internal/search"
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
	in           *instance.Instance
	bound        *lowerbound.Bound
	columns      *columnSet
	pool         *pool.Pool       // of other engines; or nil
	fillers      []*search.Filler // per stock; nil before patterns that count are priced
	demands      []int            // per kind, with fillers
	reported     int              // patterns of the pool that were told
	items        [][]pricing.Item // per stock
	grids        []pricer
	outerGrids   []pricer // where grids see inner patterns only, to prove bounds; else nil
	pricers      []pricer // grids, or strict ones
	diveGrids    []pricer // grids that dives price on
	bounded      bool     // pricers count
	trialDone    bool     // whether they are slow
	gridWork     int64    // comparisons that pricing on all grids may take now
	maxGridWork  int64    // the greatest spend
	gapTolerance float64  // of cut and programme at which coarse grids have done their part

	lp            *master.LP
	loadedColumns int     // patterns of the pool that are columns
	counts        []int   // the pieces the programme may use; nil in the first programme
	rows          []int   // of the programme, per stock; -1 for none
	stockCoef     float64 // of its stock, by a pattern, in that row
	scale         float64

	values          []int64   // prices in whole numbers, per kind
	stabilityCenter []float64 // prices of the best cut so far in the first programme
	centerValue     float64   // how good that cut was
	unsmoothed      bool      // values are the programme's own prices
	proving         bool      // pricing on the outer grids
	stock           int       // being priced; len(grids) when a round is to begin
	started         bool
	added           bool
	done            bool
	work            int64

	pastPrices  []setcover.Prices // at which patterns that count were priced last
	enumeration *enumeration      // deciding about counts that are enough in fractions; else nil

	seed                uint64
	rng                 *rand.PCG
	dive                *dive // in progress, or nil
	firstSupport        []int // patterns of the pool that the first programme of the last dive used
	diveWork, boundWork int64 // work on dives and on the bound
	plans               []*instance.Plan
}

// priceScale is about what the best pattern is worth in the whole numbers in
// which prices are exact.
const priceScale = 1 << 36

// New makes a generator, or nil where even coarse grids to price on would take
// more than mostWork comparisons each time. It reads the harvest, if there is
// one, which must not change while it works.
func New(in *instance.Instance, floor *lowerbound.Bound, maxWork int64, seed uint64, h *pool.Pool) *Generator {
	g := &Generator{in: in, pool: h, bound: floor, maxGridWork: maxWork, columns: newColumnSet(in), values: make([]int64, len(in.Kinds)), seed: seed, rng: rand.NewPCG(seed, roundingStream)}
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
	g.pricers = g.grids
	g.startMaster(nil)
	return g
}

// Bounded reports whether the generator has made all that comes easily: grids have
// no more to say.
func (g *Generator) Bounded() bool { return g.bounded || g.done }

// DivesWithinCounts reports whether dives keep within the counts that the floor rests on. They
// find more plans than walks do then.
func (g *Generator) DivesWithinCounts() bool {
	return g.counts != nil && g.small() && g.anySlowPricing()
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
			g.work = g.dive.advance(min(g.work, portion)) + max(0, g.work-portion)
			g.diveWork += budget - g.work
			if g.dive.done {
				g.plans = append(g.plans, g.dive.plan)
				g.firstSupport = g.dive.firstSupport
				g.dive = nil
				if g.done && !g.DivesWithinCounts() {
					break // one at a time: a search completes each, which takes long in large jobs
				}
			}
			continue
		}
		g.improveBound(max(0, g.work-portion))
		g.boundWork += budget - g.work
	}
	g.work = min(g.work, 0) // what was overdrawn is paid back next time
}

// portion is how long dive and bound go on by turns.
const portion = 1 << 20

// diveNext reports whether it is a dive's turn, and begins one if need be.
func (g *Generator) diveNext() bool {
	if g.separatePricers() && !g.done && g.diveWork > g.boundWork {
		return false
	}
	if g.dive == nil && (g.separatePricers() || g.done) {
		g.dive = g.newDive()
	}
	return g.dive != nil
}

// separatePricers reports whether dives and bound have pricers of their own, so that they
// can go on by turns.
func (g *Generator) separatePricers() bool { return &g.diveGrids[0] != &g.pricers[0] }

// improveBound goes on with the bound until no more than stop is left of the work.
func (g *Generator) improveBound(stop int64) {
	for g.work > stop && !g.done && (g.dive == nil || g.separatePricers()) {
		if g.enumeration != nil {
			g.decideCounts(stop)
			continue
		}
		if g.stock == len(g.pricers) {
			g.solveMaster()
			continue
		}
		p := g.pricers[g.stock]
		if g.proving {
			p = g.outerGrids[g.stock]
		}
		if !g.started {
			values := make([]int64, len(g.items[g.stock]))
			for i, it := range g.items[g.stock] {
				values[i] = g.values[it.Kind]
			}
			above := g.threshold(g.stock)
			p.setLimits(g.demandOf)
			if p, ok := p.(*boundedPricer); ok {
				p.budget = g.pricingBudget(g.stock)
			}
			p.start(values, above)
			g.started = true
		}
		left, done := p.advance(g.work - stop)
		g.work = left + stop
		if done {
			g.finishPricing(p)
		}
	}
}

func (g *Generator) demandOf(kind int) int { return g.in.Kinds[kind].Demand }
