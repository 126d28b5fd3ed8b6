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
func (p *Pool) NewRecorder() *Recorder {
	return &Recorder{pool: p, seen: map[uint64]struct{}{}}
}

// maxRecords are noted between two harvests.
const maxRecords = 1 << 12

// TooWasteful reports whether a pattern that leaves so much of its stock's area is not worth a
// note.
func (r *Recorder) TooWasteful(room, area int64) bool {
	return float64(room) > r.pool.maxWaste*float64(area)
}

// IsNew reports whether a pattern is worth a note. Key stands for its stock and
// its parts.
func (r *Recorder) IsNew(key uint64) bool {
	if len(r.records) == maxRecords {
		return false
	}
	if _, ok := r.seen[key]; ok {
		return false
	}
	_, ok := r.pool.known[key]
	return !ok
}

// Record keeps a pattern whose code write appends.
func (r *Recorder) Record(key uint64, stock int, write func(Code) Code) {
	r.seen[key] = struct{}{}
	start := len(r.codes)
	r.codes = write(r.codes)
	// Read here, where walks are side by side, and not when the harvest takes it in.
	pattern := r.decoder.decode(len(r.pool.in.Kinds), stock, r.codes[start:])
	r.records = append(r.records, record{key, pattern, len(r.codes)})
}

func (r *Recorder) clear() {
	clear(r.seen)
	r.records, r.codes = r.records[:0], r.codes[:0]
}
