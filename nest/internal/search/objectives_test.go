package search

import (
	"math/rand/v2"
	"testing"

	"sawbill/nest/internal/instance"
)

// recount computes the objectives of a plan from its pieces alone.
func recount(in *instance.Instance, p *instance.Plan) objectives {
	var m objectives
	used := make([]int, len(in.Stock))
	type cutOff struct {
		level int
		size  int64
	}
	var kept []instance.Layout // offcuts, as empty pieces of their stock
	var distinct []instance.Layout
	var value int64
	for _, l := range p.Layouts {
		used[l.Stock]++
		seen := map[cutOff]bool{}
		var walk func(q instance.Piece, level int)
		walk = func(q instance.Piece, level int) {
			if len(q.Children) == 0 {
				if q.Kind == instance.Leftover && q.L >= in.KeepLength && q.W >= in.KeepWidth {
					kept = append(kept, instance.Layout{Stock: l.Stock, Root: q})
				}
				return
			}
			m.cuts += len(q.Children) - 1
			for i, c := range q.Children {
				size := c.W
				if q.Dir == instance.Crosscut {
					size = c.L
				}
				// Children lie in the order of their sizes, the leftover last. Each but the
				// last is cut off at its own setting.
				if i < len(q.Children)-1 {
					seen[cutOff{level, size}] = true
				}
				walk(c, level+1)
			}
		}
		walk(l.Root, 0)
		old := false
		for _, d := range distinct {
			old = old || d.Stock == l.Stock && instance.ComparePieces(d.Root, l.Root) == 0 &&
				d.Root.L == l.Root.L && d.Root.W == l.Root.W
		}
		if !old {
			distinct = append(distinct, l)
			m.setups += len(seen)
		}
	}
	worth := func(l, w int64) int64 {
		if l < in.KeepLength || w < in.KeepWidth {
			return 0
		}
		a := in.Area(l-in.KeepLength/2, w-in.KeepWidth/2)
		return a * a >> instance.AreaBits
	}
	for _, o := range kept {
		value += worth(o.Root.L, o.Root.W)
	}
	for s, st := range in.Stock {
		if st.OnHand {
			value -= int64(used[s]) * worth(st.L, st.W)
		}
		if st.OnHand && used[s] < st.Limit {
			kept = append(kept, instance.Layout{Stock: s, Root: instance.Piece{L: st.L, W: st.W}})
		}
	}
	m.offcuts = unitsOf(value)
	for k, kd := range in.Kinds {
		for _, o := range kept {
			if canRecut(in, o, kd.L, kd.W, k, kd.Orientations[o.Stock]) {
				m.covered += kd.Demand
				break
			}
		}
	}
	return m
}

// unitsOf returns the greatest number of units whose square is at most value.
func unitsOf(value int64) int64 {
	sign := int64(1)
	if value < 0 {
		sign, value = -1, -value
	}
	var root int64
	for (root+1)*(root+1) <= value {
		root++
	}
	return sign * (root * offcutUnits / (1 << (instance.AreaBits / 2)))
}

// canRecut cuts one piece out of o in every way and asks whether the rules allow it.
func canRecut(in *instance.Instance, o instance.Layout, l, w int64, k int, orientations instance.Orientation) bool {
	try := func(l, w int64) bool {
		if l > o.Root.L || w > o.Root.W {
			return false
		}
		for _, first := range []instance.Dir{instance.Rip, instance.Crosscut} {
			root := cutOut(instance.Piece{L: o.Root.L, W: o.Root.W, Kind: instance.Leftover}, l, w, first, k)
			if in.Allows(o.Stock, root) {
				return true
			}
		}
		return false
	}
	return orientations&instance.Upright != 0 && try(l, w) || orientations&instance.Turned != 0 && try(w, l)
}

// cutOut divides p by a cut in direction dir and one across, if needed.
func cutOut(p instance.Piece, l, w int64, dir instance.Dir, kind int) instance.Piece {
	if p.L == l && p.W == w {
		return instance.Piece{L: l, W: w, Kind: kind}
	}
	a, b := p, p
	if dir == instance.Rip {
		a.W, b.W = w, p.W-w
	} else {
		a.L, b.L = l, p.L-l
	}
	if b.L == 0 || b.W == 0 {
		return cutOut(p, l, w, dir.Across(), kind)
	}
	p.Dir = dir
	p.Children = []instance.Piece{cutOut(a, l, w, dir.Across(), kind), b}
	return p
}

func TestObjectivesAreWhatThePlanShows(t *testing.T) {
	for seed := range uint64(80) {
		r := rand.New(rand.NewPCG(seed, 0))
		in := sampleInstance(r)
		in.Stages = []int{1, 2, 3, instance.NoLimit}[r.IntN(4)]
		for i := range in.Stock {
			in.Stock[i].FirstCut = instance.Dir(r.IntN(3))
			in.Stock[i].NarrowestRip = int64(r.IntN(8))
		}
		s := New(in, 0, seed, 1, nil)
		if !s.best.Complete() {
			continue
		}
		l := s.polishers[0]
		for range 100 {
			l.step()
			// Incremental evaluation equals a fresh one.
			running := l.evaluator.total(l.state)
			l.evaluator.evaluateAll(l.state)
			if fresh := l.evaluator.total(l.state); fresh != running {
				t.Fatalf("seed %d: %+v step by step, %+v at once", seed, running, fresh)
			}
			p := l.state.plan()
			if len(l.state.missing) > 0 {
				continue
			}
			if got, want := l.evaluate(p), recount(in, p); got != want {
				t.Fatalf("seed %d: %+v, by the pieces %+v", seed, got, want)
			}
		}
	}
}

func TestPolishNeverWorsensAnEarlierObjective(t *testing.T) {
	bettered := 0
	for seed := range uint64(40) {
		s := New(sampleInstance(rand.New(rand.NewPCG(seed, 0))), 0, seed, 2, nil)
		if !s.best.Complete() {
			continue
		}
		s.SetBound(s.best.Cost.Price, nil)
		cost, m := s.best.Cost, s.value
		for !s.Done() {
			for i := range s.Walks() {
				s.Walk(i, 64, func() bool { return false })
			}
			s.Join()
			if cost.Less(s.best.Cost) || cost == s.best.Cost && s.value.compare(m) < 0 {
				t.Fatalf("seed %d: %v, %+v became %v, %+v", seed, cost, m, s.best.Cost, s.value)
			}
			if !allThere(s.in, s.best) {
				t.Fatalf("seed %d: not every part is there once", seed)
			}
			if got := recount(s.in, s.best); got != s.value {
				t.Fatalf("seed %d: %+v, by the pieces %+v", seed, s.value, got)
			}
			if s.value != m {
				bettered++
			}
			cost, m = s.best.Cost, s.value
		}
	}
	if bettered < 20 {
		t.Errorf("bettered only %d times", bettered)
	}
}

func allThere(in *instance.Instance, p *instance.Plan) bool {
	counts := make([]int, len(in.Kinds))
	for _, l := range p.Layouts {
		l.Root.CountParts(counts)
	}
	for k, kd := range in.Kinds {
		if counts[k] != kd.Demand {
			return false
		}
	}
	return p.Complete()
}

func TestStepsOfPolishAllocateNothing(t *testing.T) {
	s := New(workshop(1), 0, 1, 1, nil)
	l := s.polishers[0]
	for range 5000 {
		l.step()
	}
	l.found.covered = 1 << 30 // nothing is recorded any more
	if n := testing.AllocsPerRun(500, l.step); n > 0.1 {
		t.Errorf("%v allocations a step", n)
	}
}
