package search

import (
	"cmp"
	"math"
	"slices"

	"sawbill/nest/internal/instance"
)

// The lesser aims: what makes one of two plans better that cost the same and
// take the same area.

// objectives is how well a plan serves the lesser aims, in their order.
type objectives struct {
	// covered counts the pieces of which one replacement could be cut from what
	// is kept.
	covered int
	// offcuts is the side of the square of what the offcuts are worth together: the
	// area of the one offcut that were worth as much, in 1/keptUnits of the
	// largest stock. Differences below that are not worth a setup.
	offcuts int64
	// setups are the fence positions that change while a layout is cut, equal
	// layouts once, trim left out.
	setups int
	// cuts are all that are made.
	cuts int
}

const offcutUnits = 128

func (m objectives) compare(o objectives) int {
	return cmp.Or(cmp.Compare(m.covered, o.covered), cmp.Compare(m.offcuts, o.offcuts),
		cmp.Compare(o.setups, m.setups), cmp.Compare(o.cuts, m.cuts))
}

// objective is the last of the lesser aims that counts, with all before it.
type objective int

const (
	noObjective objective = iota
	coverObjective
	offcutObjective
	setupObjective
	cutObjective
)

// truncate leaves the aims after last out of account.
func (m objectives) truncate(last objective) objectives {
	if last < cutObjective {
		m.cuts = 0
	}
	if last < setupObjective {
		m.setups = 0
	}
	if last < offcutObjective {
		m.offcuts = 0
	}
	if last < coverObjective {
		m.covered = 0
	}
	return m
}

// evaluator finds the merit of states. It keeps its memory.
type evaluator struct {
	e         *env
	uncovered []int32
	settings  []setting
	layouts   []layout
}

// setting is a fence or stop position at a level of cuts; all cuts of a level
// have one direction.
type setting struct{ level, size int32 }

// layout stands for a tree: equal trees have equal prints.
type layout struct {
	fingerprint uint64
	setups      int
}

// evaluateChanged appraises the trees that the present step has changed.
func (e *evaluator) evaluateChanged(s *state) {
	for _, i := range s.touched {
		e.evaluateTree(s.trees[i])
	}
	for _, t := range s.trees[s.saved.trees:] {
		e.evaluateTree(t)
	}
}

// evaluateAll appraises every tree of s.
func (e *evaluator) evaluateAll(s *state) {
	for _, t := range s.trees {
		e.evaluateTree(t)
	}
}

// total adds up what the trees of s come to. They must have been appraised.
func (e *evaluator) total(s *state) objectives {
	var m objectives
	e.uncovered = e.uncovered[:0]
	for k := range e.e.kinds {
		if e.coveredByStock(s, int32(k)) {
			m.covered += e.e.in.Kinds[k].Demand
		} else {
			e.uncovered = append(e.uncovered, int32(k))
		}
	}
	e.layouts = e.layouts[:0]
	for _, t := range s.trees {
		if t.closed {
			continue
		}
		m.covered += e.cover(t)
		m.cuts += len(t.parts) + len(t.gaps) - 1
		e.layouts = append(e.layouts, layout{t.fingerprint, t.setups})
	}
	slices.SortFunc(e.layouts, func(x, y layout) int { return cmp.Compare(x.fingerprint, y.fingerprint) })
	for i, l := range e.layouts {
		if i == 0 || e.layouts[i-1].fingerprint != l.fingerprint {
			m.setups += l.setups
		}
	}
	m.offcuts = offcutValue(s.value)
	return m
}

// offcutValue brings a value to the scale of merit.kept.
func offcutValue(value int64) int64 {
	if value < 0 {
		return -offcutValue(-value)
	}
	// The root is exact to the unit: it is rounded correctly, and value is far
	// below 2^53.
	return int64(math.Sqrt(float64(value))) * offcutUnits >> (instance.AreaBits / 2)
}

// coveredByStock reports whether a piece on hand that holds kind k stays whole.
func (e *evaluator) coveredByStock(s *state, k int32) bool {
	for i, st := range e.e.in.Stock {
		if st.OnHand && s.used[i] < st.Limit && len(e.e.kinds[k].orientations[i]) > 0 {
			return true
		}
	}
	return false
}

// cover takes what the offcuts of t hold off the uncovered kinds, and returns
// how many pieces that are.
func (e *evaluator) cover(t *tree) int {
	in, covered := e.e.in, 0
	for _, g := range t.gaps {
		if int64(g.l) < in.KeepLength || int64(g.w) < in.KeepWidth {
			continue
		}
		left := e.uncovered[:0]
		for _, k := range e.uncovered {
			if kd := &e.e.kinds[k]; g.l < kd.minL || g.w < kd.minW {
				left = append(left, k)
			} else if e.e.holds(int(t.stock), g.l, g.w, k) {
				covered += in.Kinds[k].Demand
			} else {
				left = append(left, k)
			}
		}
		e.uncovered = left
	}
	return covered
}

// holds reports whether kind k can be cut from a piece l x w of a stock, whose
// cuts are counted anew.
func (e *env) holds(stock int, l, w, k int32) bool {
	for _, as := range e.kinds[k].orientations[stock] {
		if e.cutFree(stock, l, w, as) {
			return true
		}
	}
	return false
}

// cutFree reports whether at most two cuts in a piece l x w free a part that lies
// so.
func (e *env) cutFree(stock int, l, w int32, as orientation) bool {
	if as.l > l || as.w > w {
		return false
	}
	st := &e.stock[stock]
	rip, cross := as.w < w, as.l < l
	switch {
	case rip && as.w < st.narrowestRip:
		return false
	case rip && cross:
		return e.in.Stages >= 2
	case rip:
		return st.firstCut != instance.Crosscut
	case cross:
		return st.firstCut != instance.Rip
	}
	return true
}

// evaluateTree counts the setups of t and takes its print.
func (e *evaluator) evaluateTree(t *tree) {
	if t.closed {
		return
	}
	e.settings = e.settings[:0]
	t.fingerprint = e.fingerprint(t, 0)
	slices.SortFunc(e.settings, func(x, y setting) int {
		return cmp.Or(cmp.Compare(x.level, y.level), cmp.Compare(x.size, y.size))
	})
	t.setups = 0
	for i, s := range e.settings {
		if i == 0 || e.settings[i-1] != s {
			t.setups++
		}
	}
}

// fingerprint notes the settings below n and returns n's print, which does not depend
// on the order of children.
func (e *evaluator) fingerprint(t *tree, n int32) uint64 {
	c := &t.nodes[n]
	hash := hashMix(uint64(c.role), uint64(c.l), uint64(c.w))
	switch c.role {
	case part:
		hash = hashMix(hash, uint64(c.kind), 0)
		if c.turned {
			hash++
		}
	case split:
		var sum uint64
		// Where no rest remains, the smallest child does, and is not cut off.
		last := none
		if c.leftover == none {
			last = t.smallest(n)
		}
		for m := c.first; m != none; m = t.nodes[m].next {
			sum += e.fingerprint(t, m)
			if m != last && t.nodes[m].role != leftover {
				e.settings = append(e.settings, setting{c.level, t.along(n, m)})
			}
		}
		hash = hashMix(hash, uint64(c.dir), sum)
	}
	return hash
}

// along is the size of child m of n in the direction that n divides.
func (t *tree) along(n, m int32) int32 {
	if t.nodes[n].dir == instance.Rip {
		return t.nodes[m].w
	}
	return t.nodes[m].l
}

func (t *tree) smallest(n int32) int32 {
	least := t.nodes[n].first
	for m := t.nodes[least].next; m != none; m = t.nodes[m].next {
		if t.along(n, m) < t.along(n, least) {
			least = m
		}
	}
	return least
}

// hashMix scatters three numbers over 64 bits, as splitmix64 does one.
func hashMix(a, b, c uint64) uint64 {
	x := a*0x9e3779b97f4a7c15 + b*0xbf58476d1ce4e5b9 + c*0x94d049bb133111eb + 1
	x = (x ^ x>>30) * 0xbf58476d1ce4e5b9
	x = (x ^ x>>27) * 0x94d049bb133111eb
	return x ^ x>>31
}
