package nest

import (
	"context"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
)

// BenchmarkTwoProcessors is the time that a fixed number of steps takes on one
// processor over the time on two, for the same plan: 2 would be ideal. The two
// take turns, so that whatever else the machine does disturbs both. Columns
// are generated in parallel with the walks if there is not too much to price, as there
// is in the problem with many parts.
func BenchmarkTwoProcessors(b *testing.B) {
	for _, test := range []struct {
		name    string
		problem Problem
	}{{"mixed", mixedSheets(47, false)}, {"many parts", manyParts(500)}} {
		b.Run(test.name, func(b *testing.B) {
			var took [3]time.Duration
			for b.Loop() {
				for processors := 1; processors <= 2; processors++ {
					start := time.Now()
					if _, err := Solve(context.Background(), test.problem, Options{Iterations: 40_000, Workers: processors}); err != nil {
						b.Fatal(err)
					}
					took[processors] += time.Since(start)
				}
			}
			b.ReportMetric(took[1].Seconds()/took[2].Seconds(), "speed-up")
		})
	}
}

// Who works beside whom does not change the plan.
func TestPlanIsTheSameOnAnyNumberOfProcessors(t *testing.T) {
	for name, problem := range map[string]Problem{"mixed": mixedSheets(47, false), "many parts": manyParts(60)} {
		var want Plan
		for _, processors := range []int{1, 2, 4} {
			got, err := Solve(context.Background(), problem, Options{Iterations: 12_000, Workers: processors})
			if err != nil {
				t.Fatal(err)
			}
			if processors == 1 {
				want = got
			}
			if diff := cmp.Diff(want, got); diff != "" {
				t.Errorf("%s on %d processors: %s", name, processors, diff)
			}
		}
	}
}
