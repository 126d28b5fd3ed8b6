package columns

import (
	"math"
	"slices"

	"sawbill/nest/internal/instance"
	"sawbill/nest/internal/master"
)

// programme sets up the linear programme for counts; nil for the first, the
// cheapest fractional plan.
func (g *Generator) programme(counts []int) {
	g.counts = slices.Clone(counts)
	g.rows = g.rows[:0]
	if counts == nil {
		g.cheapest()
	} else {
		g.share()
	}
	g.loaded = 0
	g.center, g.best, g.unsmoothed = nil, 0, false
	g.stock = len(g.pricers)
}

// cheapest asks for the cheapest fractional plan. Stock of which there is only
// so much has a row that limits it.
func (g *Generator) cheapest() {
	var limit []float64
	dearest := 1.0
	for _, st := range g.in.Stock {
		row := -1
		if st.Limit < instance.NoLimit {
			row = len(g.in.Kinds) + len(limit)
			limit = append(limit, float64(st.Limit))
		}
		g.rows = append(g.rows, row)
		dearest = max(dearest, float64(st.Price))
	}
	demand, penalty := g.demand(4 * dearest)
	g.scale = priceScale / dearest
	g.use = 1
	g.lp = master.New(demand, limit, penalty)
}

// share asks what share of the counts, the same of each stock, is enough in
// fractions. If that is more than all of them, the prices make a cut that
// excludes them; if not, the prices are those at which the pieces are worth as
// little as can be beside what they hold.
//
// The share is the first column. Each stock has a row: as many of its counts as
// that less its patterns, at least 0.
func (g *Generator) share() {
	demand, penalty := g.demand(muchMore)
	share := master.Column{Cost: 1}
	for s, n := range g.counts {
		g.rows = append(g.rows, len(demand))
		if n > 0 {
			share.Entries = append(share.Entries, master.Entry{Row: g.rows[s], Value: float64(n)})
		}
		demand = append(demand, 0)
		penalty = append(penalty, muchMore)
	}
	g.scale = priceScale
	g.use = -1
	g.lp = master.New(demand, nil, penalty)
	g.lp.Add(share)
}

// muchMore than all counts are not worth a part that is left undone: no pattern
// is worth more than all of them.
const muchMore = 4

func (g *Generator) demand(undone float64) (demand, penalty []float64) {
	for _, kd := range g.in.Kinds {
		demand = append(demand, float64(kd.Count))
		penalty = append(penalty, undone)
	}
	return demand, penalty
}

// load makes columns of the patterns that the pool has gained.
func (g *Generator) load() {
	for ; g.loaded < len(g.pool.patterns); g.loaded++ {
		p := &g.pool.patterns[g.loaded]
		c := master.Column{}
		if g.counts == nil {
			c.Cost = float64(g.in.Stock[p.Stock].Price)
		}
		for _, h := range p.Counts {
			n := h.Times
			if g.strict {
				n = min(n, g.in.Kinds[h.Kind].Count)
			}
			c.Entries = append(c.Entries, master.Entry{Row: h.Kind, Value: float64(n)})
		}
		if r := g.rows[p.Stock]; r >= 0 {
			c.Entries = append(c.Entries, master.Entry{Row: r, Value: g.use})
		}
		g.lp.Add(c)
	}
}

// threshold is what a pattern of stock s must be worth more than to be looked
// for: that it betters the programme, and, where patterns that count are looked
// for within counts, that it keeps the cut from excluding these.
//
// While what is wanted is worth more than the pieces are to the programme, each
// piece may be worth a share more, in proportion, and what the stock before it
// left over; patterns below that are many, and nothing hangs on them.
func (g *Generator) threshold(s int) int64 {
	least := g.betters(s)
	if !g.strict || g.counts == nil || g.counts[s] == 0 {
		return least
	}
	spare, rest := g.need()-1, int64(0)
	for t, n := range g.counts {
		worth := g.pricers[t].worth()
		if t >= s {
			worth = g.betters(t)
			rest += int64(n) * worth
		}
		spare -= int64(n) * worth
	}
	if spare <= 0 || rest <= 0 {
		return least
	}
	return least + int64(float64(spare)*float64(least)/float64(rest))
}

// betters is what a pattern of stock s must be worth more than to better the
// programme; a trifle more, for prices are rounded.
func (g *Generator) betters(s int) int64 {
	above := 0.0
	if g.counts == nil {
		above = float64(g.in.Stock[s].Price)
	}
	if r := g.rows[s]; r >= 0 {
		above -= float64(g.use * g.lp.Prices()[r])
	}
	return int64(math.Round(above*g.scale*(1+1e-9))) + int64(len(g.values))
}

// need is what all that is wanted is worth.
func (g *Generator) need() (need int64) {
	for k, v := range g.values {
		need += v * int64(g.in.Kinds[k].Count)
	}
	return need
}
