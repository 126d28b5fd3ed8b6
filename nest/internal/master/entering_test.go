package master

import (
	"math"
	"math/rand/v2"
	"testing"
)

// manyPatterns is a covering program with so many columns that most pivots price candidates
// only.
func manyPatterns(seed uint64, rows int) (lp *LP, patterns []Column) {
	r := rand.New(rand.NewPCG(seed, 2))
	demand, penalty := make([]float64, rows), make([]float64, rows)
	for row := range rows {
		demand[row], penalty[row] = float64(1+r.IntN(5)), 100
	}
	lp = New(demand, nil, penalty)
	for range 2 * manyColumns * rows {
		c := Column{Cost: float64(1 + r.IntN(9))}
		for row := range rows {
			if r.IntN(3) == 0 {
				c.Entries = append(c.Entries, Entry{row, float64(1 + r.IntN(3))})
			}
		}
		patterns = append(patterns, c)
	}
	return lp, patterns
}

// Whatever is priced first, the solver ends where no column has a negative reduced cost, at the
// one optimal value.
func TestManyColumnsEndAtTheOptimum(t *testing.T) {
	for seed := range uint64(60) {
		rows := 2 + int(seed%12)
		var values []float64
		for _, prefer := range []bool{false, true} {
			lp, patterns := manyPatterns(seed, rows)
			for _, c := range patterns {
				lp.Add(c)
			}
			if prefer { // a slack twice, a pattern, and a basic column
				lp.PriceFirst([]int{rows, rows, lp.Columns() - 1, 0})
			}
			if !lp.Solve(10_000) {
				t.Fatalf("seed %d: no optimum", seed)
			}
			for j := rows; j < lp.Columns(); j++ {
				if gain := lp.ReducedCost(j); gain < -1e-6 || lp.basic[j] && gain > 1e-6 {
					t.Fatalf("seed %d: column %d gains %g at the optimum, basic %v", seed, j, gain, lp.basic[j])
				}
			}
			values = append(values, lp.Value())
		}
		if math.Abs(values[0]-values[1]) > 1e-6*values[0] {
			t.Errorf("seed %d: optimum %g, and %g where some columns were preferred", seed, values[0], values[1])
		}
	}
}

func TestReducedCostIsCostLessDuals(t *testing.T) {
	lp, patterns := manyPatterns(1, 6)
	first := lp.Columns()
	for _, c := range patterns {
		lp.Add(c)
	}
	lp.Solve(5)
	for n, c := range patterns {
		want := c.Cost
		for _, e := range c.Entries {
			want -= lp.Duals()[e.Row] * e.Value
		}
		if got := lp.ReducedCost(first + n); math.Abs(got-want) > 1e-9 {
			t.Fatalf("pattern %d gains %g, want %g", n, got, want)
		}
	}
}

// The support of one program, priced first, leads a similar one to the optimum with little
// work.
func TestColumnsPricedFirstSaveWork(t *testing.T) {
	lp, patterns := manyPatterns(3, 12)
	for _, c := range patterns {
		lp.Add(c)
	}
	lp.Solve(10_000)
	var used []int
	lp.Support(func(j int, _ float64) { used = append(used, j) })
	again, _ := manyPatterns(3, 12)
	for _, c := range patterns {
		again.Add(c)
	}
	again.PriceFirst(used)
	again.Solve(10_000)
	if again.Work() >= lp.Work() {
		t.Errorf("%d products, and %d where what will be used is preferred", lp.Work(), again.Work())
	}
}
