package nest_test

import (
	"context"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"sawbill/nest"
)

// placing decides whether pieces can be cut from one stock with defects. It tries every cut at
// every unit of length, so stock must be small.
type placing struct {
	*exhaustive
	stock int
	known map[spot]bool
}

// spot is a rectangle in its place, and the pieces to be cut from it.
type spot struct {
	x, y, l, w int64
	set, level int
	last       nest.Cut
}

func (e *placing) fits(at spot) bool {
	if at.set == 0 {
		return true
	}
	if at.l <= 0 || at.w <= 0 {
		return false
	}
	if e.p.Stages == 0 {
		at.level = min(at.level, 1)
	}
	if ok, known := e.known[at]; known {
		return ok
	}
	e.known[at] = e.whole(at) || e.cut(at)
	return e.known[at]
}

// whole reports whether the one piece wanted is the rectangle as it is.
func (e *placing) whole(at spot) bool {
	for i, b := range e.pieces {
		if at.set != 1<<i {
			continue
		}
		for _, size := range e.lies(b, e.stock) {
			if size.Length == at.l && size.Width == at.w && e.divides(b, e.stock, size, at.last, at.level) {
				return !slices.ContainsFunc(e.p.Stock[e.stock].Defects, func(d nest.Defect) bool {
					return at.x < d.X+d.Length && d.X < at.x+at.l && at.y < d.Y+d.Width && d.Y < at.y+at.w
				})
			}
		}
	}
	return false
}

func (e *placing) cut(at spot) bool {
	st, kerf := e.p.Stock[e.stock], e.p.Kerf
	for _, cut := range []nest.Cut{nest.Rip, nest.Crosscut} {
		level := at.level
		if cut != at.last {
			level++
		}
		if e.p.Stages > 0 && level > e.p.Stages || at.level == 0 && st.FirstCut != nest.AnyCut && st.FirstCut != cut {
			continue
		}
		along := at.l
		if cut == nest.Rip {
			along = at.w
		}
		for size := int64(1); size < along; size++ {
			for sub := at.set; ; sub = (sub - 1) & at.set {
				near, far := at, at
				near.set, far.set = sub, at.set&^sub
				near.level, far.level, near.last, far.last = level, level, cut, cut
				if cut == nest.Rip {
					near.w, far.y, far.w = size, at.y+size+kerf, at.w-size-kerf
				} else {
					near.l, far.x, far.l = size, at.x+size+kerf, at.l-size-kerf
				}
				narrow := func(s spot) bool { return cut == nest.Rip && s.set != 0 && s.w < st.NarrowestRip }
				if !narrow(near) && !narrow(far) && e.fits(near) && e.fits(far) {
					return true
				}
				if sub == 0 {
					break
				}
			}
		}
	}
	return false
}

// flawed adds one to three defects to some of the stock.
func flawed(p nest.Problem, r *rand.Rand) nest.Problem {
	for i := range p.Stock {
		s := &p.Stock[i]
		if i > 0 && r.IntN(3) == 0 {
			continue
		}
		for range 1 + r.IntN(3) {
			d := nest.Defect{X: r.Int64N(s.Length), Y: r.Int64N(s.Width)}
			d.Length, d.Width = 1+r.Int64N(min(s.Length-d.X, 2+s.Length/4)), 1+r.Int64N(min(s.Width-d.Y, 2+s.Width/4))
			s.Defects = append(s.Defects, d)
		}
	}
	return p
}

// smallFlawed is a problem of at most three pieces and small stock with defects.
func smallFlawed(seed uint64) nest.Problem {
	r := rand.New(rand.NewPCG(seed, 13))
	p := nest.Problem{Kerf: int64(r.IntN(2)), Stages: []int{0, 0, 2, 3}[r.IntN(4)], Keep: nest.Size{Length: 4, Width: 4}}
	for range 1 + r.IntN(2) {
		p.Stock = append(p.Stock, nest.Stock{
			Length: int64(6 + r.IntN(6)), Width: int64(5 + r.IntN(5)), TrimLength: int64(r.IntN(2)), Price: int64(1 + r.IntN(9)),
			Count: r.IntN(3), FirstCut: nest.Cut(max(0, r.IntN(5)-2)), NarrowestRip: int64(max(0, r.IntN(5)-2)),
		})
	}
	for range 1 + r.IntN(3) {
		b := nest.Blank{Length: int64(1 + r.IntN(6)), Width: int64(1 + r.IntN(5)), Count: 1}
		for s := range p.Stock {
			b.From = append(b.From, nest.Source{Stock: s, Upright: true, Turned: r.IntN(2) == 0})
		}
		p.Blanks = append(p.Blanks, b)
	}
	return flawed(p, r)
}

// No bound is above the least cost around the defects, and no plan costs less.
func TestDefectsAgainstExhaustiveSearch(t *testing.T) {
	n := problems(300, 100, 25000)
	possible, met := 0, 0
	for seed := range n {
		p := smallFlawed(seed)
		plan := solve(t, p, nest.Options{Iterations: 200, Seed: seed, Walks: 1})
		paint(t, p, plan)
		least, ok := minCost(p)
		if !ok {
			if plan.Complete() {
				t.Fatalf("seed %d: a complete plan where exhaustive search finds none: %+v", seed, plan)
			}
			continue
		}
		possible++
		if plan.Bound > least || plan.Complete() && plan.Cost < least {
			t.Fatalf("seed %d: cost %d, bound %d; the least cost is %d", seed, plan.Cost, plan.Bound, least)
		}
		if plan.Complete() && plan.Cost == least {
			met++
		}
	}
	t.Logf("%d of %d plans cost the least", met, possible)
	if met < possible*95/100 {
		t.Errorf("%d of %d plans cost the least", met, possible)
	}
}

// Plans around defects hold in larger problems too, and are the same on any number of
// processors.
func TestPlansAroundDefectsHold(t *testing.T) {
	for seed := range uint64(80) {
		p := flawed(randomProblem(seed), rand.New(rand.NewPCG(seed, 14)))
		plan := solve(t, p, nest.Options{Iterations: 80, Seed: seed, Workers: 1})
		paint(t, p, plan)
		if seed%5 == 0 {
			again := solve(t, p, nest.Options{Iterations: 80, Seed: seed, Workers: 2})
			if d := cmp.Diff(plan, again); d != "" {
				t.Errorf("seed %d: %s", seed, d)
			}
			last := &nest.Last{Problem: p, Plan: plan}
			again = solve(t, p, nest.Options{Iterations: 1, Last: last})
			if len(again.Unplaced) > len(plan.Unplaced) || plan.Complete() && again.Cost > plan.Cost {
				t.Errorf("seed %d: cost %d, and %d before", seed, again.Cost, plan.Cost)
			}
		}
	}
}

// A sheet of 100 x 60 with a knot of 4 x 4 in the middle of its length, 2 from the edge: two
// parts of 47 x 60 lie beside it, with the knot in the waste between them.
func TestPartsLieBesideAKnot(t *testing.T) {
	p := nest.Problem{
		Stock:  []nest.Stock{{Length: 100, Width: 60, Price: 7, Defects: []nest.Defect{{X: 48, Y: 2, Length: 4, Width: 4}}}},
		Blanks: []nest.Blank{want(2, 47, 60, 0)},
		Keep:   nest.Size{Length: 10, Width: 10},
	}
	plan := solve(t, p, nest.Options{Iterations: 40})
	if plan.Cost != 7 || !plan.Proven() {
		t.Errorf("cost %d, bound %d", plan.Cost, plan.Bound)
	}
	p.Kerf = 6 // the blade alone turns all of 94 to 100 to dust, and the knot with it
	p.Stock[0].Defects[0] = nest.Defect{X: 47, Y: 2, Length: 6, Width: 4}
	if plan := solve(t, p, nest.Options{Iterations: 40}); plan.Cost != 7 {
		t.Errorf("a kerf over the defect: cost %d", plan.Cost)
	}
	p.Kerf, p.Stock[0].Defects[0].X = 0, 46
	if plan := solve(t, p, nest.Options{Iterations: 40}); plan.Cost != 14 {
		t.Errorf("a knot too near: cost %d, 14 is the least", plan.Cost)
	}
}

// What is left beside a defect is kept where it is large enough.
func TestOffcutsKeepClearOfDefects(t *testing.T) {
	p := task(want(1, 30, 56, 0))
	p.Stock[0].Defects = []nest.Defect{{X: 60, Y: 20, Length: 2, Width: 2}}
	plan := solve(t, p, nest.Options{Iterations: 200})
	var kept int64
	var look func(n nest.Node)
	look = func(n nest.Node) {
		if n.Use == nest.Offcut {
			kept += n.Length * n.Width
		}
		for _, c := range n.Children {
			look(c)
		}
	}
	look(plan.Layouts[0].Root)
	if kept < 50*56 {
		t.Errorf("offcuts of %d are kept: %+v", kept, plan.Layouts[0].Root)
	}
}

// The sheet of task is 96 x 56 inside a trim of 2; a defect of 10 x 10 begins at 40, 20.
func TestVerifyKnowsDefects(t *testing.T) {
	p := task(want(1, 38, 56, 0))
	p.Stock[0].Defects = []nest.Defect{{X: 40, Y: 20, Length: 10, Width: 10}}
	part := func(length int64) nest.Node { return upright(0, length, 56) }
	tests := []struct {
		reason string
		root   nest.Node
		length int64 // of the blank
		wrong  string
	}{
		{"the part ends at the defect", crosscut(96, 56, part(38), waste(7, 56), offcut(47, 56)), 38, ""},
		{"the part is 1 longer", crosscut(96, 56, part(39), waste(6, 56), offcut(47, 56)), 39, "node 0: a part or an offcut at 2, 2 holds some of defect 0"},
		{"the kerf runs over the defect", crosscut(96, 56, part(38), waste(8, 56), offcut(46, 56)), 38, ""},
		{"the offcut begins in the defect", crosscut(96, 56, part(38), waste(4, 56), offcut(50, 56)), 38, "node 2: a part or an offcut at 48, 2 holds"},
		{"all behind the part is waste, as it holds the defect", crosscut(96, 56, part(38), waste(56, 56)), 38, ""},
		{"what is clear is called waste", crosscut(96, 56, part(38), waste(7, 56), waste(47, 56)), 38, "is called waste"},
		{"the part lies behind the defect", crosscut(96, 56, waste(46, 56), part(38), waste(8, 56)), 38, ""},
		{"the part lies behind, in part on the defect", crosscut(96, 56, waste(45, 56), part(38), waste(9, 56)), 38, "node 1: a part or an offcut at 49, 2 holds"},
	}
	for _, test := range tests {
		t.Run(test.reason, func(t *testing.T) {
			p.Blanks[0].Length = test.length
			err := nest.Verify(p, once(test.root))
			if test.wrong == "" && err != nil || test.wrong != "" && (err == nil || !strings.Contains(err.Error(), test.wrong)) {
				t.Errorf("%v, want %q", err, test.wrong)
			}
		})
	}
	for _, d := range []nest.Defect{{X: -1, Length: 2, Width: 2}, {X: 99, Length: 2, Width: 2}, {Length: 0, Width: 2}} {
		p.Stock[0].Defects = []nest.Defect{d}
		if _, err := nest.Solve(context.Background(), p, nest.Options{Iterations: 1}); err == nil {
			t.Errorf("defect %+v is accepted", d)
		}
	}
}
