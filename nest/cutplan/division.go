package cutplan

import (
	"fmt"
	"slices"

	"sawbill/stock"
)

// Division is how the seller cuts every piece of one offer, so that it can be
// carried home: straight cuts in one direction. The lengths of the pieces along
// that direction with a kerf between fill the offer exactly.
type Division struct {
	Stock  stock.Stock // as it is offered
	Count  int         // so many are bought and cut
	Cut    Cut
	Pieces []stock.Length
	Kerf   stock.Length
	Cost   stock.Money // of all cuts, without the stock
}

// Cuts is how many cuts are made in each.
func (d Division) Cuts() int { return len(d.Pieces) - 1 }

// along is the size that the cuts divide, across the other.
func (d Division) along() (along, across stock.Length) {
	if d.Cut == Rip {
		return d.Stock.Width, d.Stock.Length
	}
	return d.Stock.Length, d.Stock.Width
}

// pieces are what the cuts make of n of the offer, alike ones together. An edge that
// the seller cut may be off by the tolerance: what the offer's own trim does not
// take of that is taken off the piece.
func (d Division) pieces(t stock.Transport, n int) []stock.Stock {
	var all []stock.Stock
	loss := d.loss(t)
	for i, size := range d.Pieces {
		edges := 2
		if i == 0 || i == len(d.Pieces)-1 {
			edges = 1
		}
		s := d.Stock
		s.From, s.Count, s.Price, s.Measure = d.Stock.Name, n, 0, stock.Measure{}
		if d.Cut == Rip {
			s.Width = size - stock.Length(edges)*loss
		} else {
			s.Length = size - stock.Length(edges)*loss
		}
		if at := slices.IndexFunc(all, func(b stock.Stock) bool { return b.Length == s.Length && b.Width == s.Width }); at >= 0 {
			all[at].Count += n
			continue
		}
		all = append(all, s)
	}
	for i := range all {
		all[i].Name = d.Stock.Name + ", piece"
		if len(all) > 1 {
			all[i].Name = fmt.Sprintf("%s, piece %d", d.Stock.Name, i+1)
		}
	}
	return all
}

// loss is what an edge cut by the seller costs beyond the trim.
func (d Division) loss(t stock.Transport) stock.Length { return max(0, t.CutTolerance-d.trim()) }

func (d Division) trim() stock.Length {
	if d.Cut == Rip {
		return d.Stock.TrimWidth()
	}
	return d.Stock.Trim
}

// divisions lists the ways to have s cut that are worth a trial, the likeliest
// first: at places where cuts of a plan of whole sheets lie, at sums of sizes of
// the blanks, in equal pieces, and with pieces as large as can be carried.
func divisions(s stock.Stock, t stock.Transport, saw stock.Saw, bill []Blank, of []Layout) []Division {
	var all []Division
	kerf := max(t.CutKerf, saw.Kerf)
	add := func(cut Cut, pieces []stock.Length) {
		d := Division{Stock: s, Cut: cut, Pieces: pieces, Kerf: kerf}
		same := func(b Division) bool { return b.Cut == cut && slices.Equal(b.Pieces, pieces) }
		if d.holds(t) && !slices.ContainsFunc(all, same) {
			all = append(all, d)
		}
	}
	cuts := []Cut{Crosscut, Rip}
	if s.Kind == stock.Board {
		cuts = cuts[:1]
	}
	for _, cut := range cuts {
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
	return all
}

// repeated cuts off pieces of one size until the rest is no larger, or the cuts are
// spent.
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

// holds reports whether all pieces can be carried and leave something to cut.
func (d Division) holds(t stock.Transport) bool {
	if d.Cuts() < 1 || d.Cuts() > t.Cuts {
		return false
	}
	_, across := d.along()
	for i, size := range d.Pieces {
		edges := 2
		if i == 0 || i == len(d.Pieces)-1 {
			edges = 1
		}
		if !t.Carries(size, across) || size <= stock.Length(edges)*d.loss(t)+2*d.trim() {
			return false
		}
	}
	return true
}

// mostPlaces of a first cut are tried in each direction.
const mostPlaces = 8

// places are how large the first piece of d, whose kerf is that of the own saw, may
// be, most of it at all: as far as a cut of a plan of whole sheets, then as long as
// several blanks in a row, the longest first.
func places(d Division, t stock.Transport, most stock.Length, bill []Blank, of []Layout) []stock.Length {
	var all []stock.Length
	along, _ := d.along()
	ends := 2*d.trim() + d.loss(t)
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
				add(c.Y + c.Width - d.trim() + ends)
			} else {
				add(c.X + c.Length - d.trim() + ends)
			}
		}
	}
	var sums []stock.Length
	for _, b := range bill {
		if b.Part.Material != d.Stock.Material {
			continue
		}
		for _, size := range []stock.Length{b.Length, b.Width} {
			for row := size; row+ends <= most; row += size + d.Kerf {
				sums = append(sums, row+ends)
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
