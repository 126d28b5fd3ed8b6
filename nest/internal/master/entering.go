package master

// candidate is a column of negative reduced cost.
type candidate struct {
	column      int
	reducedCost float64 // relative to its cost
}

// With more than manyColumns for each row, pricing all columns takes far longer than a pivot.
// Then one column in candidateShare is kept as a candidate, at most. The best of these enters
// as long as it has goodEnough of the best reduced cost when all were last priced.
const (
	manyColumns    = 16
	candidateShare = 32
	goodEnough     = 0.3
)

// chooseEntering returns the column with the lowest reduced cost relative to its cost, or a
// candidate that is nearly as good; -1 at the optimum. Multiple pricing: Orchard-Hays, Advanced
// Linear-Programming Computing Techniques, 1968; from memory.
func (lp *LP) chooseEntering() int {
	if len(lp.candidates) > 0 {
		least := goodEnough * lp.candidates[0].reducedCost
		if enter, gain := lp.bestCandidate(); gain < -reducedCostTolerance && gain <= least {
			return enter
		}
	}
	share := 1.0
	most := 1
	if len(lp.basic) > manyColumns*lp.rows {
		share, most = goodEnough, max(1, len(lp.basic)/candidateShare)
	}
	lp.priceAll(share, most)
	if len(lp.candidates) == 0 {
		return -1
	}
	return lp.candidates[0].column
}

// PriceFirst makes the next Solve price some columns before all others, such as the solution of
// a similar program.
func (lp *LP) PriceFirst(columns []int) {
	lp.candidates = lp.candidates[:0]
	for _, j := range columns {
		lp.candidates = append(lp.candidates, candidate{column: j})
	}
}

func (lp *LP) bestCandidate() (enter int, gain float64) {
	for _, h := range lp.candidates {
		lp.work += int64(lp.columns.count(h.column))
		if lp.basic[h.column] {
			continue
		}
		if g := lp.ReducedCost(h.column) * lp.columns.scale[h.column]; g < gain {
			enter, gain = h.column, g
		}
	}
	return enter, gain
}

// priceAll prices all columns and keeps at most most candidates: the best one first, and others
// with a share of its reduced cost. Artificials never come back.
func (lp *LP) priceAll(share float64, most int) {
	lp.work += int64(len(lp.columns.rows) + len(lp.columns.cost))
	lp.candidates = lp.candidates[:0]
	best, least := 0.0, -reducedCostTolerance
	c, prices, from := &lp.columns, lp.duals, int32(0)
	for j, to := range c.ends {
		// As ReducedCost, without looking up where each column begins.
		gain := c.cost[j]
		values := c.values[from:to]
		for i, row := range c.rows[from:to] {
			gain -= float64(prices[row] * values[i])
		}
		from = to
		gain *= c.scale[j]
		if gain >= least || lp.basic[j] || j < lp.rows && c.cost[j] > 0 {
			continue
		}
		lp.candidates = append(lp.candidates, candidate{j, gain})
		best = min(best, gain)
		least = min(least, share*best)
		if len(lp.candidates) == 4*most {
			lp.prune(best, least, most)
		}
	}
	lp.prune(best, least, most)
}

// prune keeps the best candidate, which comes first, and at most most in all of those below
// least.
func (lp *LP) prune(best, least float64, most int) {
	kept := lp.candidates[:0]
	for _, h := range lp.candidates {
		switch {
		case h.reducedCost == best:
			kept = append(kept, h)
			last := len(kept) - 1
			kept[0], kept[last] = kept[last], kept[0]
		case h.reducedCost < least:
			kept = append(kept, h)
		}
	}
	lp.candidates = kept[:min(most, len(kept))]
}

// ReducedCost returns the cost of column j less its coefficients times the duals: what a unit
// of it adds to the value of the solution.
func (lp *LP) ReducedCost(j int) float64 {
	gain := lp.columns.cost[j]
	rows, values := lp.columns.entries(j)
	for i, row := range rows {
		gain -= float64(lp.duals[row] * values[i])
	}
	return gain
}
