package knapsack

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"sawbill/nest/internal/instance"
)

// ruled finds the counts that can be cut from a piece under rules, by every cut of every
// integer size, from the stock down.
type ruled struct {
	items []Item
	rules Rules
	known map[ruledPiece]map[string][]int
}

type ruledPiece struct {
	l, w  int64
	under instance.Dir
	level int
	tail  bool // the rest of a split in direction under
}

// piece is a child of a split in direction under, or the stock.
func (e *ruled) piece(l, w int64, under instance.Dir, level int) map[string][]int {
	key := ruledPiece{l, w, under, level, false}
	if all, ok := e.known[key]; ok {
		return all
	}
	all := map[string][]int{}
	e.add(all, make([]int, len(e.items)))
	if under != instance.Rip || w >= e.rules.NarrowestRip {
		for n, it := range e.items {
			if it.Orientations&instance.Upright != 0 && it.L == l && it.W == w || it.Orientations&instance.Turned != 0 && it.W == l && it.L == w {
				one := make([]int, len(e.items))
				one[n] = 1
				e.add(all, one)
			}
		}
		for _, dir := range []instance.Dir{instance.Rip, instance.Crosscut} {
			if dir != under && level < e.rules.Stages && (level > 0 || e.rules.FirstCut == instance.None || e.rules.FirstCut == dir) {
				e.split(all, l, w, dir, level)
			}
		}
	}
	e.known[key] = all
	return all
}

// tail is a row of one or more children.
func (e *ruled) tail(l, w int64, dir instance.Dir, level int) map[string][]int {
	key := ruledPiece{l, w, dir, level, true}
	if all, ok := e.known[key]; ok {
		return all
	}
	all := map[string][]int{}
	for _, c := range e.piece(l, w, dir, level+1) {
		e.add(all, c)
	}
	e.split(all, l, w, dir, level)
	e.known[key] = all
	return all
}

func (e *ruled) split(all map[string][]int, l, w int64, dir instance.Dir, level int) {
	both := func(p, q map[string][]int) {
		for _, a := range p {
			for _, b := range q {
				sum := slices.Clone(a)
				for n := range sum {
					sum[n] += b[n]
				}
				e.add(all, sum)
			}
		}
	}
	if dir == instance.Crosscut {
		for x := int64(1); x < l; x++ {
			both(e.piece(x, w, dir, level+1), e.tail(l-x, w, dir, level))
		}
	} else {
		for y := int64(1); y < w; y++ {
			both(e.piece(l, y, dir, level+1), e.tail(l, w-y, dir, level))
		}
	}
}

func (e *ruled) add(all map[string][]int, counts []int) {
	text := make([]byte, len(counts))
	for n, c := range counts {
		if c > e.items[n].Count {
			return
		}
		text[n] = byte(c)
	}
	all[string(text)] = counts
}

func TestSearchUnderRulesEqualsEveryCutOfEverySize(t *testing.T) {
	found := 0
	for seed := range uint64(4000) {
		r := rand.New(rand.NewPCG(seed, 6))
		l, w, items, values := tiny(seed)
		l, w = min(l, 8), min(w, 8)
		rules := Rules{
			Stages:       []int{1, 2, 3, 4, 5, instance.NoLimit}[r.IntN(6)],
			FirstCut:     instance.Dir(r.IntN(3)),
			NarrowestRip: int64(r.IntN(6)),
		}
		e := ruled{items, rules, map[ruledPiece]map[string][]int{}}
		patterns := e.piece(l, w, instance.None, 0)
		var best int64
		for _, c := range patterns {
			best = max(best, worth(c, values))
		}
		in := instance.Instance{Stages: rules.Stages, Kinds: make([]instance.Kind, len(items)), Stock: []instance.Stock{{L: l, W: w, FirstCut: rules.FirstCut, NarrowestRip: rules.NarrowestRip}}}
		tables := int64(plentyOfWork)
		if seed%4 == 0 {
			tables = 2 + r.Int64N(200) // coarse ones
		}
		s := New(l, w, items, rules, plentyOfRects, tables)
		if s == nil {
			continue
		}
		for _, above := range []int64{0, best - 1, best} {
			if above < 0 {
				continue
			}
			s.Start(values, above)
			s.Advance(math.MaxInt64)
			got, ok := s.Best()
			if ok != (best > above) || ok && got != best || !s.Proven() || s.Bound() != max(best, above) {
				t.Fatalf("seed %d, %+v: above %d: %d, %v, bound %d, proven %v; every cut gives %d", seed, rules, above, got, ok, s.Bound(), s.Proven(), best)
			}
			checkPattern(t, s, items, values)
			if ok {
				found++
				if p := s.Pattern(); !in.Allows(0, p) {
					t.Fatalf("seed %d: %+v do not allow %+v", seed, rules, p)
				}
			}
		}
		for _, above := range []int64{0, best * 3 / 4} {
			checkAll(t, seed, s, items, values, above, patterns)
			for p := range s.All {
				if !in.Allows(0, p.Piece()) {
					t.Fatalf("seed %d: %+v do not allow %+v", seed, rules, p.Piece())
				}
			}
		}
	}
	if found < 2000 {
		t.Errorf("only %d patterns found", found)
	}
}
