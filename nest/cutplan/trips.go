package cutplan

import (
	"cmp"
	"slices"

	"sawbill/stock"
)

// Haul is what is carried home.
type Haul struct {
	Kilograms float64
	// Trips are so many that each carries no more than the limit, the heaviest pieces
	// first, each in the first trip with room (first fit decreasing); 0 without a limit.
	Trips int
	// TooHeavy are pieces above the limit by themselves, Unknown materials whose
	// density is not known and which are left out.
	TooHeavy []stock.Stock
	Unknown  []string
}

// Haul reckons what is bought, in the pieces in which it is carried.
func (p *Plan) Haul() Haul {
	var h Haul
	var pieces []float64
	add := func(s stock.Stock, n int) {
		each, known := p.Job.Kilograms(s)
		if !known {
			if !slices.Contains(h.Unknown, s.Material) {
				h.Unknown = append(h.Unknown, s.Material)
			}
			return
		}
		h.Kilograms += each * float64(n)
		if limit := p.Job.Transport.Heaviest; limit > 0 && each > float64(limit) {
			h.TooHeavy = append(h.TooHeavy, s)
		}
		for range n {
			pieces = append(pieces, each)
		}
	}
	for _, b := range p.Buy {
		divided := slices.IndexFunc(p.AtSeller, func(d Division) bool { return d.Stock.Name == b.Stock.Name })
		if divided < 0 {
			add(b.Stock, b.Count)
			continue
		}
		for _, s := range p.AtSeller[divided].pieces(p.Job.Transport, b.Count) {
			add(s, s.Count)
		}
	}
	if p.Job.Transport.Heaviest == 0 {
		return h
	}
	slices.SortFunc(pieces, func(a, b float64) int { return cmp.Compare(b, a) })
	var trips []float64
	for _, weight := range pieces {
		at := slices.IndexFunc(trips, func(loaded float64) bool { return loaded+weight <= float64(p.Job.Transport.Heaviest) })
		if at < 0 {
			trips = append(trips, 0)
			at = len(trips) - 1
		}
		trips[at] += weight
	}
	h.Trips = len(trips)
	return h
}
