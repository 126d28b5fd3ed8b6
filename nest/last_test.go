package nest_test

import (
	"context"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"

	"sawbill/nest"
)

// edited is p after one or two changes, as somebody makes them who designs.
func edited(p nest.Problem, r *rand.Rand) nest.Problem {
	p.Stock, p.Blanks = slices.Clone(p.Stock), slices.Clone(p.Blanks)
	for range 1 + r.IntN(2) {
		b, s := r.IntN(len(p.Blanks)), r.IntN(len(p.Stock))
		switch r.IntN(12) {
		case 0:
			p.Blanks[b].Count = max(0, p.Blanks[b].Count-1)
		case 1:
			p.Blanks[b].Count += r.IntN(2)
		case 2:
			p.Blanks[b].Length = max(1, p.Blanks[b].Length+int64(r.IntN(5)-2))
		case 3:
			p.Blanks = slices.Delete(p.Blanks, b, b+1)
			p.Blanks = append(p.Blanks, nest.Blank{Length: int64(2 + r.IntN(8)), Width: int64(2 + r.IntN(6)), Count: 1,
				From: []nest.Source{{Stock: s, Upright: true}}})
		case 4:
			p.Blanks[b].From = slices.Clone(p.Blanks[b].From)
			for i := range p.Blanks[b].From {
				f := &p.Blanks[b].From[i]
				f.Upright, f.Turned = f.Turned || r.IntN(2) == 0, f.Upright
			}
		case 5:
			if !p.Stock[s].OnHand {
				p.Stock[s].Price = int64(1 + r.IntN(20))
			}
		case 6:
			p.Stock[s].Count = r.IntN(4)
		case 7:
			p.Stock[s].Length += int64(r.IntN(5) - 2)
		case 8:
			p.Stock[s].FirstCut = nest.Cut(r.IntN(3))
		case 9:
			p.Stock[s].NarrowestRip = int64(r.IntN(4))
		case 10:
			p.Stages = []int{0, 1, 2, 3}[r.IntN(4)]
		case 11:
			p.Kerf = int64(r.IntN(3))
		}
	}
	return p
}

// A bound that is carried from one problem to the next, and from there to a third, is never
// above the least cost; the first plan of the next search holds.
func TestCarriedBoundHoldsAgainstExhaustiveSearch(t *testing.T) {
	n := problems(250, 100, 5000)
	carried := 0
	for seed := range n {
		r := rand.New(rand.NewPCG(seed, 12))
		p := smallProblem(seed + 50_000)
		last := &nest.Last{Problem: p, Plan: solve(t, p, nest.Options{Iterations: 200, Seed: seed, Walks: 1})}
		for step := range 3 {
			p = edited(p, r)
			few := nest.Options{Iterations: 1, Walks: 1}
			cold := solve(t, p, few)
			few.Last = last
			plan := solve(t, p, few)
			least, ok := minCost(p)
			switch {
			case ok && plan.Bound > least:
				t.Fatalf("seed %d, step %d: bound %d is above the least cost %d", seed, step, plan.Bound, least)
			case ok && plan.Complete() && plan.Cost < least:
				t.Fatalf("seed %d, step %d: cost %d is below the least cost %d", seed, step, plan.Cost, least)
			case !ok && plan.Complete():
				t.Fatalf("seed %d, step %d: a complete plan where there is none", seed, step)
			}
			if plan.Bound > cold.Bound {
				carried++
			}
			if step == 1 {
				plan = solve(t, p, nest.Options{Iterations: 200, Seed: seed, Walks: 1, Last: last})
			}
			last = &nest.Last{Problem: p, Plan: plan}
		}
	}
	t.Logf("%d of %d bounds are greater for what was carried", carried, 3*n)
	if carried == 0 {
		t.Error("nothing was carried")
	}
}

// ended is the plan before any improvement.
func ended(t *testing.T, p nest.Problem, last *nest.Last) nest.Plan {
	t.Helper()
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	plan, err := nest.Solve(ctx, p, nest.Options{Walks: 1, Last: last})
	if err != nil {
		t.Fatal(err)
	}
	if err := nest.Verify(p, plan); err != nil {
		t.Fatal(err)
	}
	return plan
}

// The plan of the same problem comes back as it was, before any step, and what it proved. One
// part less costs no more.
func TestLastPlanComesBack(t *testing.T) {
	same := 0
	for seed := range uint64(80) {
		p := randomProblem(seed)
		plan := solve(t, p, nest.Options{Iterations: 80, Seed: seed})
		again := ended(t, p, &nest.Last{Problem: p, Plan: plan})
		if again.Cost > plan.Cost || len(again.Unplaced) > len(plan.Unplaced) {
			t.Errorf("seed %d: cost %d, and %d before", seed, again.Cost, plan.Cost)
		}
		if few := solve(t, p, nest.Options{Iterations: 1, Last: &nest.Last{Problem: p, Plan: plan}}); few.Bound < plan.Bound {
			t.Errorf("seed %d: bound %d, and %d before", seed, few.Bound, plan.Bound)
		}
		if cmp.Equal(plan.Layouts, again.Layouts) {
			same++
		}
		fewer := randomProblem(seed)
		for i := range fewer.Blanks {
			if b := &fewer.Blanks[i]; b.Count > 0 {
				b.Count--
				break
			}
		}
		if again := ended(t, fewer, &nest.Last{Problem: p, Plan: plan}); plan.Complete() && again.Cost > plan.Cost {
			t.Errorf("seed %d: cost %d for one part less, and %d before", seed, again.Cost, plan.Cost)
		}
	}
	if same < 76 {
		t.Errorf("%d of 80 plans are the same", same)
	}
}

// A last plan that is not one of its problem is left out, and no last plan whatever does harm.
func TestLastPlanThatIsNoneIsLeftOut(t *testing.T) {
	for seed := range uint64(60) {
		p, other := randomProblem(seed), randomProblem(seed+1000)
		plan := solve(t, other, nest.Options{Iterations: 40})
		want := solve(t, p, nest.Options{Iterations: 40})
		got := solve(t, p, nest.Options{Iterations: 40, Last: &nest.Last{Problem: p, Plan: plan}})
		if nest.Verify(p, plan) != nil && !cmp.Equal(want, got) {
			t.Errorf("seed %d: %s", seed, cmp.Diff(want, got))
		}
		solve(t, p, nest.Options{Iterations: 40, Last: &nest.Last{Problem: other, Plan: plan}})
	}
}
