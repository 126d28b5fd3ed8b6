// Package pool is a column pool: it keeps the patterns that heuristics find, in little memory.
// Patterns of different plans may make a plan that no walk meets.
//
// A pool holds tens of thousands of patterns, at a byte or two for each part. Walks record
// into recorders of their own, and the pool collects these between rounds, so that all read
// it and none writes it in parallel. A full pool evicts the patterns that lose most at the
// restricted master's prices: a pattern with awkward parts wastes much and is worth much.
package pool

import (
	"slices"

	"sawbill/nest/internal/instance"
	"sawbill/nest/internal/setcover"
)

// Pool holds feasible patterns. Among patterns with the same parts it keeps one.
type Pool struct {
	Snapshot
	Growth int       // patterns added so far, priced ones counted oftener
	waste  []float64 // per pattern: the share of its stock that is not parts
	known  map[uint64]struct{}
	// maxWaste is the greatest waste of a pattern worth recording. The pool would soon evict
	// patterns with more.
	maxWaste float64
	nextID   int // number
	prices   *setcover.Prices
	decoder  decoder
}

// Snapshot is the pool at some time.
type Snapshot struct {
	Patterns []setcover.Pattern
	in       *instance.Instance
	codes    []byte // of all patterns; see Code
	ends     []int  // per pattern: the end of its code
	ids      []int  // per pattern, ascending
}

// ID identifies pattern n in every snapshot of its pool.
func (s *Snapshot) ID(n int) int { return s.ids[n] }

// Index returns the pattern with an ID, if it is in the snapshot.
func (s *Snapshot) Index(number int) (n int, ok bool) { return slices.BinarySearch(s.ids, number) }

const (
	maxPatterns     = 1 << 15 // about 10 MB
	initialMaxWaste = 0.3     // until patterns are evicted
)

// New returns an empty pool.
func New(in *instance.Instance) *Pool {
	return &Pool{Snapshot: Snapshot{in: in}, known: map[uint64]struct{}{}, maxWaste: initialMaxWaste}
}

// Root returns pattern n as a cutting tree.
func (s *Snapshot) Root(n int) instance.Piece {
	st := &s.in.Stock[s.Patterns[n].Stock]
	root, _ := s.code(n).decode(s.in)
	root.L, root.W = st.L, st.W
	return instance.Normalize(root)
}

func (s *Snapshot) code(n int) Code {
	if n == 0 {
		return s.codes[:s.ends[0]]
	}
	return s.codes[s.ends[n-1]:s.ends[n]]
}

// Collect moves a walk's records into the pool. A pool that is full evicts its worse half.
func (p *Pool) Collect(r *Recorder) {
	start := 0
	for _, f := range r.records {
		code := r.codes[start:f.end]
		start = f.end
		if _, ok := p.known[f.key]; ok {
			continue // another walk has recorded it
		}
		p.known[f.key] = struct{}{}
		p.Growth++
		p.add(f.pattern, code, p.nextID)
	}
	r.clear()
	if len(p.Patterns) > maxPatterns {
		p.evict()
	}
}

// pricedGrowth is how many recorded patterns one priced pattern counts for in Growth.
const pricedGrowth = 100

// Add adds a priced pattern, which must be feasible.
func (p *Pool) Add(stock int, root instance.Piece) {
	code := Code{}.appendPiece(root)
	pattern := p.decoder.decode(len(p.in.Kinds), stock, code)
	key := keyOf(pattern)
	if _, ok := p.known[key]; !ok {
		p.known[key] = struct{}{}
		p.Growth += pricedGrowth
		p.add(pattern, code, p.nextID)
	}
}

// decoder reads the counts of coded patterns.
type decoder struct{ counts []int }

func (d *decoder) decode(kinds, stock int, code Code) setcover.Pattern {
	d.counts = append(d.counts[:0], make([]int, kinds)...)
	code.countParts(d.counts)
	return setcover.NewPattern(stock, d.counts)
}

func (p *Pool) add(pattern setcover.Pattern, code Code, number int) {
	st := &p.in.Stock[pattern.Stock]
	room := st.L * st.W
	for _, c := range pattern.Counts {
		room -= int64(c.Times) * p.in.Kinds[c.Kind].L * p.in.Kinds[c.Kind].W
	}
	p.Patterns = append(p.Patterns, pattern)
	p.waste = append(p.waste, float64(room)/float64(st.L*st.W))
	p.codes = append(p.codes, code...)
	p.ends = append(p.ends, len(p.codes))
	p.ids = append(p.ids, number)
	p.nextID = number + 1
}

// maxKnown keys take about 40 MB. A walk meets so many in minutes.
const maxKnown = 1 << 20

func (p *Pool) evict() {
	rests := p.waste
	if p.prices != nil {
		rests = slices.Clone(rests)
		for n, pattern := range p.Patterns {
			// Stock without a capacity goes by its area.
			if worth := p.prices.Capacity[pattern.Stock]; worth > 0 {
				rests[n] = 1 - float64(p.prices.Value(&pattern))/float64(worth)
			}
		}
	}
	sorted := slices.Clone(rests)
	slices.Sort(sorted)
	half := len(sorted) / 2
	most := sorted[half-1]
	below, _ := slices.BinarySearch(sorted, most)
	equal := half - below // how many with that waste stay
	kept := New(p.in)
	kept.Growth = p.Growth
	for n, rest := range rests {
		if rest > most || rest == most && equal == 0 {
			continue
		}
		if rest == most {
			equal--
		}
		kept.add(p.Patterns[n], p.code(n), p.ids[n])
	}
	kept.nextID = p.nextID
	kept.maxWaste = min(p.maxWaste, slices.Max(kept.waste))
	kept.prices = p.prices
	if len(p.known) <= maxKnown {
		kept.known = p.known // an evicted pattern does not come back
	} else {
		for _, pattern := range kept.Patterns {
			kept.known[keyOf(pattern)] = struct{}{}
		}
	}
	*p = *kept
}

// SetPrices sets the prices by which patterns are evicted; nil for areas.
func (p *Pool) SetPrices(prices *setcover.Prices) { p.prices = prices }
