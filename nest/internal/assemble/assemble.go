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
//
// Now it searches among the patterns there are, now it makes more wherever a programme
// might be bettered (branch and price, Barnhart et al., Oper. Res. 46, 1998; from memory).
// These come into the harvest, and so to searches of the first kind.
type Assembler struct {
	maker
	in      *instance.Instance
	harvest *harvest.Harvest
	wanted  []int // per kind
	parts   int
	areas   whole.Prices
	targets [][]int
	at      int // target that is tried next
	round   int // of all targets
	ripe    int // growth of the harvest at which all targets are tried again

	sheaf  harvest.Sheaf
	search *whole.Search // in sheaf; or nil
	left   int64         // work that it may take
	owed   int64
	tried  uint64 // searches
	done   int64  // work
	plans  []*instance.Plan

	// What the first programme of the last search used, by numbers of the harvest, and
	// its prices.
	support []int
	prices  *whole.Prices
	// Odd sets that programmes keep to, if that serves; work after which they are
	// sought next; whether the search does that.
	sets     *whole.Sets
	sharpen  int64
	sharpens bool
}

// New makes an assembler without targets. The harvest may grow between portions.
func New(in *instance.Instance, h *harvest.Harvest, seed uint64) *Assembler {
	a := &Assembler{maker: maker{in: in, seed: seed}, in: in, harvest: h, areas: whole.Areas(in), sharpen: firstSharpen}
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

// Prices are the last ones at which patterns were priced; nil before there are any.
func (a *Assembler) Prices() *whole.Prices { return a.prices }

// Each target is sought for so long; all are gone through again when the harvest
// has grown by a share.
const (
	leastWork = 1 << 26
	mostWork  = 1 << 13 // more for each pattern
	growth    = 4       // by one in so many
)

// Odd sets are sought after so much work, and again each time that has grown to so many
// times as much: it takes about a second.
const (
	firstSharpen = 1 << 29
	nextSharpen  = 3
)

// Work carries on for about so many comparisons. It does less where there is
// nothing left to try for now.
func (a *Assembler) Work(work int64) {
	work -= a.owed
	for work > 0 && (a.search != nil || a.begin()) {
		portion := min(work, a.left)
		sharpened := a.search.Sharpened()
		left, done := a.search.Advance(portion)
		work -= portion - left
		a.done += portion - left
		a.left -= portion - left - (a.search.Sharpened() - sharpened) // which is for others as well
		if done || a.left <= 0 {
			a.end()
		}
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
		a.round++
	}
	if a.at == 0 {
		a.ripe = a.harvest.Grown + len(a.harvest.Patterns)/growth + 1
	}
	if a.at >= len(a.targets) {
		return false
	}
	a.sheaf = a.harvest.Sheaf
	a.search = whole.New(a.wanted, a.pieces(a.targets[a.at]), a.sheaf.Patterns, []whole.Prices{a.areas})
	a.at++
	a.left = leastWork + mostWork*int64(len(a.sheaf.Patterns))
	a.roam()
	a.resume()
	return true
}

// pieces of each stock that a target allows.
func (a *Assembler) pieces(target []int) []int {
	pieces := slices.Clone(target)
	for s, st := range a.in.Stock {
		pieces[s] = min(pieces[s], st.Limit) // a floor may speak of more than there is
		if st.Price == 0 {                   // counts with more of it cost the same
			pieces[s] = min(st.Limit, a.parts)
		}
	}
	return pieces
}

// roam has the search do so: in every other round of the targets with more patterns.
func (a *Assembler) roam() {
	a.tried++
	a.maker.begin()
	if a.round%2 == 1 {
		a.search.Roam(a.seed+a.tried, a.supply)
		return
	}
	a.search.Roam(a.seed+a.tried, nil)
	if a.sharpens = a.sets != nil || a.done >= a.sharpen; a.sharpens {
		a.search.Sharpen()
	}
}

// resume has the search begin with what is known from the last one: one with a little
// more to choose from uses much the same.
func (a *Assembler) resume() {
	var patterns []int
	for _, number := range a.support {
		if n, ok := a.sheaf.Find(number); ok {
			patterns = append(patterns, n)
		}
	}
	a.search.Begin(patterns, a.sets)
}

// end keeps what the search found, and what the next one may begin with.
func (a *Assembler) end() {
	if chosen, ok := a.search.Found(); ok {
		a.plans = append(a.plans, a.plan(chosen))
		a.at = len(a.targets) // what follows is dearer
	}
	if p := a.search.Prices(); p != nil {
		a.prices = p
	}
	a.support = a.support[:0]
	for _, n := range a.search.Support() {
		if n < len(a.sheaf.Patterns) {
			a.support = append(a.support, a.sheaf.Number(n))
		}
	}
	if a.sharpens {
		a.sets, a.sharpens = a.search.Sets(), false
		a.sharpen = nextSharpen * a.done
	}
	a.search = nil
}

func (a *Assembler) plan(chosen []int) *instance.Plan {
	plan := &instance.Plan{Missing: make([]int, len(a.in.Kinds))}
	cut := make([]int, len(a.in.Kinds))
	for _, n := range chosen {
		s, root := a.pattern(n)
		root = instance.Compact(a.in.Cap(root, cut))
		plan.Layouts = append(plan.Layouts, instance.Layout{Stock: s, Root: root})
		plan.Cost = plan.Cost.Plus(a.in.CostOf(s), 1)
	}
	return plan
}

// pattern is pattern n of the search as it is cut.
func (a *Assembler) pattern(n int) (stock int, root instance.Piece) {
	gathered := len(a.sheaf.Patterns)
	if n < gathered {
		return a.sheaf.Patterns[n].Stock, a.sheaf.Root(n)
	}
	m := &a.made[n-gathered]
	return m.stock, m.root
}
