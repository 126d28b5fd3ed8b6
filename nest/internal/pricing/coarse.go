package pricing

// scale is how sizes are rounded to whole steps. The stock's are rounded down.
//
// An outer scale rounds the items' sizes down as well. Of pieces side by side
//
//	floor(a/step) + floor(b/step) <= floor((a+b)/step)
//
// so whatever edge-to-edge cuts free from a piece they free from the rounded
// piece too, on every level of cuts: a grid's value is never less than the
// truth. (A conservative scale in the sense of Fekete and Schepers, Math.
// Methods Oper. Res. 60, 2004; from memory.)
//
// An inner scale rounds the items' sizes up: every pattern fits in truth, and
// a grid's value is never more.
type scale struct {
	l, w  int64 // the steps
	inner bool
}

// ways rounds the ways in which items lie in l x w.
func (sc scale) ways(ways []placement, l, w int64) []placement {
	var rounded []placement
	for _, way := range ways {
		if sc.inner {
			way.l, way.w = (way.l-1)/sc.l+1, (way.w-1)/sc.w+1
		} else {
			way.l, way.w = way.l/sc.l, way.w/sc.w
		}
		if way.l <= l/sc.l && way.w <= w/sc.w {
			rounded = append(rounded, way)
		}
	}
	return rounded
}

// Exact reports whether the grid measures as finely as the sizes given.
func (g *Grid) Exact() bool { return g.scale.l == 1 && g.scale.w == 1 }

// NewOuter lays out the finest grid it finds that takes no more than about
// mostWork comparisons, an exact one if that does. Its values are never below
// the truth. Nil where every such grid rounds some item away.
func NewOuter(l, w int64, items []Item, rules Rules, maxWork int64) *Grid {
	return newCoarse(l, w, items, rules, false, maxWork)
}

// NewInner is like NewOuter, but its patterns always fit, so its values are
// never above the truth; save that where levels of cuts count, parts of equal
// rounded size may ask for a trim that is not counted.
func NewInner(l, w int64, items []Item, rules Rules, maxWork int64) *Grid {
	return newCoarse(l, w, items, rules, true, maxWork)
}

// maxSteps limits the steps along a side, so that looking for a good one
// stays quick.
const maxSteps = 1 << 13

func newCoarse(l, w int64, items []Item, rules Rules, inner bool, maxWork int64) *Grid {
	if g := NewGrid(l, w, items, rules, maxWork); g != nil {
		return g
	}
	ways := placements(items, l, w)
	most := scale{l: l, w: w} // at which the smallest item is still a step
	for _, way := range ways {
		most.l, most.w = min(most.l, way.l), min(most.w, way.w)
	}
	of := func(n int64) scale { return scale{min(n, most.l), min(n, most.w), inner} }
	low, high := max(1, max(l, w)/maxSteps), max(most.l, most.w) // low is too fine, or not to be tried
	best := newGrid(l, w, items, rules, of(high), maxWork)
	if best == nil {
		return nil
	}
	for low+1 < high {
		mid := (low + high) / 2
		if g := newGrid(l, w, items, rules, of(mid), maxWork); g != nil {
			best, high = g, mid
		} else {
			low = mid
		}
	}
	// A slightly larger step may happen to suit the sizes better.
	apt := scale{bestStep(best.scale.l, most.l, l, inner, ways, placement.length), bestStep(best.scale.w, most.w, w, inner, ways, placement.width), inner}
	if apt != best.scale {
		if g := newGrid(l, w, items, rules, apt, maxWork); g != nil {
			return g
		}
	}
	return best
}

// bestStep returns the step from least up to a quarter more, but at most most,
// that changes the ways' sizes least in proportion to the stock's side.
func bestStep(least, most, side int64, inner bool, ways []placement, size func(placement) int64) int64 {
	best, lost := least, int64(0)
	for n := least; n <= min(most, least+least/4); n++ {
		loss := millionths(side%n, side) * int64(len(ways))
		if !inner {
			loss = -loss // what the stock loses makes up for what the items lose
		}
		for _, way := range ways {
			s := size(way)
			if inner {
				loss += millionths((n-s%n)%n, s)
			} else {
				loss += millionths(s%n, s)
			}
		}
		if n == least || loss < lost {
			best, lost = n, loss
		}
	}
	return best
}

func millionths(part, whole int64) int64 { return part * 1_000_000 / whole }

func (w placement) length() int64 { return w.l }
func (w placement) width() int64  { return w.w }
