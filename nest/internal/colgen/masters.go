package colgen

import (
	"math"
	"slices"

	"sawbill/nest/internal/instance"
	"sawbill/nest/internal/master"
)

// restrictedMaster is the linear program over the columns found so far.
type restrictedMaster struct {
	lp        *master.LP
	loaded    int     // patterns of the column set that are columns
	counts    []int   // pieces per stock that the share master scales; nil in the cost master
	rows      []int   // per stock: its row, or -1
	stockCoef float64 // a pattern's coefficient in the row of its stock
	scale     float64 // converts duals to integer values
}

// startMaster sets up the share master of counts, or the cost master if counts is nil.
func (g *Generator) startMaster(counts []int) {
	g.master.counts = slices.Clone(counts)
	g.master.rows = g.master.rows[:0]
	if counts == nil {
		g.costMaster()
	} else {
		g.shareMaster()
	}
	g.master.loaded = 0
	g.smoothing.center, g.smoothing.best, g.smoothing.off = nil, 0, false
	g.round.stock = len(g.round.pricers)
}

// costMaster is the cheapest fractional plan. Limited stock has a row.
func (g *Generator) costMaster() {
	var limit []float64
	dearest := 1.0
	for _, st := range g.in.Stock {
		row := -1
		if st.Limit < instance.NoLimit {
			row = len(g.in.Kinds) + len(limit)
			limit = append(limit, float64(st.Limit))
		}
		g.master.rows = append(g.master.rows, row)
		dearest = max(dearest, float64(st.Price))
	}
	demand, penalty := g.demandRows(4 * dearest)
	g.master.scale = priceScale / dearest
	g.master.stockCoef = 1
	g.master.lp = g.newLP(demand, limit, penalty)
}

// shareMaster is the smallest share of the counts, the same of each stock, that is enough for a
// fractional plan. If it exceeds 1, the duals give an inequality that excludes the counts.
//
// The share is the first column. Each stock has a row: share times count, less the patterns
// cut, is at least 0.
func (g *Generator) shareMaster() {
	demand, penalty := g.demandRows(unmetPenalty)
	share := master.Column{Cost: 1}
	for s, n := range g.master.counts {
		g.master.rows = append(g.master.rows, len(demand))
		if n > 0 {
			share.Entries = append(share.Entries, master.Entry{Row: g.master.rows[s], Value: float64(n)})
		}
		demand = append(demand, 0)
		penalty = append(penalty, unmetPenalty)
	}
	g.master.scale = priceScale
	g.master.stockCoef = -1
	g.master.lp = g.newLP(demand, nil, penalty)
	g.master.lp.Add(share)
}

// unmetPenalty of a unit of demand exceeds any dual in the share master, since no pattern is
// worth more than all the counts.
const unmetPenalty = 4

func (g *Generator) newLP(demand, limit, penalty []float64) *master.LP {
	lp := master.New(demand, limit, penalty)
	lp.Halt = g.stop
	return lp
}

func (g *Generator) demandRows(penalty float64) (demand, penalties []float64) {
	for _, kd := range g.in.Kinds {
		demand = append(demand, float64(kd.Demand))
		penalties = append(penalties, penalty)
	}
	return demand, penalties
}

// patternAsks is how many patterns are looked at before the generator asks whether to stop.
const patternAsks = 1 << 8

// addColumns adds the new patterns of the column set to the LP.
func (g *Generator) addColumns() {
	for ; g.master.loaded < len(g.columns.patterns); g.master.loaded++ {
		if g.master.loaded%patternAsks == 0 && g.stop.On() {
			return
		}
		p := &g.columns.patterns[g.master.loaded]
		c := master.Column{}
		if g.master.counts == nil {
			c.Cost = float64(g.in.Stock[p.Stock].Price)
		}
		for _, h := range p.Counts {
			n := h.Times
			if g.round.bounded {
				n = min(n, g.in.Kinds[h.Kind].Demand)
			}
			c.Entries = append(c.Entries, master.Entry{Row: h.Kind, Value: float64(n)})
		}
		if r := g.master.rows[p.Stock]; r >= 0 {
			c.Entries = append(c.Entries, master.Entry{Row: r, Value: g.master.stockCoef})
		}
		g.master.lp.Add(c)
	}
}

// threshold returns what a pattern of stock s must be worth more than in pricing. It must
// improve the master; and in bounded pricing within counts, the inequality must not exclude
// these otherwise.
//
// The demand may be worth more than the counts at break-even. Then each piece may be worth a
// proportional share more, and what the stock before it did not use. Patterns below that are
// many, and finding them does not help.
func (g *Generator) threshold(s int) int64 {
	least := g.breakEven(s)
	if !g.round.bounded || g.master.counts == nil || g.master.counts[s] == 0 {
		return least
	}
	spare, rest := g.demandValue()-1, int64(0)
	for t, n := range g.master.counts {
		worth := g.round.pricers[t].upperBound()
		if t >= s {
			worth = g.breakEven(t)
			rest += int64(n) * worth
		}
		spare -= int64(n) * worth
	}
	if spare <= 0 || rest <= 0 {
		return least
	}
	return least + int64(float64(spare)*float64(least)/float64(rest))
}

// breakEven returns the value above which a pattern of stock s has negative reduced cost, with
// a margin for rounding.
func (g *Generator) breakEven(s int) int64 {
	above := 0.0
	if g.master.counts == nil {
		above = float64(g.in.Stock[s].Price)
	}
	if r := g.master.rows[s]; r >= 0 {
		above -= float64(g.master.stockCoef * g.master.lp.Duals()[r])
	}
	return int64(math.Round(above*g.master.scale*(1+1e-9))) + int64(len(g.values))
}

// demandValue returns the value of the demand.
func (g *Generator) demandValue() (need int64) {
	for k, v := range g.values {
		need += v * int64(g.in.Kinds[k].Demand)
	}
	return need
}
