package search

import (
	"cmp"
	"math"
	"slices"

	"sawbill/nest/internal/instance"
)

// Secondary objectives compare plans of equal cost and area lexicographically.

// objectives are the values of a plan, in order of importance.
type objectives struct {
	// covered counts the parts that have a replacement in an offcut or in unused stock on hand.
	covered int
	// offcuts is the area of one offcut with the worth of all, in 1/offcutUnits of the largest
	// stock. Smaller differences do not matter: no setup is worth that.
	offcuts int64
	// setups counts fence settings, for equal layouts once and without trim.
	setups int
	// cuts counts all cuts.
	cuts int
}

const offcutUnits = 128

func (m objectives) compare(o objectives) int {
	return cmp.Or(cmp.Compare(m.covered, o.covered), cmp.Compare(m.offcuts, o.offcuts),
		cmp.Compare(o.setups, m.setups), cmp.Compare(o.cuts, m.cuts))
}

// objective is the last objective that counts, with all before it.
type objective int

const (
	noObjective objective = iota
	coverObjective
	offcutObjective
	setupObjective
	cutObjective
)

// truncate zeroes the objectives after last.
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

// evaluator computes the objectives of states, and keeps its memory.
type evaluator struct {
	e         *env
	uncovered []int32
	settings  []setting
	layouts   []layout
}

// setting is a fence or stop position at a level of cuts. All cuts of a level have one
// direction.
type setting struct{ level, size int32 }

// layout stands for a tree. Equal trees have equal fingerprints.
type layout struct {
	fingerprint uint64
	setups      int
}

// evaluateChanged evaluates the trees that the present step has changed.
func (e *evaluator) evaluateChanged(s *state) {
	for _, i := range s.touched {
		e.evaluateTree(s.trees[i])
	}
	for _, t := range s.trees[s.saved.trees:] {
		e.evaluateTree(t)
	}
}

// evaluateAll evaluates every tree of s.
func (e *evaluator) evaluateAll(s *state) {
	for _, t := range s.trees {
		e.evaluateTree(t)
	}
}

// total returns the objectives of s, whose trees must have been evaluated.
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

// offcutValue converts a worth to the unit of objectives.offcuts.
func offcutValue(value int64) int64 {
	if value < 0 {
		return -offcutValue(-value)
	}
	// The root is exact to the unit, since it is rounded correctly and value is far below 2^53.
	return int64(math.Sqrt(float64(value))) * offcutUnits >> (instance.AreaBits / 2)
}

// coveredByStock reports whether unused stock on hand holds kind k.
func (e *evaluator) coveredByStock(s *state, k int32) bool {
	for i, st := range e.e.in.Stock {
		if st.OnHand && s.used[i] < st.Limit && len(e.e.kinds[k].orientations[i]) > 0 {
			return true
		}
	}
	return false
}

// cover removes the kinds that offcuts of t hold from uncovered, and returns how many parts
// that covers.
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

// holds reports whether kind k can be cut from a piece l x w of a stock, with stages and first
// cut counted from that piece.
func (e *env) holds(stock int, l, w, k int32) bool {
	for _, as := range e.kinds[k].orientations[stock] {
		if e.cutFree(stock, l, w, as) {
			return true
		}
	}
	return false
}

// cutFree reports whether at most two cuts free a part from a piece l x w.
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

// evaluateTree computes the setups and the fingerprint of t.
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

// fingerprint records the settings below n and returns n's fingerprint, which does not depend
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
		// Without a leftover, the smallest child remains at the end and is not cut off.
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

// along returns the size of child m of n in the direction that n divides.
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

// hashMix hashes three numbers, as splitmix64 does one.
func hashMix(a, b, c uint64) uint64 {
	x := a*0x9e3779b97f4a7c15 + b*0xbf58476d1ce4e5b9 + c*0x94d049bb133111eb + 1
	x = (x ^ x>>30) * 0xbf58476d1ce4e5b9
	x = (x ^ x>>27) * 0x94d049bb133111eb
	return x ^ x>>31
}
