package columns

import (
	"encoding/binary"

	"sawbill/nest/internal/instance"
	"sawbill/nest/internal/whole"
)

// Pattern is one piece of stock divided. One that was priced without counting
// may hold a kind more often than it is wanted.
type Pattern struct {
	Stock  int
	Root   instance.Piece
	Counts []whole.Count
	// Sound patterns keep to every rule of their stock; the others serve the
	// bound only.
	Sound bool
	taken int // by dives that have ended, so often
}

// pool holds every pattern once.
type pool struct {
	in       *instance.Instance
	patterns []Pattern
	known    map[string]bool
}

func newPool(in *instance.Instance) *pool {
	return &pool{in: in, known: map[string]bool{}}
}

func newPattern(in *instance.Instance, stock int, root instance.Piece) Pattern {
	t := Pattern{Stock: stock, Root: root, Sound: in.Allows(stock, root)}
	counts := make([]int, len(in.Kinds))
	root.CountParts(counts)
	for k, n := range counts {
		if n > 0 {
			t.Counts = append(t.Counts, whole.Count{Kind: k, Times: n})
		}
	}
	return t
}

// add takes a divided piece of stock into the pool and reports whether it was
// new.
func (p *pool) add(stock int, root instance.Piece) bool {
	t := newPattern(p.in, stock, root)
	key := binary.AppendUvarint(nil, uint64(stock))
	for _, c := range t.Counts {
		key = binary.AppendUvarint(key, uint64(c.Kind))
		key = binary.AppendUvarint(key, uint64(c.Times))
	}
	if t.Sound {
		key = binary.AppendUvarint(key, uint64(len(p.in.Kinds))) // no kind
	}
	if p.known[string(key)] {
		return false
	}
	p.known[string(key)] = true
	p.patterns = append(p.patterns, t)
	return true
}
