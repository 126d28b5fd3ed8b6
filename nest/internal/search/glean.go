package search

import "sawbill/nest/internal/harvest"

// glean notes the patterns of the trees that the step has changed, before it is
// settled whether the state is kept: a good pattern may come in a bad plan.
func (l *lane) glean() {
	if l.gleaner == nil {
		return
	}
	s := l.state
	for _, i := range s.touched {
		l.gleanTree(s.trees[i])
	}
	for i := s.before.trees; i < len(s.trees); i++ {
		l.gleanTree(s.trees[i])
	}
}

func (l *lane) gleanTree(t *tree) {
	if t.closed || l.gleaner.Barren(t.room, l.e.stock[t.stock].area) {
		return
	}
	if key := harvest.Key(int(t.stock), t.key); l.gleaner.Lacks(key) {
		l.gleaner.Note(key, int(t.stock), t.code)
	}
}

// code appends that of the tree.
func (t *tree) code(c harvest.Code) harvest.Code { return t.codeNode(0, c) }

func (t *tree) codeNode(n int32, c harvest.Code) harvest.Code {
	switch q := &t.nodes[n]; q.role {
	case part:
		c = c.Part(int(q.kind), q.turned)
	case split:
		children := 0
		for m := q.first; m != none; m = t.nodes[m].next {
			if t.nodes[m].role != rest {
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
