// Package knapsack finds the most valuable pattern of one piece of stock where
// every blank may be cut a limited number of times: the constrained guillotine
// knapsack of Christofides and Whitlock (Oper. Res. 25, 1977).
//
// Patterns are built from below: a rectangle is a blank, or two rectangles side
// by side (Wang, Oper. Res. 31, 1983). Each comes with the most that a pattern
// around it may be worth, and the most promising is combined first (Viswanathan
// and Bagchi, Oper. Res. 41, 1993; Cung, Hifi and Le Cun, Int. Trans. Oper.
// Res. 7, 2000). Citations from memory.
package knapsack

import (
	"math"

	"sawbill/nest/internal/instance"
)

// Item is a blank that may be cut at most Count times.
type Item struct {
	L, W         int64
	Orientations instance.Orientation
	Count        int
	Kind         int // what a pattern calls it
}

// Search solves the knapsack for one piece of stock, for any values of the
// items. What it keeps of a search it uses again in the next.
type Search struct {
	l, w     int64 // as patterns see it
	rules    Rules
	items    []Item
	packing  packing
	bounds   *bounds
	maxRects int // rectangles to keep

	values    []int64
	goal      goal
	threshold int64 // patterns worth more are looked for
	rects     rects
	open      queue
	shelf     [2]shelves // of the rectangles combined already, by length and by width
	groups    groups
	areas     areaBound
	best      int32 // rectangle, or none
	found     int   // patterns above, some of them with the same items
	state     state
	bound     int64 // no pattern is worth more
}

// goal is what is looked for.
type goal uint8

const (
	bestOnly   goal = iota // and nothing that is worth less
	anyPattern             // as they come
	allPatterns
)

type state uint8

const (
	bounding state = iota
	combining
	proven
	gaveUp
)

// New prepares for a piece of stock l x w. A search gives up beyond most
// rectangles, of some 150 bytes each; by then it can have kept twice as many.
// The tables it bounds with take about tableWork sums, so many for each level of
// cuts where these are few, and are coarser where exact ones would take more. New
// returns nil where that cannot be, or there are more items than a rectangle has
// room to count: 128 that may be cut once.
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

// Start begins a search for the best pattern that is worth more than above,
// which is at least 0. Item n is worth values[n], at least 0.
func (s *Search) Start(values []int64, above int64) { s.start(values, above, bestOnly) }

// StartSome begins a search for patterns that are worth more than above, whether
// or not there is a better one.
func (s *Search) StartSome(values []int64, above int64) { s.start(values, above, anyPattern) }

// StartAll begins a search for all patterns that are worth more than above.
func (s *Search) StartAll(values []int64, above int64) { s.start(values, above, allPatterns) }

func (s *Search) start(values []int64, above int64, goal goal) {
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

// Advance takes about work steps more. It returns what is left of work, which
// may be overdrawn, and whether the search has come to its end.
func (s *Search) Advance(work int64) (left int64, done bool) {
	for work > 0 && s.state < proven {
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

// Proven reports whether the search has been carried through: no pattern is
// worth more than the best one found, or than the threshold if none was found;
// or all patterns above it are found.
func (s *Search) Proven() bool { return s.state == proven }

// Bound is what no pattern is worth more than, at any time: however far the
// search has come. Before its tables are done it is the greatest whole number.
func (s *Search) Bound() int64 { return s.bound }

// Best is the most valuable pattern found; not ok if none is worth more than
// the threshold.
func (s *Search) Best() (value int64, ok bool) {
	if s.best == none {
		return 0, false
	}
	return s.rects.at[s.best].value, true
}

// Found counts the patterns found so far; some of them may hold the same items.
func (s *Search) Found() int { return s.found }

// openItems opens the items as they may lie.
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

// step combines the most promising rectangle with those before it.
func (s *Search) step(work int64) int64 {
	for len(s.open) > 0 && s.rects.at[s.open[0].rect].dominated {
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
	if len(s.rects.at) > s.maxRects {
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

// cacheMiss is what it takes to look at a rectangle that is in no cache, in steps.
const cacheMiss = 24

// close makes a rectangle one that others are combined with.
func (s *Search) close(id int32) {
	r := &s.rects.at[id]
	g, fresh := s.groups.of(r.l, r.w)
	if fresh {
		s.groups.at[g].restL, s.groups.at[g].restW = s.bounds.restPoints(r.l, r.w)
	}
	s.groups.at[g].add(closed{has: r.has, value: r.value, rect: id, cuts: r.cuts})
	s.shelf[0].add(r.l, r.value, g, fresh)
	s.shelf[1].add(r.w, r.value, g, fresh)
}

// combine puts a rectangle and those closed side by side: ends together to be
// parted by a crosscut, edges together to be ripped. Two rectangles that are
// themselves divided in that direction need not be: the parts of one can be
// added to the other one by one.
func (s *Search) combine(id int32, dir instance.Dir, work int64) int64 {
	r := s.rects.at[id]
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
	for i := range shelves {
		sh := &shelves[i]
		work--
		if sh.size > room {
			break
		}
		// What is left in the direction of the sum; across it the smaller of both.
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
			}
		}
	}
	return work
}

// insert keeps a rectangle unless it can lead nowhere: because all that may be
// cut around it does not bring it above the threshold, or because another with
// the same blanks leaves as much room.
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
	if s.best != none && r.value <= s.rects.at[s.best].value {
		return
	}
	s.best = id
	if s.goal == bestOnly {
		s.threshold = r.value
	}
}
