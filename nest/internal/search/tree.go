package search

import "sawbill/nest/internal/instance"

// tree is a cutting tree: one piece of stock divided by guillotine cuts.
//
// Every split has at most one leftover among its children: strips can change places, so two
// leftovers side by side are one. Levels of cuts alternate in direction. The nodes are one
// slice, with a free list, so that two or three calls of copy copy a tree.
type tree struct {
	stock       int32
	closed      bool   // empty; dropped on commit
	stamp       uint64 // the last step that saved it
	free        int32
	nodes       []node
	gaps        []gap   // all leftovers
	parts       []int32 // all parts
	freeArea    int64   // that is not parts
	value       int64   // of the leftovers
	key         uint64  // sum of the parts' keys; see pool
	setups      int     // setups and fingerprint: as last evaluated
	fingerprint uint64
}

// gap is a leftover. Its fields lie together for the search for placements.
type gap struct {
	l, w  int32
	worth int64
	node  int32
}

type role uint8

const (
	leftover role = iota
	part
	split
)

type node struct {
	l, w                      int32
	parent, first, next, prev int32
	leftover                  int32 // of a split: its leftover, or none
	pos                       int32 // of a leftover or part: place in tree.gaps or tree.parts
	kind                      int32 // of a part
	level                     int32 // of cuts above
	role                      role
	dir                       instance.Dir // of a split
	turned                    bool
}

const none = int32(-1)

// reset makes t one empty piece of stock s.
func (t *tree) reset(s int, e *env) {
	st := &e.stock[s]
	t.stock = int32(s)
	t.closed = false
	t.free = none
	t.freeArea, t.value, t.key = st.area, 0, 0
	t.nodes = append(t.nodes[:0], node{l: st.l, w: st.w, parent: none, first: none, next: none, prev: none, leftover: none})
	t.parts, t.gaps = t.parts[:0], t.gaps[:0]
	t.addLeftover(0, e)
}

// A closed tree holds nothing.
func (t *tree) gapSummary() gapSummary {
	if t.closed {
		return gapSummary{area: -1}
	}
	var h gapSummary
	for i := range t.gaps {
		c := &t.gaps[i]
		h.area, h.l, h.w = max(h.area, int64(c.l)*int64(c.w)), max(h.l, c.l), max(h.w, c.w)
	}
	return h
}

// copyFrom makes t equal to o and keeps t's memory.
func (t *tree) copyFrom(o *tree) {
	nodes, gaps, parts := t.nodes, t.gaps, t.parts
	*t = *o
	t.nodes = append(nodes[:0], o.nodes...)
	t.gaps = append(gaps[:0], o.gaps...)
	t.parts = append(parts[:0], o.parts...)
}

func (t *tree) alloc() int32 {
	if n := t.free; n != none {
		t.free = t.nodes[n].next
		return n
	}
	t.nodes = append(t.nodes, node{})
	return int32(len(t.nodes) - 1)
}

func (t *tree) release(n int32) {
	t.nodes[n].next = t.free
	t.free = n
}

// link adds n to the children of split p.
func (t *tree) link(p, n int32) {
	c := &t.nodes[n]
	q := &t.nodes[p]
	c.parent, c.prev, c.next = p, none, q.first
	if q.first != none {
		t.nodes[q.first].prev = n
	}
	q.first = n
}

// unlink removes n from its siblings.
func (t *tree) unlink(n int32) {
	c := &t.nodes[n]
	if c.prev != none {
		t.nodes[c.prev].next = c.next
	} else {
		t.nodes[c.parent].first = c.next
	}
	if c.next != none {
		t.nodes[c.next].prev = c.prev
	}
}

func (t *tree) addLeftover(n int32, e *env) {
	c := &t.nodes[n]
	c.role = leftover
	c.pos = int32(len(t.gaps))
	worth := e.worth(c.l, c.w)
	t.gaps = append(t.gaps, gap{c.l, c.w, worth, n})
	t.value += worth
}

func (t *tree) dropLeftover(n int32) {
	pos := t.nodes[n].pos
	last := t.gaps[len(t.gaps)-1]
	t.value -= t.gaps[pos].worth
	t.gaps[pos] = last
	t.nodes[last.node].pos = pos
	t.gaps = t.gaps[:len(t.gaps)-1]
}

// carve cuts a piece of the given size off x in direction dir and returns it. The piece is not
// listed as a leftover; what is left beside it is. listed says whether x is.
func (t *tree) carve(x int32, dir instance.Dir, size int32, listed bool, e *env) int32 {
	c := &t.nodes[x]
	full := c.w
	if dir == instance.Crosscut {
		full = c.l
	}
	parent := c.parent
	if listed {
		t.dropLeftover(x)
	}
	if size == full {
		if listed && parent != none {
			t.nodes[parent].leftover = none
		}
		return x
	}
	if parent == none || t.nodes[parent].dir != dir {
		// x becomes a split with two children, one of them the leftover.
		if listed && parent != none {
			t.nodes[parent].leftover = none
		}
		r := t.alloc()
		c = &t.nodes[x]
		t.nodes[r] = node{l: c.l, w: c.w, first: none, leftover: none, level: c.level + 1}
		c.role, c.dir, c.first, c.leftover = split, dir, none, r
		t.link(x, r)
		parent, x = x, r
	} else if !listed {
		t.nodes[parent].leftover = x
	}
	n := t.alloc()
	r := &t.nodes[x]
	t.nodes[n] = node{l: r.l, w: r.w, first: none, leftover: none, level: r.level}
	if dir == instance.Crosscut {
		t.nodes[n].l = size
		r.l -= size
	} else {
		t.nodes[n].w = size
		r.w -= size
	}
	t.addLeftover(x, e)
	t.link(parent, n)
	return n
}

// place puts a part of kind k into leftover x, with the first cut in direction dir.
func (t *tree) place(x int32, k int32, as orientation, dir instance.Dir, e *env) {
	first, second := as.w, as.l
	if dir == instance.Crosscut {
		first, second = as.l, as.w
	}
	n := t.carve(x, dir, first, true, e)
	n = t.carve(n, dir.Across(), second, false, e)
	c := &t.nodes[n]
	c.kind, c.turned = k, as.turned
	t.addPart(n, e)
}

func (t *tree) addPart(n int32, e *env) {
	c := &t.nodes[n]
	c.role = part
	c.pos = int32(len(t.parts))
	t.parts = append(t.parts, n)
	t.freeArea -= e.kinds[c.kind].area
	t.key += e.kinds[c.kind].key
}

// remove takes node n, a part or a split, out of the tree with all below it. It appends the
// kinds of the parts to out.
func (t *tree) remove(n int32, out []int32, e *env) []int32 {
	out = t.releaseParts(n, out, e)
	for {
		// n is a leftover that is not listed yet. Join it with its sibling leftover. If the
		// split then holds nothing else, the split becomes the leftover.
		c := &t.nodes[n]
		p := c.parent
		if p == none {
			break
		}
		q := &t.nodes[p]
		if q.leftover != none {
			r := q.leftover
			t.dropLeftover(r)
			t.unlink(r)
			if q.dir == instance.Rip {
				c.w += t.nodes[r].w
			} else {
				c.l += t.nodes[r].l
			}
			t.release(r)
		}
		q.leftover = n
		if q.first != n || c.next != none {
			break
		}
		t.release(n)
		q.first, q.leftover = none, none
		n = p
	}
	t.addLeftover(n, e)
	return out
}

// releaseParts frees everything below n and n's own part.
func (t *tree) releaseParts(n int32, out []int32, e *env) []int32 {
	c := &t.nodes[n]
	switch c.role {
	case part:
		out = append(out, c.kind)
		t.freeArea += e.kinds[c.kind].area
		t.key -= e.kinds[c.kind].key
		last := t.parts[len(t.parts)-1]
		t.parts[c.pos] = last
		t.nodes[last].pos = c.pos
		t.parts = t.parts[:len(t.parts)-1]
	case leftover:
		t.dropLeftover(n)
	case split:
		for m := c.first; m != none; {
			next := t.nodes[m].next
			out = t.releaseParts(m, out, e)
			t.release(m)
			m = next
		}
		c.first, c.leftover = none, none
	}
	return out
}
