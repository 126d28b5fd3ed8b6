package columns

import (
	"math"
	"math/rand/v2"

	"sawbill/nest/internal/instance"
	"sawbill/nest/internal/master"
)

// rounder makes whole plans of the fractional one: it takes the whole part of
// every pattern's use, solves the linear programme for what is left, rounds one
// pattern up, and so on (sequential rounding; Wascher and Gau, OR Spektrum 18,
// 1996; from memory). What no pattern serves well stays for the search.
type rounder struct {
	in    *instance.Instance
	pool  *pool
	rng   *rand.PCG
	plans []*instance.Plan
}

// dive makes one plan, which may lack some parts.
func (r *rounder) dive() (operations int64) {
	left := make([]int, len(r.in.Kinds))
	for k, kd := range r.in.Kinds {
		left[k] = kd.Count
	}
	stock := make([]int, len(r.in.Stock))
	for s, st := range r.in.Stock {
		stock[s] = st.Limit
	}
	plan := &instance.Plan{}
	cut := make([]int, len(r.in.Kinds))
	take := func(t *Pattern, times int) {
		for range times {
			root := instance.Compact(r.in.Cap(t.Root, cut))
			plan.Layouts = append(plan.Layouts, instance.Layout{Stock: t.Stock, Root: root})
			plan.Cost = plan.Cost.Plus(r.in.CostOf(t.Stock), 1)
			stock[t.Stock]--
		}
		for k := range left {
			left[k] = r.in.Kinds[k].Count - cut[k]
		}
	}
	for range 4 * len(r.in.Kinds) {
		lp, patterns := r.programme(left, stock)
		if lp == nil {
			break
		}
		lp.Solve(400)
		rows := int64(len(left) + len(stock))
		operations += int64(lp.Pivots()) * (rows*rows + 4*int64(len(patterns)))
		whole, pick, most := false, -1, 0.0
		first := lp.Columns() - len(patterns)
		lp.Used(func(column int, times float64) {
			if column < first {
				return
			}
			t := &r.pool.patterns[patterns[column-first]]
			if n := min(int(times+1e-6), r.times(t, left, stock)); n > 0 {
				take(t, n)
				whole = true
				return
			}
			// The noise makes every dive another one.
			if x := times * (0.7 + 0.3*float64(r.rng.Uint64()>>40)/(1<<24)) * r.share(t, left); stock[t.Stock] > 0 && x > most {
				pick, most = patterns[column-first], x
			}
		})
		if whole {
			continue
		}
		if pick < 0 || r.share(&r.pool.patterns[pick], left) < leastShare {
			break
		}
		take(&r.pool.patterns[pick], 1)
	}
	plan.Missing = left
	r.plans = append(r.plans, plan)
	return operations
}

// leastShare of a piece of stock that must be used if a pattern is rounded up.
const leastShare = 0.6

// programme is the cheapest fractional plan for what is left; nil if nothing
// is.
func (r *rounder) programme(left, stock []int) (lp *master.LP, patterns []int) {
	var demand, limit, penalty []float64
	rows := make([]int, len(left))
	dearest := 1.0
	for _, s := range r.in.Stock {
		dearest = max(dearest, float64(s.Price))
	}
	for k, n := range left {
		rows[k] = -1
		if n > 0 {
			rows[k] = len(demand)
			demand = append(demand, float64(n))
			penalty = append(penalty, 4*dearest)
		}
	}
	if len(demand) == 0 {
		return nil, nil
	}
	limited := make([]int, len(stock))
	for s, n := range stock {
		limited[s] = -1
		if r.in.Stock[s].Limit < instance.NoLimit {
			limited[s] = len(demand) + len(limit)
			limit = append(limit, float64(max(n, 0)))
		}
	}
	lp = master.New(demand, limit, penalty)
	for i := range r.pool.patterns {
		t := &r.pool.patterns[i]
		if !t.Sound || stock[t.Stock] <= 0 {
			continue
		}
		c := master.Column{Cost: float64(r.in.Stock[t.Stock].Price)}
		for k, n := range t.Counts {
			if rows[k] >= 0 && n > 0 {
				c.Entries = append(c.Entries, master.Entry{Row: rows[k], Value: float64(min(n, left[k]))})
			}
		}
		if len(c.Entries) == 0 {
			continue
		}
		if limited[t.Stock] >= 0 {
			c.Entries = append(c.Entries, master.Entry{Row: limited[t.Stock], Value: 1})
		}
		lp.Add(c)
		patterns = append(patterns, i)
	}
	return lp, patterns
}

// times is how often t can be cut before it would cut more than is left.
func (r *rounder) times(t *Pattern, left, stock []int) int {
	n := stock[t.Stock]
	for k, c := range t.Counts {
		if c > 0 {
			n = min(n, left[k]/c)
		}
	}
	return n
}

// share is how much of its stock t uses for what is left.
func (r *rounder) share(t *Pattern, left []int) float64 {
	var used float64
	for k, c := range t.Counts {
		used += float64(min(c, left[k])) * float64(r.in.Kinds[k].L) * float64(r.in.Kinds[k].W)
	}
	st := r.in.Stock[t.Stock]
	return math.Min(1, used/(float64(st.L)*float64(st.W)))
}
