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
func (h *Pool) Collect(g *Recorder) {
	start := 0
	for _, f := range g.records {
		code := g.codes[start:f.end]
		start = f.end
		if _, ok := h.known[f.key]; ok {
			continue // from another walk
		}
		h.known[f.key] = struct{}{}
		h.Growth++
		h.add(f.pattern, code, h.nextID)
	}
	g.clear()
	if len(h.Patterns) > maxPatterns {
		h.evict()
	}
}

// pricedGrowth is how many patterns of walks one is worth that was sought for.
const pricedGrowth = 100

// Add takes in a pattern from elsewhere, which must keep to the rules of its stock.
func (h *Pool) Add(stock int, root instance.Piece) {
	code := Code{}.appendPiece(root)
	p := h.decoder.decode(len(h.in.Kinds), stock, code)
	key := keyOf(p)
	if _, ok := h.known[key]; !ok {
		h.known[key] = struct{}{}
		h.Growth += pricedGrowth
		h.add(p, code, h.nextID)
	}
}

// decoder reads the counts of coded patterns.
type decoder struct{ counts []int }

func (d *decoder) decode(kinds, stock int, code Code) setcover.Pattern {
	d.counts = append(d.counts[:0], make([]int, kinds)...)
	code.countParts(d.counts)
	return setcover.NewPattern(stock, d.counts)
}

func (h *Pool) add(p setcover.Pattern, code Code, number int) {
	st := &h.in.Stock[p.Stock]
	room := st.L * st.W
	for _, c := range p.Counts {
		room -= int64(c.Times) * h.in.Kinds[c.Kind].L * h.in.Kinds[c.Kind].W
	}
	h.Patterns = append(h.Patterns, p)
	h.waste = append(h.waste, float64(room)/float64(st.L*st.W))
	h.codes = append(h.codes, code...)
	h.ends = append(h.ends, len(h.codes))
	h.ids = append(h.ids, number)
	h.nextID = number + 1
}

// maxKnown are some 40 MB, which a walk for minutes comes upon.
const maxKnown = 1 << 20

func (h *Pool) evict() {
	rests := h.waste
	if h.prices != nil {
		rests = slices.Clone(rests)
		for n, p := range h.Patterns {
			// Stock that the prices were not made for goes by its area.
			if worth := h.prices.Capacity[p.Stock]; worth > 0 {
				rests[n] = 1 - float64(h.prices.Value(&p))/float64(worth)
			}
		}
	}
	sorted := slices.Clone(rests)
	slices.Sort(sorted)
	half := len(sorted) / 2
	most := sorted[half-1]
	below, _ := slices.BinarySearch(sorted, most)
	equal := half - below // of those that leave as much as that, so many stay
	kept := New(h.in)
	kept.Growth = h.Growth
	for n, rest := range rests {
		if rest > most || rest == most && equal == 0 {
			continue
		}
		if rest == most {
			equal--
		}
		kept.add(h.Patterns[n], h.code(n), h.ids[n])
	}
	kept.nextID = h.nextID
	kept.maxWaste = min(h.maxWaste, slices.Max(kept.waste))
	kept.prices = h.prices
	if len(h.known) <= maxKnown {
		kept.known = h.known // what is dropped does not come back
	} else {
		for _, p := range kept.Patterns {
			kept.known[keyOf(p)] = struct{}{}
		}
	}
	*h = *kept
}

// SetPrices tells of prices at which patterns are weighed when some are to be dropped, in
// place of their areas; or nil.
func (h *Pool) SetPrices(p *setcover.Prices) { h.prices = p }
