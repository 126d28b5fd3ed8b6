package sellercuts

import (
	"cmp"
	"slices"

	"sawbill/nest/cutplan"
	"sawbill/stock"
)

// cutsOf lists the directions in which the seller may cut s.
func cutsOf(s stock.Stock) []cutplan.Cut {
	if s.Kind == stock.Board {
		return []cutplan.Cut{cutplan.Crosscut}
	}
	return []cutplan.Cut{cutplan.Crosscut, cutplan.Rip}
}

// same reports whether d and b have the same cuts.
func same(d, b cutplan.Division) bool { return d.Cut == b.Cut && slices.Equal(d.Pieces, b.Pieces) }

// trims returns the total trim of the first piece along the cut direction, if the offer is
// cut once.
func trims(d cutplan.Division, tolerance stock.Length) stock.Length {
	d.Pieces = []stock.Length{0, 0}
	t := d.Piece(0, tolerance).Trims()
	if d.Cut == cutplan.Rip {
		return t.NearEdge + t.FarEdge
	}
	return t.NearEnd + t.FarEnd
}

// divisions lists the ways to cut s that are worth a trial, the likeliest first. The cuts
// are at cuts of a plan with uncut sheets, at sums of blank sizes, in equal pieces, and in
// pieces as large as can be carried.
func divisions(s stock.Stock, t stock.Transport, saw stock.Saw, bill []cutplan.Blank, of []cutplan.Layout) []cutplan.Division {
	var all []cutplan.Division
	kerf := t.CutKerf
	add := func(cut cutplan.Cut, pieces []stock.Length) {
		d := cutplan.Division{Stock: s, Cut: cut, Pieces: pieces, Kerf: kerf}
		if portableIn(d, t) && !slices.ContainsFunc(all, func(b cutplan.Division) bool { return same(b, d) }) {
			all = append(all, d)
		}
	}
	for _, cut := range cutsOf(s) {
		along, across := cutplan.Division{Stock: s, Cut: cut}.Along()
		most := min(t.Most(across), along)
		if most <= 0 {
			continue
		}
		for _, at := range places(cutplan.Division{Stock: s, Cut: cut, Kerf: saw.Kerf}, t, most, bill, of) {
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
		slices.SortStableFunc(all, func(a, b cutplan.Division) int { return cmp.Compare(a.Cuts(), b.Cuts()) })
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

// portableIn reports whether all pieces of d can be carried and at least one is usable after its
// trim.
func portableIn(d cutplan.Division, t stock.Transport) bool {
	if d.Cuts() < 1 || d.Cuts() > t.Cuts {
		return false
	}
	some := false
	for i := range d.Pieces {
		s := d.Piece(i, t.CutTolerance)
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
func places(d cutplan.Division, t stock.Transport, most stock.Length, bill []cutplan.Blank, of []cutplan.Layout) []stock.Length {
	var all []stock.Length
	along, _ := d.Along()
	off := trims(d, t.CutTolerance)
	add := func(at stock.Length) {
		if at > 0 && at <= most && at < along && !slices.Contains(all, at) {
			all = append(all, at)
		}
	}
	for _, l := range of {
		if l.Stock.Name != d.Stock.Name || l.Root.Use != cutplan.Split || l.Root.Cut != d.Cut {
			continue
		}
		for _, c := range slices.Backward(l.Root.Children) {
			if d.Cut == cutplan.Rip {
				add(c.Y + c.Width - l.Root.Y + off)
			} else {
				add(c.X + c.Length - l.Root.X + off)
			}
		}
	}
	var sums []stock.Length
	for _, b := range bill {
		if b.Part.Material != d.Stock.Material {
			continue
		}
		for _, size := range []stock.Length{b.Length, b.Width} {
			for row := size; row+off <= most; row += size + d.Kerf {
				sums = append(sums, row+off)
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
