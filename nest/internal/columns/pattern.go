package columns

import (
	"encoding/binary"

	"sawbill/nest/internal/instance"
)

// Pattern is one piece of stock divided. One that was priced without counting
// may hold a kind more often than it is wanted.
type Pattern struct {
	Stock  int
	Root   instance.Piece
	Counts []int // per kind
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
	t := Pattern{Stock: stock, Root: root, Counts: make([]int, len(in.Kinds)), Sound: in.Allows(stock, root)}
	root.CountParts(t.Counts)
	return t
}

// add takes a divided piece of stock into the pool and reports whether it was
// new.
func (p *pool) add(stock int, root instance.Piece) bool {
	t := newPattern(p.in, stock, root)
	key := binary.AppendUvarint(nil, uint64(stock))
	for _, n := range t.Counts {
		key = binary.AppendUvarint(key, uint64(n))
	}
	if t.Sound {
		key = append(key, '!')
	}
	if p.known[string(key)] {
		return false
	}
	p.known[string(key)] = true
	p.patterns = append(p.patterns, t)
	return true
}
