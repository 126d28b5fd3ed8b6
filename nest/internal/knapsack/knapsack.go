// Package knapsack solves the constrained guillotine knapsack: the most valuable pattern of one
// piece of stock in which every blank respects demand. Christofides and Whitlock, Oper. Res.
// 25, 1977.
//
// Patterns are built bottom-up: a rectangle is a blank, or two rectangles side by side (Wang,
// Oper. Res. 31, 1983). Each has an upper bound on the patterns around it, and the search is
// best first (Viswanathan and Bagchi, Oper. Res. 41, 1993; Cung, Hifi and Le Cun, Int. Trans.
// Oper. Res. 7, 2000). Citations from memory.
//
// The search is quick if a sheet holds up to about ten of some 40 parts, and gives up if it
// holds many more. The stages left around a rectangle rule most rectangles out under three
// levels of cuts.
package knapsack

import (
	"math"

	"sawbill/nest/internal/halt"
	"sawbill/nest/internal/instance"
)

// Item is a blank that may be cut at most Count times.
type Item struct {
	L, W         int64
	Orientations instance.Orientation
	Count        int
	Kind         int // index in patterns
}

// Search solves the knapsack for one piece of stock, and for any values. It reuses the memory
// of earlier searches.
type Search struct {
	// Halt ends a step of Advance, and All, early. The search is of no further use then; Bound
	// holds.
	Halt halt.Signal

	l, w     int64 // of the stock
	rules    Rules
	items    []Item
	packing  packing
	bounds   *bounds
	maxRects int // limit of rectangles kept

	values    []int64
	goal      goal
	threshold int64 // patterns must be worth more
	rects     rects
	open      queue
	shelf     [2]shelves // of the closed rectangles, by length and by width
	groups    groups
	areas     areaBound
	best      int32 // rectangle; none if there is no pattern
	found     int   // patterns above the threshold; some have the same items
	state     state
	bound     int64 // no pattern is worth more
}

// goal says which patterns a search looks for.
type goal uint8

const (
	bestOnly   goal = iota // only better ones than before
	anyPattern             // any above the threshold
	allPatterns
)

type state uint8

const (
	bounding state = iota
	combining
	proven
	gaveUp
)

// New prepares for a piece of stock l x w. A search gives up beyond most rectangles of about
// 150 bytes each; by then it may have kept twice as many. The tables of its bounds take about
// tableWork sums for each level of cuts, and are coarse if exact ones take more.
//
// New returns nil if that is not possible, or if there are too many items to count: more than
// 128 that may be cut once.
func New(l, w int64, items []Item, rules Rules, most int, tableWork int64) *Search {
	s := &Search{l: l, w: w, rules: rules, maxRects: most}
	for _, it := range items {
		if it.Orientations = rules.orientations(it, l, w); it.Orientations == 0 {
			it.Count = 0
		}
		it.Count = int(min(int64(it.Count), l*w/max(1, it.L*it.W)))
		s.items = append(s.items, it)
	}
	var ok bool
	if s.packing, ok = newPacking(s.items); !ok {
		return nil
	}
	if s.bounds = newBounds(l, w, s.items, rules, tableWork); s.bounds == nil {
		return nil
	}
	s.rects.rules, s.rects.bounds, s.rects.l, s.rects.w = rules, s.bounds, l, w
	return s
}

// Start begins a search for the best pattern worth more than above, which is at least 0. Item n
// is worth values[n], at least 0.
func (s *Search) Start(values []int64, above int64) { s.start(values, above, bestOnly) }

// StartSome begins a search for any patterns worth more than above.
func (s *Search) StartSome(values []int64, above int64) { s.start(values, above, anyPattern) }

// StartAll begins a search for all patterns worth more than above.
func (s *Search) StartAll(values []int64, above int64) { s.start(values, above, allPatterns) }

func (s *Search) start(values []int64, above int64, goal goal) {
	s.rects.halt = s.Halt
	s.threshold, s.goal, s.found = above, goal, 0
	s.rects.clear()
	s.open = s.open[:0]
	s.groups.clear()
	s.shelf[0] = s.shelf[0][:0]
	s.shelf[1] = s.shelf[1][:0]
	s.best = none
	s.state = bounding
	s.bound = math.MaxInt64
	s.values = append(s.values[:0], values...)
	s.bounds.start(values, s.packing)
	s.areas.start(s.items, 1, 1, values, s.packing)
}

// Advance takes about work steps more. It returns the rest of work, which may be negative, and
// whether the search has ended.
func (s *Search) Advance(work int64) (left int64, done bool) {
	for work > 0 && s.state < proven && !s.Halt.On() {
		if s.state == combining {
			work = s.step(work)
			continue
		}
		var done bool
		if work, done = s.bounds.advance(work); done {
			s.bound = s.bounds.stockBound()
			s.state = combining
			s.openItems()
		}
	}
	return work, s.state >= proven
}

// Proven reports whether the search is complete. Then no pattern is worth more than the best
// one found, or the threshold if there is none; or all patterns above it are found.
func (s *Search) Proven() bool { return s.state == proven }

// Bound returns an upper bound on the value of every pattern, at any time. It is the greatest
// integer until the tables are done.
func (s *Search) Bound() int64 { return s.bound }

// Best returns the most valuable pattern found; not ok if none is worth more than the
// threshold.
func (s *Search) Best() (value int64, ok bool) {
	if s.best == none {
		return 0, false
	}
	return s.rects.at(s.best).value, true
}

// Found counts the patterns found so far. Some may hold the same items.
func (s *Search) Found() int { return s.found }

// openItems opens each item in its orientations.
func (s *Search) openItems() {
	for n, it := range s.items {
		if it.Count == 0 || s.goal != allPatterns && s.values[n] == 0 {
			continue
		}
		r := rect{has: s.packing.one(n), value: s.values[n], first: int32(n), second: none}
		if it.Orientations&instance.Upright != 0 {
			r.l, r.w = it.L, it.W
			s.insert(r)
		}
		if it.Orientations&instance.Turned != 0 {
			r.l, r.w, r.turned = it.W, it.L, true
			s.insert(r)
		}
	}
}

// step combines the open rectangle of the greatest bound with the closed ones.
func (s *Search) step(work int64) int64 {
	for len(s.open) > 0 && s.rects.at(s.open[0].rect).dominated {
		s.open.pop()
	}
	if len(s.open) == 0 || s.open[0].bound <= s.threshold {
		s.state = proven
		best, _ := s.Best()
		s.bound = min(s.bound, max(best, s.threshold))
		return work - 1
	}
	best, _ := s.Best()
	s.bound = max(best, s.open[0].bound)
	if s.rects.n > s.maxRects {
		s.state = gaveUp
		return work - 1
	}
	id := s.open.pop()
	s.close(id)
	met := s.rects.compared
	work -= 64
	work = s.combine(id, instance.Crosscut, work)
	work = s.combine(id, instance.Rip, work)
	return work - cacheMiss*(s.rects.compared-met)
}

// cacheMiss is the work of looking at a rectangle outside the cache, in steps.
const cacheMiss = 24

// close closes a rectangle: others are combined with it from now on.
func (s *Search) close(id int32) {
	r := s.rects.at(id)
	g, fresh := s.groups.of(r.l, r.w)
	if fresh {
		s.groups.at[g].restL, s.groups.at[g].restW = s.bounds.restPoints(r.l, r.w)
	}
	s.groups.at[g].add(closed{has: r.has, value: r.value, rect: id, cuts: r.cuts})
	s.shelf[0].add(r.l, r.value, g, fresh)
	s.shelf[1].add(r.w, r.value, g, fresh)
}

// combine puts a rectangle and the closed ones side by side: end to end with a crosscut
// between, or edge to edge with a rip. Two rectangles both divided in that direction are left
// out, since the parts of one can be added to the other one by one.
func (s *Search) combine(id int32, dir instance.Dir, work int64) int64 {
	r := *s.rects.at(id)
	free := s.rules.stageSlack(dir, int(1+r.under(dir, false)))
	if free == noStageLeft {
		return work
	}
	b := s.bounds
	shelves, room := s.shelf[0], b.l-r.l
	if dir == instance.Rip {
		shelves, room = s.shelf[1], b.w-r.w
	}
	restL, restW := b.restPoints(r.l, r.w)
	asked, met := work, s.rects.compared
	for i := range shelves {
		sh := &shelves[i]
		work--
		if sh.size > room {
			break
		}
		// The rest in the direction of the sum, and across it the smaller of both.
		sumL, sumW := restL, restW
		if dir == instance.Crosscut {
			sumL = b.x.index(room - sh.size)
		} else {
			sumW = b.y.index(room - sh.size)
		}
		if r.value+sh.best+b.around(free, dir, sumL, sumW) <= s.threshold {
			continue
		}
		work -= int64(len(sh.groups))
		for _, n := range sh.groups {
			g := &s.groups.at[n]
			jointL, jointW := min(sumL, g.restL), sumW
			if dir == instance.Crosscut {
				jointL, jointW = sumL, min(sumW, g.restW)
			}
			need := s.threshold - r.value - b.around(free, dir, jointL, jointW)
			for k := range g.closed {
				c := &g.closed[k]
				if c.value <= need {
					break
				}
				work--
				if r.dir == dir && c.dir == dir {
					continue
				}
				has, ok := s.packing.sum(r.has, c.has)
				if !ok {
					continue
				}
				sum := rect{has: has, value: r.value + c.value, cuts: cuts{dir: dir}, first: id, second: c.rect}
				if dir == instance.Crosscut {
					sum.l, sum.w = r.l+g.l, max(r.w, g.w)
					sum.levels = 1 + max(r.under(dir, r.w < g.w), c.under(dir, g.w < r.w))
				} else {
					sum.l, sum.w = max(r.l, g.l), r.w+g.w
					sum.levels = 1 + max(r.under(dir, r.l < g.l), c.under(dir, g.l < r.l))
				}
				if int(sum.levels) > s.rules.Stages {
					continue
				}
				work -= 2 * cacheMiss
				s.insert(sum)
				if asked-work+cacheMiss*(s.rects.compared-met) > halt.Portion {
					if asked, met = work, s.rects.compared; s.Halt.On() {
						return work // the bound of this rectangle still holds, and nothing follows
					}
				}
			}
		}
	}
	return work
}

// insert keeps a rectangle unless it leads nowhere: its bound is at most the threshold, or
// another one with the same blanks dominates it.
func (s *Search) insert(r rect) {
	restL, restW := s.bounds.usableRest(r.l, r.w)
	free := s.rules.stageSlack(r.dir, int(r.levels))
	pointL, pointW := s.bounds.restPoints(r.l, r.w)
	bound := r.value + s.bounds.around(free, r.dir, pointL, pointW)
	if bound <= s.threshold {
		return
	}
	if free == sameDirection {
		restL, restW = beyond(r.dir, restL, restW)
	}
	area := s.bounds.l*s.bounds.w - (s.bounds.l-restL)*(s.bounds.w-restW)
	if bound = min(bound, r.value+s.areas.around(&r.has, restL, restW, area)); bound <= s.threshold {
		return
	}
	id, kept := s.rects.add(r)
	if !kept {
		return
	}
	s.open.push(entry{bound, id})
	if r.value <= s.threshold || !s.rules.allow(&r.cuts, s.l-r.l, s.w-r.w) {
		return
	}
	s.found++
	if s.best != none && r.value <= s.rects.at(s.best).value {
		return
	}
	s.best = id
	if s.goal == bestOnly {
		s.threshold = r.value
	}
}
