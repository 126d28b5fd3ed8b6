package search

import "sawbill/nest/internal/instance"

// state is a partial plan: cutting trees and the missing parts, with one step of undo.
type state struct {
	e           *env
	trees       []*tree
	heads       []gapSummary // per tree
	missing     []int32      // a kind for every part that is not placed
	missingArea int64
	value       int64 // of all leftovers, less the forgone value of the pieces on hand that are cut
	cost        instance.Cost
	used        []int // pieces cut, per stock

	step      uint64
	touched   []int   // trees saved in this step
	backup    []*tree // per tree
	freeTrees []*tree
	saved     struct {
		trees              int
		missing            []int32
		missingArea, value int64
		cost               instance.Cost
		used               []int
	}
}

// gapSummary is the greatest area, length and width of a tree's gaps. It rules out quickly that
// a part fits.
type gapSummary struct {
	area int64
	l, w int32
}

// holds reports whether kind k may fit.
func (h *gapSummary) holds(k *kind) bool {
	return h.area >= k.exactArea && h.l >= k.minL && h.w >= k.minW
}

func newState(e *env) *state {
	s := &state{e: e, used: make([]int, len(e.stock))}
	for k, kd := range e.in.Kinds {
		for range kd.Demand {
			s.missing = append(s.missing, int32(k))
		}
		s.missingArea += int64(kd.Demand) * e.kinds[k].area
	}
	s.begin()
	return s
}

// begin opens a step: undo takes back everything since.
func (s *state) begin() {
	s.step++
	s.touched = s.touched[:0]
	b := &s.saved
	b.trees = len(s.trees)
	b.missing = append(b.missing[:0], s.missing...)
	b.used = append(b.used[:0], s.used...)
	b.missingArea, b.value, b.cost = s.missingArea, s.value, s.cost
}

// undo takes the step back.
func (s *state) undo() {
	b := &s.saved
	for _, i := range s.touched {
		if i < b.trees {
			s.trees[i], s.backup[i] = s.backup[i], s.trees[i]
			s.heads[i] = s.trees[i].gapSummary()
		}
	}
	s.truncate(b.trees)
	s.missing, b.missing = b.missing, s.missing
	s.used, b.used = b.used, s.used
	s.missingArea, s.value, s.cost = b.missingArea, b.value, b.cost
}

// commit keeps the step, and drops empty trees.
func (s *state) commit() {
	n := len(s.trees)
	for i := n - 1; i >= 0; i-- {
		if s.trees[i].closed {
			n--
			s.trees[i], s.trees[n] = s.trees[n], s.trees[i]
			s.backup[i], s.backup[n] = s.backup[n], s.backup[i]
			s.heads[i], s.heads[n] = s.heads[n], s.heads[i]
		}
	}
	s.truncate(n)
}

func (s *state) truncate(n int) {
	for i := n; i < len(s.trees); i++ {
		s.freeTrees = append(s.freeTrees, s.trees[i], s.backup[i])
	}
	s.trees, s.backup, s.heads = s.trees[:n], s.backup[:n], s.heads[:n]
}

func (s *state) newTree() *tree {
	if n := len(s.freeTrees); n > 0 {
		t := s.freeTrees[n-1]
		s.freeTrees = s.freeTrees[:n-1]
		return t
	}
	return &tree{}
}

// open starts a new piece of stock and returns the index of its tree.
func (s *state) open(stock int) int {
	t := s.newTree()
	st := &s.e.stock[stock]
	t.reset(stock, s.e)
	t.stamp = s.step // new in this step: undo drops it
	s.trees = append(s.trees, t)
	s.backup = append(s.backup, s.newTree())
	s.heads = append(s.heads, t.gapSummary())
	s.used[stock]++
	s.cost = s.cost.Plus(st.cost, 1)
	s.value += t.value - st.forgone
	return len(s.trees) - 1
}

// touch must be called before tree i changes.
func (s *state) touch(i int) *tree {
	t := s.trees[i]
	if t.stamp != s.step {
		t.stamp = s.step
		s.backup[i].copyFrom(t)
		s.touched = append(s.touched, i)
	}
	return t
}

// remove takes node n out of tree i. If the tree is then empty, it is closed.
func (s *state) remove(i int, n int32) {
	t := s.touch(i)
	had := len(s.missing)
	before := t.value
	s.missing = t.remove(n, s.missing, s.e)
	for _, k := range s.missing[had:] {
		s.missingArea += s.e.kinds[k].area
	}
	s.value += t.value - before
	if len(t.parts) == 0 {
		s.close(i)
	} else {
		s.heads[i] = t.gapSummary()
	}
}

// close gives empty tree i back; commit drops it.
func (s *state) close(i int) {
	t := s.trees[i]
	t.closed = true
	s.heads[i] = t.gapSummary()
	st := &s.e.stock[t.stock]
	s.value -= t.value - st.forgone
	s.used[t.stock]--
	s.cost = s.cost.Plus(st.cost, -1)
}

// load replaces the state by plan p.
func (s *state) load(p *instance.Plan) {
	s.truncate(0)
	s.missing = s.missing[:0]
	s.missingArea, s.value, s.cost = 0, 0, instance.Cost{}
	clear(s.used)
	for k, n := range p.Missing {
		for range n {
			s.missing = append(s.missing, int32(k))
		}
		s.missingArea += int64(n) * s.e.kinds[k].area
	}
	for _, lay := range p.Layouts {
		t := s.trees[s.open(lay.Stock)]
		s.value -= t.value
		t.dropLeftover(0)
		t.load(0, &lay.Root, s.e)
		s.heads[len(s.trees)-1] = t.gapSummary()
		s.value += t.value
	}
	s.begin()
}

// load makes node n, which is in no list, a copy of p.
func (t *tree) load(n int32, p *instance.Piece, e *env) {
	c := &t.nodes[n]
	c.l, c.w = int32(p.L), int32(p.W)
	switch {
	case len(p.Children) > 0:
		c.role, c.dir, c.first, c.leftover = split, p.Dir, none, none
		level := c.level + 1
		for i := len(p.Children) - 1; i >= 0; i-- {
			m := t.alloc()
			t.nodes[m] = node{first: none, leftover: none, level: level}
			t.link(n, m)
			t.load(m, &p.Children[i], e)
			if t.nodes[m].role == leftover {
				t.nodes[n].leftover = m
			}
		}
	case p.Kind == instance.Leftover:
		t.addLeftover(n, e)
	default:
		c.kind, c.turned = int32(p.Kind), p.Turned
		t.addPart(n, e)
	}
}

// plan returns a copy of the state.
func (s *state) plan() *instance.Plan {
	p := &instance.Plan{Missing: make([]int, len(s.e.kinds)), Cost: s.cost}
	for _, k := range s.missing {
		p.Missing[k]++
	}
	for _, t := range s.trees {
		if !t.closed {
			p.Layouts = append(p.Layouts, instance.Layout{Stock: int(t.stock), Root: instance.Normalize(t.piece(0))})
		}
	}
	return p
}

// piece returns a copy of node n.
func (t *tree) piece(n int32) instance.Piece {
	c := &t.nodes[n]
	p := instance.Piece{L: int64(c.l), W: int64(c.w), Kind: instance.Leftover}
	switch c.role {
	case part:
		p.Kind, p.Turned = int(c.kind), c.turned
	case split:
		p.Dir = c.dir
		for m := c.first; m != none; m = t.nodes[m].next {
			p.Children = append(p.Children, t.piece(m))
		}
	}
	return p
}
