package nest

import "math/big"

// blanks checks that every blank is cut or listed as unplaced, as often as its count, and that
// the list is true.
func (v *verifier) blanks(unplaced []Unplaced) {
	accounted := make([]big.Int, len(v.problem.Blanks))
	for b := range accounted {
		accounted[b].Set(&v.placed[b])
	}
	listed := make([]bool, len(v.problem.Blanks))
	for i, u := range unplaced {
		if u.Blank < 0 || u.Blank >= len(v.problem.Blanks) {
			v.report("unplaced %d: blank %d, there are %d", i, u.Blank, len(v.problem.Blanks))
			continue
		}
		if listed[u.Blank] {
			v.report("unplaced %d: blank %d is listed a second time", i, u.Blank)
		}
		listed[u.Blank] = true
		if u.Count < 1 {
			v.report("unplaced %d: blank %d is listed %d times", i, u.Blank, u.Count)
		}
		accounted[u.Blank].Add(&accounted[u.Blank], exact(int64(u.Count)))
		v.reason(i, u)
	}
	for b, blank := range v.problem.Blanks {
		if accounted[b].Cmp(exact(int64(blank.Count))) != 0 {
			v.report("blank %d: %v cut, %v with those listed as unplaced, %d wanted",
				b, &v.placed[b], &accounted[b], blank.Count)
		}
	}
}

// reason checks the reason given for an unplaced blank, as far as the blank alone shows it.
//
// Only a blank larger than all of its stock is too large. A blank that a whole piece can be cut
// down to is short of stock, and is not unplaced while a piece is left. A blank between these
// fits by size, but stages, first cut or rips forbid the simple ways to cut it. For such a
// blank either reason passes.
func (v *verifier) reason(i int, u Unplaced) {
	if group := v.problem.groupOf(u.Blank); group >= 0 {
		v.groupReason(i, u, v.problem.Groups[group])
		return
	}
	fits := false
	for _, from := range v.problem.Blanks[u.Blank].From {
		if from.Stock < 0 || from.Stock >= len(v.problem.Stock) {
			continue
		}
		fits = fits || v.fits(u.Blank, from)
		if !v.canBeCut(u.Blank, from) {
			continue
		}
		if u.Reason != StockUsedUp {
			v.report("unplaced %d: blank %d is said not to fit, stock %d can be cut down to it", i, u.Blank, from.Stock)
		}
		if v.left(from.Stock) {
			v.report("unplaced %d: blank %d can be cut from stock %d, of which some is left", i, u.Blank, from.Stock)
		}
	}
	switch u.Reason {
	case TooLarge:
		if fits {
			v.report("unplaced %d: blank %d is called too large, but is no larger than a stock it may come from", i, u.Blank)
		}
	case StockUsedUp, AgainstRules:
		if !fits {
			v.report("unplaced %d: blank %d is larger than any stock it may come from, another reason is given", i, u.Blank)
		}
	default:
		v.report("unplaced %d: blank %d has reason %d, which is unknown", i, u.Blank, u.Reason)
	}
}

func (v *verifier) left(stock int) bool {
	count := v.problem.Stock[stock].Count
	return count == 0 || v.taken[stock].Cmp(exact(int64(count))) < 0
}

// placements returns blank as a part, in each orientation that it may have in from.
func (v *verifier) placements(blank int, from Source) []Node {
	b := v.problem.Blanks[blank]
	var parts []Node
	if from.Upright {
		parts = append(parts, Node{Length: b.Length, Width: b.Width, Use: Part, Blank: blank})
	}
	if from.Turned {
		parts = append(parts, Node{Length: b.Width, Width: b.Length, Use: Part, Blank: blank, Turned: true})
	}
	return parts
}

// fits reports whether blank is no larger than a piece of stock less its trim.
func (v *verifier) fits(blank int, from Source) bool {
	usable := v.problem.Stock[from.Stock].Usable()
	for _, part := range v.placements(blank, from) {
		if part.Length <= usable.Length && part.Width <= usable.Width {
			return true
		}
	}
	return false
}

// canBeCut reports whether a whole piece can be cut down to blank by a rip and
// a crosscut, in either order, within every limit. Other ways are not tried.
func (v *verifier) canBeCut(blank int, from Source) bool {
	usable := v.problem.Stock[from.Stock].Usable()
	for _, part := range v.placements(blank, from) {
		ripped := v.cutDown(from.Stock, Size{usable.Length, part.Width}, Crosscut, part)
		ripped = v.cutDown(from.Stock, usable, Rip, ripped)
		crosscut := v.cutDown(from.Stock, Size{part.Length, usable.Width}, Rip, part)
		crosscut = v.cutDown(from.Stock, usable, Crosscut, crosscut)
		for _, root := range []Node{ripped, crosscut} {
			if len(inspect(v.problem, from.Stock, root).violations) == 0 {
				return true
			}
		}
	}
	return false
}

// cutDown cuts piece down to want, which is as large across the cut. Both begin at the corner of the
// stock. The remainder beyond the kerf is one leftover.
func (v *verifier) cutDown(stock int, piece Size, cut Cut, want Node) Node {
	if want.Length == piece.Length && want.Width == piece.Width {
		return want
	}
	root := Node{Length: piece.Length, Width: piece.Width, Use: Split, Cut: cut, Children: []Node{want}}
	rest := Node{Length: piece.Length, Width: piece.Width, Use: Waste}
	in := inspection{stock: v.problem.Stock[stock]}
	at := corner{in.stock.TrimLength, in.stock.TrimWidth}
	if cut == Rip {
		at.across += want.Width + v.problem.Kerf
		rest.Width -= want.Width
		rest.Width -= v.problem.Kerf
	} else {
		at.along += want.Length + v.problem.Kerf
		rest.Length -= want.Length
		rest.Length -= v.problem.Kerf
	}
	if rest.Length < 1 || rest.Width < 1 {
		return root // the blade runs off the edge
	}
	if keep := v.problem.Keep; rest.Length >= keep.Length && rest.Width >= keep.Width && in.defect(rest, at) < 0 {
		rest.Use = Offcut
	}
	root.Children = append(root.Children, rest)
	return root
}
