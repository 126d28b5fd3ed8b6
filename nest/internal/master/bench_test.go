package master

import (
	"fmt"
	"math/rand/v2"
	"testing"
)

// BenchmarkSolve solves covering programs with many more columns than rows, as dives do.
func BenchmarkSolve(b *testing.B) {
	for _, size := range []struct{ rows, patterns, held int }{{20, 200, 5}, {40, 2000, 8}, {100, 5000, 25}} {
		b.Run(fmt.Sprintf("%dx%d", size.rows, size.patterns), func(b *testing.B) {
			r := rand.New(rand.NewPCG(1, 1))
			demand, penalty := make([]float64, size.rows), make([]float64, size.rows)
			for i := range demand {
				demand[i], penalty[i] = float64(1+r.IntN(3)), 4
			}
			var patterns []Column
			for range size.patterns {
				c := Column{Cost: 1}
				for row := range size.rows {
					if r.IntN(size.rows) < size.held {
						c.Entries = append(c.Entries, Entry{row, float64(1 + r.IntN(2))})
					}
				}
				patterns = append(patterns, c)
			}
			work := int64(0)
			for b.Loop() {
				lp := New(demand, nil, penalty)
				for _, c := range patterns {
					lp.Add(c)
				}
				lp.Solve(1 << 20)
				work = lp.Work()
			}
			b.ReportMetric(float64(work), "products")
		})
	}
}
