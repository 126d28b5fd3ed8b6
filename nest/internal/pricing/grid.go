// Package pricing finds the most valuable set of parts that edge-to-edge cuts
// can free from one piece of stock.
package pricing

import (
	"math"
	"slices"
	"sort"

	"sawbill/nest/internal/instance"
)

// Item is a part that may be cut as often as it fits.
type Item struct {
	L, W int64
	Lies instance.Lie
	Kind int // what a pattern calls it
}

// Grid solves the unconstrained guillotine knapsack for one size of stock and
// one list of items, for any values of theirs and any number of stages: the
// dynamic programme of Gilmore and Gomory (Oper. Res. 14, 1966) on the
// reachable points (Beasley, J. Oper. Res. Soc. 36, 1985; Cintra et al., Eur.
// J. Oper. Res. 191, 2008). Citations from memory.
type Grid struct {
	l, w         int64
	items        []Item
	xs, ys       []int64
	xCuts, yCuts [][]pair
	places       []place
	best         []int64 // value of a piece xs[i] x ys[j], at i*len(ys)+j
	values       []int64
	row          int   // rows below are done
	rowWork      int64 // of the cuts within a row
}

// place is an item as it lies: the least points it fits.
type place struct {
	item   int
	turned bool
	i, j   int
}

// Limits of a grid, for the sake of memory: at most 32 MiB each for the cells
// and for the cuts.
const (
	mostCells = 1 << 22
	mostCuts  = 1 << 22
)

// NewGrid lays the points out; nil where a solution would take more than about
// mostWork comparisons of cuts, or too much memory.
func NewGrid(l, w int64, items []Item, mostWork int64) *Grid {
	g := &Grid{l: l, w: w, items: items}
	var lengths, widths []int64
	for _, it := range items {
		if it.Lies&instance.Upright != 0 && it.L <= l && it.W <= w {
			lengths, widths = append(lengths, it.L), append(widths, it.W)
		}
		if it.Lies&instance.Turned != 0 && it.W <= l && it.L <= w {
			lengths, widths = append(lengths, it.W), append(widths, it.L)
		}
	}
	slices.Sort(lengths)
	slices.Sort(widths)
	xs := reach(slices.Compact(lengths), l, mostCells)
	ys := reach(slices.Compact(widths), w, mostCells)
	if xs == nil || ys == nil {
		return nil
	}
	g.xs, g.ys = raster(xs, l), raster(ys, w)
	// A point has cuts at up to half of the points below it.
	x, y := int64(len(g.xs)), int64(len(g.ys))
	if x*y > mostCells || x*x/4+y*y/4 > mostCuts || x*x/4*y+y*y/4*x > 2*mostWork {
		return nil
	}
	g.xCuts, g.yCuts = cuts(g.xs), cuts(g.ys)
	for n, it := range items {
		if it.Lies&instance.Upright != 0 {
			g.lay(n, it.L, it.W, false)
		}
		if it.Lies&instance.Turned != 0 && (it.L != it.W || it.Lies == instance.Turned) {
			g.lay(n, it.W, it.L, true)
		}
	}
	for _, c := range g.yCuts {
		g.rowWork += int64(len(c))
	}
	g.best = make([]int64, len(g.xs)*len(g.ys))
	return g
}

func (g *Grid) lay(item int, l, w int64, turned bool) {
	i := sort.Search(len(g.xs), func(i int) bool { return g.xs[i] >= l })
	j := sort.Search(len(g.ys), func(j int) bool { return g.ys[j] >= w })
	if i < len(g.xs) && j < len(g.ys) {
		g.places = append(g.places, place{item, turned, i, j})
	}
}

// Work is the number of cuts one solution compares.
func (g *Grid) Work() int64 {
	var x int64
	for _, c := range g.xCuts {
		x += int64(len(c))
	}
	return x*int64(len(g.ys)) + g.rowWork*int64(len(g.xs))
}

// Solve returns the greatest total value, where item n is worth values[n],
// which must not be negative.
func (g *Grid) Solve(values []int64) int64 {
	g.Start(values)
	g.Advance(math.MaxInt64)
	return g.Best()
}

// Start begins a solution that Advance carries on.
func (g *Grid) Start(values []int64) {
	g.values = append(g.values[:0], values...)
	g.row = 0
	clear(g.best)
	for _, p := range g.places {
		at := p.i*len(g.ys) + p.j
		g.best[at] = max(g.best[at], values[p.item])
	}
}

// Advance compares about work cuts more. It returns what is left of work,
// which may be overdrawn, and whether all cuts are done.
func (g *Grid) Advance(work int64) (left int64, done bool) {
	cols := len(g.ys)
	for ; g.row < len(g.xs); g.row++ {
		if work <= 0 {
			return work, false
		}
		i := g.row
		work -= int64(len(g.xCuts[i])*cols) + g.rowWork
		row := g.best[i*cols : (i+1)*cols]
		if i > 0 {
			atLeast(row, g.best[(i-1)*cols:i*cols])
		}
		for _, c := range g.xCuts[i] {
			bestSum(row, g.best[int(c.less)*cols:][:cols], g.best[int(c.more)*cols:][:cols])
		}
		for j := 1; j < cols; j++ {
			v := max(row[j], row[j-1])
			for _, c := range g.yCuts[j] {
				v = max(v, row[c.less]+row[c.more])
			}
			row[j] = v
		}
	}
	return work, true
}

// Best is the value of the whole stock once Advance is done.
func (g *Grid) Best() int64 { return g.best[len(g.best)-1] }

// atLeast raises row to other where that is more.
func atLeast(row, other []int64) {
	other = other[:len(row)]
	for j, v := range other {
		row[j] = max(row[j], v)
	}
}

// bestSum raises row to the sum of a and b where that is more.
func bestSum(row, a, b []int64) {
	a, b = a[:len(row)], b[:len(row)]
	for j := range row {
		row[j] = max(row[j], a[j]+b[j])
	}
}

// Pattern is how the stock is cut for the value that Solve returned last.
func (g *Grid) Pattern() instance.Piece {
	p := g.piece(len(g.xs)-1, len(g.ys)-1, g.l, g.w)
	return p
}

// piece divides l x w, which stands for the grid's xs[i] x ys[j].
func (g *Grid) piece(i, j int, l, w int64) instance.Piece {
	cols := len(g.ys)
	v := g.best[i*cols+j]
	if v == 0 {
		return instance.Piece{L: l, W: w, Kind: instance.Rest}
	}
	for i > 0 && g.best[(i-1)*cols+j] == v {
		i--
	}
	for j > 0 && g.best[i*cols+j-1] == v {
		j--
	}
	for _, p := range g.places {
		if p.i == i && p.j == j && g.values[p.item] == v {
			it := g.items[p.item]
			pl, pw := it.L, it.W
			if p.turned {
				pl, pw = pw, pl
			}
			return instance.Trim(instance.Piece{L: pl, W: pw, Kind: it.Kind, Turned: p.turned}, l, w)
		}
	}
	for _, c := range g.xCuts[i] {
		if g.best[int(c.less)*cols+j]+g.best[int(c.more)*cols+j] == v {
			cut := g.xs[c.less]
			return instance.Piece{L: l, W: w, Dir: instance.Crosscut, Kind: instance.Rest, Children: []instance.Piece{
				g.piece(int(c.less), j, cut, w), g.piece(int(c.more), j, l-cut, w),
			}}
		}
	}
	for _, c := range g.yCuts[j] {
		if g.best[i*cols+int(c.less)]+g.best[i*cols+int(c.more)] == v {
			cut := g.ys[c.less]
			return instance.Piece{L: l, W: w, Dir: instance.Ripped, Kind: instance.Rest, Children: []instance.Piece{
				g.piece(i, int(c.less), l, cut), g.piece(i, int(c.more), l, w-cut),
			}}
		}
	}
	panic("pricing: no cut gives the value of a piece")
}
