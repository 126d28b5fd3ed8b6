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

// ungrouped is p with each run as one blank of its size, at the end of the list.
func ungrouped(p nest.Problem) (nest.Problem, map[int]nest.Group) {
	blanks, runs := slices.Clone(p.Blanks), map[int]nest.Group{}
	for _, g := range p.Groups {
		run := nest.Blank{Count: g.Count}
		for n, b := range g.Blanks {
			bl := p.Blanks[b]
			blanks[b].Count = 0
			if n == 0 {
				run.Length, run.Width, run.From = bl.Length, bl.Width, slices.Clone(bl.From)
				continue
			}
			if g.Lengthwise {
				run.Length += p.Kerf + bl.Length
			} else {
				run.Width += p.Kerf + bl.Width
			}
			for i := range run.From { // as smallGrouped lists them
				run.From[i].Upright = run.From[i].Upright && bl.From[i].Upright
				run.From[i].Turned = run.From[i].Turned && bl.From[i].Turned
			}
		}
		runs[len(blanks)] = g
		blanks = append(blanks, run)
	}
	p.Blanks, p.Groups = blanks, nil
	return p, runs
}

// divides reports whether a blank of a size, which came off a cut in direction last at a level,
// can be divided if it is a run. It may lie both ways if it is square.
func (e *exhaustive) divides(b, s int, size nest.Size, last nest.Cut, level int) bool {
	g, ok := e.runs[b]
	if !ok {
		return true
	}
	bl, st := e.p.Blanks[b], e.p.Stock[s]
	for _, f := range bl.From {
		for _, turned := range []bool{false, true} {
			l, w := bl.Length, bl.Width
			if turned {
				l, w = w, l
			}
			if f.Stock != s || turned && !f.Turned || !turned && !f.Upright || size.Length != l || size.Width != w {
				continue
			}
			cut, next := nest.Rip, level
			if g.Lengthwise != turned {
				cut = nest.Crosscut
			}
			if cut != last {
				next++
			}
			narrow := false
			for _, m := range g.Blanks {
				across := e.blanks[m].Width
				if turned {
					across = e.blanks[m].Length
				}
				narrow = narrow || cut == nest.Rip && across < st.NarrowestRip
			}
			first := level > 0 || st.FirstCut == nest.AnyCut || st.FirstCut == cut
			if first && !narrow && (e.p.Stages == 0 || next <= e.p.Stages) {
				return true
			}
		}
	}
	return false
}

// smallGrouped adds one or two groups to a small problem, by which it has at most five pieces.
func smallGrouped(seed uint64) nest.Problem {
	p := smallProblem(seed)
	r := rand.New(rand.NewPCG(seed, 15))
	pieces := 0
	for i := range p.Blanks {
		p.Blanks[i].Count = min(p.Blanks[i].Count, 2)
		if pieces += p.Blanks[i].Count; pieces > 3 {
			p.Blanks = p.Blanks[:i]
			break
		}
	}
	for range 1 + r.IntN(2) {
		g := nest.Group{Lengthwise: r.IntN(2) == 0, Count: 1}
		same, turned, upright := int64(2+r.IntN(7)), r.IntN(2) == 0, r.IntN(4) > 0
		for range 2 + r.IntN(2) {
			b := nest.Blank{Length: int64(1 + r.IntN(5)), Width: int64(1 + r.IntN(5)), Count: 1}
			if g.Lengthwise {
				b.Width = same
			} else {
				b.Length = same
			}
			for s := range p.Stock {
				b.From = append(b.From, nest.Source{Stock: s, Upright: upright, Turned: turned || !upright})
			}
			g.Blanks = append(g.Blanks, len(p.Blanks))
			p.Blanks = append(p.Blanks, b)
		}
		if n := len(g.Blanks); r.IntN(3) == 0 { // the last blank is like the first
			g.Blanks[n-1] = g.Blanks[0]
			p.Blanks = p.Blanks[:len(p.Blanks)-1]
			p.Blanks[g.Blanks[0]].Count = 2
		}
		p.Groups = append(p.Groups, g)
	}
	return p
}

// No bound is above the least cost with the runs whole, and no plan costs less.
func TestGroupsAgainstExhaustiveSearch(t *testing.T) {
	n := problems(500, 150, 25000)
	possible, met, proven := 0, 0, 0
	for seed := range n {
		p := smallGrouped(seed)
		plan := solve(t, p, nest.Options{Iterations: 300, Seed: seed, Walks: 1})
		least, ok := minCost(p)
		if !ok {
			if plan.Complete() {
				t.Fatalf("seed %d: a complete plan where exhaustive search finds none: %+v", seed, plan)
			}
			continue
		}
		possible++
		if plan.Bound > least || plan.Complete() && plan.Cost < least {
			t.Fatalf("seed %d: cost %d, bound %d; the least cost is %d\n%+v", seed, plan.Cost, plan.Bound, least, p)
		}
		if plan.Complete() && plan.Cost == least {
			met++
		}
		if plan.Proven() {
			proven++
		}
	}
	t.Logf("of %d plans %d cost the least, %d are proven to", possible, met, proven)
	if met < possible*98/100 || proven < possible*90/100 {
		t.Errorf("of %d plans %d cost the least, %d are proven to", possible, met, proven)
	}
}

// Groups, defects and last plans go together, and plans are the same on any number of processors.
func TestPlansOfGroupsHold(t *testing.T) {
	for seed := range uint64(90) {
		p := smallGrouped(seed)
		if seed%2 == 0 {
			p = flawed(p, rand.New(rand.NewPCG(seed, 16)))
		}
		if seed%3 == 0 { // two runs of each group
			for i := range p.Groups {
				p.Groups[i].Count = 2
				for _, b := range slices.Compact(slices.Sorted(slices.Values(p.Groups[i].Blanks))) {
					p.Blanks[b].Count *= 2
				}
			}
		}
		plan := solve(t, p, nest.Options{Iterations: 150, Seed: seed, Workers: 1})
		paint(t, p, plan)
		again := solve(t, p, nest.Options{Iterations: 150, Seed: seed, Workers: 2})
		if d := cmp.Diff(plan, again); d != "" {
			t.Errorf("seed %d: %s", seed, d)
		}
		again = solve(t, p, nest.Options{Iterations: 1, Last: &nest.Last{Problem: p, Plan: plan}})
		if plan.Complete() && (!again.Complete() || again.Cost > plan.Cost) {
			t.Errorf("seed %d: cost %d, and %d before", seed, again.Cost, plan.Cost)
		}
	}
}

// Three drawer fronts of 30 x 20 in a row take 30+2+30+2+30 = 94 of the 96 x 56 of task.
func TestGrainRunsOnOverDrawerFronts(t *testing.T) {
	p := task(want(3, 30, 20, 0), want(2, 40, 30, 0))
	p.Groups = []nest.Group{{Blanks: []int{0, 0, 0}, Lengthwise: true, Count: 1}}
	plan := solve(t, p, nest.Options{Iterations: 200})
	if plan.Cost != 7 || !plan.Proven() {
		t.Errorf("cost %d, bound %d", plan.Cost, plan.Bound)
	}
	p.Blanks[0].Length = 31 // 97 is more than the sheet has
	if plan := solve(t, p, nest.Options{Iterations: 200}); plan.Complete() || plan.Unplaced[0] != (nest.Unplaced{Blank: 0, Count: 3, Reason: nest.TooLarge}) {
		t.Errorf("%+v", plan.Unplaced)
	}
}

// The sheet of task is 96 x 56; blanks 0 and 1 of 20 x 30 and 25 x 30 follow one another.
func TestVerifyKnowsGroups(t *testing.T) {
	p := task(want(1, 20, 30, 0), want(1, 25, 30, 0))
	p.Groups = []nest.Group{{Blanks: []int{0, 1}, Lengthwise: true, Count: 1}}
	a, b := upright(0, 20, 30), upright(1, 25, 30)
	strip := func(children ...nest.Node) nest.Node {
		return rip(96, 56, crosscut(96, 30, children...), offcut(96, 24))
	}
	tests := []struct {
		reason string
		root   nest.Node
		wrong  string
	}{
		{"in order", strip(a, b, offcut(47, 30)), ""},
		{"behind something else", strip(offcut(47, 30), a, b), ""},
		{"in the wrong order", strip(b, a, offcut(47, 30)), "node 0.0: blank 1 is not within a run of group 0"},
		{"something between", strip(a, offcut(47, 30), b), "node 0.0: blank 0 is not within a run of group 0"},
		{"one above the other", crosscut(96, 56, rip(20, 56, a, offcut(20, 24)), rip(25, 56, b, offcut(25, 24)), offcut(47, 56)), "blank 0 is not within"},
	}
	for _, test := range tests {
		t.Run(test.reason, func(t *testing.T) {
			err := nest.Verify(p, once(test.root))
			if test.wrong == "" && err != nil || test.wrong != "" && (err == nil || !strings.Contains(err.Error(), test.wrong)) {
				t.Errorf("%v, want %q", err, test.wrong)
			}
		})
	}
	for _, g := range []nest.Group{
		{Blanks: []int{0}, Count: 1}, {Blanks: []int{0, 2}, Count: 1}, {Blanks: []int{0, 1}, Count: 1},
		{Blanks: []int{0, 1}, Lengthwise: true, Count: 2}, {Blanks: []int{0, 0}, Lengthwise: true, Count: 1},
	} {
		p.Groups = []nest.Group{g}
		if _, err := nest.Solve(context.Background(), p, nest.Options{Iterations: 1}); err == nil {
			t.Errorf("group %+v is accepted", g)
		}
	}
}
