package pricing

import (
	"math"
	"math/rand/v2"
	"testing"

	"sawbill/nest/internal/instance"
)

// staged tries every cut of every integer size with limited stages. It shares no code with the
// grid.
type staged struct {
	items  []Item
	values []int64
	known  map[[5]int64]int64
}

// best returns the value of l x w with so many levels left, the first of them in direction dir
// unless that is None.
func (s *staged) best(l, w int64, dir instance.Dir, levels int64) int64 {
	key := [5]int64{l, w, int64(dir), levels}
	if v, ok := s.known[key]; ok {
		return v
	}
	var v int64
	for n, it := range s.items {
		if it.Orientations&instance.Upright != 0 && it.L == l && it.W == w || it.Orientations&instance.Turned != 0 && it.W == l && it.L == w {
			v = max(v, s.values[n])
		}
	}
	if levels > 0 && dir != instance.Crosscut {
		v = max(v, s.row(l, w, instance.Rip, levels))
	}
	if levels > 0 && dir != instance.Rip {
		v = max(v, s.row(l, w, instance.Crosscut, levels))
	}
	s.known[key] = v
	return v
}

// row returns the value of l x w cut in direction dir: piece by piece, of every smaller size.
func (s *staged) row(l, w int64, dir instance.Dir, levels int64) int64 {
	full := w
	if dir == instance.Crosscut {
		full = l
	}
	most := make([]int64, full+1)
	for size := int64(1); size <= full; size++ {
		most[size] = most[size-1]
		for first := int64(1); first <= size && first < full; first++ {
			a, b := l, first
			if dir == instance.Crosscut {
				a, b = first, w
			}
			most[size] = max(most[size], most[size-first]+s.best(a, b, dir.Across(), levels-1))
		}
	}
	return most[full]
}

// randomRules draws a limit on levels and a first cut.
func randomRules(r *rand.Rand) Rules {
	return Rules{Stages: 1 + r.IntN(maxStages), FirstCut: instance.Dir(r.IntN(3))}
}

func allows(rules Rules, l, w int64, kinds int, p instance.Piece) bool {
	in := &instance.Instance{Stages: rules.Stages, Kinds: make([]instance.Kind, kinds), Stock: []instance.Stock{{L: l, W: w, FirstCut: rules.FirstCut}}}
	return in.Allows(0, p)
}

func TestStagedGridEqualsEveryCutOfEverySize(t *testing.T) {
	for seed := range uint64(600) {
		r := rand.New(rand.NewPCG(seed, 8))
		l, w, items, values := randomItems(r)
		l, w = l/2+3, w/2+3
		if r.IntN(3) == 0 {
			l = items[0].L // a part as long as the stock
		}
		if r.IntN(3) == 0 {
			w = items[0].W
		}
		rules := randomRules(r)
		exhaustive := staged{items, values, map[[5]int64]int64{}}
		want := exhaustive.best(l, w, rules.FirstCut, int64(rules.Stages))
		g := NewGrid(l, w, items, rules, math.MaxInt64/16, nil)
		if got := g.Solve(values); got != want {
			t.Fatalf("seed %d: %d within %v, every cut gives %d", seed, got, rules, want)
		}
		checkPattern(t, g, values, want)
		if p, _ := g.Pattern(); !allows(rules, l, w, len(items), p) {
			t.Fatalf("seed %d: the pattern breaks %v: %+v", seed, rules, p)
		}
		g.Start(values)
		for done := false; !done; {
			_, done = g.Advance(1)
		}
		if g.Best() != want {
			t.Fatalf("seed %d: %d in portions, %d at once", seed, g.Best(), want)
		}
	}
}

func TestCoarseStagedGridsEncloseTheTruth(t *testing.T) {
	coarse := 0
	for seed := range uint64(1000) {
		r := rand.New(rand.NewPCG(seed, 9))
		l, w, items, values := randomItems(r)
		rules := randomRules(r)
		exact := NewGrid(l, w, items, rules, math.MaxInt64/16, nil)
		want := exact.Solve(values)
		work := exact.Work() >> r.IntN(8)
		if g := NewOuter(l, w, items, rules, work, nil); g != nil {
			if got := g.Solve(values); got < want {
				t.Fatalf("seed %d: outer grid of %v has %d within %v, the truth is %d", seed, g.scale, got, rules, want)
			}
			if !g.Exact() {
				coarse++
			}
		}
		if g := NewInner(l, w, items, rules, work, nil); g != nil {
			g.Solve(values)
			checkPattern(t, g, values, g.Best())
			if p, fits := g.Pattern(); !fits || g.Exact() && !allows(rules, l, w, len(items), p) {
				t.Fatalf("seed %d: the pattern does not fit or breaks %v: %+v", seed, rules, p)
			}
		}
	}
	if coarse < 100 {
		t.Errorf("only %d grids were coarse", coarse)
	}
}

func TestFirstCutIsKeptWhereThereIsRoomForIt(t *testing.T) {
	kept := 0
	for seed := range uint64(500) {
		r := rand.New(rand.NewPCG(seed, 10))
		l, w, items, values := randomItems(r)
		rules := Rules{Stages: instance.NoLimit, FirstCut: instance.Dir(1 + r.IntN(2))}
		g := NewGrid(l, w, items, rules, math.MaxInt64/16, nil)
		if g.Solve(values) == 0 {
			continue
		}
		p, _ := g.Pattern()
		if allows(rules, l, w, len(items), p) {
			kept++
			continue
		}
		pl, pw := minSize(g.piece(len(g.xs)-1, len(g.ys)-1))
		if rules.FirstCut == instance.Crosscut && pl < l || rules.FirstCut == instance.Rip && pw < w {
			t.Errorf("seed %d: %d x %d of %d x %d are cut, the first cut is not %v", seed, pl, pw, l, w, rules.FirstCut)
		}
	}
	if kept < 400 {
		t.Errorf("the first cut is as asked for in %d patterns only", kept)
	}
}
