// Package whole decides whether so many pieces of each stock can hold all that
// is wanted, when every pattern that can be part of the answer is known: a
// covering problem in whole numbers, by depth-first search.
package setcover

import (
	"slices"
)

// Pattern is a way to cut one piece of a stock.
type Pattern struct {
	Stock  int
	Counts []Count
}

// NewPattern returns the pattern of a stock that holds so many parts of each kind.
func NewPattern(stock int, counts []int) Pattern {
	kinds := 0
	for _, n := range counts {
		kinds += min(n, 1)
	}
	p := Pattern{Stock: stock, Counts: make([]Count, 0, kinds)}
	for k, n := range counts {
		if n > 0 {
			p.Counts = append(p.Counts, Count{Kind: k, Times: n})
		}
	}
	return p
}

// Count is how often a pattern holds a kind.
type Count struct{ Kind, Times int }

// Search works in portions and takes the same course on every machine.
//
// At every state a linear programme over the patterns that are left tells which
// prices rule most of them out, or that there is no solution even in fractions;
// before, those that ruled out the state tried last with as many patterns are tried.
// Every solution covers the kind that the fewest patterns can still hold, so
// one of these is cut first. A pattern that led nowhere is no part of any
// solution of the same state, and is out of the question beside its
// successors. States without a solution are remembered.
type Search struct {
	patterns []Pattern
	prices   []Prices
	stack    []node
	depth    int // frames in use, less one
	opened   bool
	nogoods  nogoods
	outcome  outcome
	chosen   []int

	contrib     []int // by the pattern looked at, of what is still wanted
	coverers    []int // per kind: patterns that hold it
	maxContrib  []int // per kind and stock: the most that a pattern holds
	losses      []int64
	rows        []int  // of a programme, per kind
	inLP        []bool // per option of a list: whether a programme has it
	inSupport   []bool // per pattern, while a programme begins
	entering    []enteringOption
	relaxations int          // programmes so far
	rootCuts    zeroHalfCuts // that the first programme keeps to
	randomized  *randomized
}

type outcome uint8

const (
	searching outcome = iota
	solved
	infeasible
)

// node is what is still to be cut and how that is tried.
type node struct {
	demand     []int     // per kind
	pieces     []int     // per stock
	prices     []*Prices // those of the search, then those of the last programme
	slack      []int64   // by each of the prices
	lpPrices   Prices
	parity     uint64         // sets of the last prices of which an odd number is wanted
	support    []supportEntry // patterns that the last programme used, here or in a state before
	options    []option       // what can be part of a solution; first what covers the kind
	branches   int            // how many of the list cover the kind
	nextBranch int            // of them
}

type option struct {
	pattern int32
	loss    int64 // by the last prices
}

func optionOf(pattern int) option { return option{pattern: int32(pattern)} }

// supportEntry is a pattern of a programme's solution.
type supportEntry struct {
	pattern int32
	times   float64
}

// New sets out to cover wanted by pieces. Every pattern that may be part of a
// solution must be listed, or one that holds at least as much. There must be
// prices; the first should leave the least slack. No number of parts or pieces
// may exceed 65,535.
func New(demand, pieces []int, patterns []Pattern, prices []Prices) *Search {
	s := &Search{
		patterns: patterns, prices: prices,
		nogoods:    newNogoods(len(demand) + len(pieces)),
		coverers:   make([]int, len(demand)),
		maxContrib: make([]int, len(demand)*len(pieces)),
		losses:     make([]int64, len(prices)+1),
		rows:       make([]int, len(demand)),
		inSupport:  make([]bool, len(patterns)),
	}
	f := s.nodeAt(0)
	f.demand = append(f.demand[:0], demand...)
	f.pieces = append(f.pieces[:0], pieces...)
	for i := range prices {
		slack := prices[i].Slack(demand, pieces)
		f.prices = append(f.prices, &prices[i])
		f.slack = append(f.slack, slack)
		if slack < 0 {
			s.outcome = infeasible
		}
	}
	return s
}

// inheritedCuts are those of a frame's last prices of which an odd number is wanted.
func (s *Search) inheritedCuts(f *node) zeroHalfCuts {
	last := &s.rootCuts
	if len(f.prices) > len(s.prices) {
		last = &f.prices[len(s.prices)].cuts
	}
	cuts := zeroHalfCuts{size: last.size, members: make([]uint64, len(f.demand))}
	copy(cuts.members, last.members)
	cuts.retain(last.parity(f.demand))
	return cuts
}

// WarmStart tells of patterns that are good for the first programme to begin with, and of
// odd sets that it is to keep to; or nil.
func (s *Search) WarmStart(patterns []int, cuts *Cuts) {
	if cuts != nil {
		s.rootCuts = cuts.clone()
	}
	f := &s.stack[0]
	f.support = f.support[:0]
	for _, n := range patterns {
		f.support = append(f.support, supportEntry{pattern: int32(n)})
	}
}

// Support are the patterns that the first programme used; before it, those of Begin.
func (s *Search) Support() (patterns []int) {
	for _, u := range s.stack[0].support {
		patterns = append(patterns, int(u.pattern))
	}
	return patterns
}

// Solution lists the patterns of a solution, if there is one; they may hold more
// than is wanted.
func (s *Search) Solution() (patterns []int, ok bool) { return s.chosen, s.outcome == solved }

// Infeasible reports whether it is proven that there is no solution.
func (s *Search) Infeasible() bool { return s.outcome == infeasible }

// Advance takes about work steps more. It returns what is left of work, which
// may be overdrawn, and whether the search has come to its end.
func (s *Search) Advance(work int64) (left int64, done bool) {
	for work > 0 && s.outcome == searching {
		switch {
		case s.randomized != nil:
			work -= s.randomizedStep()
		case !s.opened:
			work -= s.openRoot()
		default:
			work -= s.branch()
		}
	}
	return work, s.outcome != searching
}

// openRoot opens the first state.
func (s *Search) openRoot() (work int64) {
	s.opened = true
	all := make([]option, len(s.patterns))
	for n := range all {
		all[n] = optionOf(n)
	}
	return s.expand(0, all)
}

// branch tries one pattern.
func (s *Search) branch() (work int64) {
	f := &s.stack[s.depth]
	if f.nextBranch == f.branches {
		s.nogoods.add(f.demand, f.pieces)
		if s.depth == 0 {
			s.outcome = infeasible
			return 1
		}
		s.depth--
		s.stack[s.depth].nextBranch++
		if s.hasCallback() && s.depth > 0 {
			return s.restart()
		}
		return int64(len(f.demand))
	}
	child := s.nodeAt(s.depth + 1)
	f = &s.stack[s.depth]
	p := &s.patterns[f.options[f.nextBranch].pattern]
	s.affordable(f, p)
	child.demand = append(child.demand[:0], f.demand...)
	child.pieces = append(child.pieces[:0], f.pieces...)
	child.prices = append(child.prices[:0], f.prices...)
	child.slack = child.slack[:0]
	child.support = append(child.support[:0], f.support...)
	for i, slack := range f.slack {
		child.slack = append(child.slack, slack-s.losses[i])
	}
	child.pieces[p.Stock]--
	left := 0
	for n, c := range p.Counts {
		child.demand[c.Kind] -= s.contrib[n]
	}
	for _, n := range child.demand {
		left += n
	}
	work = int64(2 * len(f.demand))
	switch {
	case left == 0:
		s.outcome = solved
		for i := range s.depth + 1 {
			s.chosen = append(s.chosen, int(s.stack[i].options[s.stack[i].nextBranch].pattern))
		}
	case s.nogoods.has(child.demand, child.pieces):
		f.nextBranch++
	default:
		s.depth++
		work += s.expand(s.depth, f.options[f.nextBranch:])
	}
	return work
}

// nodeAt returns frame number depth.
func (s *Search) nodeAt(depth int) *node {
	if depth == len(s.stack) {
		s.stack = append(s.stack, node{})
	}
	return &s.stack[depth]
}

// affordable reckons what a pattern holds of what is wanted and loses by every price;
// not ok, and not all reckoned, where that is more than may be lost.
func (s *Search) affordable(f *node, p *Pattern) (ok bool) {
	s.contrib = s.contrib[:0]
	for _, c := range p.Counts {
		s.contrib = append(s.contrib, min(c.Times, f.demand[c.Kind]))
	}
	for i := len(f.prices) - 1; i >= 0; i-- { // those of the last programme rule most out
		prices := f.prices[i]
		loss := prices.Capacity[p.Stock]
		for n, c := range p.Counts {
			loss -= prices.Values[c.Kind] * int64(s.contrib[n])
		}
		if prices.cuts.size > 0 {
			of := prices.cuts.totalsOf(p, f.demand)
			for n, v := range prices.cutValues {
				// What is wanted less, in halves rounded up.
				loss -= v * int64((of[n]+int(f.parity>>n&1))/2)
			}
		}
		if s.losses[i] = loss; loss > f.slack[i] {
			return false
		}
	}
	return true
}

// Prices are those of the first programme; nil before it.
func (s *Search) Prices() *Prices {
	f := &s.stack[0]
	if len(f.lpPrices.Values) == 0 {
		return nil
	}
	return &Prices{Values: slices.Clone(f.lpPrices.Values), Capacity: slices.Clone(f.lpPrices.Capacity), cuts: f.lpPrices.cuts.clone(), cutValues: slices.Clone(f.lpPrices.cutValues)}
}
