package rack

import (
	"cmp"
	"slices"

	"sawbill/stock"
)

// Fit is a piece that would make a part, and what would be left of it.
type Fit struct {
	Piece  stock.Piece
	Turned bool   // the part's length lies along the piece's width
	Left   []Left // none where the part takes all of it
}

// Left is the rest of a piece: along its length, and across.
type Left struct{ Length, Width stock.Length }

// Find lists the pieces that would make the part, the best fitting first: the
// one whose thickness is nearest, then the smallest. A thickness of 0 is any.
// A part lies as its grain lets it; where it may lie either way, so that the
// larger piece is left.
func Find(pieces []stock.Piece, part stock.Part, kerf stock.Length) []Fit {
	var all []Fit
	for _, p := range pieces {
		wanted := part
		wanted.Thickness = cmp.Or(part.Thickness, p.Thickness)
		blank := stock.Blank{Part: wanted, Length: part.Length, Width: part.Width, Thickness: wanted.Thickness}
		if !p.Stock().Serves(blank) {
			continue
		}
		upright, turned := part.Grain.Lies(p.Grain)
		if p.Kind == stock.Board && p.Grain != stock.GrainUnknown {
			upright, turned = part.Grain.Lies(stock.GrainLength)
		}
		var ways []Fit
		if upright && part.Length <= p.Length && part.Width <= p.Width {
			ways = append(ways, Fit{p, false, left(p, part.Length, part.Width, kerf)})
		}
		if turned && part.Length <= p.Width && part.Width <= p.Length {
			ways = append(ways, Fit{p, true, left(p, part.Width, part.Length, kerf)})
		}
		if len(ways) > 0 {
			all = append(all, slices.MaxFunc(ways, func(a, b Fit) int { return cmp.Compare(largest(a.Left), largest(b.Left)) }))
		}
	}
	slices.SortStableFunc(all, func(a, b Fit) int {
		return cmp.Or(cmp.Compare(a.Piece.Thickness, b.Piece.Thickness),
			cmp.Compare(a.Piece.Length*a.Piece.Width, b.Piece.Length*b.Piece.Width))
	})
	return all
}

// left is what remains when a length and a width are cut off p: by a crosscut
// and a rip, in the order that leaves the larger piece.
func left(p stock.Piece, length, width, kerf stock.Length) []Left {
	beyond, beside := p.Length-length-kerf, p.Width-width-kerf
	crosscutFirst := pieces(Left{beyond, p.Width}, Left{length, beside})
	ripFirst := pieces(Left{p.Length, beside}, Left{beyond, width})
	if largest(crosscutFirst) > largest(ripFirst) {
		return crosscutFirst
	}
	return ripFirst
}

// pieces are those of which the saw leaves something, the largest first.
func pieces(of ...Left) []Left {
	of = slices.DeleteFunc(of, func(l Left) bool { return l.Length <= 0 || l.Width <= 0 })
	slices.SortStableFunc(of, func(a, b Left) int { return cmp.Compare(b.area(), a.area()) })
	return of
}

func (l Left) area() stock.Length { return l.Length * l.Width }

func largest(of []Left) stock.Length {
	if len(of) == 0 {
		return 0
	}
	return of[0].area()
}
