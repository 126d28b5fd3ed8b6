package stock

// Transport is what can be brought home, and what the seller's panel saw does for
// it. The zero value knows no limits.
type Transport struct {
	Longest, Widest Length // of a piece as it lies in the vehicle; 0 is no limit
	// Cuts is how many straight cuts the seller makes in one sheet or board at the
	// most, all in one direction.
	Cuts     int
	CutPrice Money  // of one cut
	CutKerf  Length // of the seller's saw; less than the own saw's counts as that
	// CutTolerance is by how much a piece may come out smaller, at each edge that
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
	return (t.Longest == 0 || along <= t.Longest) && (t.Widest == 0 || across <= t.Widest)
}

// Most is the greatest size that a piece may have beside one that measures across;
// 0 where none can be carried. No limit is Longest of all lengths.
func (t Transport) Most(across Length) Length {
	most := Length(0)
	for _, way := range [2][2]Length{{t.Longest, t.Widest}, {t.Widest, t.Longest}} {
		along, beside := way[0], way[1]
		if along == 0 {
			along = Longest
		}
		if beside == 0 || across <= beside {
			most = max(most, along)
		}
	}
	return most
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
