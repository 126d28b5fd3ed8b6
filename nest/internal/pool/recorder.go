package pool

import "sawbill/nest/internal/setcover"

// Recorder notes what one walk comes upon, while others walk beside it.
type Recorder struct {
	pool    *Pool // which others read too
	seen    map[uint64]struct{}
	records []record
	codes   []byte
	decoder decoder
}

type record struct {
	key     uint64
	pattern setcover.Pattern
	end     int // of its code
}

// NewRecorder returns one for a walk.
func (h *Pool) NewRecorder() *Recorder {
	return &Recorder{pool: h, seen: map[uint64]struct{}{}}
}

// maxRecords are noted between two harvests.
const maxRecords = 1 << 12

// TooWasteful reports whether a pattern that leaves so much of its stock's area is not worth a
// note.
func (g *Recorder) TooWasteful(room, area int64) bool {
	return float64(room) > g.pool.maxWaste*float64(area)
}

// IsNew reports whether a pattern is worth a note. Key stands for its stock and
// its parts.
func (g *Recorder) IsNew(key uint64) bool {
	if len(g.records) == maxRecords {
		return false
	}
	if _, ok := g.seen[key]; ok {
		return false
	}
	_, ok := g.pool.known[key]
	return !ok
}

// Record keeps a pattern whose code write appends.
func (g *Recorder) Record(key uint64, stock int, write func(Code) Code) {
	g.seen[key] = struct{}{}
	start := len(g.codes)
	g.codes = write(g.codes)
	// Read here, where walks are side by side, and not when the harvest takes it in.
	pattern := g.decoder.decode(len(g.pool.in.Kinds), stock, g.codes[start:])
	g.records = append(g.records, record{key, pattern, len(g.codes)})
}

func (g *Recorder) clear() {
	clear(g.seen)
	g.records, g.codes = g.records[:0], g.codes[:0]
}
