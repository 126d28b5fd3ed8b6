package nest

import (
	"context"
	"testing"
	"time"
)

// BenchmarkTwoProcessors is the time that a fixed number of steps takes on one
// processor over the time on two, for the same plan: 2 would be ideal. The two
// take turns, so that whatever else the machine does disturbs both. In the
// problem with columns the generator works beside the lanes; in the other one
// there is too much to price, and the lanes are alone.
func BenchmarkTwoProcessors(b *testing.B) {
	mixed := mixedSheets(47, false)
	many := manyParts(500)
	for _, test := range []struct {
		name    string
		problem Problem
	}{{"columns", mixed}, {"lanes", many}} {
		b.Run(test.name, func(b *testing.B) {
			var took [3]time.Duration
			for b.Loop() {
				for processors := 1; processors <= 2; processors++ {
					start := time.Now()
					if _, err := solveOn(context.Background(), test.problem, Options{Iterations: 40_000}, processors); err != nil {
						b.Fatal(err)
					}
					took[processors] += time.Since(start)
				}
			}
			b.ReportMetric(took[1].Seconds()/took[2].Seconds(), "speed-up")
		})
	}
}
