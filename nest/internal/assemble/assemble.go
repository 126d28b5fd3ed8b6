// Package assemble makes plans of patterns that were come upon one by one: set
// covering over the patterns of a heuristic (Monaci and Toth, INFORMS J. Comput.
// 18, 2006; from memory).
package assemble

import (
	"slices"

	"sawbill/nest/internal/harvest"
	"sawbill/nest/internal/instance"
	"sawbill/nest/internal/whole"
)

// Assembler seeks plans of a harvest's patterns within counts of stock that a
// cheaper plan may have. It works in portions and takes the same course on every
// machine.
type Assembler struct {
	in      *instance.Instance
	harvest *harvest.Harvest
	wanted  []int // per kind
	parts   int
	areas   whole.Prices
	targets [][]int
	at      int // target that is tried next
	ripe    int // growth of the harvest at which all targets are tried again
	sheaf   harvest.Sheaf
	search  *whole.Search // in sheaf; or nil
	support []int         // numbers of the patterns that the first programme of the last one used
	left    int64         // work that it may take
	owed    int64
	plans   []*instance.Plan
}

// New makes an assembler without targets. The harvest may grow between portions.
func New(in *instance.Instance, h *harvest.Harvest) *Assembler {
	a := &Assembler{in: in, harvest: h, areas: whole.Areas(in)}
	for _, kd := range in.Kinds {
		a.wanted = append(a.wanted, kd.Count)
		a.parts += kd.Count
	}
	return a
}

// Aim tells the counts of each stock that cheaper plans may have, the cheapest
// first.
func (a *Assembler) Aim(targets [][]int) {
	if slices.EqualFunc(targets, a.targets, slices.Equal) {
		return
	}
	a.targets = targets
	a.search, a.at, a.ripe = nil, 0, 0
}

// Plans returns the plans made since the last call.
func (a *Assembler) Plans() []*instance.Plan {
	plans := a.plans
	a.plans = nil
	return plans
}

// Each target is sought for so long; all are gone through again when the harvest
// has grown by a share.
const (
	leastWork = 1 << 20
	mostWork  = 1 << 10 // more for each pattern
	growth    = 4       // by one in so many
)

// Work carries on for about so many comparisons. It does less where there is
// nothing left to try for now.
func (a *Assembler) Work(work int64) {
	work -= a.owed
	for work > 0 && (a.search != nil || a.begin()) {
		portion := min(work, a.left)
		left, done := a.search.Advance(portion)
		a.left -= portion - left
		work -= portion - left
		if !done && a.left > 0 {
			continue
		}
		if chosen, ok := a.search.Found(); ok {
			a.plans = append(a.plans, a.plan(chosen))
			a.at = len(a.targets) // what follows is dearer
		}
		a.note()
		a.search = nil
	}
	a.owed = max(0, -work) // what was overdrawn is paid back next time
}

// begin turns to the next target, if there is one for now.
func (a *Assembler) begin() bool {
	if a.at >= len(a.targets) {
		if a.harvest.Grown < a.ripe {
			return false
		}
		a.at = 0
	}
	if a.at == 0 {
		a.ripe = a.harvest.Grown + len(a.harvest.Patterns)/growth + 1
	}
	if a.at >= len(a.targets) {
		return false
	}
	pieces := slices.Clone(a.targets[a.at])
	a.at++
	for s, st := range a.in.Stock {
		pieces[s] = min(pieces[s], st.Limit) // a floor may speak of more than there is
		if st.Price == 0 {                   // counts with more of it cost the same
			pieces[s] = min(st.Limit, a.parts)
		}
	}
	a.sheaf = a.harvest.Sheaf
	a.search = whole.New(a.wanted, pieces, a.sheaf.Patterns, []whole.Prices{a.areas})
	a.resume()
	a.left = leastWork + mostWork*int64(len(a.sheaf.Patterns))
	return true
}

// note keeps what the first programme used, for one with a little more to choose from
// uses much the same.
func (a *Assembler) note() {
	a.support = a.support[:0]
	for _, n := range a.search.Support() {
		a.support = append(a.support, a.sheaf.Number(n))
	}
}

func (a *Assembler) resume() {
	var patterns []int
	for _, number := range a.support {
		if n, ok := a.sheaf.Find(number); ok {
			patterns = append(patterns, n)
		}
	}
	a.search.Begin(patterns)
}

func (a *Assembler) plan(chosen []int) *instance.Plan {
	plan := &instance.Plan{Missing: make([]int, len(a.in.Kinds))}
	cut := make([]int, len(a.in.Kinds))
	for _, n := range chosen {
		s := a.sheaf.Patterns[n].Stock
		root := instance.Compact(a.in.Cap(a.sheaf.Root(n), cut))
		plan.Layouts = append(plan.Layouts, instance.Layout{Stock: s, Root: root})
		plan.Cost = plan.Cost.Plus(a.in.CostOf(s), 1)
	}
	return plan
}
