package search

import (
	"math"

	"sawbill/nest/internal/instance"
)

// placement is a way to put a part into a leftover.
type placement struct {
	tree        int
	leftover    int32
	orientation orientation
	dir         instance.Dir // of the first cut
}

// recreate inserts the missing parts one by one, each at its best placement. It opens new stock
// while the plan costs less than goal. Now and then it skips a placement ("blinks": Christiaens
// and Vanden Berghe, 2020), so that equal ruins lead to different plans.
func (w *walk) recreate(goal instance.Cost) {
	s := w.state
	w.insertion.pass++
	kept := s.missing[:0]
	for i, k := range s.missing {
		// A kind that did not fit does not fit later in the same step.
		if w.insertion.failedPass[k] != w.insertion.pass && !w.insert(k, goal, s.missing[i:]) {
			w.insertion.failedPass[k] = w.insertion.pass
		}
		if w.insertion.failedPass[k] == w.insertion.pass {
			kept = append(kept, k)
		}
	}
	s.missing = kept
}

// insert places a part of kind k, in new stock if needed, and reports whether it could. missing
// is all that is still to be inserted.
func (w *walk) insert(k int32, goal instance.Cost, missing []int32) bool {
	if w.e.checked {
		return w.insertChecked(k, goal, missing)
	}
	s := w.state
	at, ok := w.bestPlacement(k)
	if !ok {
		stock := w.chooseStock(k, goal, missing)
		if stock < 0 {
			return false
		}
		n := s.open(stock)
		best := int64(math.MinInt64)
		if ok = w.searchTree(k, n, &at, &best, w.insertion.blinks); !ok {
			ok = w.searchTree(k, n, &at, &best, false)
		}
		if !ok { // a rule of the stock forbids it even there
			s.close(n)
			return false
		}
	}
	s.place(at, k)
	return true
}

func (s *state) place(at placement, k int32) {
	t := s.touch(at.tree)
	before := t.value
	t.place(at.leftover, k, at.orientation, at.dir, s.e)
	s.heads[at.tree] = t.gapSummary()
	s.value += t.value - before
	s.missingArea -= s.e.kinds[k].area
}

// bestPlacement finds the placement after which the leftovers are worth most.
func (w *walk) bestPlacement(k int32) (at placement, ok bool) {
	s := w.state
	best := int64(math.MinInt64)
	kd := &w.e.kinds[k]
	try := func(i int) {
		if s.heads[i].holds(kd) && w.searchTree(k, i, &at, &best, w.insertion.blinks) {
			ok = true
		}
	}
	if w.insertion.unplacedStep[k] == s.step {
		for _, i := range s.touched {
			try(i)
		}
		for i := s.saved.trees; i < len(s.trees); i++ {
			try(i)
		}
		return at, ok
	}
	for i := range s.heads {
		try(i)
	}
	return at, ok
}

// searchTree looks in tree i for a placement of kind k that is better than best, and updates at
// and best.
func (w *walk) searchTree(k int32, i int, at *placement, best *int64, blinks bool) (ok bool) {
	e, t := w.e, w.state.trees[i]
	for _, as := range e.kinds[k].orientations[t.stock] {
		for g := range t.gaps {
			c := &t.gaps[g]
			if c.l < as.l || c.w < as.w {
				continue
			}
			both := as.l < c.l && as.w < c.w
			ripped, crosscut := !both || w.insertion.avoidCut != instance.Rip, both && w.insertion.avoidCut != instance.Crosscut
			if e.checked {
				ripped = ripped && !w.insertion.refusal.has(i, as.turned, instance.Rip)
				crosscut = crosscut && !w.insertion.refusal.has(i, as.turned, instance.Crosscut)
			}
			if !e.unrestricted {
				st := &e.stock[t.stock]
				if as.w < c.w && as.w < st.narrowestRip {
					continue
				}
				ripped = ripped && t.allows(c.node, as, instance.Rip, e.in.Stages, st.firstCut)
				crosscut = crosscut && t.allows(c.node, as, instance.Crosscut, e.in.Stages, st.firstCut)
			}
			// Rip first: the leftover beside the strip keeps its whole length.
			if ripped && !(blinks && w.blink()) {
				if v := e.worth(c.l, c.w-as.w) + e.worth(c.l-as.l, as.w) - c.worth; v > *best {
					*best, *at, ok = v, placement{i, c.node, as, instance.Rip}, true
				}
			}
			if crosscut && !(blinks && w.blink()) {
				if v := e.worth(c.l-as.l, c.w) + e.worth(as.l, c.w-as.w) - c.worth; v > *best {
					*best, *at, ok = v, placement{i, c.node, as, instance.Crosscut}, true
				}
			}
		}
	}
	return ok
}

// allows reports whether the cuts that free a part from leftover x obey the maximum number of
// levels and the direction of the first level.
func (t *tree) allows(x int32, as orientation, dir instance.Dir, stages int, first instance.Dir) bool {
	c := &t.nodes[x]
	if first == instance.None && int(c.level)+2 <= stages {
		return true
	}
	level := int(c.level)
	over := instance.None
	if c.parent != none {
		over = t.nodes[c.parent].dir
	}
	for range 2 {
		if dir == instance.Rip && as.w < c.w || dir == instance.Crosscut && as.l < c.l {
			if over == instance.None && first != instance.None && dir != first {
				return false
			}
			if over != dir {
				level++
				over = dir
			}
		}
		dir = dir.Across()
	}
	return level <= stages
}

// chooseStock chooses a stock for a new tree that holds kind k, so that the plan costs less
// than goal; -1 if there is none. It prefers the lowest cost per area that the missing parts
// can use.
func (w *walk) chooseStock(k int32, goal instance.Cost, missing []int32) int {
	s, e := w.state, w.e
	var need int64
	for _, m := range missing {
		need += e.kinds[m].area
	}
	pick, best := -1, math.Inf(1)
	for i := range e.stock {
		st := &e.stock[i]
		if e.checked && w.insertion.refusal.stock(i) || s.used[i] >= w.maxPieces[i] || len(e.kinds[k].orientations[i]) == 0 || !s.cost.Plus(st.cost, 1).Less(goal) {
			continue
		}
		rate := st.weight / float64(min(st.area, need))
		if w.random()&3 == 0 {
			rate *= 0.5 + float64(float64(w.random()&1023)/1024)
		}
		if rate < best {
			pick, best = i, rate
		}
	}
	return pick
}
