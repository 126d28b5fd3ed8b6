package nest

import (
	"context"
	"slices"
	"testing"
)

// Of a job that is edited by one part, the cost is proven in a tenth of the steps, where it was
// proven before. Steps are counted, so the machine does not matter.
func TestEditedJobsAreProvenSooner(t *testing.T) {
	const enough = 40_000
	solve := func(p Problem, last *Last) (plan Plan, steps int64) {
		steps = -1
		ctx, cancel := context.WithCancel(context.Background())
		defer cancel()
		plan, err := Solve(ctx, p, Options{Iterations: enough, Walks: 1, Last: last, Progress: func(now Progress) {
			if now.Complete && now.Cost == now.Bound && steps < 0 {
				steps = now.Iterations
				cancel()
			}
		}})
		if err != nil {
			t.Fatal(err)
		}
		return plan, steps
	}
	edits := map[string]func(*Problem){
		"a part less":   func(p *Problem) { p.Blanks[0].Count-- },
		"a part more":   func(p *Problem) { p.Blanks[len(p.Blanks)-1].Count++ },
		"a part longer": func(p *Problem) { p.Blanks[1].Length += 20 },
		"a new offer":   func(p *Problem) { p.Stock[0].Price += 100 },
	}
	carried, all := 0, 0
	for _, n := range []int{9, 14} {
		p := workshopJob(n)
		plan, before := solve(p, nil)
		if before < 0 {
			t.Fatalf("job %d is not proven", n)
		}
		for name, edit := range edits {
			q := p
			q.Blanks, q.Stock = slices.Clone(p.Blanks), slices.Clone(p.Stock)
			edit(&q)
			_, alone := solve(q, nil)
			got, steps := solve(q, &Last{p, plan})
			if err := Verify(q, got); err != nil {
				t.Errorf("job %d, %s: %v", n, name, err)
			}
			t.Logf("job %d, %s: %d steps, %d alone", n, name, steps, alone)
			all++
			if steps >= 0 && (alone < 0 || steps <= alone/10) {
				carried++
			}
		}
	}
	if carried < 7 {
		t.Errorf("of %d edited jobs %d are proven in a tenth of the steps", all, carried)
	}
}
