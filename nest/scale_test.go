package nest

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"
)

// manyParts is a problem of n parts in n/10 kinds, for full and half sheets of
// 2440 x 1220 mm with a kerf of 3.2 mm; lengths are tenths of a millimeter.
// Sides are whole millimeters from 60 to 900.
func manyParts(n int) Problem {
	r := rand.New(rand.NewPCG(uint64(n), 0x7363616c65))
	p := Problem{Kerf: 32, Keep: Size{Length: 3000, Width: 800}, Stock: []Stock{
		{Length: 24400, Width: 12200, Price: 6900},
		{Length: 12200, Width: 12200, Price: 3800},
	}}
	from := []Source{{Stock: 0, Upright: true}, {Stock: 1, Upright: true}}
	side := func() int64 { return 10 * (60 + r.Int64N(841)) }
	for range n / 10 {
		p.Blanks = append(p.Blanks, Blank{Length: side(), Width: side(), Count: 10, From: from})
	}
	return p
}

func TestManyPartsAreAsDescribed(t *testing.T) {
	checkGenerated(t, "many parts", manyParts(200), manyParts(200))
}

// BenchmarkStep is the time of one improvement step against the number of
// parts n, and that time over n log n, which must not grow.
func BenchmarkStep(b *testing.B) {
	for _, n := range []int{200, 500, 1000, 2000, 5000, 10000} {
		b.Run(fmt.Sprintf("parts=%05d", n), func(b *testing.B) {
			p := manyParts(n)
			subproblems, _, err := presolve(&p)
			if err != nil {
				b.Fatal(err)
			}
			s := newSolver(nil, subproblems, nil, Options{Walks: 1})
			search := s.engines[0].search
			for b.Loop() {
				search.Walk(0, 1, nil)
			}
			step := float64(b.Elapsed().Nanoseconds()) / float64(b.N)
			b.ReportMetric(step/(float64(n)*math.Log2(float64(n))), "ns/nlogn")
		})
	}
}
