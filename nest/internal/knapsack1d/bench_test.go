package knapsack1d

import (
	"math/rand/v2"
	"testing"
)

// BenchmarkSolve finds the best row of 100 sizes at values near their sizes, as masters give
// them. The lengths hold about 4 and about 15 of them.
func BenchmarkSolve(b *testing.B) {
	for _, c := range []struct {
		name  string
		least int64
	}{{"few", 2000}, {"many", 400}} {
		b.Run(c.name, func(b *testing.B) {
			const length = 10_000
			r := rand.New(rand.NewPCG(1, 4))
			var items []Item
			for range 100 {
				items = append(items, Item{Size: c.least + r.Int64N(c.least), Count: 1 + r.IntN(3)})
			}
			s := New(length, items)
			values := make([]int64, len(items))
			for b.Loop() {
				for i, it := range items {
					values[i] = it.Size<<16 + r.Int64N(it.Size<<12)
				}
				s.Solve(values, 0)
			}
		})
	}
}
