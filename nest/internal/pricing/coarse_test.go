package pricing

import (
	"math"
	"math/rand/v2"
	"testing"

	"sawbill/nest/internal/instance"
)

// randomItems draws a piece of stock and its items.
func randomItems(r *rand.Rand) (l, w int64, items []Item, values []int64) {
	l, w = int64(20+r.IntN(60)), int64(20+r.IntN(60))
	for k := range 1 + r.IntN(5) {
		items = append(items, Item{int64(3 + r.IntN(30)), int64(3 + r.IntN(30)), instance.Orientation(1 + r.IntN(3)), k})
		values = append(values, int64(r.IntN(200)))
	}
	return l, w, items, values
}

func TestCoarseGridsEncloseTheTruth(t *testing.T) {
	equal, fitting := 0, 0
	for seed := range uint64(2000) {
		r := rand.New(rand.NewPCG(seed, 5))
		l, w, items, values := randomItems(r)
		exact := NewGrid(l, w, items, Rules{}, math.MaxInt64/4, nil)
		want := exact.Solve(values)
		work := exact.Work() >> r.IntN(8)
		outer, inner := NewOuter(l, w, items, Rules{}, work, nil), NewInner(l, w, items, Rules{}, work, nil)
		for _, g := range []*Grid{outer, inner} {
			if g == nil {
				continue
			}
			if g.Work() > 2*work+2 {
				t.Errorf("seed %d: %d comparisons where %d are wanted", seed, g.Work(), work)
			}
			got := g.Solve(values)
			if g == outer && got < want {
				t.Fatalf("seed %d: outer grid of %v has %d, the truth is %d", seed, g.scale, got, want)
			}
			if g == inner && got > want {
				t.Fatalf("seed %d: inner grid of %v has %d, the truth is %d", seed, g.scale, got, want)
			}
			if got == want {
				equal++
			}
			p, fits := g.Pattern()
			if fits {
				checkPattern(t, g, values, got)
				if p.L != l || p.W != w || got > want {
					t.Fatalf("seed %d: a pattern %d x %d worth %d fits %d x %d, where the best is worth %d", seed, p.L, p.W, got, l, w, want)
				}
				fitting++
				continue
			}
			if g == inner {
				t.Fatalf("seed %d: a pattern of an inner grid does not fit", seed)
			}
			counts := make([]int, len(items))
			p.CountParts(counts)
			var sum int64
			for k, n := range counts {
				sum += int64(n) * values[k]
			}
			if sum != got {
				t.Fatalf("seed %d: the pattern is worth %d, not %d", seed, sum, got)
			}
		}
	}
	if equal < 300 || fitting < 300 {
		t.Errorf("only %d values equal the truth, %d patterns fit", equal, fitting)
	}
}

func TestCoarseGridWithEnoughWorkIsExact(t *testing.T) {
	for seed := range uint64(100) {
		l, w, items, _ := randomItems(rand.New(rand.NewPCG(seed, 6)))
		if g := NewOuter(l, w, items, Rules{}, math.MaxInt64/4, nil); !g.Exact() {
			t.Errorf("seed %d: steps of %v", seed, g.scale)
		}
	}
}

// BenchmarkCoarse makes a grid for a hundred kinds on a large sheet.
func BenchmarkCoarse(b *testing.B) {
	r := rand.New(rand.NewPCG(1, 7))
	var items []Item
	for k := range 100 {
		items = append(items, Item{int64(1000 + r.IntN(8000)), int64(500 + r.IntN(5000)), instance.Upright | instance.Turned, k})
	}
	for b.Loop() {
		g := NewOuter(24432, 12232, items, Rules{}, 1<<23, nil)
		b.ReportMetric(float64(g.scale.l), "step")
		b.ReportMetric(float64(g.Work()), "work")
	}
}
