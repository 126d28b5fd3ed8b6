package colgen

import (
	"math"
	"math/rand/v2"
	"slices"

	"sawbill/nest/internal/instance"
	"sawbill/nest/internal/master"
	"sawbill/nest/internal/pricing"
	"sawbill/nest/internal/search"
)

// dive makes a whole plan of fractional ones, in portions: it solves the linear
// programme for what is left, makes the patterns that are wanted for that, takes
// the whole part of every pattern's use, or else one pattern rounded up, and so
// on (sequential rounding, Wascher and Gau, OR Spektrum 18, 1996; with columns
// generated on the way, Sadykov et al., INFORMS J. Comput. 31, 2019; from
// memory). What no pattern serves well stays for the search.
//
// Where patterns that count their parts are slow to price, the dives of a small job
// keep within the counts that the floor rests on: a plan of these costs least.
type dive struct {
	in           *instance.Instance
	columns      *columnSet
	rng          *rand.PCG
	items        [][]pricing.Item // per stock
	pricers      []pricer         // per stock
	dearest      float64          // price of the dearest stock
	fillers      []*search.Filler // per stock; or nil
	withinCounts bool             // the counts that the floor rests on

	plan      *instance.Plan
	residual  []int // per kind
	stockLeft []int // per stock: how many are left
	placed    []int // per kind
	taken     []int // of the pool

	lp           *master.LP     // for what is left; nil when that has changed
	rows         []int          // per kind: its row, or -1
	limits       []int          // per stock: its row, or -1
	patterns     []int          // of the pool, in the order of their columns
	entries      []master.Entry // scratch
	scanned      int            // patterns that were looked at: those of choice, then the pool's from fresh on
	chosen       []int          // patterns of the pool below fresh that are worth a look; ascending
	newFrom      int
	support      []int // those that the last programme used
	firstSupport []int // those that the first one did, before anything was priced for it

	values    []int64        // per kind
	stock     int            // stock being priced; len(loose) when a round is over
	bounded   *boundedPricer // prices it in place of loose
	started   bool
	found     bool
	rounds    int
	maxRounds int // rounds for one programme
	done      bool
}

const (
	// minUtilization of a piece of stock must be used if a pattern is rounded up.
	minUtilization = 0.6
	// maxRounds of pricing for one programme, and on coarse grids, where each
	// takes long.
	maxRounds  = 12
	slowRounds = 3
	// diveWork of one strict pricing, and of its tables.
	diveWork  = 1 << 16
	diveTable = 1 << 19
)

func (g *Generator) newDive() *dive {
	d := &dive{
		in: g.in, columns: g.columns, rng: g.rng, items: g.items, pricers: g.diveGrids, dearest: 1, maxRounds: maxRounds,
		plan: &instance.Plan{}, placed: make([]int, len(g.in.Kinds)), values: make([]int64, len(g.in.Kinds)),
		rows: make([]int, len(g.in.Kinds)), limits: make([]int, len(g.in.Stock)),
	}
	d.support = slices.Clone(g.firstSupport)
	if g.anySlowPricing() {
		d.fillers = g.makeFillers()
		d.withinCounts = g.DivesWithinCounts()
	}
	if &g.diveGrids[0] != &g.grids[0] || g.outerGrids != nil {
		d.maxRounds = slowRounds
	}
	for _, kd := range g.in.Kinds {
		d.residual = append(d.residual, kd.Demand)
	}
	for s, st := range g.in.Stock {
		n := st.Limit
		if d.withinCounts && st.Price > 0 {
			n = min(n, g.counts[s])
		}
		d.stockLeft = append(d.stockLeft, n)
		d.dearest = max(d.dearest, float64(st.Price))
	}
	return d
}

// advance carries on for about work comparisons and returns what is left of
// them, which may be overdrawn.
func (d *dive) advance(work int64) int64 {
	for work > 0 && !d.done {
		switch {
		case d.lp == nil:
			if s, ok := d.lastPiece(); ok {
				work = d.fillLastPiece(s, work)
				continue
			}
			if !d.startMaster() {
				d.finish()
				continue
			}
			work = d.solve(work)
			d.rounds = 0
		case d.stock < len(d.pricers):
			work = d.price(work)
		case d.found && d.rounds < d.maxRounds:
			d.rounds++
			work = d.solve(work)
		case d.fix():
			d.lp = nil
		default:
			d.finish()
		}
	}
	return work
}

func (d *dive) finish() {
	d.plan.Missing = d.residual
	for _, n := range d.taken {
		d.columns.patterns[n].timesTaken++
	}
	d.done = true
}

// fix takes patterns into the plan and reports whether there were any good
// enough.
func (d *dive) fix() bool {
	whole, pick, most := false, -1, 0.0
	first := d.firstColumn()
	d.lp.Support(func(column int, times float64) {
		if column < first {
			return
		}
		t := &d.columns.patterns[d.patterns[column-first]]
		if n := min(int(times+1e-3), d.maxTimes(t)); n > 0 {
			d.take(t, n)
			d.taken = append(d.taken, d.patterns[column-first])
			whole = true
			return
		}
		// The noise makes every dive another one.
		if x := times * (0.7 + float64(0.3*float64(d.rng.Uint64()>>40)/(1<<24))) * d.utilization(t); d.stockLeft[t.Stock] > 0 && x > most {
			pick, most = d.patterns[column-first], x
		}
	})
	if whole {
		return true
	}
	if pick < 0 || d.utilization(&d.columns.patterns[pick]) < minUtilization {
		return false
	}
	d.take(&d.columns.patterns[pick], 1)
	d.taken = append(d.taken, pick)
	return true
}

// take cuts pattern t so many times.
func (d *dive) take(t *Pattern, times int) {
	for range times {
		root := instance.Normalize(d.in.DropExcess(t.Root, d.placed))
		d.plan.Layouts = append(d.plan.Layouts, instance.Layout{Stock: t.Stock, Root: root})
		d.plan.Cost = d.plan.Cost.Plus(d.in.CostOf(t.Stock), 1)
		d.stockLeft[t.Stock]--
	}
	for k := range d.residual {
		d.residual[k] = d.in.Kinds[k].Demand - d.placed[k]
	}
}

// maxTimes is how often t can be cut before it would cut more than is left.
func (d *dive) maxTimes(t *Pattern) int {
	n := d.stockLeft[t.Stock]
	for _, c := range t.Counts {
		n = min(n, d.residual[c.Kind]/c.Times)
	}
	return n
}

// utilization is how much of its stock t uses for what is left.
func (d *dive) utilization(t *Pattern) float64 {
	var used float64
	for _, c := range t.Counts {
		used += float64(float64(min(c.Times, d.residual[c.Kind])) * float64(d.in.Kinds[c.Kind].L) * float64(d.in.Kinds[c.Kind].W))
	}
	st := d.in.Stock[t.Stock]
	return math.Min(1, used/(float64(st.L)*float64(st.W)))
}
