package colgen

import (
	"encoding/binary"

	"sawbill/nest/internal/instance"
	"sawbill/nest/internal/setcover"
)

// Pattern is one piece of stock divided. One that was priced without counting
// may hold a kind more often than it is wanted.
type Pattern struct {
	Stock  int
	Root   instance.Piece
	Counts []setcover.Count
	// Feasible patterns keep to every rule of their stock; the others serve the
	// bound only.
	Feasible   bool
	timesTaken int // by dives that have ended, so often
}

// columnSet holds every pattern once.
type columnSet struct {
	in       *instance.Instance
	patterns []Pattern
	seen     map[string]bool
}

func newColumnSet(in *instance.Instance) *columnSet {
	return &columnSet{in: in, seen: map[string]bool{}}
}

func patternOf(in *instance.Instance, stock int, root instance.Piece) Pattern {
	t := Pattern{Stock: stock, Root: root, Feasible: in.Allows(stock, root)}
	counts := make([]int, len(in.Kinds))
	root.CountParts(counts)
	for k, n := range counts {
		if n > 0 {
			t.Counts = append(t.Counts, setcover.Count{Kind: k, Times: n})
		}
	}
	return t
}

// add takes a divided piece of stock into the pool and reports whether it was
// new.
func (p *columnSet) add(stock int, root instance.Piece) bool {
	t := patternOf(p.in, stock, root)
	key := binary.AppendUvarint(nil, uint64(stock))
	for _, c := range t.Counts {
		key = binary.AppendUvarint(key, uint64(c.Kind))
		key = binary.AppendUvarint(key, uint64(c.Times))
	}
	if t.Feasible {
		key = binary.AppendUvarint(key, uint64(len(p.in.Kinds))) // no kind
	}
	if p.seen[string(key)] {
		return false
	}
	p.seen[string(key)] = true
	p.patterns = append(p.patterns, t)
	return true
}
