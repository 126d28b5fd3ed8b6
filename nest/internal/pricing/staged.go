package pricing

import (
	"slices"

	"sawbill/nest/internal/instance"
)

// Rules limit the cuts of a pattern.
type Rules struct {
	// Stages is the maximum number of levels of cuts, each in one direction. More than
	// maxStages are priced like any number: values may then be too high, and a pattern may
	// break the rule.
	Stages int
	// FirstCut is the direction of the first level; None if free.
	FirstCut instance.Dir
}

// maxStages is the greatest limit on stages that pricing respects.
const maxStages = 4

func (r Rules) limited() bool { return r.Stages > 0 && r.Stages <= maxStages }

// tables returns about how many tables of all pieces a grid keeps and computes.
func (r Rules) tables() int64 {
	switch {
	case !r.limited():
		return 1
	case r.FirstCut == instance.None:
		return int64(r.Stages) + 1
	}
	return int64(r.Stages+1)/2 + 1
}

// layer holds the value of every piece whose next level of cuts is in direction dir, with a
// number of levels left.
//
// With limited stages a blank must be as large as its piece, or be trimmed by a level that
// exists anyway. So the points are all sums of sizes and the stock's own size, and a piece is
// exactly as large as its points. The level that makes the piece cuts off the rest.
type layer struct {
	dir   instance.Dir
	below *layer  // with a level less; nil if parts are left uncut
	cells []lanes // crosscuts by column, rips by row: see table
	top   bool    // the first level, where only the stock itself matters
}

// newLayers returns the layers that end with a first level in direction dir, the last level
// first.
func (g *Grid) newLayers(dir instance.Dir) (layers []*layer) {
	if g.rules.Stages%2 == 0 {
		dir = dir.Across()
	}
	var below *layer
	for n := range g.rules.Stages {
		l := &layer{dir: dir, below: below, top: n == g.rules.Stages-1}
		if dir == instance.Crosscut {
			l.cells = make([]lanes, len(g.best.byCol))
		} else {
			l.cells = make([]lanes, len(g.best.byRow))
		}
		layers = append(layers, l)
		below, dir = l, dir.Across()
	}
	return layers
}

// groups returns the first of a layer's groups to compute, and how many there are.
func (g *Grid) groups(l *layer) (first, n int) {
	n = groups(len(g.ys))
	if l.dir == instance.Rip {
		n = groups(len(g.xs))
	}
	if l.top {
		return n - 1, 1
	}
	return 0, n
}

func (g *Grid) cutsOf(l *layer) [][]pair {
	if l.dir == instance.Crosscut {
		return g.xCuts
	}
	return g.yCuts
}

// at returns the value of a piece in a layer; in nil, as a part.
func (g *Grid) at(l *layer, i, j int) int64 {
	switch {
	case l == nil:
		return g.best.byRow[i/width*len(g.ys)+j][i%width]
	case l.dir == instance.Crosscut:
		return l.cells[j/width*len(g.xs)+i][j%width]
	}
	return l.cells[i/width*len(g.ys)+j][i%width]
}

// uncut returns the value of a piece that is not cut on level l.
func (g *Grid) uncut(l *layer, i, j int) int64 {
	if l.top && g.rules.FirstCut != instance.None && i == len(g.xs)-1 && j == len(g.ys)-1 && (g.scale.inner || g.Exact()) {
		return g.at(nil, i, j) // the stock's first cut must be on this level
	}
	return g.at(l.below, i, j)
}

// computeGroup computes one group of a layer.
func (g *Grid) computeGroup(l *layer, group int) {
	cuts := g.cutsOf(l)
	n, across := len(g.xs), len(g.ys)
	if l.dir == instance.Rip {
		n, across = across, n
	}
	cells := l.cells[group*n:][:n]
	for p := range cells {
		cell := &cells[p]
		for m := range min(width, across-group*width) {
			if i, j := p, group*width+m; l.dir == instance.Crosscut {
				cell[m] = g.uncut(l, i, j)
			} else {
				cell[m] = g.uncut(l, j, i)
			}
		}
		if p > 0 {
			cell.atLeast(&cells[p-1])
		}
		cell.sums(cells, cuts[p])
	}
}

// advanceStaged is Advance with limited stages: layer by layer, group by group.
func (g *Grid) advanceStaged(work int64) (left int64, done bool) {
	next := 0
	for _, l := range g.layers {
		first, n := g.groups(l)
		for group := first; group < first+n; group++ {
			if next++; next <= g.next {
				continue
			}
			if work <= 0 {
				return work, false
			}
			work -= width * count(g.cutsOf(l))
			g.computeGroup(l, group)
			g.next++
		}
	}
	return work, true
}

// bestTop returns the first-level layer with the best value, and the value.
func (g *Grid) bestTop() (best *layer, value int64) {
	for _, l := range g.layers {
		if l.top {
			if v := g.at(l, len(g.xs)-1, len(g.ys)-1); best == nil || v > value {
				best, value = l, v
			}
		}
	}
	return best, value
}

// stagedPiece divides a piece that is cut on level l. It leaves the sizes of all but the parts
// open.
func (g *Grid) stagedPiece(l *layer, i, j int) instance.Piece {
	v := g.at(l, i, j)
	if v == 0 {
		return instance.Piece{Kind: instance.Leftover}
	}
	if l == nil {
		return g.part(i, j, v)
	}
	if l.dir == instance.Crosscut {
		for i > 0 && g.at(l, i-1, j) == v {
			i--
		}
	} else {
		for j > 0 && g.at(l, i, j-1) == v {
			j--
		}
	}
	if g.uncut(l, i, j) == v {
		if g.at(nil, i, j) == v {
			return g.part(i, j, v)
		}
		return g.stagedPiece(l.below, i, j)
	}
	if l.dir == instance.Crosscut {
		for _, c := range g.xCuts[i] {
			if g.at(l, int(c.less), j)+g.at(l, int(c.more), j) == v {
				return split(l.dir, g.stagedPiece(l, int(c.less), j), g.stagedPiece(l, int(c.more), j))
			}
		}
	} else {
		for _, c := range g.yCuts[j] {
			if g.at(l, i, int(c.less))+g.at(l, i, int(c.more)) == v {
				return split(l.dir, g.stagedPiece(l, i, int(c.less)), g.stagedPiece(l, i, int(c.more)))
			}
		}
	}
	panic("pricing: no cut gives the value of a piece")
}

// withEnd adds the stock's own size to its points.
func withEnd(points []int64, size int64) []int64 {
	if points[len(points)-1] < size {
		points = append(slices.Clip(points), size)
	}
	return points
}
