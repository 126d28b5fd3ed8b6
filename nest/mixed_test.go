package nest

import (
	"cmp"
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"
)

// mixedSheets is problem number n of a series with several stock sizes and
// prices. The numbers run through ten classes of parts; through two, three,
// four and five stock sizes; and, every ten, through 20, 40, 60, 80 and 100
// parts.
//
// A piece of stock costs 100 for each unit of its area, less a discount of up
// to 15 %: most for the largest size, but one size in four is priced out of
// order. In a third of the problems there are only few of one size. In half of
// them the kerf is 1.
func mixedSheets(n int, turnable bool) Problem {
	r := rand.New(rand.NewPCG(uint64(n), 0x6d69786564))
	class := mixedClasses[n%len(mixedClasses)]
	p := Problem{Kerf: r.Int64N(2)}
	for range mixedSizes(n) {
		p.Stock = append(p.Stock, Stock{
			Length: class.sheet*7/10 + r.Int64N(class.sheet*7/10+1),
			Width:  class.sheet*7/10 + r.Int64N(class.sheet*7/10+1),
		})
	}
	slices.SortStableFunc(p.Stock, func(a, b Stock) int { return cmp.Compare(a.Length*a.Width, b.Length*b.Width) })
	discount := r.Int64N(16)
	for i := range p.Stock {
		s := &p.Stock[i]
		percent := discount * int64(i) / int64(len(p.Stock)-1)
		if r.IntN(4) == 0 {
			percent = r.Int64N(16)
		}
		s.Price = s.Length * s.Width * (100 - percent)
	}
	var from []Source
	for s := range p.Stock {
		from = append(from, Source{Stock: s, Upright: true, Turned: turnable})
	}
	for range 20 * (1 + n/len(mixedClasses)%5) {
		b := class.draw(r, from)
		for !p.fits(b, -1) {
			b = class.draw(r, from)
		}
		p.Blanks = append(p.Blanks, b)
	}
	if few := r.IntN(len(p.Stock)); r.IntN(3) == 0 && !slices.ContainsFunc(p.Blanks, func(b Blank) bool { return !p.fits(b, few) }) {
		p.Stock[few].Count = 1 + r.IntN(4)
	}
	return p
}

// mixedSizes is the number of stock sizes in problem number n.
func mixedSizes(n int) int { return 2 + (n+n/len(mixedClasses))%4 }

// mixedProblems is how many numbers make the series that is measured.
const mixedProblems = 50

func mixedName(n int) string { return fmt.Sprintf("%d-sizes-%03d", mixedSizes(n), n) }

// fits reports whether b lies upright in some stock other than without.
func (p *Problem) fits(b Blank, without int) bool {
	return slices.ContainsFunc(b.From, func(f Source) bool {
		return f.Stock != without && p.canCut(p.Stock[f.Stock], p.Stock[f.Stock].Usable(), b.Length, b.Width)
	})
}

// mixedClass says what parts are drawn for a square sheet: those of kinds[i] in
// share[i] of ten cases.
type mixedClass struct {
	sheet int64
	kinds []sizeRange
	share []int
}

// sizeRange bounds the sides of a part.
type sizeRange struct{ shortest, longest, narrowest, widest int64 }

func (c mixedClass) draw(r *rand.Rand, from []Source) Blank {
	k := 0
	for at := r.IntN(10); at >= c.share[k]; k++ {
		at -= c.share[k]
	}
	s := c.kinds[k]
	return Blank{
		Length: s.shortest + r.Int64N(s.longest-s.shortest+1),
		Width:  s.narrowest + r.Int64N(s.widest-s.narrowest+1),
		Count:  1, From: from,
	}
}

// The published classes I to VI (Berkey and Wang, J. Oper. Res. Soc. 38, 1987)
// and VII to X (Martello and Vigo, Management Sci. 44, 1998); from memory.
var mixedClasses = func() []mixedClass {
	var classes []mixedClass
	for _, c := range [][2]int64{{10, 10}, {30, 10}, {40, 35}, {100, 35}, {100, 100}, {300, 100}} {
		classes = append(classes, mixedClass{c[0], []sizeRange{{1, c[1], 1, c[1]}}, []int{10}})
	}
	kinds := []sizeRange{{66, 100, 1, 50}, {1, 50, 66, 100}, {50, 100, 50, 100}, {1, 50, 1, 50}}
	for most := range kinds {
		share := []int{1, 1, 1, 1}
		share[most] = 7
		classes = append(classes, mixedClass{100, kinds, share})
	}
	return classes
}()

func TestMixedSheetsAreAsDescribed(t *testing.T) {
	limited, unordered := 0, 0
	for n := range mixedProblems {
		for _, turnable := range []bool{false, true} {
			p := mixedSheets(n, turnable)
			checkGenerated(t, mixedName(n), p, mixedSheets(n, turnable))
			if len(p.Stock) < 2 || len(p.Stock) > 5 {
				t.Errorf("%d: %d stock sizes", n, len(p.Stock))
			}
			var rates []int64
			for _, s := range p.Stock {
				rate := s.Price / (s.Length * s.Width)
				if rate < 85 || rate > 100 {
					t.Errorf("%d: %d for each unit of area", n, rate)
				}
				rates = append(rates, -rate)
				if s.Count > 0 {
					limited++
				}
			}
			if !slices.IsSorted(rates) {
				unordered++
			}
		}
	}
	if limited == 0 || unordered == 0 {
		t.Errorf("of 100 problems %d have a limit and %d a size priced out of order", limited, unordered)
	}
}
