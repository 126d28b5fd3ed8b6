package columns

import (
	"cmp"
	"math"
	"slices"

	"sawbill/nest/internal/instance"
	"sawbill/nest/internal/master"
)

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
	first := d.first()
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
	first := d.first()
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
	first := d.first()
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

// first is the column of the first pattern.
func (d *dive) first() int { return d.lp.Columns() - len(d.patterns) }

func (d *dive) scale() float64 { return priceScale / d.dear }
