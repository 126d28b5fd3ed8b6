package instance

import "slices"

// Normalize brings a divided piece into normal form. Every cell is as small as its parts allow,
// so that leftovers lie together as far out as possible. Levels of cuts alternate. A split has
// at most one leftover, its last child. Children are in the order of [ComparePieces].
//
// No blank gets more levels of cuts: a cell gives its slack to its split, in whose direction
// the slack lies.
func Normalize(p Piece) Piece {
	core, ok := shrink(p)
	switch {
	case len(p.Children) == 0:
		return p
	case !ok:
		return Piece{L: p.L, W: p.W, Kind: Leftover}
	case core.Dir != p.Dir: // a lone child is left: the direction of the first cut stays
		core = Piece{Dir: p.Dir, Kind: Leftover, Children: []Piece{core}}
	}
	return stretch(core, p.L, p.W)
}

// Fit divides l x w in the way of p, of which only the cuts and the parts count: cells become as
// large as their parts need. It is not ok if the parts do not fit. The result is in normal form,
// and a leftover if there are no parts.
func Fit(p Piece, l, w int64) (fitted Piece, ok bool) {
	core, some := shrink(p)
	switch {
	case some && (core.L > l || core.W > w):
		return Piece{}, false
	case some && len(p.Children) == 0:
		return Normalize(CutFrom(p, l, w)), true
	}
	p.L, p.W = l, w
	return Normalize(p), true
}

// shrink returns the parts of p in the smallest rectangle that the cuts allow, without
// leftovers; not ok if p has no parts. The children of splits have their own minimum sizes.
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
	// A lone split stays under its own cut: the leftover beside it needs one.
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

// stretch lays core out in a piece l x w, with leftovers where core is smaller.
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
		if len(c.Children) > 0 && c.Dir == p.Dir { // its own cut is not needed any more
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
