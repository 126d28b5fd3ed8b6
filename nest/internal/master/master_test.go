package master

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/mat"
	gonumlp "gonum.org/v1/gonum/optimize/convex/lp"
)

// TestOptimumEqualsGonum solves random covering programs here and with gonum's simplex, in
// standard form.
func TestOptimumEqualsGonum(t *testing.T) {
	for seed := range uint64(300) {
		r := rand.New(rand.NewPCG(seed, 1))
		rows, limits := 1+r.IntN(8), r.IntN(3)
		var demand, limit []float64
		for range rows {
			demand = append(demand, float64(1+r.IntN(40)))
		}
		for range limits {
			limit = append(limit, float64(3+r.IntN(20)))
		}
		const penalty = 1000
		var penalties []float64
		for range demand {
			penalties = append(penalties, penalty)
		}
		lp := New(demand, limit, penalties)
		patterns := 1 + r.IntN(30)
		var columns []Column
		for range patterns {
			c := Column{Cost: float64(1 + r.IntN(30))}
			for row := range rows {
				if v := r.IntN(4); v > 0 {
					c.Entries = append(c.Entries, Entry{row, float64(v)})
				}
			}
			if len(c.Entries) == 0 {
				c.Entries = []Entry{{r.IntN(rows), 1}} // gonum refuses a column of zeros
			}
			if limits > 0 && r.IntN(2) == 0 {
				c.Entries = append(c.Entries, Entry{rows + r.IntN(limits), 1})
			}
			columns = append(columns, c)
		}
		for i, c := range columns {
			lp.Add(c)
			if i%7 == 0 {
				lp.Solve(1000) // continuing from a basis must not matter
				first := 2*rows + limits
				lp.PriceFirst([]int{first + r.IntN(i+1), first + r.IntN(i+1)}) // nor must the columns priced first
			}
		}
		if !lp.Solve(10000) {
			t.Fatalf("seed %d: no optimum after 10000 pivots", seed)
		}

		// Standard form: patterns, unmet demand, surplus, slack.
		width := patterns + 2*rows + limits
		a := mat.NewDense(rows+limits, width, nil)
		c := make([]float64, width)
		for j, col := range columns {
			c[j] = col.Cost
			for _, e := range col.Entries {
				a.Set(e.Row, j, e.Value)
			}
		}
		for row := range rows {
			a.Set(row, patterns+row, 1)
			c[patterns+row] = penalty
			a.Set(row, patterns+rows+row, -1)
		}
		for l := range limits {
			a.Set(rows+l, patterns+2*rows+l, 1)
		}
		want, _, err := gonumlp.Simplex(c, a, append(append([]float64(nil), demand...), limit...), 0, nil)
		if err != nil {
			t.Fatalf("seed %d: gonum: %v", seed, err)
		}
		// Demands are slightly less; no dual exceeds the penalty.
		slack := 1e-6 * (1 + math.Abs(want))
		for _, d := range demand {
			slack += 2 * perturbation * penalty * d
		}
		if got := lp.Value(); got > want+1e-6*(1+want) || got < want-slack {
			t.Errorf("seed %d: optimum %g, gonum finds %g", seed, got, want)
		}
		// Duality certifies the value a second time.
		var dual float64
		for i, p := range lp.Duals() {
			if i < rows {
				dual += p * demand[i]
			} else {
				dual += p * limit[i-rows]
			}
			if i < rows && p < -1e-7 || i >= rows && p > 1e-7 {
				t.Errorf("seed %d: price %g of row %d has the wrong sign", seed, p, i)
			}
		}
		if dual > want+1e-6*(1+want) || dual < want-slack {
			t.Errorf("seed %d: the prices add up to %g, the optimum is %g", seed, dual, want)
		}
	}
}

func TestPerturbedDemandsAreSlightlyLess(t *testing.T) {
	demand := []float64{1, 1, 1, 7, 7, 1000}
	seen := map[float64]bool{}
	for r, got := range perturbed(demand) {
		share := 1 - got/demand[r]
		if share < 0.9*perturbation || share > 2.1*perturbation {
			t.Errorf("demand %g became %g", demand[r], got)
		}
		if seen[share] {
			t.Errorf("demand %d is eased as another one is", r)
		}
		seen[share] = true
	}
}
