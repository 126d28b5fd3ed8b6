package instance

import "slices"

// Normalize brings a divided piece into the form that plans have: every cell is
// as small as what is in it allows, so that leftovers lie together as far out
// as they can; levels of cuts alternate; a split has at most one rest, its last
// child; children lie in the order of [ComparePieces].
//
// No blank comes under more levels of cuts than before: a cell gives its slack
// to its split, in whose direction the slack lies.
func Normalize(p Piece) Piece {
	core, ok := shrink(p)
	switch {
	case len(p.Children) == 0:
		return p
	case !ok:
		return Piece{L: p.L, W: p.W, Kind: Leftover}
	case core.Dir != p.Dir: // a lone child is left: the first cut stays what it was
		core = Piece{Dir: p.Dir, Kind: Leftover, Children: []Piece{core}}
	}
	return stretch(core, p.L, p.W)
}

// shrink returns what p holds in as little room as its cuts allow, without
// rests; not ok where p holds nothing. Splits come back with their children at
// their own least sizes.
func shrink(p Piece) (core Piece, ok bool) {
	if len(p.Children) == 0 {
		return p, !p.isLeftover()
	}
	core = Piece{Dir: p.Dir, Kind: Leftover}
	for _, c := range p.Children {
		c, ok := shrink(c)
		switch {
		case !ok:
		case len(c.Children) > 0 && c.Dir == p.Dir:
			core.Children = append(core.Children, c.Children...)
		default:
			core.Children = append(core.Children, c)
		}
	}
	switch {
	case len(core.Children) == 0:
		return Piece{}, false
	case len(core.Children) == 1 && len(core.Children[0].Children) == 0:
		return core.Children[0], true
	}
	// A lone split stays under its own cut: the leftover beside it is one.
	for _, c := range core.Children {
		if p.Dir == Crosscut {
			core.L += c.L
			core.W = max(core.W, c.W)
		} else {
			core.L = max(core.L, c.L)
			core.W += c.W
		}
	}
	return core, true
}

// stretch lays core out in a piece l x w, with rests where it is larger.
func stretch(core Piece, l, w int64) Piece {
	if len(core.Children) == 0 {
		if core.L == l && core.W == w {
			return core
		}
		dir := Rip
		if core.W == w {
			dir = Crosscut
		}
		core = Piece{Dir: dir, Kind: Leftover, Children: []Piece{core}}
	}
	p := Piece{L: l, W: w, Dir: core.Dir, Kind: Leftover}
	over := Piece{L: l, W: w, Kind: Leftover}
	for _, c := range core.Children {
		if core.Dir == Crosscut {
			over.L -= c.L
			c = stretch(c, c.L, w)
		} else {
			over.W -= c.W
			c = stretch(c, l, c.W)
		}
		if len(c.Children) > 0 && c.Dir == p.Dir { // its own cut fell away
			p.Children = append(p.Children, c.Children...)
		} else {
			p.Children = append(p.Children, c)
		}
	}
	slices.SortStableFunc(p.Children, ComparePieces)
	if over.L > 0 && over.W > 0 {
		p.Children = append(p.Children, over)
	}
	if len(p.Children) == 1 {
		return p.Children[0]
	}
	return p
}
