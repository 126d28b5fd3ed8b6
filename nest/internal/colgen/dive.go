package colgen

import (
	"math"
	"math/rand/v2"
	"slices"

	"sawbill/nest/internal/halt"
	"sawbill/nest/internal/instance"
	"sawbill/nest/internal/master"
	"sawbill/nest/internal/pricing"
	"sawbill/nest/internal/search"
)

// diving is the course of all dives.
type diving struct {
	rng     *rand.PCG
	current *dive // nil between dives
	support []int // columns in the first solution of the last dive
	// work on dives and on the bound, which take turns.
	work, boundWork int64
}

// dive turns fractional solutions into an integer plan. It solves the master of the residual
// problem with pricing, fixes the integer part of each column or else one column rounded up,
// and repeats. Sequential rounding: Wascher and Gau, OR Spektrum 18, 1996. Diving with column
// generation: Sadykov et al., INFORMS J. Comput. 31, 2019. From memory. The search places parts
// that no column serves well.
//
// If bounded pricing is slow, dives of a small job stay within the counts at which the lower
// bound is attained. A plan within them is optimal.
type dive struct {
	diveSetup
	partial partialPlan
	master  residualMaster
	choice  columnChoice
	round   diveRound
	done    bool
}

// diveSetup stays as it is during a dive.
type diveSetup struct {
	in           *instance.Instance
	stop         halt.Signal
	columns      *columnSet
	rng          *rand.PCG
	items        [][]pricing.Item // per stock
	pricers      []pricer         // per stock
	fillers      []*search.Filler // per stock; nil unless bounded pricing is slow
	withinCounts bool             // stay within the counts at which the bound is attained
	dearest      float64          // greatest price of a stock
	maxRounds    int              // of pricing, per master
}

// partialPlan holds the fixed columns and the residual problem.
type partialPlan struct {
	plan     *instance.Plan
	taken    []int // its columns
	placed   []int // parts, per kind
	residual []int // demand left, per kind
	stock    []int // pieces left, per stock
}

// residualMaster is the linear program of the residual problem.
type residualMaster struct {
	lp       *master.LP     // nil if the residual problem has changed
	rows     []int          // per kind: its row, or -1
	limits   []int          // per stock: its row, or -1
	patterns []int          // of the column set, in the order of the LP's columns
	entries  []master.Entry // scratch
}

// columnChoice limits which columns of the set enter a dive's masters: chosen ones, and
// all from newFrom on.
type columnChoice struct {
	chosen       []int // below newFrom, ascending
	newFrom      int
	scanned      int   // of both, in this order
	support      []int // of the last solution, ascending
	firstSupport []int // of the dive's first solution
}

// diveRound is one pricing of every stock for a dive.
type diveRound struct {
	values  []int64        // the duals as integers, per kind
	number  int            // of rounds for the present master
	stock   int            // in progress; len(pricers) when the round is over
	bounded *boundedPricer // prices the stock in place of its grid
	started bool
	found   bool // a new column
}

const (
	// A column rounded up must use minUtilization of its piece of stock.
	minUtilization = 0.6
	// Rounds of pricing for one master; slowRounds on coarse grids, where each takes long.
	maxRounds  = 12
	slowRounds = 3
	// diveWork is the work of one bounded pricing, diveTable that of its tables.
	diveWork  = 1 << 16
	diveTable = 1 << 19
)

func (g *Generator) newDive() *dive {
	kinds := len(g.in.Kinds)
	d := &dive{
		diveSetup: diveSetup{
			in: g.in, stop: g.stop, columns: g.columns, rng: g.dives.rng, items: g.items, pricers: g.grids.dives, dearest: 1, maxRounds: maxRounds,
		},
		partial: partialPlan{plan: &instance.Plan{}, residual: g.in.Demands(), placed: make([]int, kinds)},
		master:  residualMaster{rows: make([]int, kinds), limits: make([]int, len(g.in.Stock))},
		round:   diveRound{values: make([]int64, kinds)},
	}
	d.choice.support = slices.Clone(g.dives.support)
	if g.anySlowPricing() {
		d.fillers = g.makeFillers()
		d.withinCounts = g.DivesWithinCounts()
	}
	if &g.grids.dives[0] != &g.grids.patterns[0] || g.grids.outer != nil {
		d.maxRounds = slowRounds
	}
	for s, st := range g.in.Stock {
		n := st.Limit
		if d.withinCounts && st.Price > 0 {
			n = min(n, g.master.counts[s])
		}
		d.partial.stock = append(d.partial.stock, n)
		d.dearest = max(d.dearest, float64(st.Price))
	}
	return d
}

// advance goes on for about work comparisons and returns the rest, which may be negative.
func (d *dive) advance(work int64) int64 {
	for work > 0 && !d.done && !d.stop.On() {
		switch {
		case d.master.lp == nil:
			if s, ok := d.lastPiece(); ok {
				work = d.fillLastPiece(s, work)
				continue
			}
			if !d.startMaster() {
				d.finish()
				continue
			}
			work = d.solve(work)
			d.round.number = 0
		case d.round.stock < len(d.pricers):
			work = d.price(work)
		case d.round.found && d.round.number < d.maxRounds:
			d.round.number++
			work = d.solve(work)
		case d.fix():
			d.master.lp = nil
		default:
			d.finish()
		}
	}
	return work
}

func (d *dive) finish() {
	d.partial.plan.Missing = d.partial.residual
	for _, n := range d.partial.taken {
		d.columns.patterns[n].timesTaken++
	}
	d.done = true
}

// fix fixes columns and reports whether there was a good one.
func (d *dive) fix() bool {
	whole, pick, most := false, -1, 0.0
	first := d.firstColumn()
	d.master.lp.Support(func(column int, times float64) {
		if column < first {
			return
		}
		t := &d.columns.patterns[d.master.patterns[column-first]]
		if n := min(int(times+1e-3), d.maxTimes(t)); n > 0 {
			d.take(t, n)
			d.partial.taken = append(d.partial.taken, d.master.patterns[column-first])
			whole = true
			return
		}
		// Noise makes dives differ.
		if x := times * (0.7 + float64(0.3*float64(d.rng.Uint64()>>40)/(1<<24))) * d.utilization(t); d.partial.stock[t.Stock] > 0 && x > most {
			pick, most = d.master.patterns[column-first], x
		}
	})
	if whole {
		return true
	}
	if pick < 0 || d.utilization(&d.columns.patterns[pick]) < minUtilization {
		return false
	}
	d.take(&d.columns.patterns[pick], 1)
	d.partial.taken = append(d.partial.taken, pick)
	return true
}

// take cuts pattern t so many times.
func (d *dive) take(t *Pattern, times int) {
	p := &d.partial
	for range times {
		d.in.AddLayout(p.plan, t.Stock, t.Root, p.placed)
		p.stock[t.Stock]--
	}
	for k := range p.residual {
		p.residual[k] = d.in.Kinds[k].Demand - p.placed[k]
	}
}

// maxTimes returns how often t can be cut without exceeding the residual demand.
func (d *dive) maxTimes(t *Pattern) int {
	n := d.partial.stock[t.Stock]
	for _, c := range t.Counts {
		n = min(n, d.partial.residual[c.Kind]/c.Times)
	}
	return n
}

// utilization returns the share of its stock that t uses for the residual demand.
func (d *dive) utilization(t *Pattern) float64 {
	var used float64
	for _, c := range t.Counts {
		used += float64(float64(min(c.Times, d.partial.residual[c.Kind])) * float64(d.in.Kinds[c.Kind].L) * float64(d.in.Kinds[c.Kind].W))
	}
	st := d.in.Stock[t.Stock]
	return math.Min(1, used/(float64(st.L)*float64(st.W)))
}
