package pool

import "sawbill/nest/internal/setcover"

// Recorder records the patterns of one walk while others walk in parallel.
type Recorder struct {
	pool    *Pool // read by all recorders
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

// NewRecorder returns a recorder for a walk.
func (p *Pool) NewRecorder() *Recorder {
	return &Recorder{pool: p, seen: map[uint64]struct{}{}}
}

// maxRecords limits the records between two calls of Collect.
const maxRecords = 1 << 12

// TooWasteful reports whether a pattern that leaves room of its stock's area is not worth
// recording.
func (r *Recorder) TooWasteful(room, area int64) bool {
	return float64(room) > r.pool.maxWaste*float64(area)
}

// IsNew reports whether the pattern with a key is neither in the pool nor recorded.
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

// Record records a pattern whose code write appends.
func (r *Recorder) Record(key uint64, stock int, write func(Code) Code) {
	r.seen[key] = struct{}{}
	start := len(r.codes)
	r.codes = write(r.codes)
	// Decoded here, where walks run in parallel, and not in Collect.
	pattern := r.decoder.decode(len(r.pool.in.Kinds), stock, r.codes[start:])
	r.records = append(r.records, record{key, pattern, len(r.codes)})
}

func (r *Recorder) clear() {
	clear(r.seen)
	r.records, r.codes = r.records[:0], r.codes[:0]
}
