package pricing

import "sawbill/nest/internal/halt"

// scale rounds sizes to whole steps. It rounds the stock's sizes down.
//
// An outer scale rounds the items' sizes down as well. For pieces side by side
//
//	floor(a/step) + floor(b/step) <= floor((a+b)/step)
//
// so every edge-to-edge cut of the true piece is one of the rounded piece, and a grid's value
// is never too low. This is a conservative scale: Fekete and Schepers, Math. Methods Oper. Res.
// 60, 2004; from memory.
//
// An inner scale rounds the items' sizes up. Every pattern fits, and a grid's value is never
// too high.
type scale struct {
	l, w  int64 // the steps
	inner bool
}

// ways rounds the placements of items in l x w, and drops those that do not fit.
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

// Exact reports whether the grid rounds no sizes.
func (g *Grid) Exact() bool { return g.scale.l == 1 && g.scale.w == 1 }

// NewOuter returns the finest grid that it finds within about maxWork comparisons, and an exact
// one if possible. Its values are never too low. It is nil if every such grid rounds some item
// to nothing, and may be nil once stop is on.
func NewOuter(l, w int64, items []Item, rules Rules, maxWork int64, stop halt.Signal) *Grid {
	return newCoarse(l, w, items, rules, false, maxWork, stop)
}

// NewInner is like NewOuter, but its patterns fit and its values are never too high. There is
// one exception: with limited stages, parts of equal rounded size may need a trim that is not
// counted.
func NewInner(l, w int64, items []Item, rules Rules, maxWork int64, stop halt.Signal) *Grid {
	return newCoarse(l, w, items, rules, true, maxWork, stop)
}

// maxSteps limits the steps along a side, so that a good step is found quickly.
const maxSteps = 1 << 13

func newCoarse(l, w int64, items []Item, rules Rules, inner bool, maxWork int64, stop halt.Signal) *Grid {
	if g := NewGrid(l, w, items, rules, maxWork, stop); g != nil {
		return g
	}
	ways := placements(items, l, w)
	most := scale{l: l, w: w} // at which the smallest item is still a step
	for _, way := range ways {
		most.l, most.w = min(most.l, way.l), min(most.w, way.w)
	}
	of := func(n int64) scale { return scale{min(n, most.l), min(n, most.w), inner} }
	low, high := max(1, max(l, w)/maxSteps), max(most.l, most.w) // low is too fine, or not worth trying
	best := newGrid(l, w, items, rules, of(high), maxWork, stop)
	if best == nil {
		return nil
	}
	for low+1 < high {
		mid := (low + high) / 2
		if g := newGrid(l, w, items, rules, of(mid), maxWork, stop); g != nil {
			best, high = g, mid
		} else {
			low = mid
		}
	}
	// A slightly larger step may suit the sizes better.
	apt := scale{bestStep(best.scale.l, most.l, l, inner, ways, placement.length), bestStep(best.scale.w, most.w, w, inner, ways, placement.width), inner}
	if apt != best.scale {
		if g := newGrid(l, w, items, rules, apt, maxWork, stop); g != nil {
			return g
		}
	}
	return best
}

// bestStep returns the step between least and a quarter more, up to most, that changes the
// sizes least relative to the stock's side.
func bestStep(least, most, side int64, inner bool, ways []placement, size func(placement) int64) int64 {
	best, lost := least, int64(0)
	for n := least; n <= min(most, least+least/4); n++ {
		loss := millionths(side%n, side) * int64(len(ways))
		if !inner {
			loss = -loss // the stock's loss offsets the items'
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
