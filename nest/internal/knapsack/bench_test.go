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
		for _, orientations := range []instance.Orientation{instance.Upright, instance.Upright | instance.Turned} {
			b.Run(fmt.Sprintf("%s/lies=%d", in.Name, orientations), func(b *testing.B) {
				items, values := in.items(orientations)
				for b.Loop() {
					s := New(in.Stock[0].Length, in.Stock[0].Width, items, free, plentyOfRects, plentyOfWork)
					s.Start(values, 0)
					s.Advance(math.MaxInt64)
					b.ReportMetric(float64(s.rects.n), "rects")
				}
			})
		}
	}
}

// BenchmarkColumns generates bounded columns for the sheets of class until no pattern is worth
// a sheet, and prints the bound. SAWBILL_SET picks the instances by name; SAWBILL_TURN=1 lets
// parts turn.
func BenchmarkColumns(b *testing.B) {
	pick := regexp.MustCompile(cmp.Or(os.Getenv("SAWBILL_SET"), "-020-"))
	orientations := instance.Upright
	if os.Getenv("SAWBILL_TURN") == "1" {
		orientations |= instance.Turned
	}
	for _, in := range readPublished(b, "class") {
		if !pick.MatchString(in.Name) {
			continue
		}
		b.Run(in.Name, func(b *testing.B) {
			items, _ := in.items(orientations)
			lower := in.Known.Lower
			if orientations&instance.Turned != 0 {
				lower = in.Known.Rotated.Lower
			}
			for b.Loop() {
				g := generate(in.Stock[0].Length, in.Stock[0].Width, items)
				b.ReportMetric(float64(g.rounds), "rounds")
				b.ReportMetric(float64(g.work)/1e6, "Msteps")
				b.ReportMetric(float64(g.rects), "rects")
				b.ReportMetric(float64(g.proof)/1e6, "Msteps-proof")
				b.ReportMetric(g.bound, "bound")
				b.ReportMetric(float64(g.patterns), "patterns")
				b.ReportMetric(float64(g.listing)/1e6, "Msteps-listing")
				b.ReportMetric(float64(lower), "known")
			}
		})
	}
}

// generation is the effort of a column generation: rounds, steps of work in all and in the last
// round, the most rectangles of a round.
type generation struct {
	rounds, rects int
	work, proof   int64
	bound         float64
	// The maximal patterns worth nine tenths of a sheet at the last duals, and the work to list
	// them; none if it is too much.
	patterns int
	listing  int64
}

// Work of one round: after little, any pattern serves as a column; without one the round goes
// on to enough.
const (
	little = 1 << 18
	enough = 1 << 28
)

func generate(l, w int64, items []Item) (g generation) {
	const scale = 1 << 36
	var demand, penalty []float64
	for _, it := range items {
		demand = append(demand, float64(it.Count))
		penalty = append(penalty, 1)
	}
	lp := master.New(demand, nil, penalty)
	s := New(l, w, items, free, 1<<20, 1<<24)
	values := make([]int64, len(items))
	for ; g.rounds < 2000; g.rounds++ {
		lp.Solve(1000)
		for n, p := range lp.Duals() {
			values[n] = max(0, int64(math.Round(p*scale)))
		}
		s.Start(values, scale+scale/1000000)
		g.proof = 0
		for found, done := false, false; !done && !found && g.proof < enough; {
			var left int64
			left, done = s.Advance(little)
			g.proof += little - left
			_, found = s.Best()
		}
		g.work += g.proof
		g.rects = max(g.rects, s.rects.n)
		if _, ok := s.Best(); !ok {
			g.bound = lp.Value() * scale / float64(max(s.Bound(), scale))
			s.StartAll(values, scale/10*9)
			left, done := s.Advance(enough)
			g.listing = enough - left
			if done && s.Proven() {
				for range s.All {
					g.patterns++
				}
			}
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
