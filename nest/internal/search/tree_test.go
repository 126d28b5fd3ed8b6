package search

import (
	"math/rand/v2"
	"testing"

	"sawbill/nest/internal/instance"
)

func sampleInstance(r *rand.Rand) *instance.Instance {
	in := &instance.Instance{Stages: instance.NoLimit, KeepLength: 20, KeepWidth: 10}
	for range 1 + r.IntN(3) {
		in.Stock = append(in.Stock, instance.Stock{
			L: int64(60 + r.IntN(60)), W: int64(40 + r.IntN(40)), Price: int64(r.IntN(9)), Limit: instance.NoLimit,
		})
		if n := len(in.Stock) - 1; n > 0 && r.IntN(2) == 0 {
			in.Stock[n].Price, in.Stock[n].OnHand, in.Stock[n].Limit = 0, true, 1+r.IntN(3)
		}
	}
	for range 2 + r.IntN(8) {
		k := instance.Kind{L: int64(4 + r.IntN(40)), W: int64(4 + r.IntN(30)), Demand: 1 + r.IntN(6)}
		for range in.Stock {
			k.Orientations = append(k.Orientations, instance.Upright|instance.Turned)
		}
		in.Kinds = append(in.Kinds, k)
	}
	in.Prepare()
	return in
}

// check recounts a tree from its root. Children fill each split exactly, levels alternate, a
// split has at most one leftover, and the totals are right.
func (t *tree) check(tb testing.TB, e *env) {
	tb.Helper()
	var parts, rests int
	var filled, value int64
	var walk func(n int32)
	walk = func(n int32) {
		c := &t.nodes[n]
		switch c.role {
		case part:
			parts++
			filled += e.kinds[c.kind].area
			k := e.kinds[c.kind]
			if c.turned && (c.l != k.w || c.w != k.l) || !c.turned && (c.l != k.l || c.w != k.w) {
				tb.Fatalf("part %d is %d x %d, kind %d x %d, turned %v", n, c.l, c.w, k.l, k.w, c.turned)
			}
			if t.parts[c.pos] != n {
				tb.Fatalf("part %d is lost from the list", n)
			}
		case leftover:
			rests++
			value += e.worth(c.l, c.w)
			if t.gaps[c.pos] != (gap{c.l, c.w, e.worth(c.l, c.w), n}) {
				tb.Fatalf("rest %d is lost from the list", n)
			}
		case split:
			var along int32
			within := 0
			for m := c.first; m != none; m = t.nodes[m].next {
				d := &t.nodes[m]
				if d.parent != n || d.level != c.level+1 {
					tb.Fatalf("node %d hangs wrongly under %d", m, n)
				}
				if d.role == split && d.dir == c.dir {
					tb.Fatalf("split %d repeats the direction of %d", m, n)
				}
				if d.role == leftover {
					within++
					if c.leftover != m {
						tb.Fatalf("split %d does not know its rest", n)
					}
				}
				across := d.w == c.w
				if c.dir == instance.Rip {
					along += d.w
					across = d.l == c.l
				} else {
					along += d.l
				}
				if !across {
					tb.Fatalf("child %d is not as long or wide as split %d", m, n)
				}
				walk(m)
			}
			if within > 1 || within == 0 && c.leftover != none {
				tb.Fatalf("split %d has %d rests", n, within)
			}
			full := c.l
			if c.dir == instance.Rip {
				full = c.w
			}
			if along != full {
				tb.Fatalf("children of %d measure %d of %d", n, along, full)
			}
		}
	}
	walk(0)
	if parts != len(t.parts) || rests != len(t.gaps) || e.stock[t.stock].area-filled != t.freeArea || value != t.value {
		tb.Fatalf("counted %d parts, %d rests, area %d, value %d; the tree says %d, %d, %d, %d",
			parts, rests, filled, value, len(t.parts), len(t.gaps), t.freeArea, t.value)
	}
}

func (s *state) check(tb testing.TB) {
	tb.Helper()
	var cost instance.Cost
	var value, missing int64
	count := make([]int, len(s.e.kinds))
	for i, t := range s.trees {
		t.check(tb, s.e)
		if s.heads[i] != t.gapSummary() {
			tb.Fatalf("tree %d is not what its head says", i)
		}
		if t.closed {
			tb.Fatal("a closed tree was kept")
		}
		cost = cost.Plus(s.e.stock[t.stock].cost, 1)
		value += t.value - s.e.stock[t.stock].forgone
		for _, n := range t.parts {
			count[t.nodes[n].kind]++
		}
	}
	for _, k := range s.missing {
		missing += s.e.kinds[k].area
		count[k]++
	}
	for k, n := range count {
		if n != s.e.in.Kinds[k].Demand {
			tb.Fatalf("kind %d is there %d times of %d", k, n, s.e.in.Kinds[k].Demand)
		}
	}
	if cost != s.cost || value != s.value || missing != s.missingArea {
		tb.Fatalf("counted %v, %d, %d; the state says %v, %d, %d", cost, value, missing, s.cost, s.value, s.missingArea)
	}
}

func TestStepsKeepTheTreesWhole(t *testing.T) {
	for seed := range uint64(60) {
		r := rand.New(rand.NewPCG(seed, 0))
		l := newWalk(newEnv(sampleInstance(r), false), seed, 0)
		l.construct()
		l.state.commit()
		l.migrateTo(l.state.plan())
		for range 120 {
			l.step()
			l.state.check(t)
			l.updateBest()
			l.state.check(t)
		}
	}
}

func TestUndoRestoresThePlan(t *testing.T) {
	for seed := range uint64(60) {
		r := rand.New(rand.NewPCG(seed, 0))
		l := newWalk(newEnv(sampleInstance(r), false), seed, 0)
		l.construct()
		l.state.commit()
		for range 20 {
			before := l.state.plan()
			l.state.begin()
			l.ruin()
			l.sort(randomOrder)
			l.recreate(noGoal)
			l.state.undo()
			l.state.check(t)
			after := l.state.plan()
			if before.Cost != after.Cost || len(before.Layouts) != len(after.Layouts) {
				t.Fatalf("seed %d: %v and %d layouts became %v and %d", seed, before.Cost, len(before.Layouts), after.Cost, len(after.Layouts))
			}
			for i := range before.Layouts {
				if instance.ComparePieces(before.Layouts[i].Root, after.Layouts[i].Root) != 0 {
					t.Fatalf("seed %d: layout %d changed", seed, i)
				}
			}
		}
	}
}

func TestStepsAllocateNothing(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 0))
	l := newWalk(newEnv(sampleInstance(r), false), 1, 0)
	l.construct()
	l.state.commit()
	l.migrateTo(l.state.plan())
	for range 2000 {
		l.step()
	}
	if n := testing.AllocsPerRun(500, l.step); n > 0.1 {
		t.Errorf("%v allocations a step", n)
	}
}
