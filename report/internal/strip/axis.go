package strip

import "slices"

// axis maps a side of the piece onto the paper. What lies between two cuts is always seen,
// however narrow it is.
type axis struct{ wood, paper []float64 } // of the ends and of each cut, ascending

// leastSeen is the paper between two cuts at least, mm.
const leastSeen = 1.5

// newAxis maps a side that is long on the wood, with cuts at some places.
func newAxis(cuts []float64, long, paper float64) axis {
	wood := slices.Compact(slices.Sorted(slices.Values(append(slices.Clone(cuts), 0, long))))
	least := min(leastSeen, paper/float64(len(wood)-1))
	a := axis{wood, make([]float64, len(wood))}
	for i, at := range wood {
		a.paper[i] = at / long * paper
	}
	for i := 1; i < len(wood); i++ {
		a.paper[i] = max(a.paper[i], a.paper[i-1]+least)
	}
	a.paper[len(wood)-1] = paper
	for i := len(wood) - 2; i > 0; i-- {
		a.paper[i] = min(a.paper[i], a.paper[i+1]-least)
	}
	return a
}

// on is where a place of the wood lies on the paper.
func (a axis) on(wood float64) float64 {
	for i := 1; i < len(a.wood); i++ {
		if wood <= a.wood[i] {
			share := (wood - a.wood[i-1]) / (a.wood[i] - a.wood[i-1])
			return a.paper[i-1] + share*(a.paper[i]-a.paper[i-1])
		}
	}
	return a.paper[len(a.paper)-1]
}
