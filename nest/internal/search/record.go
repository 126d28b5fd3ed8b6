package search

import "sawbill/nest/internal/pool"

// recordPatterns records the patterns of the trees that the step has changed, whether or not
// the state is accepted. A good pattern may come in a bad plan.
func (w *walk) recordPatterns() {
	if w.recorder == nil {
		return
	}
	s := w.state
	for _, i := range s.touched {
		w.recordTree(s.trees[i])
	}
	for i := s.saved.trees; i < len(s.trees); i++ {
		w.recordTree(s.trees[i])
	}
}

func (w *walk) recordTree(t *tree) {
	if t.closed || w.recorder.TooWasteful(t.freeArea, w.e.stock[t.stock].area) {
		return
	}
	if key := pool.Key(int(t.stock), t.key); w.recorder.IsNew(key) {
		w.recorder.Record(key, int(t.stock), t.code)
	}
}

// code appends the code of the tree.
func (t *tree) code(c pool.Code) pool.Code { return t.codeNode(0, c) }

func (t *tree) codeNode(n int32, c pool.Code) pool.Code {
	switch q := &t.nodes[n]; q.role {
	case part:
		c = c.Part(int(q.kind), q.turned)
	case split:
		children := 0
		for m := q.first; m != none; m = t.nodes[m].next {
			if t.nodes[m].role != leftover {
				children++
			}
		}
		c = c.Split(q.dir, children)
		for m := q.first; m != none; m = t.nodes[m].next {
			c = t.codeNode(m, c)
		}
	}
	return c
}
