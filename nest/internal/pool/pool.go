// Package harvest keeps the patterns that walks through plans come upon, many of
// them in little room. What one plan had and what another had may make a third
// that no walk has met.
package pool

import (
	"slices"

	"sawbill/nest/internal/instance"
	"sawbill/nest/internal/setcover"
)

// Pool is patterns that keep to every rule of their stock, those with the
// same parts once.
type Pool struct {
	Snapshot
	Growth int       // how much has been gathered, in patterns of walks
	waste  []float64 // of each pattern: the share of its stock that is no part
	known  map[uint64]struct{}
	// maxWaste is the share of its stock that a pattern of a walk leaves at most: what
	// leaves more would soon be dropped again.
	maxWaste float64
	nextID   int // number
	prices   *setcover.Prices
	decoder  decoder
}

// Snapshot is what was gathered at some time.
type Snapshot struct {
	Patterns []setcover.Pattern
	in       *instance.Instance
	codes    []byte // see Code
	ends     []int  // of each pattern's code
	ids      []int  // of each pattern, for as long as it is kept; ascending
}

// ID tells pattern n from all others, in whatever sheaf of its harvest it is.
func (s *Snapshot) ID(n int) int { return s.ids[n] }

// Index is the pattern of a number, if it is in the sheaf.
func (s *Snapshot) Index(number int) (n int, ok bool) { return slices.BinarySearch(s.ids, number) }

const (
	maxPatterns     = 1 << 15 // some 10 MB
	initialMaxWaste = 0.3     // before anything had to be dropped
)

// New is an empty harvest.
func New(in *instance.Instance) *Pool {
	return &Pool{Snapshot: Snapshot{in: in}, known: map[uint64]struct{}{}, maxWaste: initialMaxWaste}
}

// Root is pattern n as it is cut.
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

// Collect moves what a walk has gleaned into the harvest. Where that becomes too
// much, the half that leaves most of its stock is dropped.
func (p *Pool) Collect(r *Recorder) {
	start := 0
	for _, f := range r.records {
		code := r.codes[start:f.end]
		start = f.end
		if _, ok := p.known[f.key]; ok {
			continue // from another walk
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

// pricedGrowth is how many patterns of walks one is worth that was sought for.
const pricedGrowth = 100

// Add takes in a pattern from elsewhere, which must keep to the rules of its stock.
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

// maxKnown are some 40 MB, which a walk for minutes comes upon.
const maxKnown = 1 << 20

func (p *Pool) evict() {
	rests := p.waste
	if p.prices != nil {
		rests = slices.Clone(rests)
		for n, pattern := range p.Patterns {
			// Stock that the prices were not made for goes by its area.
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
	equal := half - below // of those that leave as much as that, so many stay
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
		kept.known = p.known // what is dropped does not come back
	} else {
		for _, pattern := range kept.Patterns {
			kept.known[keyOf(pattern)] = struct{}{}
		}
	}
	*p = *kept
}

// SetPrices tells of prices at which patterns are weighed when some are to be dropped, in
// place of their areas; or nil.
func (p *Pool) SetPrices(prices *setcover.Prices) { p.prices = prices }
