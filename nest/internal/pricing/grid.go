// Package pricing solves the unconstrained guillotine knapsack: the most valuable pattern of
// one piece of stock, without regard to demand. The method is the dynamic program of Gilmore
// and Gomory, Oper. Res. 14, 1966, on normal points: Beasley, J. Oper. Res. Soc. 36, 1985;
// Cintra et al., Eur. J. Oper. Res. 191, 2008. Citations from memory.
package pricing

import (
	"math"
	"slices"
	"sort"

	"sawbill/nest/internal/halt"
	"sawbill/nest/internal/instance"
)

// Item is a part that may be cut as often as it fits.
type Item struct {
	L, W         int64
	Orientations instance.Orientation
	Kind         int // index in patterns
}

// Grid solves the knapsack for one size of stock and one list of items, and for any values. A
// coarse grid measures in whole steps, to which sizes are rounded.
type Grid struct {
	l, w         int64
	items        []Item
	rules        Rules
	scale        scale
	xs, ys       []int64 // in steps
	xCuts, yCuts [][]pair
	gridItems    []gridItem
	best         table    // if stages are limited, of uncut parts only
	layers       []*layer // if stages are limited
	values       []int64
	next         int // block, or group of a layer, to compute
}

// gridItem is an item in one orientation: the first points that it fits.
type gridItem struct {
	item   int
	turned bool
	i, j   int
}

// Limits of a grid's memory: at most 64 MiB for the cells and 32 MiB for the cuts.
const (
	maxCells = 1 << 22
	maxCuts  = 1 << 22
)

// NewGrid returns an exact grid; nil if a solution takes more than about maxWork comparisons of
// cuts, or too much memory, and once stop is on.
func NewGrid(l, w int64, items []Item, rules Rules, maxWork int64, stop halt.Signal) *Grid {
	return newGrid(l, w, items, rules, scale{l: 1, w: 1}, maxWork, stop)
}

func newGrid(l, w int64, items []Item, rules Rules, sc scale, maxWork int64, stop halt.Signal) *Grid {
	g := &Grid{l: l, w: w, items: items, rules: rules, scale: sc}
	ways := sc.ways(placements(items, l, w), l, w)
	l, w = l/sc.l, w/sc.w
	var lengths, widths []int64
	for _, way := range ways {
		lengths, widths = append(lengths, way.l), append(widths, way.w)
	}
	slices.Sort(lengths)
	slices.Sort(widths)
	xs := normalPoints(slices.Compact(lengths), l, maxCells, stop)
	ys := normalPoints(slices.Compact(widths), w, maxCells, stop)
	if xs == nil || ys == nil {
		return nil
	}
	if rules.limited() {
		g.xs, g.ys = withEnd(xs, l), withEnd(ys, w)
	} else {
		g.xs, g.ys = rasterPoints(xs, l), rasterPoints(ys, w)
	}
	// A point has cuts at up to half of the points below it.
	x, y := int64(len(g.xs)), int64(len(g.ys))
	tables := rules.tables()
	if x*y*tables > maxCells || x*x/4+y*y/4 > maxCuts || (x*x/4*y+y*y/4*x)*tables > 2*maxWork {
		return nil
	}
	if g.xCuts, g.yCuts = cuts(g.xs, stop), cuts(g.ys, stop); g.xCuts == nil || g.yCuts == nil {
		return nil
	}
	for _, way := range ways {
		g.gridItems = append(g.gridItems, gridItem{
			item: way.item, turned: way.turned,
			i: sort.Search(len(g.xs), func(i int) bool { return g.xs[i] >= way.l }),
			j: sort.Search(len(g.ys), func(j int) bool { return g.ys[j] >= way.w }),
		})
	}
	g.best = newTable(len(g.xs), len(g.ys))
	if rules.limited() {
		for _, dir := range []instance.Dir{instance.Rip, instance.Crosscut} {
			if rules.FirstCut == instance.None || rules.FirstCut == dir {
				g.layers = append(g.layers, g.newLayers(dir)...)
			}
		}
	}
	return g
}

// placement is an item in one orientation.
type placement struct {
	item   int
	turned bool
	l, w   int64
}

// placements lists the orientations in which items fit l x w.
func placements(items []Item, l, w int64) []placement {
	var ways []placement
	for n, it := range items {
		if it.Orientations&instance.Upright != 0 && it.L <= l && it.W <= w {
			ways = append(ways, placement{n, false, it.L, it.W})
		}
		if it.Orientations&instance.Turned != 0 && it.W <= l && it.L <= w && (it.L != it.W || it.Orientations == instance.Turned) {
			ways = append(ways, placement{n, true, it.W, it.L})
		}
	}
	return ways
}

// Work returns the number of cuts that one solution compares.
func (g *Grid) Work() int64 {
	if g.layers != nil {
		var work int64
		for _, l := range g.layers {
			_, n := g.groups(l)
			work += int64(n) * width * count(g.cutsOf(l))
		}
		return work
	}
	return count(g.xCuts)*int64(len(g.ys)) + count(g.yCuts)*int64(len(g.xs))
}

func count(cuts [][]pair) int64 {
	n := 0
	for _, c := range cuts {
		n += len(c)
	}
	return int64(n)
}

// Solve returns the value of the best pattern. Item n is worth values[n], at least 0.
func (g *Grid) Solve(values []int64) int64 {
	g.Start(values)
	g.Advance(math.MaxInt64)
	return g.Best()
}

// Start begins a solution that Advance carries on.
func (g *Grid) Start(values []int64) {
	g.values = append(g.values[:0], values...)
	g.next = 0
	g.best.clear()
	for _, p := range g.gridItems {
		g.best.raise(p.i, p.j, values[p.item])
	}
}

// Advance compares about work cuts more. It returns the rest of work, which may be negative,
// and whether all cuts are done.
func (g *Grid) Advance(work int64) (left int64, done bool) {
	if g.layers != nil {
		return g.advanceStaged(work)
	}
	across := groups(len(g.ys))
	for ; g.next < groups(len(g.xs))*across; g.next++ {
		if work <= 0 {
			return work, false
		}
		I, J := g.next/across, g.next%across
		work -= width * (count(group(g.xCuts, I)) + count(group(g.yCuts, J)))
		g.best.block(I, J, g.xCuts, g.yCuts)
	}
	return work, true
}

// group returns the part of all in group n of lanes.
func group(all [][]pair, n int) [][]pair { return all[n*width : min((n+1)*width, len(all))] }

// Best returns the value of the whole stock once Advance is done.
func (g *Grid) Best() int64 {
	if g.layers != nil {
		_, v := g.bestTop()
		return v
	}
	return g.best.at(len(g.xs)-1, len(g.ys)-1)
}
