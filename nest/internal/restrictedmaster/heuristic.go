// Package assemble makes plans of patterns that were come upon one by one: set
// covering over the patterns of a heuristic (Monaci and Toth, INFORMS J. Comput.
// 18, 2006; from memory).
package restrictedmaster

import (
	"slices"

	"sawbill/nest/internal/instance"
	"sawbill/nest/internal/pool"
	"sawbill/nest/internal/setcover"
)

// Heuristic seeks plans of a harvest's patterns within counts of stock that a
// cheaper plan may have. It works in portions and takes the same course on every
// machine.
//
// Now it searches among the patterns there are, now it makes more wherever a programme
// might be bettered (branch and price, Barnhart et al., Oper. Res. 46, 1998; from memory).
// These come into the harvest, and so to searches of the first kind.
type Heuristic struct {
	patternPricer
	in         *instance.Instance
	pool       *pool.Pool
	demand     []int // per kind
	parts      int
	areas      setcover.Prices
	targets    [][]int
	nextTarget int // target that is tried next
	round      int // of all targets
	retryAt    int // growth of the harvest at which all targets are tried again

	snapshot  pool.Snapshot
	search    *setcover.Search // in sheaf; or nil
	workLeft  int64            // work that it may take
	overdrawn int64
	searches  uint64 // searches
	workDone  int64  // work
	plans     []*instance.Plan

	// What the first programme of the last search used, by numbers of the harvest, and
	// its prices.
	support []int
	prices  *setcover.Prices
	// Odd sets that programmes keep to, if that serves; work after which they are
	// sought next; whether the search does that.
	cuts       *setcover.Cuts
	separateAt int64
	separating bool
}

// New makes an assembler without targets. The harvest may grow between portions.
func New(in *instance.Instance, h *pool.Pool, seed uint64) *Heuristic {
	a := &Heuristic{patternPricer: patternPricer{in: in, seed: seed}, in: in, pool: h, areas: setcover.AreaPrices(in), separateAt: firstSeparation}
	for _, kd := range in.Kinds {
		a.demand = append(a.demand, kd.Demand)
		a.parts += kd.Demand
	}
	return a
}

// SetTargets tells the counts of each stock that cheaper plans may have, the cheapest
// first.
func (a *Heuristic) SetTargets(targets [][]int) {
	if slices.EqualFunc(targets, a.targets, slices.Equal) {
		return
	}
	a.targets = targets
	a.search, a.nextTarget, a.retryAt = nil, 0, 0
}

// NewPlans returns the plans made since the last call.
func (a *Heuristic) NewPlans() []*instance.Plan {
	plans := a.plans
	a.plans = nil
	return plans
}

// Prices are the last ones at which patterns were priced; nil before there are any.
func (a *Heuristic) Prices() *setcover.Prices { return a.prices }

// Each target is sought for so long; all are gone through again when the harvest
// has grown by a share.
const (
	minWork = 1 << 26
	maxWork = 1 << 13 // more for each pattern
	growth  = 4       // by one in so many
)

// Odd sets are sought after so much work, and again each time that has grown to so many
// times as much: it takes about a second.
const (
	firstSeparation  = 1 << 29
	separationGrowth = 3
)

// Work carries on for about so many comparisons. It does less where there is
// nothing left to try for now.
func (a *Heuristic) Work(work int64) {
	work -= a.overdrawn
	for work > 0 && (a.search != nil || a.startTarget()) {
		portion := min(work, a.workLeft)
		sharpened := a.search.CutWork()
		left, done := a.search.Advance(portion)
		work -= portion - left
		a.workDone += portion - left
		a.workLeft -= portion - left - (a.search.CutWork() - sharpened) // which is for others as well
		if done || a.workLeft <= 0 {
			a.finish()
		}
	}
	a.overdrawn = max(0, -work) // what was overdrawn is paid back next time
}

// startTarget turns to the next target, if there is one for now.
func (a *Heuristic) startTarget() bool {
	if a.nextTarget >= len(a.targets) {
		if a.pool.Growth < a.retryAt {
			return false
		}
		a.nextTarget = 0
		a.round++
	}
	if a.nextTarget == 0 {
		a.retryAt = a.pool.Growth + len(a.pool.Patterns)/growth + 1
	}
	if a.nextTarget >= len(a.targets) {
		return false
	}
	a.snapshot = a.pool.Snapshot
	a.search = setcover.New(a.demand, a.stockLimits(a.targets[a.nextTarget]), a.snapshot.Patterns, []setcover.Prices{a.areas})
	a.nextTarget++
	a.workLeft = minWork + maxWork*int64(len(a.snapshot.Patterns))
	a.randomize()
	a.warmStart()
	return true
}

// stockLimits of each stock that a target allows.
func (a *Heuristic) stockLimits(target []int) []int {
	pieces := slices.Clone(target)
	for s, st := range a.in.Stock {
		pieces[s] = min(pieces[s], st.Limit) // a floor may speak of more than there is
		if st.Price == 0 {                   // counts with more of it cost the same
			pieces[s] = min(st.Limit, a.parts)
		}
	}
	return pieces
}

// randomize has the search do so: in every other round of the targets with more patterns.
func (a *Heuristic) randomize() {
	a.searches++
	a.patternPricer.reset()
	if a.round%2 == 1 {
		a.search.Randomize(a.seed+a.searches, a.price)
		return
	}
	a.search.Randomize(a.seed+a.searches, nil)
	if a.separating = a.cuts != nil || a.workDone >= a.separateAt; a.separating {
		a.search.SeparateCuts()
	}
}

// warmStart has the search begin with what is known from the last one: one with a little
// more to choose from uses much the same.
func (a *Heuristic) warmStart() {
	var patterns []int
	for _, number := range a.support {
		if n, ok := a.snapshot.Index(number); ok {
			patterns = append(patterns, n)
		}
	}
	a.search.WarmStart(patterns, a.cuts)
}

// finish keeps what the search found, and what the next one may begin with.
func (a *Heuristic) finish() {
	if chosen, ok := a.search.Solution(); ok {
		a.plans = append(a.plans, a.plan(chosen))
		a.nextTarget = len(a.targets) // what follows is dearer
	}
	if p := a.search.Prices(); p != nil {
		a.prices = p
	}
	a.support = a.support[:0]
	for _, n := range a.search.Support() {
		if n < len(a.snapshot.Patterns) {
			a.support = append(a.support, a.snapshot.ID(n))
		}
	}
	if a.separating {
		a.cuts, a.separating = a.search.Cuts(), false
		a.separateAt = separationGrowth * a.workDone
	}
	a.search = nil
}

func (a *Heuristic) plan(chosen []int) *instance.Plan {
	plan := &instance.Plan{Missing: make([]int, len(a.in.Kinds))}
	cut := make([]int, len(a.in.Kinds))
	for _, n := range chosen {
		s, root := a.pattern(n)
		root = instance.Normalize(a.in.DropExcess(root, cut))
		plan.Layouts = append(plan.Layouts, instance.Layout{Stock: s, Root: root})
		plan.Cost = plan.Cost.Plus(a.in.CostOf(s), 1)
	}
	return plan
}

// pattern is pattern n of the search as it is cut.
func (a *Heuristic) pattern(n int) (stock int, root instance.Piece) {
	gathered := len(a.snapshot.Patterns)
	if n < gathered {
		return a.snapshot.Patterns[n].Stock, a.snapshot.Root(n)
	}
	m := &a.made[n-gathered]
	return m.stock, m.root
}
