package pricing

import "sawbill/nest/internal/instance"

// Pattern is how the stock is cut for the value that Solve returned last. That
// of an outer grid may not fit the stock: then it only counts the parts.
func (g *Grid) Pattern() (p instance.Piece, fits bool) {
	if g.Exact() {
		return g.piece(len(g.xs)-1, len(g.ys)-1, g.l, g.w), true
	}
	return g.settle(g.piece(len(g.xs)-1, len(g.ys)-1, g.l/g.scale.l, g.w/g.scale.w))
}

// piece divides l x w, which stands for the grid's xs[i] x ys[j].
func (g *Grid) piece(i, j int, l, w int64) instance.Piece {
	v := g.best.at(i, j)
	if v == 0 {
		return instance.Piece{L: l, W: w, Kind: instance.Rest}
	}
	for i > 0 && g.best.at(i-1, j) == v {
		i--
	}
	for j > 0 && g.best.at(i, j-1) == v {
		j--
	}
	for _, p := range g.places {
		if p.i == i && p.j == j && g.values[p.item] == v {
			it := g.items[p.item]
			pl, pw := it.L, it.W
			if p.turned {
				pl, pw = pw, pl
			}
			part := instance.Piece{L: pl, W: pw, Kind: it.Kind, Turned: p.turned}
			if !g.Exact() {
				return part // settle makes room for it
			}
			return trimmed(part, l, w)
		}
	}
	for _, c := range g.xCuts[i] {
		if g.best.at(int(c.less), j)+g.best.at(int(c.more), j) == v {
			cut := g.xs[c.less]
			return instance.Piece{L: l, W: w, Dir: instance.Crosscut, Kind: instance.Rest, Children: []instance.Piece{
				g.piece(int(c.less), j, cut, w), g.piece(int(c.more), j, l-cut, w),
			}}
		}
	}
	for _, c := range g.yCuts[j] {
		if g.best.at(i, int(c.less))+g.best.at(i, int(c.more)) == v {
			cut := g.ys[c.less]
			return instance.Piece{L: l, W: w, Dir: instance.Ripped, Kind: instance.Rest, Children: []instance.Piece{
				g.piece(i, int(c.less), l, cut), g.piece(i, int(c.more), l, w-cut),
			}}
		}
	}
	panic("pricing: no cut gives the value of a piece")
}

// trimmed cuts part out of a piece l x w.
func trimmed(part instance.Piece, l, w int64) instance.Piece {
	if part.W < w {
		part = instance.Piece{L: part.L, W: w, Dir: instance.Ripped, Kind: instance.Rest, Children: []instance.Piece{
			part, {L: part.L, W: w - part.W, Kind: instance.Rest},
		}}
	}
	if part.L < l {
		part = instance.Piece{L: l, W: w, Dir: instance.Crosscut, Kind: instance.Rest, Children: []instance.Piece{
			part, {L: l - part.L, W: w, Kind: instance.Rest},
		}}
	}
	return part
}

// settle gives the pieces of a coarse pattern their true sizes, if that fits.
func (g *Grid) settle(p instance.Piece) (instance.Piece, bool) {
	l, w := least(p)
	if l > g.l || w > g.w {
		return p, false
	}
	dir := p.Dir
	if dir == instance.None {
		if dir = instance.Ripped; p.W == g.w {
			dir = instance.Crosscut
		}
	}
	whole := instance.Piece{L: g.l, W: g.w, Dir: dir, Kind: instance.Rest, Children: []instance.Piece{p}}
	return instance.Compact(whole), true
}

// least is how large a piece must be for the parts in it, cut as it is.
func least(p instance.Piece) (l, w int64) {
	if len(p.Children) == 0 {
		if p.Kind == instance.Rest {
			return 0, 0
		}
		return p.L, p.W
	}
	for _, c := range p.Children {
		cl, cw := least(c)
		if p.Dir == instance.Crosscut {
			l, w = l+cl, max(w, cw)
		} else {
			l, w = max(l, cl), w+cw
		}
	}
	return l, w
}
