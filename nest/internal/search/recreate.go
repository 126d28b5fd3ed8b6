package search

import (
	"math"
	"slices"

	"sawbill/nest/internal/instance"
)

// spot is a way to put a part into a rest.
type spot struct {
	tree   int
	rest   int32
	turned bool
	dir    instance.Dir // of the first cut
}

// recreate places what is missing, one piece after another in the order of
// s.missing, each at its best spot; a spot is overlooked now and then
// ("blinks", Christiaens and Vanden Berghe 2020) so that the same ruins do not
// always lead to the same plan. New stock is opened while the plan stays
// cheaper than goal.
func (l *lane) recreate(goal instance.Cost) {
	s := l.state
	l.stuck = l.stuck[:0]
	kept := s.missing[:0]
	for i, k := range s.missing {
		// A kind that found no place finds none later in the same step.
		if slices.Contains(l.stuck, k) {
			kept = append(kept, k)
			continue
		}
		at, ok := l.bestSpot(k)
		if !ok {
			stock := l.pickStock(k, goal, s.missing[i:])
			if stock < 0 {
				l.stuck = append(l.stuck, k)
				kept = append(kept, k)
				continue
			}
			n := s.open(stock)
			if at, ok, _ = l.searchTree(k, n, math.MinInt64, l.blinks); !ok {
				at, ok, _ = l.searchTree(k, n, math.MinInt64, false)
			}
			if !ok { // a rule of the stock forbids it even there
				s.close(n)
				l.stuck = append(l.stuck, k)
				kept = append(kept, k)
				continue
			}
		}
		s.place(at, k)
	}
	s.missing = kept
}

func (s *state) place(at spot, k int32) {
	t := s.touch(at.tree)
	kd := &s.e.kinds[k]
	lg, wd := kd.l, kd.w
	if at.turned {
		lg, wd = wd, lg
	}
	before := t.value
	t.place(at.rest, k, lg, wd, at.turned, at.dir, s.e)
	s.value += t.value - before
	s.missingArea -= kd.area
}

// bestSpot looks through all trees for the spot after which the leftovers are
// worth most.
func (l *lane) bestSpot(k int32) (at spot, ok bool) {
	best := int64(math.MinInt64)
	area := l.e.kinds[k].area
	for i, t := range l.state.trees {
		if t.closed || l.e.areas[t.stock]-t.filled < area {
			continue
		}
		if sp, found, score := l.searchTree(k, i, best, l.blinks); found {
			at, ok, best = sp, true, score
		}
	}
	return at, ok
}

// searchTree looks in tree i for a spot better than best.
func (l *lane) searchTree(k int32, i int, best int64, blinks bool) (at spot, ok bool, score int64) {
	e, t := l.e, l.state.trees[i]
	kd := &e.kinds[k]
	lies := kd.lies[t.stock]
	st := &e.in.Stock[t.stock]
	for _, x := range t.rests {
		c := &t.nodes[x]
		for turned := range 2 {
			lg, wd := kd.l, kd.w
			if turned == 1 {
				if lies&instance.Turned == 0 || kd.l == kd.w && lies&instance.Upright != 0 {
					continue
				}
				lg, wd = wd, lg
			} else if lies&instance.Upright == 0 {
				continue
			}
			if lg > c.l || wd > c.w {
				continue
			}
			if wd < c.w && wd < st.Narrowest {
				continue
			}
			old := e.worth(c.l, c.w)
			both := lg < c.l && wd < c.w
			// Rip first: the leftover beside the strip keeps its whole length.
			if !(both && l.avoid == instance.Ripped) && t.allows(x, lg, wd, instance.Ripped, e.in.Stages, st.First) && !(blinks && l.blink()) {
				if v := e.worth(c.l, c.w-wd) + e.worth(c.l-lg, wd) - old; v > best {
					at, ok, best = spot{i, x, turned == 1, instance.Ripped}, true, v
				}
			}
			if both && l.avoid != instance.Crosscut && t.allows(x, lg, wd, instance.Crosscut, e.in.Stages, st.First) && !(blinks && l.blink()) {
				if v := e.worth(c.l-lg, c.w) + e.worth(lg, c.w-wd) - old; v > best {
					at, ok, best = spot{i, x, turned == 1, instance.Crosscut}, true, v
				}
			}
		}
	}
	return at, ok, best
}

// allows reports whether the cuts that free a part l x w from rest x keep to
// the greatest number of levels and to the direction of the first level.
func (t *tree) allows(x int32, l, w int64, dir instance.Dir, stages int, first instance.Dir) bool {
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
		if dir == instance.Ripped && w < c.w || dir == instance.Crosscut && l < c.l {
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

// pickStock chooses a stock for a new tree in which kind k fits, so that the
// plan stays cheaper than goal; -1 if there is none. It prefers the stock that
// costs least for the area that what is missing can use of it.
func (l *lane) pickStock(k int32, goal instance.Cost, missing []int32) int {
	s, e := l.state, l.e
	var need int64
	for _, m := range missing {
		need += e.kinds[m].area
	}
	pick, best := -1, math.Inf(1)
	for i := range e.costs {
		if s.used[i] >= e.in.Stock[i].Limit || !e.fits(k, i) || !s.cost.Plus(e.costs[i], 1).Less(goal) {
			continue
		}
		rate := e.weights[i] / float64(min(e.areas[i], need))
		if l.random()&3 == 0 {
			rate *= 0.5 + float64(l.random()&1023)/1024
		}
		if rate < best {
			pick, best = i, rate
		}
	}
	return pick
}

// fits reports whether kind k can lie in an empty stock i.
func (e *env) fits(k int32, i int) bool {
	kd, st := &e.kinds[k], &e.in.Stock[i]
	lies := kd.lies[i]
	return lies&instance.Upright != 0 && kd.l <= st.L && kd.w <= st.W ||
		lies&instance.Turned != 0 && kd.w <= st.L && kd.l <= st.W
}
