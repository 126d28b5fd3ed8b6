package knapsack

import (
	"cmp"
	"fmt"
	"math"
	"os"
	"regexp"
	"testing"

	"sawbill/nest/internal/instance"
	"sawbill/nest/internal/master"
)

func BenchmarkPublished(b *testing.B) {
	for _, in := range readPublished(b, "cgcut") {
		for _, lies := range []instance.Lie{instance.Upright, instance.Upright | instance.Turned} {
			b.Run(fmt.Sprintf("%s/lies=%d", in.Name, lies), func(b *testing.B) {
				items, values := in.items(lies)
				for b.Loop() {
					s := New(in.Stock[0].Length, in.Stock[0].Width, items, plentyOfRects, plentyOfWork)
					s.Start(values, 0)
					s.Advance(math.MaxInt64)
					b.ReportMetric(float64(len(s.rects.at)), "rects")
				}
			})
		}
	}
}

// BenchmarkColumns generates columns with true counts for the sheets of class
// until no pattern is worth a sheet, and prints what that bound is. SAWBILL_SET
// picks the instances by name, SAWBILL_TURN=1 lets parts be turned.
func BenchmarkColumns(b *testing.B) {
	pick := regexp.MustCompile(cmp.Or(os.Getenv("SAWBILL_SET"), "-020-"))
	lies := instance.Upright
	if os.Getenv("SAWBILL_TURN") == "1" {
		lies |= instance.Turned
	}
	for _, in := range readPublished(b, "class") {
		if !pick.MatchString(in.Name) {
			continue
		}
		b.Run(in.Name, func(b *testing.B) {
			items, _ := in.items(lies)
			for b.Loop() {
				g := generate(in.Stock[0].Length, in.Stock[0].Width, items)
				b.ReportMetric(float64(g.rounds), "rounds")
				b.ReportMetric(float64(g.gaveUp), "gave-up")
				b.ReportMetric(float64(g.most), "rects-most")
				b.ReportMetric(float64(g.last), "rects-proof")
				b.ReportMetric(g.bound, "bound")
				b.ReportMetric(float64(in.Known.Lower), "known")
			}
		})
	}
}

type generation struct {
	rounds, gaveUp, most, last int
	bound                      float64
}

func generate(l, w int64, items []Item) (g generation) {
	const scale = 1 << 36
	var demand, penalty []float64
	for _, it := range items {
		demand = append(demand, float64(it.Count))
		penalty = append(penalty, 1)
	}
	lp := master.New(demand, nil, penalty)
	s := New(l, w, items, 300_000, 1<<26)
	values := make([]int64, len(items))
	for ; g.rounds < 1000; g.rounds++ {
		lp.Solve(1000)
		for n, p := range lp.Prices() {
			values[n] = max(0, int64(math.Round(p*scale)))
		}
		s.Start(values, scale+scale/1000000)
		s.Advance(math.MaxInt64)
		g.most = max(g.most, len(s.rects.at))
		if !s.Proven() {
			g.gaveUp++
		}
		if _, ok := s.Best(); !ok {
			g.last = len(s.rects.at)
			g.bound = lp.Value() * scale / float64(max(s.Bound(), scale))
			return g
		}
		counts := make([]int, len(items))
		s.Pattern().CountParts(counts)
		c := master.Column{Cost: 1}
		for n, k := range counts {
			if k > 0 {
				c.Entries = append(c.Entries, master.Entry{Row: n, Value: float64(k)})
			}
		}
		lp.Add(c)
	}
	return g
}
