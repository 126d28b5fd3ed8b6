package colgen

import (
	"encoding/binary"

	"sawbill/nest/internal/instance"
	"sawbill/nest/internal/setcover"
)

// Pattern is one piece of stock divided. Without bounded pricing it may hold a kind more
// often than its demand.
type Pattern struct {
	setcover.Pattern
	Root instance.Piece
	// Feasible patterns obey every rule of their stock; the others only serve the bound.
	Feasible   bool
	timesTaken int // by dives that have ended
}

// columnSet holds every pattern of the masters once.
type columnSet struct {
	in       *instance.Instance
	patterns []Pattern
	seen     map[string]bool
	reported int // patterns that NewPatterns has passed on
}

func newColumnSet(in *instance.Instance) *columnSet {
	return &columnSet{in: in, seen: map[string]bool{}}
}

func patternOf(in *instance.Instance, stock int, root instance.Piece) Pattern {
	counts := make([]int, len(in.Kinds))
	root.CountParts(counts)
	return Pattern{Pattern: setcover.NewPattern(stock, counts), Root: root, Feasible: in.Allows(stock, root)}
}

// add adds a divided piece of stock and reports whether it is new.
func (p *columnSet) add(stock int, root instance.Piece) bool {
	t := patternOf(p.in, stock, root)
	key := binary.AppendUvarint(nil, uint64(stock))
	for _, c := range t.Counts {
		key = binary.AppendUvarint(key, uint64(c.Kind))
		key = binary.AppendUvarint(key, uint64(c.Times))
	}
	if t.Feasible {
		key = binary.AppendUvarint(key, uint64(len(p.in.Kinds))) // marks it, as no kind does
	}
	if p.seen[string(key)] {
		return false
	}
	p.seen[string(key)] = true
	p.patterns = append(p.patterns, t)
	return true
}
