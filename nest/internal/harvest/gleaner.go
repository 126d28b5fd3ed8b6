package harvest

import "sawbill/nest/internal/whole"

// Gleaner notes what one walk comes upon, while others walk beside it.
type Gleaner struct {
	from   *Harvest // which others read too
	fresh  map[uint64]struct{}
	finds  []find
	codes  []byte
	reader reader
}

type find struct {
	key     uint64
	pattern whole.Pattern
	end     int // of its code
}

// Gleaner returns one for a walk.
func (h *Harvest) Gleaner() *Gleaner {
	return &Gleaner{from: h, fresh: map[uint64]struct{}{}}
}

// mostFinds are noted between two harvests.
const mostFinds = 1 << 12

// Barren reports whether a pattern that leaves so much of its stock's area is not worth a
// note.
func (g *Gleaner) Barren(room, area int64) bool {
	return float64(room) > g.from.barren*float64(area)
}

// Lacks reports whether a pattern is worth a note. Key stands for its stock and
// its parts.
func (g *Gleaner) Lacks(key uint64) bool {
	if len(g.finds) == mostFinds {
		return false
	}
	if _, ok := g.fresh[key]; ok {
		return false
	}
	_, ok := g.from.known[key]
	return !ok
}

// Note keeps a pattern whose code write appends.
func (g *Gleaner) Note(key uint64, stock int, write func(Code) Code) {
	g.fresh[key] = struct{}{}
	start := len(g.codes)
	g.codes = write(g.codes)
	// Read here, where walks are side by side, and not when the harvest takes it in.
	pattern := g.reader.read(len(g.from.in.Kinds), stock, g.codes[start:])
	g.finds = append(g.finds, find{key, pattern, len(g.codes)})
}

func (g *Gleaner) clear() {
	clear(g.fresh)
	g.finds, g.codes = g.finds[:0], g.codes[:0]
}
