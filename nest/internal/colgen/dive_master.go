package colgen

import (
	"cmp"
	"math"
	"slices"

	"sawbill/nest/internal/instance"
	"sawbill/nest/internal/master"
)

// startMaster sets up that of the cheapest fractional plan for what is left, and
// reports whether anything is.
func (d *dive) startMaster() bool {
	var demand, limit, penalty []float64
	for k, n := range d.residual {
		d.rows[k] = -1
		if n > 0 {
			d.rows[k] = len(demand)
			demand = append(demand, float64(n))
			penalty = append(penalty, 4*d.dearest)
		}
	}
	if len(demand) == 0 {
		return false
	}
	for s, n := range d.stockLeft {
		d.limits[s] = -1
		if d.withinCounts || d.in.Stock[s].Limit < instance.NoLimit {
			d.limits[s] = len(demand) + len(limit)
			limit = append(limit, float64(max(n, 0)))
		}
	}
	d.lp = master.New(demand, limit, penalty)
	d.patterns, d.scanned = d.patterns[:0], 0
	return true
}

// addColumns makes columns of patterns that the pool has gained.
func (d *dive) addColumns() (work int64) {
	for ; d.scanned < len(d.chosen)+len(d.columns.patterns)-d.newFrom; d.scanned++ {
		n := d.newFrom + d.scanned - len(d.chosen)
		if d.scanned < len(d.chosen) {
			n = d.chosen[d.scanned]
		}
		t := &d.columns.patterns[n]
		work += int64(2 * len(t.Counts))
		if !t.Feasible || d.stockLeft[t.Stock] <= 0 || d.sitsOut(t) {
			continue
		}
		d.entries = d.entries[:0]
		for _, h := range t.Counts {
			if r := d.rows[h.Kind]; r >= 0 {
				d.entries = append(d.entries, master.Entry{Row: r, Value: float64(min(h.Times, d.residual[h.Kind]))})
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

// sitsOut reports whether a pattern sits this programme out. The oftener dives have
// taken it, the likelier that is: all start from the same patterns, and else most of
// them would make the same plan.
func (d *dive) sitsOut(t *Pattern) bool {
	const bits = 2 // it is there in one of 4, 16, 64 programmes
	return d.withinCounts && t.timesTaken > 0 && d.rng.Uint64()>>(64-bits*min(t.timesTaken, 16)) != 0
}

// solve solves the programme and begins a round of pricing.
func (d *dive) solve(work int64) int64 {
	work -= d.addColumns()
	before := d.lp.Work()
	d.warmStart()
	d.lp.Solve(400)
	d.noteSupport()
	work -= d.lp.Work() - before
	prices := d.lp.Duals()
	for k, r := range d.rows {
		d.values[k] = 0
		if r >= 0 {
			d.values[k] = max(0, int64(math.Round(prices[r]*d.scale())))
		}
	}
	d.stock, d.found, d.started, d.bounded = 0, false, false, nil
	return work
}

// warmStart has the programme begin with what the one before used.
func (d *dive) warmStart() {
	var columns []int
	first := d.firstColumn()
	at := 0
	for _, n := range d.support { // ascending, as are patterns
		for at < len(d.patterns) && d.patterns[at] < n {
			at++
		}
		if at < len(d.patterns) && d.patterns[at] == n {
			columns = append(columns, first+at)
		}
	}
	d.lp.PriceFirst(columns)
}

// noteSupport keeps what the programme uses.
func (d *dive) noteSupport() {
	d.support = d.support[:0]
	first := d.firstColumn()
	d.lp.Support(func(column int, _ float64) {
		if column >= first {
			d.support = append(d.support, d.patterns[column-first])
		}
	})
	slices.Sort(d.support)
	if d.firstSupport == nil {
		d.firstSupport = slices.Clone(d.support)
		d.restrictColumns()
	}
}

// maxChosen patterns are enough for a dive, but for those that it has made.
const maxChosen = 1 << 10

// restrictColumns leaves those patterns out from now on that are the dearest at the prices of the
// first programme. What it used stays: others may cost as little more than they are worth,
// thousands of them.
func (d *dive) restrictColumns() {
	if len(d.patterns) <= maxChosen {
		return
	}
	first := d.firstColumn()
	order := make([]int, len(d.patterns))
	gains := make([]float64, len(d.patterns))
	for i := range order {
		order[i], gains[i] = i, d.lp.ReducedCost(first+i)
		if _, used := slices.BinarySearch(d.support, d.patterns[i]); used {
			gains[i] = math.Inf(-1)
		}
	}
	slices.SortFunc(order, func(a, b int) int { return cmp.Or(cmp.Compare(gains[a], gains[b]), cmp.Compare(a, b)) })
	d.chosen = d.chosen[:0]
	for _, i := range order[:maxChosen] {
		d.chosen = append(d.chosen, d.patterns[i])
	}
	slices.Sort(d.chosen)
	d.newFrom = d.patterns[len(d.patterns)-1] + 1
	d.scanned = len(d.chosen) + len(d.columns.patterns) - d.newFrom
}

// firstColumn is the column of the first pattern.
func (d *dive) firstColumn() int { return d.lp.Columns() - len(d.patterns) }

func (d *dive) scale() float64 { return priceScale / d.dearest }
