// Package columns proves bounds by column generation and, on the way, makes
// the patterns that good plans are built of (Gilmore and Gomory, Oper. Res. 9,
// 1961; 13, 1965; citations from memory).
package columns

import (
	"math"
	"math/rand/v2"
	"slices"

	"sawbill/nest/internal/bound"
	"sawbill/nest/internal/instance"
	"sawbill/nest/internal/master"
	"sawbill/nest/internal/pricing"
	"sawbill/nest/internal/whole"
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
// strict), and all is gone through a last time. Counts that are enough even then
// are decided about by a search for whole patterns (see exact): either they make
// a plan, or the floor passes by them.
type Generator struct {
	in       *instance.Instance
	floor    *bound.Floor
	pool     *pool
	items    [][]pricing.Item // per stock
	grids    []pricer
	outer    []pricer // where grids see inner patterns only, to prove bounds; else nil
	pricers  []pricer // grids, or strict ones
	diving   []pricer // grids that dives price on
	strict   bool     // pricers count
	spend    int64    // comparisons that pricing on all grids may take now
	most     int64    // the greatest spend
	nearness float64  // of cut and programme at which coarse grids have done their part

	lp     *master.LP
	loaded int     // patterns of the pool that are columns
	counts []int   // the pieces the programme may use; nil in the first programme
	rows   []int   // of the programme, per stock; -1 for none
	use    float64 // of its stock, by a pattern, in that row
	scale  float64

	values     []int64   // prices in whole numbers, per kind
	center     []float64 // prices of the best cut so far in the first programme
	best       float64   // how good that cut was
	unsmoothed bool      // values are the programme's own prices
	proving    bool      // pricing on the outer grids
	stock      int       // being priced; len(grids) when a round is to begin
	started    bool
	added      bool
	done       bool
	work       int64

	seen  []whole.Prices // at which patterns that count were priced last
	exact *exact         // deciding about counts that are enough in fractions; else nil

	rng           *rand.PCG
	dive          *dive // in progress, or nil
	dived, raised int64 // work on dives and on the bound
	plans         []*instance.Plan
}

// priceScale is about what the best pattern is worth in the whole numbers in
// which prices are exact.
const priceScale = 1 << 36

// New makes a generator, or nil where even coarse grids to price on would take
// more than mostWork comparisons each time.
func New(in *instance.Instance, floor *bound.Floor, mostWork int64, seed uint64) *Generator {
	g := &Generator{in: in, floor: floor, most: mostWork, pool: newPool(in), values: make([]int64, len(in.Kinds)), rng: rand.NewPCG(seed, roundingStream)}
	for s := range in.Stock {
		var items []pricing.Item
		for k, kd := range in.Kinds {
			if kd.Lies[s] != 0 {
				items = append(items, pricing.Item{L: kd.L, W: kd.W, Lies: kd.Lies[s], Kind: k})
			}
		}
		g.items = append(g.items, items)
	}
	if !g.lay() {
		return nil
	}
	g.pricers = g.grids
	g.programme(nil)
	return g
}

// Late reports whether the generator has made all that comes easily: grids have
// no more to say.
func (g *Generator) Late() bool { return g.strict || g.done }

// Offer makes patterns of the layouts of a plan.
func (g *Generator) Offer(p *instance.Plan) {
	for _, l := range p.Layouts {
		g.pool.add(l.Stock, l.Root)
	}
}

// roundingStream keeps the random numbers of dives apart from others'.
const roundingStream = 1 << 32

// Plans returns the plans made since the last call by rounding the fractional
// one; they may lack some parts.
func (g *Generator) Plans() []*instance.Plan {
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
		if g.plunges() {
			g.work = g.dive.advance(min(g.work, portion)) + max(0, g.work-portion)
			g.dived += budget - g.work
			if g.dive.done {
				g.plans = append(g.plans, g.dive.plan)
				g.dive = nil
				if g.done {
					break // one at a time: each is completed by a search
				}
			}
			continue
		}
		g.raise(max(0, g.work-portion))
		g.raised += budget - g.work
	}
	g.work = min(g.work, 0) // what was overdrawn is paid back next time
}

// portion is how long dive and bound go on by turns.
const portion = 1 << 20

// plunges reports whether it is a dive's turn, and begins one if need be.
func (g *Generator) plunges() bool {
	if g.apart() && !g.done && g.dived > g.raised {
		return false
	}
	if g.dive == nil && (g.apart() || g.done) {
		g.dive = g.newDive()
	}
	return g.dive != nil
}

// apart reports whether dives and bound have pricers of their own, so that they
// can go on by turns.
func (g *Generator) apart() bool { return &g.diving[0] != &g.pricers[0] }

// raise goes on with the bound until no more than stop is left of the work.
func (g *Generator) raise(stop int64) {
	for g.work > stop && !g.done && (g.dive == nil || g.apart()) {
		if g.exact != nil {
			g.decide(stop)
			continue
		}
		if g.stock == len(g.pricers) {
			g.begin()
			continue
		}
		p := g.pricers[g.stock]
		if g.proving {
			p = g.outer[g.stock]
		}
		if !g.started {
			values := make([]int64, len(g.items[g.stock]))
			for i, it := range g.items[g.stock] {
				values[i] = g.values[it.Kind]
			}
			above := g.threshold(g.stock)
			p.limit(g.wanted)
			p.start(values, above)
			g.started = true
		}
		left, done := p.advance(g.work - stop)
		g.work = left + stop
		if done {
			g.finish(p)
		}
	}
}

func (g *Generator) wanted(kind int) int { return g.in.Kinds[kind].Count }

// begin solves the programme and turns its prices into whole numbers.
func (g *Generator) begin() {
	g.load()
	pivots := g.lp.Pivots()
	rows := int64(len(g.values) + len(g.pricers))
	g.lp.Solve(int(min(4*(rows+25), mostPivoting/(rows*rows)+1)))
	g.work -= int64(g.lp.Pivots()-pivots+1) * (rows*rows + 4*int64(g.loaded))
	if g.settled() {
		return
	}
	prices := g.lp.Prices()
	for k := range g.values {
		p := prices[k]
		if g.center != nil && !g.unsmoothed && !g.strict {
			p = smoothing*g.center[k] + (1-smoothing)*p
		}
		g.values[k] = max(0, int64(math.Round(p*g.scale)))
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
		for _, root := range p.others(others) {
			g.pool.add(g.stock, root)
		}
	}
	g.stock++
	g.started = false
	if g.stock < len(g.pricers) {
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

// laborious reports whether pricing takes much longer than the programme does:
// then a pricing gives more patterns than one.
func (g *Generator) laborious() bool {
	rows := int64(len(g.values) + len(g.pricers))
	var work int64
	for _, p := range g.pricers {
		work += p.effort()
	}
	return !g.proving && work > dearPricing*rows*rows
}

const (
	dearPricing = 100 // comparisons for each number in the programme's inverse
	others      = 2   // patterns beside the best; more than these help little
)

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
