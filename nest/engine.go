package nest

import (
	"math/big"

	"sawbill/nest/internal/bound"
	"sawbill/nest/internal/instance"
	"sawbill/nest/internal/search"
)

// engine is all that works on one instance: the search that betters its plan,
// and the bound on what it can cost.
type engine struct {
	search *search.Search
	bound  int64 // proven: no plan costs less
}

// task is one engine's share of a round.
type task func(stop func() bool)

func newEngine(in *instance.Instance, seed uint64, lanes int) *engine {
	b := bound.Price(in, new(big.Rat))
	return &engine{search: search.New(in, b, seed, lanes), bound: b}
}

// plan adds the engine's tasks of a round of so many steps, within the budget
// of steps in all.
func (e *engine) plan(tasks []task, steps, budget int64) []task {
	left := budget - e.search.Steps()
	if e.search.Done() || left <= 0 {
		return tasks
	}
	lanes := int64(e.search.Lanes())
	steps = min(steps, (left-1)/lanes+1)
	for i := range e.search.Lanes() {
		if n := min(steps, left); n > 0 {
			tasks = append(tasks, func(stop func() bool) { e.search.Walk(i, n, stop) })
			left -= n
		}
	}
	return tasks
}
