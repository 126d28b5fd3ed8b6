// Package whole decides whether so many pieces of each stock can hold all that
// is wanted, when every pattern that can be part of the answer is known: a
// covering problem in whole numbers, by depth-first search.
package whole

import (
	"slices"
)

// Pattern is a way to cut one piece of a stock.
type Pattern struct {
	Stock  int
	Counts []Count
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
	frames   []frame
	depth    int // frames in use, less one
	opened   bool
	failed   memo
	state    state
	chosen   []int

	held     []int // by the pattern looked at, of what is still wanted
	options  []int // per kind: patterns that hold it
	greatest []int // per kind and stock: the most that a pattern holds
	loss     []int64
	rows     []int  // of a programme, per kind
	column   []bool // per option of a list: whether a programme has it
	supports []bool // per pattern, while a programme begins
	better   []bettering
	relaxed  int     // programmes so far
	given    oddSets // that the first programme keeps to
	roaming  *roaming
}

type state uint8

const (
	searching state = iota
	found
	impossible
)

// frame is what is still to be cut and how that is tried.
type frame struct {
	wanted  []int     // per kind
	pieces  []int     // per stock
	prices  []*Prices // those of the search, then those of the last programme
	slack   []int64   // by each of the prices
	own     Prices
	odd     uint64   // sets of the last prices of which an odd number is wanted
	support []used   // patterns that the last programme used, here or in a state before
	list    []option // what can be part of a solution; first what covers the kind
	choices int      // how many of the list cover the kind
	next    int      // of them
}

type option struct {
	pattern int32
	loss    int64 // by the last prices
}

func optionOf(pattern int) option { return option{pattern: int32(pattern)} }

// used is a pattern of a programme's solution.
type used struct {
	pattern int32
	times   float64
}

// New sets out to cover wanted by pieces. Every pattern that may be part of a
// solution must be listed, or one that holds at least as much. There must be
// prices; the first should leave the least slack. No number of parts or pieces
// may exceed 65,535.
func New(wanted, pieces []int, patterns []Pattern, prices []Prices) *Search {
	s := &Search{
		patterns: patterns, prices: prices,
		failed:   newMemo(len(wanted) + len(pieces)),
		options:  make([]int, len(wanted)),
		greatest: make([]int, len(wanted)*len(pieces)),
		loss:     make([]int64, len(prices)+1),
		rows:     make([]int, len(wanted)),
		supports: make([]bool, len(patterns)),
	}
	f := s.frame(0)
	f.wanted = append(f.wanted[:0], wanted...)
	f.pieces = append(f.pieces[:0], pieces...)
	for i := range prices {
		slack := prices[i].Slack(wanted, pieces)
		f.prices = append(f.prices, &prices[i])
		f.slack = append(f.slack, slack)
		if slack < 0 {
			s.state = impossible
		}
	}
	return s
}

// setsOf are those of a frame's last prices of which an odd number is wanted.
func (s *Search) setsOf(f *frame) oddSets {
	last := &s.given
	if len(f.prices) > len(s.prices) {
		last = &f.prices[len(s.prices)].sets
	}
	sets := oddSets{count: last.count, marks: make([]uint64, len(f.wanted))}
	copy(sets.marks, last.marks)
	sets.keep(last.odd(f.wanted))
	return sets
}

// Begin tells of patterns that are good for the first programme to begin with, and of
// odd sets that it is to keep to; or nil.
func (s *Search) Begin(patterns []int, sets *Sets) {
	if sets != nil {
		s.given = sets.clone()
	}
	f := &s.frames[0]
	f.support = f.support[:0]
	for _, n := range patterns {
		f.support = append(f.support, used{pattern: int32(n)})
	}
}

// Support are the patterns that the first programme used; before it, those of Begin.
func (s *Search) Support() (patterns []int) {
	for _, u := range s.frames[0].support {
		patterns = append(patterns, int(u.pattern))
	}
	return patterns
}

// Found lists the patterns of a solution, if there is one; they may hold more
// than is wanted.
func (s *Search) Found() (patterns []int, ok bool) { return s.chosen, s.state == found }

// Impossible reports whether it is proven that there is no solution.
func (s *Search) Impossible() bool { return s.state == impossible }

// Advance takes about work steps more. It returns what is left of work, which
// may be overdrawn, and whether the search has come to its end.
func (s *Search) Advance(work int64) (left int64, done bool) {
	for work > 0 && s.state == searching {
		switch {
		case s.roaming != nil:
			work -= s.roam()
		case !s.opened:
			work -= s.begin()
		default:
			work -= s.step()
		}
	}
	return work, s.state != searching
}

// begin opens the first state.
func (s *Search) begin() (work int64) {
	s.opened = true
	all := make([]option, len(s.patterns))
	for n := range all {
		all[n] = optionOf(n)
	}
	return s.open(0, all)
}

// step tries one pattern.
func (s *Search) step() (work int64) {
	f := &s.frames[s.depth]
	if f.next == f.choices {
		s.failed.add(f.wanted, f.pieces)
		if s.depth == 0 {
			s.state = impossible
			return 1
		}
		s.depth--
		s.frames[s.depth].next++
		if s.supplied() && s.depth > 0 {
			return s.beginAnew()
		}
		return int64(len(f.wanted))
	}
	child := s.frame(s.depth + 1)
	f = &s.frames[s.depth]
	p := &s.patterns[f.list[f.next].pattern]
	s.lose(f, p)
	child.wanted = append(child.wanted[:0], f.wanted...)
	child.pieces = append(child.pieces[:0], f.pieces...)
	child.prices = append(child.prices[:0], f.prices...)
	child.slack = child.slack[:0]
	child.support = append(child.support[:0], f.support...)
	for i, slack := range f.slack {
		child.slack = append(child.slack, slack-s.loss[i])
	}
	child.pieces[p.Stock]--
	left := 0
	for n, c := range p.Counts {
		child.wanted[c.Kind] -= s.held[n]
	}
	for _, n := range child.wanted {
		left += n
	}
	work = int64(2 * len(f.wanted))
	switch {
	case left == 0:
		s.state = found
		for i := range s.depth + 1 {
			s.chosen = append(s.chosen, int(s.frames[i].list[s.frames[i].next].pattern))
		}
	case s.failed.has(child.wanted, child.pieces):
		f.next++
	default:
		s.depth++
		work += s.open(s.depth, f.list[f.next:])
	}
	return work
}

// frame returns frame number depth.
func (s *Search) frame(depth int) *frame {
	if depth == len(s.frames) {
		s.frames = append(s.frames, frame{})
	}
	return &s.frames[depth]
}

// lose reckons what a pattern holds of what is wanted and loses by every price;
// not ok, and not all reckoned, where that is more than may be lost.
func (s *Search) lose(f *frame, p *Pattern) (ok bool) {
	s.held = s.held[:0]
	for _, c := range p.Counts {
		s.held = append(s.held, min(c.Times, f.wanted[c.Kind]))
	}
	for i := len(f.prices) - 1; i >= 0; i-- { // those of the last programme rule most out
		prices := f.prices[i]
		loss := prices.Worth[p.Stock]
		for n, c := range p.Counts {
			loss -= prices.Values[c.Kind] * int64(s.held[n])
		}
		if prices.sets.count > 0 {
			of := prices.sets.hold(p, f.wanted)
			for n, v := range prices.odd {
				// What is wanted less, in halves rounded up.
				loss -= v * int64((of[n]+int(f.odd>>n&1))/2)
			}
		}
		if s.loss[i] = loss; loss > f.slack[i] {
			return false
		}
	}
	return true
}

// Prices are those of the first programme; nil before it.
func (s *Search) Prices() *Prices {
	f := &s.frames[0]
	if len(f.own.Values) == 0 {
		return nil
	}
	return &Prices{Values: slices.Clone(f.own.Values), Worth: slices.Clone(f.own.Worth), sets: f.own.sets.clone(), odd: slices.Clone(f.own.odd)}
}
