package colgen

import (
	"cmp"
	"math"
	"slices"

	"sawbill/nest/internal/instance"
	"sawbill/nest/internal/master"
)

// startMaster sets up the cost master of the residual demand, and reports whether there is any.
func (d *dive) startMaster() bool {
	var demand, limit, penalty []float64
	for k, n := range d.partial.residual {
		d.master.rows[k] = -1
		if n > 0 {
			d.master.rows[k] = len(demand)
			demand = append(demand, float64(n))
			penalty = append(penalty, 4*d.dearest)
		}
	}
	if len(demand) == 0 {
		return false
	}
	for s, n := range d.partial.stock {
		d.master.limits[s] = -1
		if d.withinCounts || d.in.Stock[s].Limit < instance.NoLimit {
			d.master.limits[s] = len(demand) + len(limit)
			limit = append(limit, float64(max(n, 0)))
		}
	}
	d.master.lp = master.New(demand, limit, penalty)
	d.master.lp.Halt = d.stop
	d.master.patterns, d.choice.scanned = d.master.patterns[:0], 0
	return true
}

// addColumns adds columns of the set that were not scanned yet.
func (d *dive) addColumns() (work int64) {
	for ; d.choice.scanned < len(d.choice.chosen)+len(d.columns.patterns)-d.choice.newFrom; d.choice.scanned++ {
		if d.choice.scanned%patternAsks == 0 && d.stop.On() {
			break
		}
		n := d.choice.newFrom + d.choice.scanned - len(d.choice.chosen)
		if d.choice.scanned < len(d.choice.chosen) {
			n = d.choice.chosen[d.choice.scanned]
		}
		t := &d.columns.patterns[n]
		work += int64(2 * len(t.Counts))
		if !t.Feasible || d.partial.stock[t.Stock] <= 0 || d.sitsOut(t) {
			continue
		}
		d.master.entries = d.master.entries[:0]
		for _, h := range t.Counts {
			if r := d.master.rows[h.Kind]; r >= 0 {
				d.master.entries = append(d.master.entries, master.Entry{Row: r, Value: float64(min(h.Times, d.partial.residual[h.Kind]))})
			}
		}
		if len(d.master.entries) == 0 {
			continue
		}
		if d.master.limits[t.Stock] >= 0 {
			d.master.entries = append(d.master.entries, master.Entry{Row: d.master.limits[t.Stock], Value: 1})
		}
		d.master.lp.Add(master.Column{Cost: float64(d.in.Stock[t.Stock].Price), Entries: d.master.entries})
		d.master.patterns = append(d.master.patterns, n)
	}
	return work
}

// sitsOut reports whether a column is left out of this master, the likelier the oftener past
// dives have taken it. All dives start from the same columns, and would mostly make the same
// plan.
func (d *dive) sitsOut(t *Pattern) bool {
	const bits = 2 // it is in one of 4, 16, 64, ... masters
	return d.withinCounts && t.timesTaken > 0 && d.rng.Uint64()>>(64-bits*min(t.timesTaken, 16)) != 0
}

// solve solves the master and begins a round of pricing.
func (d *dive) solve(work int64) int64 {
	work -= d.addColumns()
	before := d.master.lp.Work()
	d.warmStart()
	d.master.lp.Solve(400)
	d.noteSupport()
	work -= d.master.lp.Work() - before
	prices := d.master.lp.Duals()
	for k, r := range d.master.rows {
		d.round.values[k] = 0
		if r >= 0 {
			d.round.values[k] = max(0, int64(math.Round(prices[r]*d.scale())))
		}
	}
	d.round.stock, d.round.found, d.round.started, d.round.bounded = 0, false, false, nil
	return work
}

// warmStart makes the master begin with the support of the one before.
func (d *dive) warmStart() {
	var columns []int
	first := d.firstColumn()
	at := 0
	for _, n := range d.choice.support { // ascending, as patterns are
		for at < len(d.master.patterns) && d.master.patterns[at] < n {
			at++
		}
		if at < len(d.master.patterns) && d.master.patterns[at] == n {
			columns = append(columns, first+at)
		}
	}
	d.master.lp.PriceFirst(columns)
}

// noteSupport keeps the support of the solution.
func (d *dive) noteSupport() {
	d.choice.support = d.choice.support[:0]
	first := d.firstColumn()
	d.master.lp.Support(func(column int, _ float64) {
		if column >= first {
			d.choice.support = append(d.choice.support, d.master.patterns[column-first])
		}
	})
	slices.Sort(d.choice.support)
	if d.choice.firstSupport == nil {
		d.choice.firstSupport = slices.Clone(d.choice.support)
		d.restrictColumns()
	}
}

// maxChosen limits the old columns of a dive. Those made during the dive are not limited.
const maxChosen = 1 << 10

// restrictColumns keeps the columns with the lowest reduced costs in the first master, for the
// rest of the dive. Its support stays in any case: thousands of others may have reduced cost 0
// too.
func (d *dive) restrictColumns() {
	if len(d.master.patterns) <= maxChosen {
		return
	}
	first := d.firstColumn()
	order := make([]int, len(d.master.patterns))
	gains := make([]float64, len(d.master.patterns))
	for i := range order {
		order[i], gains[i] = i, d.master.lp.ReducedCost(first+i)
		if _, used := slices.BinarySearch(d.choice.support, d.master.patterns[i]); used {
			gains[i] = math.Inf(-1)
		}
	}
	slices.SortFunc(order, func(a, b int) int { return cmp.Or(cmp.Compare(gains[a], gains[b]), cmp.Compare(a, b)) })
	d.choice.chosen = d.choice.chosen[:0]
	for _, i := range order[:maxChosen] {
		d.choice.chosen = append(d.choice.chosen, d.master.patterns[i])
	}
	slices.Sort(d.choice.chosen)
	d.choice.newFrom = d.master.patterns[len(d.master.patterns)-1] + 1
	d.choice.scanned = len(d.choice.chosen) + len(d.columns.patterns) - d.choice.newFrom
}

// firstColumn returns the LP's column of the first pattern.
func (d *dive) firstColumn() int { return d.master.lp.Columns() - len(d.master.patterns) }

func (d *dive) scale() float64 { return priceScale / d.dearest }
