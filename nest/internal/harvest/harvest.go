// Package harvest keeps the patterns that walks through plans come upon, many of
// them in little room. What one plan had and what another had may make a third
// that no walk has met.
package harvest

import (
	"slices"

	"sawbill/nest/internal/instance"
	"sawbill/nest/internal/whole"
)

// Harvest is patterns that keep to every rule of their stock, those with the
// same parts once.
type Harvest struct {
	Sheaf
	Grown int       // how much has been gathered, in patterns of walks
	rests []float64 // of each pattern: the share of its stock that is no part
	known map[uint64]struct{}
	// barren is the share of its stock that a pattern of a walk leaves at most: what
	// leaves more would soon be dropped again.
	barren float64
	next   int // number
	prices *whole.Prices
	reader reader
}

// Sheaf is what was gathered at some time.
type Sheaf struct {
	Patterns []whole.Pattern
	in       *instance.Instance
	codes    []byte // see Code
	ends     []int  // of each pattern's code
	numbers  []int  // of each pattern, for as long as it is kept; ascending
}

// Number tells pattern n from all others, in whatever sheaf of its harvest it is.
func (s *Sheaf) Number(n int) int { return s.numbers[n] }

// Find is the pattern of a number, if it is in the sheaf.
func (s *Sheaf) Find(number int) (n int, ok bool) { return slices.BinarySearch(s.numbers, number) }

const (
	mostPatterns = 1 << 15 // some 10 MB
	firstBarren  = 0.3     // before anything had to be dropped
)

// New is an empty harvest.
func New(in *instance.Instance) *Harvest {
	return &Harvest{Sheaf: Sheaf{in: in}, known: map[uint64]struct{}{}, barren: firstBarren}
}

// Root is pattern n as it is cut.
func (s *Sheaf) Root(n int) instance.Piece {
	st := &s.in.Stock[s.Patterns[n].Stock]
	root, _ := s.code(n).piece(s.in)
	root.L, root.W = st.L, st.W
	return instance.Compact(root)
}

func (s *Sheaf) code(n int) Code {
	if n == 0 {
		return s.codes[:s.ends[0]]
	}
	return s.codes[s.ends[n-1]:s.ends[n]]
}

// Take moves what a walk has gleaned into the harvest. Where that becomes too
// much, the half that leaves most of its stock is dropped.
func (h *Harvest) Take(g *Gleaner) {
	start := 0
	for _, f := range g.finds {
		code := g.codes[start:f.end]
		start = f.end
		if _, ok := h.known[f.key]; ok {
			continue // from another walk
		}
		h.known[f.key] = struct{}{}
		h.Grown++
		h.add(f.pattern, code, h.next)
	}
	g.clear()
	if len(h.Patterns) > mostPatterns {
		h.thin()
	}
}

// sought is how many patterns of walks one is worth that was sought for.
const sought = 100

// Add takes in a pattern from elsewhere, which must keep to the rules of its stock.
func (h *Harvest) Add(stock int, root instance.Piece) {
	code := Code{}.of(root)
	p := h.reader.read(len(h.in.Kinds), stock, code)
	key := keyOf(p)
	if _, ok := h.known[key]; !ok {
		h.known[key] = struct{}{}
		h.Grown += sought
		h.add(p, code, h.next)
	}
}

// reader tells what coded patterns hold.
type reader struct {
	counts []int // scratch, per kind
	held   []whole.Count
}

func (r *reader) read(kinds, stock int, code Code) whole.Pattern {
	r.counts = append(r.counts[:0], make([]int, kinds)...)
	code.count(r.counts)
	r.held = r.held[:0]
	for k, n := range r.counts {
		if n > 0 {
			r.held = append(r.held, whole.Count{Kind: k, Times: n})
		}
	}
	return whole.Pattern{Stock: stock, Counts: slices.Clone(r.held)}
}

func (h *Harvest) add(p whole.Pattern, code Code, number int) {
	st := &h.in.Stock[p.Stock]
	room := st.L * st.W
	for _, c := range p.Counts {
		room -= int64(c.Times) * h.in.Kinds[c.Kind].L * h.in.Kinds[c.Kind].W
	}
	h.Patterns = append(h.Patterns, p)
	h.rests = append(h.rests, float64(room)/float64(st.L*st.W))
	h.codes = append(h.codes, code...)
	h.ends = append(h.ends, len(h.codes))
	h.numbers = append(h.numbers, number)
	h.next = number + 1
}

// mostKnown are some 40 MB, which a walk for minutes comes upon.
const mostKnown = 1 << 20

func (h *Harvest) thin() {
	rests := h.rests
	if h.prices != nil {
		rests = slices.Clone(rests)
		for n, p := range h.Patterns {
			// Stock that the prices were not made for goes by its area.
			if worth := h.prices.Worth[p.Stock]; worth > 0 {
				rests[n] = 1 - float64(h.prices.Of(&p))/float64(worth)
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
	kept.Grown = h.Grown
	for n, rest := range rests {
		if rest > most || rest == most && equal == 0 {
			continue
		}
		if rest == most {
			equal--
		}
		kept.add(h.Patterns[n], h.code(n), h.numbers[n])
	}
	kept.next = h.next
	kept.barren = min(h.barren, slices.Max(kept.rests))
	kept.prices = h.prices
	if len(h.known) <= mostKnown {
		kept.known = h.known // what is dropped does not come back
	} else {
		for _, p := range kept.Patterns {
			kept.known[keyOf(p)] = struct{}{}
		}
	}
	*h = *kept
}

// Appraise tells of prices at which patterns are weighed when some are to be dropped, in
// place of their areas; or nil.
func (h *Harvest) Appraise(p *whole.Prices) { h.prices = p }
