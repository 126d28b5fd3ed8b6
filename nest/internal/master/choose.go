package master

// hopeful is a column that is worth more than it costs.
type hopeful struct {
	column int
	gain   float64 // in relation to its cost; below 0
}

// Where columns are more than manyColumns for each row, to look at all of them takes far
// longer than a pivot. So the best are kept, one in hopefulShare at most, and the best of
// these enters as long as it promises stillGood of what the best of all did.
const (
	manyColumns  = 16
	hopefulShare = 32
	stillGood    = 0.3
)

// choose returns the column whose cost is most below its worth at the prices, in
// relation to its cost, or one that was not far from that when all were last looked at
// (multiple pricing, Orchard-Hays, Advanced Linear-Programming Computing Techniques,
// 1968; from memory); -1 at the optimum.
func (lp *LP) choose() int {
	if len(lp.hopefuls) > 0 {
		least := stillGood * lp.hopefuls[0].gain
		if enter, gain := lp.bestHopeful(); gain < -gainTolerance && gain <= least {
			return enter
		}
	}
	share := 1.0
	most := 1
	if len(lp.basic) > manyColumns*lp.rows {
		share, most = stillGood, max(1, len(lp.basic)/hopefulShare)
	}
	lp.survey(share, most)
	if len(lp.hopefuls) == 0 {
		return -1
	}
	return lp.hopefuls[0].column
}

// Prefer has the next Solve try some columns before all others, such as those that a
// programme used that was much like this one.
func (lp *LP) Prefer(columns []int) {
	lp.hopefuls = lp.hopefuls[:0]
	for _, j := range columns {
		lp.hopefuls = append(lp.hopefuls, hopeful{column: j})
	}
}

func (lp *LP) bestHopeful() (enter int, gain float64) {
	for _, h := range lp.hopefuls {
		lp.done += int64(lp.columns.count(h.column))
		if lp.basic[h.column] {
			continue
		}
		if g := lp.Gain(h.column) * lp.columns.scale[h.column]; g < gain {
			enter, gain = h.column, g
		}
	}
	return enter, gain
}

// survey looks at all columns for the best and for others that promise a share of what it
// does, at most so many; the best comes first. Artificials never come back.
func (lp *LP) survey(share float64, most int) {
	lp.done += int64(len(lp.columns.rows) + len(lp.columns.cost))
	lp.hopefuls = lp.hopefuls[:0]
	best, least := 0.0, -gainTolerance
	c, prices, from := &lp.columns, lp.prices, int32(0)
	for j, to := range c.ends {
		// As Gain does, but without looking up where each column begins.
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
		lp.hopefuls = append(lp.hopefuls, hopeful{j, gain})
		best = min(best, gain)
		least = min(least, share*best)
		if len(lp.hopefuls) == 4*most {
			lp.sift(best, least, most)
		}
	}
	lp.sift(best, least, most)
}

// sift keeps of the hopefuls the best, which comes first, and those of the others that
// promise more than least, at most so many.
func (lp *LP) sift(best, least float64, most int) {
	kept := lp.hopefuls[:0]
	for _, h := range lp.hopefuls {
		switch {
		case h.gain == best:
			kept = append(kept, h)
			last := len(kept) - 1
			kept[0], kept[last] = kept[last], kept[0]
		case h.gain < least:
			kept = append(kept, h)
		}
	}
	lp.hopefuls = kept[:min(most, len(kept))]
}

// Gain is the cost of column j less what it is worth at the prices: what a unit of it would
// add to the value of the solution.
func (lp *LP) Gain(j int) float64 {
	gain := lp.columns.cost[j]
	rows, values := lp.columns.entries(j)
	for i, row := range rows {
		gain -= float64(lp.prices[row] * values[i])
	}
	return gain
}
