package pricing

import (
	"cmp"
	"slices"

	"sawbill/nest/internal/instance"
)

// Pattern returns the pattern of the value that Solve returned last. That of an outer grid may
// not fit the stock; then it only counts the parts.
func (g *Grid) Pattern() (p instance.Piece, fits bool) {
	if g.layers != nil {
		l, _ := g.bestTop()
		p = g.stagedPiece(l, len(g.xs)-1, len(g.ys)-1)
	} else {
		p = g.piece(len(g.xs)-1, len(g.ys)-1)
	}
	return g.finish(p)
}

// Others returns at most most further patterns, each of another value: the best ones for other
// first cuts. There are none if stages are limited.
func (g *Grid) Others(most int) (patterns []instance.Piece) {
	if g.layers != nil {
		return nil
	}
	type first struct {
		value int64
		dir   instance.Dir
		cut   pair
	}
	var firsts []first
	i, j := len(g.xs)-1, len(g.ys)-1
	for _, c := range g.xCuts[i] {
		firsts = append(firsts, first{g.best.at(int(c.less), j) + g.best.at(int(c.more), j), instance.Crosscut, c})
	}
	for _, c := range g.yCuts[j] {
		firsts = append(firsts, first{g.best.at(i, int(c.less)) + g.best.at(i, int(c.more)), instance.Rip, c})
	}
	slices.SortStableFunc(firsts, func(a, b first) int { return cmp.Compare(b.value, a.value) })
	last := g.Best()
	for _, f := range firsts {
		if len(patterns) == most || f.value == 0 {
			break
		}
		if f.value == last {
			continue
		}
		last = f.value
		less, more := int(f.cut.less), int(f.cut.more)
		var p instance.Piece
		if f.dir == instance.Crosscut {
			p = split(f.dir, g.piece(less, j), g.piece(more, j))
		} else {
			p = split(f.dir, g.piece(i, less), g.piece(i, more))
		}
		if p, fits := g.finish(p); fits {
			patterns = append(patterns, p)
		}
	}
	return patterns
}

// piece divides xs[i] x ys[j]. It leaves the sizes of all but the parts open.
func (g *Grid) piece(i, j int) instance.Piece {
	v := g.best.at(i, j)
	if v == 0 {
		return instance.Piece{Kind: instance.Leftover}
	}
	for i > 0 && g.best.at(i-1, j) == v {
		i--
	}
	for j > 0 && g.best.at(i, j-1) == v {
		j--
	}
	if p := g.part(i, j, v); p.Kind != instance.Leftover {
		return p
	}
	for _, c := range g.xCuts[i] {
		if g.best.at(int(c.less), j)+g.best.at(int(c.more), j) == v {
			return split(instance.Crosscut, g.piece(int(c.less), j), g.piece(int(c.more), j))
		}
	}
	for _, c := range g.yCuts[j] {
		if g.best.at(i, int(c.less))+g.best.at(i, int(c.more)) == v {
			return split(instance.Rip, g.piece(i, int(c.less)), g.piece(i, int(c.more)))
		}
	}
	panic("pricing: no cut gives the value of a piece")
}

func split(dir instance.Dir, a, b instance.Piece) instance.Piece {
	return instance.Piece{Dir: dir, Kind: instance.Leftover, Children: []instance.Piece{a, b}}
}

// part returns the part worth v that takes up xs[i] x ys[j], or a leftover.
func (g *Grid) part(i, j int, v int64) instance.Piece {
	for _, p := range g.gridItems {
		if p.i == i && p.j == j && g.values[p.item] == v {
			it := g.items[p.item]
			if p.turned {
				return instance.Piece{L: it.W, W: it.L, Kind: it.Kind, Turned: true}
			}
			return instance.Piece{L: it.L, W: it.W, Kind: it.Kind}
		}
	}
	return instance.Piece{Kind: instance.Leftover}
}

// finish sets the sizes of the pieces, if the pattern fits the stock. A prescribed first cut is
// made if the pattern leaves room for one.
func (g *Grid) finish(p instance.Piece) (instance.Piece, bool) {
	l, w := minSize(p)
	if l > g.l || w > g.w {
		return p, false
	}
	dir := g.rules.FirstCut
	if dir == instance.None {
		dir = p.Dir
	}
	if dir == instance.None {
		if dir = instance.Rip; p.W == g.w {
			dir = instance.Crosscut
		}
	}
	whole := instance.Piece{L: g.l, W: g.w, Dir: dir, Kind: instance.Leftover, Children: []instance.Piece{p}}
	return instance.Normalize(whole), true
}

// minSize returns the smallest size of a piece cut like p.
func minSize(p instance.Piece) (l, w int64) {
	if len(p.Children) == 0 {
		return p.L, p.W
	}
	for _, c := range p.Children {
		cl, cw := minSize(c)
		if p.Dir == instance.Crosscut {
			l, w = l+cl, max(w, cw)
		} else {
			l, w = max(l, cl), w+cw
		}
	}
	return l, w
}
