package columns

import (
	"cmp"
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

// programme sets up that of the cheapest fractional plan for what is left, and
// reports whether anything is.
func (d *dive) programme() bool {
	var demand, limit, penalty []float64
	for k, n := range d.left {
		d.rows[k] = -1
		if n > 0 {
			d.rows[k] = len(demand)
			demand = append(demand, float64(n))
			penalty = append(penalty, 4*d.dear)
		}
	}
	if len(demand) == 0 {
		return false
	}
	for s, n := range d.stock {
		d.limits[s] = -1
		if d.within || d.in.Stock[s].Limit < instance.NoLimit {
			d.limits[s] = len(demand) + len(limit)
			limit = append(limit, float64(max(n, 0)))
		}
	}
	d.lp = master.New(demand, limit, penalty)
	d.patterns, d.loaded = d.patterns[:0], 0
	return true
}

// load makes columns of patterns that the pool has gained.
func (d *dive) load() (work int64) {
	for ; d.loaded < len(d.choice)+len(d.pool.patterns)-d.fresh; d.loaded++ {
		n := d.fresh + d.loaded - len(d.choice)
		if d.loaded < len(d.choice) {
			n = d.choice[d.loaded]
		}
		t := &d.pool.patterns[n]
		work += int64(2 * len(t.Counts))
		if !t.Sound || d.stock[t.Stock] <= 0 || d.tired(t) {
			continue
		}
		d.entries = d.entries[:0]
		for _, h := range t.Counts {
			if r := d.rows[h.Kind]; r >= 0 {
				d.entries = append(d.entries, master.Entry{Row: r, Value: float64(min(h.Times, d.left[h.Kind]))})
			}
		}
		if len(d.entries) == 0 {
			continue
		}
		if d.limits[t.Stock] >= 0 {
			d.entries = append(d.entries, master.Entry{Row: d.limits[t.Stock], Value: 1})
		}
		d.lp.Add(master.Column{Cost: float64(d.in.Stock[t.Stock].Price), Entries: d.entries})
		d.patterns = append(d.patterns, n)
	}
	return work
}

// tired reports whether a pattern sits this programme out. The oftener dives have
// taken it, the likelier that is: all start from the same patterns, and else most of
// them would make the same plan.
func (d *dive) tired(t *Pattern) bool {
	const bits = 2 // it is there in one of 4, 16, 64 programmes
	return d.within && t.taken > 0 && d.rng.Uint64()>>(64-bits*min(t.taken, 16)) != 0
}

// solve solves the programme and begins a round of pricing.
func (d *dive) solve(work int64) int64 {
	work -= d.load()
	before := d.lp.Work()
	d.prefer()
	d.lp.Solve(400)
	d.note()
	work -= d.lp.Work() - before
	prices := d.lp.Prices()
	for k, r := range d.rows {
		d.values[k] = 0
		if r >= 0 {
			d.values[k] = max(0, int64(math.Round(prices[r]*d.scale())))
		}
	}
	d.at, d.found, d.started, d.tight = 0, false, false, nil
	return work
}

// prefer has the programme begin with what the one before used.
func (d *dive) prefer() {
	var columns []int
	first := d.lp.Columns() - len(d.patterns)
	at := 0
	for _, n := range d.support { // ascending, as are patterns
		for at < len(d.patterns) && d.patterns[at] < n {
			at++
		}
		if at < len(d.patterns) && d.patterns[at] == n {
			columns = append(columns, first+at)
		}
	}
	d.lp.Prefer(columns)
}

// note keeps what the programme uses.
func (d *dive) note() {
	d.support = d.support[:0]
	first := d.lp.Columns() - len(d.patterns)
	d.lp.Used(func(column int, _ float64) {
		if column >= first {
			d.support = append(d.support, d.patterns[column-first])
		}
	})
	slices.Sort(d.support)
	if d.opening == nil {
		d.opening = slices.Clone(d.support)
		d.choose()
	}
}

// mostChosen patterns are enough for a dive, but for those that it has made.
const mostChosen = 1 << 10

// choose leaves those patterns out from now on that are the dearest at the prices of the
// first programme. What it used stays: others may cost as little more than they are worth,
// thousands of them.
func (d *dive) choose() {
	if len(d.patterns) <= mostChosen {
		return
	}
	first := d.lp.Columns() - len(d.patterns)
	order := make([]int, len(d.patterns))
	gains := make([]float64, len(d.patterns))
	for i := range order {
		order[i], gains[i] = i, d.lp.Gain(first+i)
		if _, used := slices.BinarySearch(d.support, d.patterns[i]); used {
			gains[i] = math.Inf(-1)
		}
	}
	slices.SortFunc(order, func(a, b int) int { return cmp.Or(cmp.Compare(gains[a], gains[b]), cmp.Compare(a, b)) })
	d.choice = d.choice[:0]
	for _, i := range order[:mostChosen] {
		d.choice = append(d.choice, d.patterns[i])
	}
	slices.Sort(d.choice)
	d.fresh = d.patterns[len(d.patterns)-1] + 1
	d.loaded = len(d.choice) + len(d.pool.patterns) - d.fresh
}

func (d *dive) scale() float64 { return priceScale / d.dear }

// fix takes patterns into the plan and reports whether there were any good
// enough.
func (d *dive) fix() bool {
	whole, pick, most := false, -1, 0.0
	first := d.lp.Columns() - len(d.patterns)
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
