package cutplan

import (
	"cmp"
	"slices"

	"sawbill/stock"
)

// Division is the way the seller cuts every piece of one offer, so that it can be carried
// home: straight cuts in one direction. The pieces and the kerfs between them fill the
// offer exactly.
type Division struct {
	Stock  stock.Stock // as it is offered
	Count  int         // pieces of the offer that are bought and cut
	Cut    Cut
	Pieces []stock.Length
	Kerf   stock.Length
	Cost   stock.Money // cost of all cuts, without the stock
}

// Cuts returns the number of cuts in each piece of the offer.
func (d Division) Cuts() int { return len(d.Pieces) - 1 }

// cutsOf lists the directions in which the seller may cut s.
func cutsOf(s stock.Stock) []Cut {
	if s.Kind == stock.Board {
		return []Cut{Crosscut}
	}
	return []Cut{Crosscut, Rip}
}

// same reports whether d and b have the same cuts.
func (d Division) same(b Division) bool { return d.Cut == b.Cut && slices.Equal(d.Pieces, b.Pieces) }

// along returns the dimension that the cuts divide, and the other one.
func (d Division) along() (along, across stock.Length) {
	if d.Cut == Rip {
		return d.Stock.Width, d.Stock.Length
	}
	return d.Stock.Length, d.Stock.Width
}

// sides returns how many sides of piece i the seller cuts, 1 or 2.
func (d Division) sides(i int) int {
	if i == 0 || i == len(d.Pieces)-1 {
		return 1
	}
	return 2
}

// piece returns piece i as stock. If the seller cuts one side, the other is its reference
// end or edge. A side cut by the seller is trimmed by the tolerance.
func (d Division) piece(i int, tolerance stock.Length) stock.Stock {
	s := d.Stock
	s.From, s.Count, s.Price, s.Measure = d.Stock.Name, 0, 0, stock.Measure{}
	near := stock.Length(0)
	if d.sides(i) == 2 {
		near = tolerance
	}
	if d.Cut == Rip {
		s.Width, s.Sawn = d.Pieces[i], stock.Trims{NearEdge: near, FarEdge: tolerance}
	} else {
		s.Length, s.Sawn = d.Pieces[i], stock.Trims{NearEnd: near, FarEnd: tolerance}
	}
	return s
}

// trims returns the total trim of the first piece along the cut direction, if the offer is
// cut once.
func (d Division) trims(tolerance stock.Length) stock.Length {
	d.Pieces = []stock.Length{0, 0}
	t := d.piece(0, tolerance).Trims()
	if d.Cut == Rip {
		return t.NearEdge + t.FarEdge
	}
	return t.NearEnd + t.FarEnd
}

// divisions lists the ways to cut s that are worth a trial, the likeliest first. The cuts
// are at cuts of a plan with uncut sheets, at sums of blank sizes, in equal pieces, and in
// pieces as large as can be carried.
func divisions(s stock.Stock, t stock.Transport, saw stock.Saw, bill []Blank, of []Layout) []Division {
	var all []Division
	kerf := t.CutKerf
	add := func(cut Cut, pieces []stock.Length) {
		d := Division{Stock: s, Cut: cut, Pieces: pieces, Kerf: kerf}
		if d.holds(t) && !slices.ContainsFunc(all, d.same) {
			all = append(all, d)
		}
	}
	for _, cut := range cutsOf(s) {
		along, across := Division{Stock: s, Cut: cut}.along()
		most := min(t.Most(across), along)
		if most <= 0 {
			continue
		}
		for _, at := range places(Division{Stock: s, Cut: cut, Kerf: saw.Kerf}, t, most, bill, of) {
			add(cut, repeated(along, at, kerf, t.Cuts))
		}
		for n := 2; n <= t.Cuts+1; n++ {
			if room := along - stock.Length(n-1)*kerf; room > 0 {
				equal := slices.Repeat([]stock.Length{room / stock.Length(n)}, n)
				equal[n-1] += room % stock.Length(n)
				add(cut, equal)
			}
		}
		add(cut, repeated(along, most, kerf, t.Cuts))
	}
	if t.CutPrice == 0 { // with a price, the cost already favors fewer cuts
		slices.SortStableFunc(all, func(a, b Division) int { return cmp.Compare(a.Cuts(), b.Cuts()) })
	}
	return all
}

// repeated cuts off pieces of one size until the remainder is no larger, or no cuts are
// left.
func repeated(along, size, kerf stock.Length, cuts int) []stock.Length {
	var pieces []stock.Length
	for range cuts {
		if along <= size || size <= 0 || along-size-kerf <= 0 {
			break
		}
		pieces = append(pieces, size)
		along -= size + kerf
	}
	return append(pieces, along)
}

// holds reports whether all pieces can be carried and at least one is usable after its
// trim.
func (d Division) holds(t stock.Transport) bool {
	if d.Cuts() < 1 || d.Cuts() > t.Cuts {
		return false
	}
	some := false
	for i := range d.Pieces {
		s := d.piece(i, t.CutTolerance)
		if s.Length <= 0 || s.Width <= 0 || !t.Carries(s.Length, s.Width) {
			return false
		}
		some = some || leavesSome(s)
	}
	return some
}

// leavesSome reports whether any of s is usable after its trim.
func leavesSome(s stock.Stock) bool {
	length, width := s.Usable()
	return length > 0 && width > 0
}

// mostPlaces limits the first cuts that are tried in each direction.
const mostPlaces = 8

// places lists sizes for the first piece of d, at most the size given as most. First come
// cuts of a plan with uncut sheets, then rows of equal blanks, the longest first. The kerf
// of d is the shop's own.
func places(d Division, t stock.Transport, most stock.Length, bill []Blank, of []Layout) []stock.Length {
	var all []stock.Length
	along, _ := d.along()
	trims := d.trims(t.CutTolerance)
	add := func(at stock.Length) {
		if at > 0 && at <= most && at < along && !slices.Contains(all, at) {
			all = append(all, at)
		}
	}
	for _, l := range of {
		if l.Stock.Name != d.Stock.Name || l.Root.Use != Split || l.Root.Cut != d.Cut {
			continue
		}
		for _, c := range slices.Backward(l.Root.Children) {
			if d.Cut == Rip {
				add(c.Y + c.Width - l.Root.Y + trims)
			} else {
				add(c.X + c.Length - l.Root.X + trims)
			}
		}
	}
	var sums []stock.Length
	for _, b := range bill {
		if b.Part.Material != d.Stock.Material {
			continue
		}
		for _, size := range []stock.Length{b.Length, b.Width} {
			for row := size; row+trims <= most; row += size + d.Kerf {
				sums = append(sums, row+trims)
			}
		}
	}
	slices.Sort(sums)
	for _, at := range slices.Backward(sums) {
		if len(all) >= mostPlaces {
			break
		}
		add(at)
	}
	return all[:min(len(all), mostPlaces)]
}
