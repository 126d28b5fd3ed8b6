package setcover

import (
	"cmp"
	"math"
	"math/bits"
	"slices"

	"sawbill/nest/internal/halt"
)

const (
	maxCutStarts = 24   // of the local search for cuts
	maxCutsAdded = 8    // in one round
	maxSlack     = 0.98 // of a cut; from 1 on it is satisfied
)

// separate looks for violated cuts, and reports whether it found any. The slack of a cut has
// two terms. They are the values of the patterns with an odd number of the set's parts, and the
// excess by which the solution covers the set. A cut is violated if the slack is below 1. From
// one kind, local search adds or removes two kinds at a time to lower it.
func (s *Search) separate(p *relaxation) (cuts zeroHalfCuts, some bool) {
	data := p.separation()
	if len(data.kinds) == 0 {
		return p.cuts, false
	}
	type found struct {
		kinds []bool
		slack float64
	}
	var all []found
	for range maxCutStarts {
		start := int(s.randomized.rng.Uint64() >> 32 * uint64(len(data.kinds)) >> 32)
		if data.even[start] {
			continue
		}
		if s.Halt.On() {
			break
		}
		if in, slack := data.localSearch(start, s.Halt); slack < maxSlack {
			kinds := make([]bool, len(p.cuts.members))
			for i, k := range data.kinds {
				kinds[k] = in[i]
			}
			all = append(all, found{kinds, slack})
		}
	}
	slices.SortStableFunc(all, func(a, b found) int { return cmp.Compare(a.slack, b.slack) })
	cuts = p.cuts.clone()
	if cuts.size+maxCutsAdded > maxCuts {
		cuts.retain(p.activeCuts())
	}
	added := 0
	for _, c := range all {
		if added < maxCutsAdded && cuts.add(c.kinds) {
			added++
		}
	}
	return cuts, added > 0
}

// patternSet is a set of patterns, a bit for each in words of 64.
type patternSet []uint64

// separation is the data of the slack of cuts.
type separation struct {
	kinds []int        // with demand
	even  []bool       // per kind: demand is even
	over  []float64    // per kind: excess of the solution over demand
	times []float64    // per pattern: its value in the solution
	odd   []patternSet // per kind: the patterns with an odd number of it
}

func (r *relaxation) separation() *separation {
	c := &separation{}
	at := make([]int, len(r.node.demand))
	for k, n := range r.node.demand {
		at[k] = len(c.kinds)
		if n > 0 {
			c.kinds = append(c.kinds, k)
			c.even = append(c.even, n&1 == 0)
			c.over = append(c.over, -float64(n))
		}
	}
	type use struct {
		pattern *Pattern
		times   float64
	}
	var uses []use
	r.lp.Support(func(column int, times float64) {
		if column >= r.firstColumn {
			uses = append(uses, use{r.pattern(column), times})
		}
	})
	// Large values first show soonest that a set is no better.
	slices.SortStableFunc(uses, func(a, b use) int { return cmp.Compare(b.times, a.times) })
	for _, u := range uses {
		c.times = append(c.times, u.times)
	}
	for range c.kinds {
		c.odd = append(c.odd, make(patternSet, (len(uses)+63)/64))
	}
	for n, u := range uses {
		for _, h := range u.pattern.Counts {
			if held := min(h.Times, r.node.demand[h.Kind]); held > 0 {
				c.over[at[h.Kind]] += float64(float64(held) * u.times)
				c.odd[at[h.Kind]][n/64] |= uint64(held&1) << (n % 64)
			}
		}
	}
	return c
}

// localSearch grows a set from one kind, until it gets no better or stop is on.
func (s *separation) localSearch(start int, stop halt.Signal) (in []bool, slack float64) {
	in = make([]bool, len(s.kinds))
	in[start] = true
	parity := slices.Clone(s.odd[start]) // per pattern: odd number of the set's parts
	over := s.over[start]
	slack = s.add(over, math.Inf(1), parity, nil, nil)
	change := func(i int) float64 {
		if in[i] {
			return -s.over[i]
		}
		return s.over[i]
	}
	for {
		first, second, least := -1, -1, slack-epsilon
		for i := range s.kinds {
			if stop.On() {
				return in, slack
			}
			for j := i; j < len(s.kinds); j++ {
				if i == j && !s.even[i] || s.even[i] != s.even[j] {
					continue
				}
				sum := over + change(i)
				if i != j {
					sum += change(j)
				}
				if i == j {
					sum = s.add(sum, least, parity, s.odd[i], nil)
				} else {
					sum = s.add(sum, least, parity, s.odd[i], s.odd[j])
				}
				if sum < least {
					first, second, least = i, j, sum
				}
			}
		}
		if first < 0 {
			return in, slack
		}
		slack = least
		for _, i := range []int{first, second} {
			over += change(i)
			in[i] = !in[i]
			for w := range parity {
				parity[w] ^= s.odd[i][w]
			}
			if first == second {
				break
			}
		}
	}
}

// add adds to sum the values of the patterns that are in an odd number of the three sets, until
// sum reaches most. The second and third set may be nil.
func (s *separation) add(sum, most float64, one, two, three patternSet) float64 {
	for w, word := range one {
		if two != nil {
			word ^= two[w]
		}
		if three != nil {
			word ^= three[w]
		}
		for ; word != 0 && sum < most; word &= word - 1 {
			sum += s.times[w*64+bits.TrailingZeros64(word)]
		}
	}
	return sum
}

const epsilon = 1e-6
