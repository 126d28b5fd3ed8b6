package knapsack

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"sawbill/nest/internal/instance"
)

// sawn is a piece of stock cut at random under rules, from the stock down. It has the items,
// and all rectangles that a search may build of them on the way to that pattern.
type sawn struct {
	r     *rand.Rand
	rules Rules
	items []Item
	of    map[[2]int64]int // sizes -> item
	value int64
	rects []rect
}

// saw cuts a piece of stock l x w without breaking a rule.
func saw(r *rand.Rand, l, w int64, rules Rules) *sawn {
	s := &sawn{r: r, rules: rules, of: map[[2]int64]int{}}
	dir := rules.FirstCut
	if dir == instance.None {
		dir = instance.Dir(1 + r.IntN(2))
	}
	s.divide(l, w, dir, 0)
	return s
}

// item is one more part of that size.
func (s *sawn) item(l, w int64) rect {
	n, known := s.of[[2]int64{l, w}]
	if !known {
		n = len(s.items)
		s.of[[2]int64{l, w}] = n
		s.items = append(s.items, Item{L: l, W: w, Orientations: instance.Upright, Kind: n})
	}
	s.items[n].Count++
	v := s.worth(n)
	s.value += v
	one := rect{l: l, w: w, value: v}
	s.rects = append(s.rects, one)
	return one
}

// worth is about an item's area.
func (s *sawn) worth(n int) int64 { return 8*s.items[n].L*s.items[n].W + int64(n*n%7) }

// divide cuts a piece in direction dir at a level, or makes an item or waste of it. It returns
// the smallest rectangle around its items, if there are any.
func (s *sawn) divide(l, w int64, dir instance.Dir, level int) (rect, bool) {
	size := &l
	if dir == instance.Rip {
		size = &w
	}
	if level == min(s.rules.Stages, 5) || *size < 4 || level > 0 && (l*w < 40 || s.r.IntN(4) == 0) {
		if level > 0 && s.r.IntN(8) == 0 {
			return rect{}, false
		}
		return s.item(l, w), true
	}
	row, any, whole := rect{}, false, *size
	for left := whole; left > 0; {
		*size = min(left, 2+s.r.Int64N(left))
		if level == 0 && left == whole {
			*size = min(*size, whole-1) // it is cut in this direction, not merely allowed to be
		}
		left -= *size
		part, ok := s.divide(l, w, dir.Across(), level+1)
		switch {
		case ok && any:
			row = besides(row, part, dir)
			s.rects = append(s.rects, row)
		case ok:
			row, any = part, true
		}
	}
	return row, any
}

// besides puts two rectangles side by side, as a search combines them.
func besides(a, b rect, dir instance.Dir) rect {
	sum := rect{value: a.value + b.value, cuts: cuts{dir: dir}}
	if dir == instance.Crosscut {
		sum.l, sum.w = a.l+b.l, max(a.w, b.w)
		sum.levels = 1 + max(a.under(dir, a.w < b.w), b.under(dir, b.w < a.w))
	} else {
		sum.l, sum.w = max(a.l, b.l), a.w+b.w
		sum.levels = 1 + max(a.under(dir, a.l < b.l), b.under(dir, b.l < a.l))
	}
	return sum
}

// A pattern that can be cut is never excluded, by the bound of any rectangle on the way to it
// or by a search.
func TestBoundsAllowWhatHasBeenCut(t *testing.T) {
	searched := 0
	for seed := range uint64(6000) {
		r := rand.New(rand.NewPCG(seed, 8))
		l, w := 8+r.Int64N(60), 8+r.Int64N(60)
		rules := Rules{Stages: []int{1, 2, 3, 4, 5, instance.NoLimit}[r.IntN(6)], FirstCut: instance.Dir(r.IntN(3))}
		cut := saw(r, l, w, rules)
		var values []int64
		for n := range cut.items {
			values = append(values, cut.worth(n))
		}
		work := int64(plentyOfWork)
		if seed%2 == 0 {
			work = 1 << (6 + r.IntN(10)) // coarse tables
		}
		s := New(l, w, cut.items, rules, 1<<12, work)
		if s == nil || cut.value == 0 {
			continue
		}
		s.Start(values, cut.value-1)
		s.bounds.advance(math.MaxInt64)
		if most := s.bounds.stockBound(); most < cut.value {
			t.Fatalf("seed %d, %+v: bound %d, a pattern is worth %d", seed, rules, most, cut.value)
		}
		for _, rc := range cut.rects {
			free := rules.stageSlack(rc.dir, int(rc.levels))
			restL, restW := s.bounds.restPoints(rc.l, rc.w)
			if most := s.bounds.around(free, rc.dir, restL, restW); most < cut.value-rc.value {
				t.Fatalf("seed %d, %+v: bound %d around %d x %d, levels %d in direction %d, where %d has been cut of %d x %d",
					seed, rules, most, rc.l, rc.w, rc.levels, rc.dir, cut.value-rc.value, l, w)
			}
		}
		s.Start(values, cut.value-1)
		s.Advance(1 << 22)
		if got, ok := s.Best(); s.Proven() && (!ok || got < cut.value) {
			t.Fatalf("seed %d, %+v: best %d, a pattern is worth %d", seed, rules, got, cut.value)
		} else if ok {
			searched++
		}
	}
	if searched < 1000 {
		t.Errorf("only %d patterns were found", searched)
	}
}

// A rectangle beside another one may be wider: then the strip around both is, and less is left
// across it. Here 3 x 2 and 1 x 1 lie beside 6 x 9, and 10 x 1 above all.
func TestBoundsAllowAStripWiderThanTheRectangle(t *testing.T) {
	items := []Item{{L: 3, W: 2}, {L: 1, W: 1}, {L: 6, W: 9}, {L: 10, W: 1}}
	values := []int64{1, 1, 10, 10}
	for _, dir := range []instance.Dir{instance.Crosscut, instance.Rip} {
		turned := slices.Clone(items)
		for n := range turned {
			it := &turned[n]
			it.Orientations, it.Count = instance.Upright, 1
			if dir == instance.Rip {
				it.L, it.W = it.W, it.L
			}
		}
		rules := Rules{Stages: 3, FirstCut: dir.Across()}
		s := New(10, 10, turned, rules, plentyOfRects, plentyOfWork)
		s.Start(values, 0)
		s.bounds.advance(math.MaxInt64)
		both := besides(rect{l: turned[0].L, w: turned[0].W}, rect{l: turned[1].L, w: turned[1].W}, dir)
		free := rules.stageSlack(dir, int(both.levels))
		restL, restW := s.bounds.restPoints(both.l, both.w)
		if most := s.bounds.around(free, dir, restL, restW); free != oneStageAcross || most < 20 {
			t.Errorf("direction %d: freedom %d, bound %d around %d x %d; 20 has been cut", dir, free, most, both.l, both.w)
		}
		s.Advance(math.MaxInt64)
		if best, _ := s.Best(); best != 22 {
			t.Errorf("direction %d: best %d, all are worth 22", dir, best)
		}
	}
}

// Bounds do not depend on earlier values.
func TestBoundsBeginAnew(t *testing.T) {
	for seed := range uint64(200) {
		r := rand.New(rand.NewPCG(seed, 9))
		l, w, items, values := tiny(seed)
		rules := Rules{Stages: []int{1, 2, 3, 4, instance.NoLimit}[r.IntN(5)], FirstCut: instance.Dir(r.IntN(3))}
		used, fresh := New(l, w, items, rules, plentyOfRects, plentyOfWork), New(l, w, items, rules, plentyOfRects, plentyOfWork)
		dear := make([]int64, len(values))
		for n, v := range values {
			dear[n] = 3*v + 7
		}
		for _, v := range [][]int64{dear, values} {
			used.Start(v, 0)
			used.bounds.advance(math.MaxInt64)
		}
		fresh.Start(values, 0)
		fresh.bounds.advance(math.MaxInt64)
		for n, want := range tables(fresh.bounds) {
			if got := tables(used.bounds)[n]; !slices.Equal(got, want) {
				t.Fatalf("seed %d, %+v: table %d is %v, and %v where nothing was before", seed, rules, n, got, want)
			}
		}
	}
}

func tables(b *bounds) []table {
	all := []table{b.outer, b.inner.items}
	for _, dir := range []instance.Dir{instance.Crosscut, instance.Rip} {
		all = append(all, b.confined[dir], b.inner.deep[dir], b.inner.under[dir])
		for _, t := range b.inner.staged {
			all = append(all, t[dir])
		}
	}
	return all
}
