// Package restrictedmaster makes integer plans from the patterns in a pool: set covering
// over the patterns of heuristics, as in Monaci and Toth, INFORMS J. Comput. 18, 2006; from
// memory.
package restrictedmaster

import (
	"slices"

	"sawbill/nest/internal/halt"
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
	instance.Queue

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

// warmStart keeps the last run's root for the next one.
type warmStart struct {
	support []int // pool IDs of the patterns in its solution
	prices  *setcover.Prices
	cuts    *setcover.Cuts // nil if they do not help
}

// New makes a heuristic without targets. The pool may grow between portions. Work returns soon
// once stop is on.
func New(in *instance.Instance, p *pool.Pool, seed uint64, stop halt.Signal) *Heuristic {
	return &Heuristic{
		patternPricer: patternPricer{in: in, seed: seed, stop: stop}, pool: p, areas: setcover.AreaPrices(in),
		demand: in.Demands(), parts: in.Parts(), separateAt: firstSeparation,
	}
}

// SetTargets sets the counts of each stock that cheaper plans may have, the cheapest first.
func (h *Heuristic) SetTargets(targets [][]int) {
	if !slices.EqualFunc(targets, h.targets.list, slices.Equal) {
		h.targets.list, h.targets.next, h.targets.retryAt = targets, 0, 0
		h.run.search = nil
	}
}

// Prices returns those of the last root relaxation; nil before the first.
func (h *Heuristic) Prices() *setcover.Prices { return h.known.prices }

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
func (h *Heuristic) Work(work int64) {
	work -= h.overdrawn
	for work > 0 && !h.stop.On() && (h.run.search != nil || h.startTarget()) {
		portion := min(work, h.run.workLeft)
		cutWork := h.run.search.CutWork()
		left, done := h.run.search.Advance(portion)
		work -= portion - left
		h.workDone += portion - left
		// Later runs use the cuts as well, so they do not count against this one.
		h.run.workLeft -= portion - left - (h.run.search.CutWork() - cutWork)
		if done || h.run.workLeft <= 0 {
			h.finish()
		}
	}
	h.overdrawn = max(0, -work) // the next call works that much less
}

// startTarget starts a run for the next target, and reports whether there is one now.
func (h *Heuristic) startTarget() bool {
	t := &h.targets
	if t.next >= len(t.list) {
		if h.pool.Growth < t.retryAt {
			return false
		}
		t.next = 0
		t.round++
	}
	if t.next == 0 {
		t.retryAt = h.pool.Growth + len(h.pool.Patterns)/growth + 1
	}
	if len(t.list) == 0 {
		return false
	}
	h.run.snapshot = h.pool.Snapshot
	h.run.search = setcover.New(h.demand, h.stockLimits(t.list[t.next]), h.run.snapshot.Patterns, []setcover.Prices{h.areas})
	h.run.search.Halt = h.stop
	h.run.workLeft = minWork + patternWork*int64(len(h.run.snapshot.Patterns))
	t.next++
	h.randomize()
	h.warmStart()
	return true
}

// stockLimits returns the pieces of each stock that a target allows. Free stock is not
// limited to the target, since more of it costs nothing.
func (h *Heuristic) stockLimits(target []int) []int {
	pieces := slices.Clone(target)
	for s, st := range h.in.Stock {
		pieces[s] = min(pieces[s], st.Limit) // a bound may assume more than there is
		if st.Price == 0 {
			pieces[s] = min(st.Limit, h.parts)
		}
	}
	return pieces
}

// randomize makes the search restart at random: in every other round with the pricing
// callback, else with cuts if they are due or known.
func (h *Heuristic) randomize() {
	h.searches++
	h.patternPricer.reset()
	seed := h.seed + h.searches
	if h.targets.round%2 == 1 {
		h.run.search.Randomize(seed, h.price)
		return
	}
	h.run.search.Randomize(seed, nil)
	if h.run.separating = h.known.cuts != nil || h.workDone >= h.separateAt; h.run.separating {
		h.run.search.SeparateCuts()
	}
}

// warmStart starts the root relaxation from the last run's solution, which mostly changes
// little with a few patterns more.
func (h *Heuristic) warmStart() {
	var patterns []int
	for _, id := range h.known.support {
		if n, ok := h.run.snapshot.Index(id); ok {
			patterns = append(patterns, n)
		}
	}
	h.run.search.WarmStart(patterns, h.known.cuts)
}

// finish ends the run and keeps its plan, if any, and its root for the next run.
func (h *Heuristic) finish() {
	search := h.run.search
	if chosen, ok := search.Solution(); ok {
		h.Put(h.plan(chosen))
		h.targets.next = len(h.targets.list) // the others cost more
	}
	if p := search.Prices(); p != nil {
		h.known.prices = p
	}
	h.known.support = h.known.support[:0]
	for _, n := range search.Support() {
		if n < len(h.run.snapshot.Patterns) {
			h.known.support = append(h.known.support, h.run.snapshot.ID(n))
		}
	}
	if h.run.separating {
		h.known.cuts, h.run.separating = search.Cuts(), false
		h.separateAt = separationGrowth * h.workDone
	}
	h.run.search = nil
}

func (h *Heuristic) plan(chosen []int) *instance.Plan {
	plan := &instance.Plan{Missing: make([]int, len(h.in.Kinds))}
	placed := make([]int, len(h.in.Kinds))
	for _, n := range chosen {
		stock, root := h.pattern(n)
		h.in.AddLayout(plan, stock, root, placed)
	}
	return plan
}

// pattern returns pattern n of the search as a cutting tree.
func (h *Heuristic) pattern(n int) (stock int, root instance.Piece) {
	pooled := len(h.run.snapshot.Patterns)
	if n < pooled {
		return h.run.snapshot.Patterns[n].Stock, h.run.snapshot.Root(n)
	}
	m := &h.made[n-pooled]
	return m.stock, m.root
}
