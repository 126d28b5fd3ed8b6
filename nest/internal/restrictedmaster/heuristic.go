// Package restrictedmaster makes integer plans from the patterns in a pool: set covering
// over the patterns of heuristics, as in Monaci and Toth, INFORMS J. Comput. 18, 2006; from
// memory.
package restrictedmaster

import (
	"slices"

	"sawbill/nest/internal/instance"
	"sawbill/nest/internal/pool"
	"sawbill/nest/internal/setcover"
)

// Heuristic is a restricted-master heuristic: it seeks plans of a pool's patterns within
// target counts of stock that cost less than the best plan. It works in portions and takes
// the same course on every machine.
//
// In one round of the targets it searches among the patterns of the pool. In the next, a
// pricing callback adds patterns at every node (branch and price, Barnhart et al., Oper.
// Res. 46, 1998; from memory). The caller puts these into the pool.
type Heuristic struct {
	patternPricer
	pool   *pool.Pool
	demand []int // per kind
	parts  int
	areas  setcover.Prices

	targets targetQueue
	run     targetRun
	known   warmStart

	separateAt int64  // work after which the next run separates cuts
	searches   uint64 // begun
	workDone   int64
	overdrawn  int64
	plans      []*instance.Plan // found since the last NewPlans
}

// targetQueue goes round the targets as long as the pool grows.
type targetQueue struct {
	list    [][]int // counts per stock, the cheapest first
	next    int
	round   int
	retryAt int // growth of the pool at which the next round begins
}

// targetRun is the search for one target.
type targetRun struct {
	snapshot   pool.Snapshot    // that it chooses from
	search     *setcover.Search // nil between runs
	workLeft   int64
	separating bool // cuts, at its root
}

// warmStart is what the last run's root knew.
type warmStart struct {
	support []int // pool IDs of the patterns in its solution
	prices  *setcover.Prices
	cuts    *setcover.Cuts // nil if they do not help
}

// New makes a heuristic without targets. The pool may grow between portions.
func New(in *instance.Instance, p *pool.Pool, seed uint64) *Heuristic {
	a := &Heuristic{patternPricer: patternPricer{in: in, seed: seed}, pool: p, areas: setcover.AreaPrices(in), separateAt: firstSeparation}
	for _, kd := range in.Kinds {
		a.demand = append(a.demand, kd.Demand)
		a.parts += kd.Demand
	}
	return a
}

// SetTargets sets the counts of each stock that cheaper plans may have, the cheapest first.
func (a *Heuristic) SetTargets(targets [][]int) {
	if !slices.EqualFunc(targets, a.targets.list, slices.Equal) {
		a.targets.list, a.targets.next, a.targets.retryAt = targets, 0, 0
		a.run.search = nil
	}
}

// NewPlans returns the plans made since the last call.
func (a *Heuristic) NewPlans() []*instance.Plan {
	plans := a.plans
	a.plans = nil
	return plans
}

// Prices returns those of the last root relaxation; nil before the first.
func (a *Heuristic) Prices() *setcover.Prices { return a.known.prices }

// A run has minWork and patternWork for each pattern. A round follows when the pool has
// grown by one in growth.
const (
	minWork     = 1 << 26
	patternWork = 1 << 13
	growth      = 4
)

// Runs separate cuts after firstSeparation of work, and again each time that the work has
// grown by separationGrowth: a separation takes about a second.
const (
	firstSeparation  = 1 << 29
	separationGrowth = 3
)

// Work goes on for about so many comparisons, or fewer if no target is left to try.
func (a *Heuristic) Work(work int64) {
	work -= a.overdrawn
	for work > 0 && (a.run.search != nil || a.startTarget()) {
		portion := min(work, a.run.workLeft)
		cutWork := a.run.search.CutWork()
		left, done := a.run.search.Advance(portion)
		work -= portion - left
		a.workDone += portion - left
		// Later runs use the cuts as well, so they do not count against this one.
		a.run.workLeft -= portion - left - (a.run.search.CutWork() - cutWork)
		if done || a.run.workLeft <= 0 {
			a.finish()
		}
	}
	a.overdrawn = max(0, -work) // the next call works that much less
}

// startTarget starts a run for the next target, and reports whether there is one now.
func (a *Heuristic) startTarget() bool {
	t := &a.targets
	if t.next >= len(t.list) {
		if a.pool.Growth < t.retryAt {
			return false
		}
		t.next = 0
		t.round++
	}
	if t.next == 0 {
		t.retryAt = a.pool.Growth + len(a.pool.Patterns)/growth + 1
	}
	if len(t.list) == 0 {
		return false
	}
	a.run.snapshot = a.pool.Snapshot
	a.run.search = setcover.New(a.demand, a.stockLimits(t.list[t.next]), a.run.snapshot.Patterns, []setcover.Prices{a.areas})
	a.run.workLeft = minWork + patternWork*int64(len(a.run.snapshot.Patterns))
	t.next++
	a.randomize()
	a.warmStart()
	return true
}

// stockLimits returns the pieces of each stock that a target allows. Free stock is not
// limited to the target, since more of it costs nothing.
func (a *Heuristic) stockLimits(target []int) []int {
	pieces := slices.Clone(target)
	for s, st := range a.in.Stock {
		pieces[s] = min(pieces[s], st.Limit) // a bound may assume more than there is
		if st.Price == 0 {
			pieces[s] = min(st.Limit, a.parts)
		}
	}
	return pieces
}

// randomize makes the search restart at random: in every other round with the pricing
// callback, else with cuts if they are due or known.
func (a *Heuristic) randomize() {
	a.searches++
	a.patternPricer.reset()
	seed := a.seed + a.searches
	if a.targets.round%2 == 1 {
		a.run.search.Randomize(seed, a.price)
		return
	}
	a.run.search.Randomize(seed, nil)
	if a.run.separating = a.known.cuts != nil || a.workDone >= a.separateAt; a.run.separating {
		a.run.search.SeparateCuts()
	}
}

// warmStart starts the root relaxation from the last run's solution, which mostly changes
// little with a few patterns more.
func (a *Heuristic) warmStart() {
	var patterns []int
	for _, id := range a.known.support {
		if n, ok := a.run.snapshot.Index(id); ok {
			patterns = append(patterns, n)
		}
	}
	a.run.search.WarmStart(patterns, a.known.cuts)
}

// finish ends the run and keeps its plan, if any, and its root for the next run.
func (a *Heuristic) finish() {
	search := a.run.search
	if chosen, ok := search.Solution(); ok {
		a.plans = append(a.plans, a.plan(chosen))
		a.targets.next = len(a.targets.list) // the others cost more
	}
	if p := search.Prices(); p != nil {
		a.known.prices = p
	}
	a.known.support = a.known.support[:0]
	for _, n := range search.Support() {
		if n < len(a.run.snapshot.Patterns) {
			a.known.support = append(a.known.support, a.run.snapshot.ID(n))
		}
	}
	if a.run.separating {
		a.known.cuts, a.run.separating = search.Cuts(), false
		a.separateAt = separationGrowth * a.workDone
	}
	a.run.search = nil
}

func (a *Heuristic) plan(chosen []int) *instance.Plan {
	plan := &instance.Plan{Missing: make([]int, len(a.in.Kinds))}
	placed := make([]int, len(a.in.Kinds))
	for _, n := range chosen {
		stock, root := a.pattern(n)
		a.in.AddLayout(plan, stock, root, placed)
	}
	return plan
}

// pattern returns pattern n of the search as a cutting tree.
func (a *Heuristic) pattern(n int) (stock int, root instance.Piece) {
	pooled := len(a.run.snapshot.Patterns)
	if n < pooled {
		return a.run.snapshot.Patterns[n].Stock, a.run.snapshot.Root(n)
	}
	m := &a.made[n-pooled]
	return m.stock, m.root
}
