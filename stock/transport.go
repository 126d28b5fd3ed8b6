package stock

import "cmp"

// Transport is what can be brought home, and what the seller's panel saw does for
// it. The zero value knows no limits.
type Transport struct {
	Longest, Widest Length // of a piece as it lies in the vehicle; 0 is no limit
	Heaviest        Grams  // of what is carried in one trip; 0 is no limit
	// Cuts is how many straight cuts the seller makes in one sheet or board at the
	// most, all in one direction.
	Cuts     int
	CutPrice Money  // of one cut
	CutKerf  Length // of the seller's saw
	// CutTolerance is by how much a piece may come out smaller, at each side that
	// the seller cut.
	CutTolerance Length
}

// Limited reports whether anything is too large to be carried.
func (t Transport) Limited() bool { return t.Longest > 0 || t.Widest > 0 }

// Carries reports whether a piece fits, lying either way.
func (t Transport) Carries(length, width Length) bool {
	return t.lies(length, width) || t.lies(width, length)
}

func (t Transport) lies(along, across Length) bool {
	longest, widest := t.limits()
	return along <= longest && across <= widest
}

// limits are the two, the greatest of all lengths where there is none. Nothing is wider
// than it may be long.
func (t Transport) limits() (longest, widest Length) {
	longest = cmp.Or(t.Longest, Longest)
	return longest, cmp.Or(t.Widest, longest)
}

// Most is the greatest size that a piece may have beside one that measures across;
// 0 where none can be carried.
func (t Transport) Most(across Length) Length {
	longest, widest := t.limits()
	switch {
	case across <= widest:
		return longest
	case across <= longest:
		return widest
	}
	return 0
}

// Grams is the weight of one piece of s; false where the density of its material is
// not known.
func (j Job) Grams(s Stock) (Grams, bool) {
	density, known := j.Densities[s.Material]
	return Weigh(s.Length, s.Width, s.Thickness, float64(density)), known && density > 0
}

// TooLarge lists the stock for sale that must be cut before it is carried home, by
// index.
func (j Job) TooLarge() []int {
	var all []int
	for i, s := range j.Stock {
		if !s.OnHand && !j.Transport.Carries(s.Length, s.Width) {
			all = append(all, i)
		}
	}
	return all
}
