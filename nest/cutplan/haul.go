package cutplan

import (
	"cmp"
	"slices"

	"sawbill/stock"
)

// Haul is the load to carry home.
type Haul struct {
	Grams stock.Grams
	// Trips is the number of trips within the weight limit; 0 without a limit. The
	// heaviest pieces go first, each in the first trip with room (first fit decreasing).
	Trips int
	// TooHeavy lists pieces above the limit by themselves, one of each offer. Unknown
	// lists materials without a known density, which are left out.
	TooHeavy []stock.Stock
	Unknown  []string
}

// Haul computes the weight of the purchases, in the pieces in which they are carried.
func (p *Plan) Haul() Haul {
	var h Haul
	var pieces []stock.Grams
	limit := p.Job.Transport.Heaviest
	add := func(s stock.Stock, n int) {
		if n == 0 {
			return
		}
		each, known := p.Job.Grams(s)
		if !known {
			if !slices.Contains(h.Unknown, s.Material) {
				h.Unknown = append(h.Unknown, s.Material)
			}
			return
		}
		h.Grams += each * stock.Grams(n)
		if listed := func(t stock.Stock) bool { return t.Name == s.Name }; limit > 0 && each > limit && !slices.ContainsFunc(h.TooHeavy, listed) {
			h.TooHeavy = append(h.TooHeavy, s)
		}
		for range n {
			pieces = append(pieces, each)
		}
	}
	cut := map[string]int{} // pieces of each offer that the seller cuts
	for _, d := range p.AtSeller {
		cut[d.Stock.Name] += d.Count
	}
	for _, b := range p.Buy {
		add(b.Stock, b.Count-cut[b.Stock.Name])
	}
	for _, d := range p.AtSeller {
		for i := range d.Pieces {
			add(d.Piece(i, 0), d.Count)
		}
	}
	if limit == 0 {
		return h
	}
	slices.SortFunc(pieces, func(a, b stock.Grams) int { return cmp.Compare(b, a) })
	var trips []stock.Grams
	for _, weight := range pieces {
		at := slices.IndexFunc(trips, func(loaded stock.Grams) bool { return loaded+weight <= limit })
		if at < 0 {
			trips = append(trips, 0)
			at = len(trips) - 1
		}
		trips[at] += weight
	}
	h.Trips = len(trips)
	return h
}
