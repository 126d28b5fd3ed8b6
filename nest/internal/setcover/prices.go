package setcover

// Prices are dual values: values of the kinds, and capacities of the stock. No pattern of a
// stock is worth more than its capacity. Nothing in them is negative. If the slack is small,
// reduced-cost fixing excludes most patterns.
type Prices struct {
	Values   []int64 // per kind
	Capacity []int64 // per stock
	// For each cut, the value of half of its parts, rounded up.
	cuts      zeroHalfCuts
	cutValues []int64
}

// Slack returns the capacity of pieces less the value of demand. The patterns of a solution
// lose exactly that against their capacities, so that there is none if it is negative.
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

// Value returns the value of a pattern.
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
