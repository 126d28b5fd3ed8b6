package columns

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
	in      *instance.Instance
	pool    *pool
	rng     *rand.PCG
	items   [][]pricing.Item // per stock
	loose   []pricer         // per stock
	dear    float64          // price of the dearest stock
	fillers []*search.Filler // per stock; or nil
	within  bool             // the counts that the floor rests on

	plan  *instance.Plan
	left  []int // per kind
	stock []int // per stock: how many are left
	cut   []int // per kind
	took  []int // of the pool

	lp       *master.LP     // for what is left; nil when that has changed
	rows     []int          // per kind: its row, or -1
	limits   []int          // per stock: its row, or -1
	patterns []int          // of the pool, in the order of their columns
	entries  []master.Entry // scratch
	loaded   int            // patterns that were looked at: those of choice, then the pool's from fresh on
	choice   []int          // patterns of the pool below fresh that are worth a look; ascending
	fresh    int
	support  []int // those that the last programme used
	opening  []int // those that the first one did, before anything was priced for it

	values  []int64 // per kind
	at      int     // stock being priced; len(loose) when a round is over
	tight   *strict // prices it in place of loose
	started bool
	found   bool
	rounds  int
	most    int // rounds for one programme
	done    bool
}

const (
	// leastShare of a piece of stock must be used if a pattern is rounded up.
	leastShare = 0.6
	// mostRounds of pricing for one programme, and on coarse grids, where each
	// takes long.
	mostRounds = 12
	slowRounds = 3
	// diveWork of one strict pricing, and of its tables.
	diveWork  = 1 << 16
	diveTable = 1 << 19
)

func (g *Generator) newDive() *dive {
	d := &dive{
		in: g.in, pool: g.pool, rng: g.rng, items: g.items, loose: g.diving, dear: 1, most: mostRounds,
		plan: &instance.Plan{}, cut: make([]int, len(g.in.Kinds)), values: make([]int64, len(g.in.Kinds)),
		rows: make([]int, len(g.in.Kinds)), limits: make([]int, len(g.in.Stock)),
	}
	d.support = slices.Clone(g.opening)
	if g.someSlow() {
		d.fillers = g.layFillers()
		d.within = g.Within()
	}
	if &g.diving[0] != &g.grids[0] || g.outer != nil {
		d.most = slowRounds
	}
	for _, kd := range g.in.Kinds {
		d.left = append(d.left, kd.Count)
	}
	for s, st := range g.in.Stock {
		n := st.Limit
		if d.within && st.Price > 0 {
			n = min(n, g.counts[s])
		}
		d.stock = append(d.stock, n)
		d.dear = max(d.dear, float64(st.Price))
	}
	return d
}

// advance carries on for about work comparisons and returns what is left of
// them, which may be overdrawn.
func (d *dive) advance(work int64) int64 {
	for work > 0 && !d.done {
		switch {
		case d.lp == nil:
			if s, ok := d.last(); ok {
				work = d.closeWith(s, work)
				continue
			}
			if !d.programme() {
				d.finish()
				continue
			}
			work = d.solve(work)
			d.rounds = 0
		case d.at < len(d.loose):
			work = d.price(work)
		case d.found && d.rounds < d.most:
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
	d.plan.Missing = d.left
	for _, n := range d.took {
		d.pool.patterns[n].taken++
	}
	d.done = true
}

// fix takes patterns into the plan and reports whether there were any good
// enough.
func (d *dive) fix() bool {
	whole, pick, most := false, -1, 0.0
	first := d.first()
	d.lp.Used(func(column int, times float64) {
		if column < first {
			return
		}
		t := &d.pool.patterns[d.patterns[column-first]]
		if n := min(int(times+1e-3), d.times(t)); n > 0 {
			d.take(t, n)
			d.took = append(d.took, d.patterns[column-first])
			whole = true
			return
		}
		// The noise makes every dive another one.
		if x := times * (0.7 + float64(0.3*float64(d.rng.Uint64()>>40)/(1<<24))) * d.share(t); d.stock[t.Stock] > 0 && x > most {
			pick, most = d.patterns[column-first], x
		}
	})
	if whole {
		return true
	}
	if pick < 0 || d.share(&d.pool.patterns[pick]) < leastShare {
		return false
	}
	d.take(&d.pool.patterns[pick], 1)
	d.took = append(d.took, pick)
	return true
}

// take cuts pattern t so many times.
func (d *dive) take(t *Pattern, times int) {
	for range times {
		root := instance.Compact(d.in.Cap(t.Root, d.cut))
		d.plan.Layouts = append(d.plan.Layouts, instance.Layout{Stock: t.Stock, Root: root})
		d.plan.Cost = d.plan.Cost.Plus(d.in.CostOf(t.Stock), 1)
		d.stock[t.Stock]--
	}
	for k := range d.left {
		d.left[k] = d.in.Kinds[k].Count - d.cut[k]
	}
}

// times is how often t can be cut before it would cut more than is left.
func (d *dive) times(t *Pattern) int {
	n := d.stock[t.Stock]
	for _, c := range t.Counts {
		n = min(n, d.left[c.Kind]/c.Times)
	}
	return n
}

// share is how much of its stock t uses for what is left.
func (d *dive) share(t *Pattern) float64 {
	var used float64
	for _, c := range t.Counts {
		used += float64(float64(min(c.Times, d.left[c.Kind])) * float64(d.in.Kinds[c.Kind].L) * float64(d.in.Kinds[c.Kind].W))
	}
	st := d.in.Stock[t.Stock]
	return math.Min(1, used/(float64(st.L)*float64(st.W)))
}
