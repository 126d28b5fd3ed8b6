package setcover

// Prices of the kinds, and what no pattern of a stock is worth more than at
// them; nothing in them is negative. Where pieces are worth little more than
// what they must hold, none of them may lose much of its worth: that rules most
// patterns out.
type Prices struct {
	Values   []int64 // per kind
	Capacity []int64 // per stock
	// Of odd sets, what half of their parts is worth, rounded up.
	cuts      zeroHalfCuts
	cutValues []int64
}

// Slack is by how much pieces are worth more than what is wanted. What the
// patterns of a plan lose against their stock's worth makes up the slack; where
// it is negative there is no plan.
func (p *Prices) Slack(demand, pieces []int) (slack int64) {
	for s, n := range pieces {
		slack += p.Capacity[s] * int64(n)
	}
	for k, n := range demand {
		slack -= p.Values[k] * int64(n)
	}
	of := p.cuts.totals(demand)
	for n, v := range p.cutValues {
		slack -= v * int64((of[n]+1)/2)
	}
	return slack
}

// Value is what a pattern is worth.
func (p *Prices) Value(t *Pattern) (worth int64) {
	for _, c := range t.Counts {
		worth += p.Values[c.Kind] * int64(c.Times)
	}
	if p.cuts.size > 0 {
		of := p.cuts.scratch[:p.cuts.size]
		clear(of)
		for _, c := range t.Counts {
			p.cuts.count(of, c.Kind, c.Times)
		}
		for n, v := range p.cutValues {
			worth += v * int64((of[n]+1)/2)
		}
	}
	return worth
}
