package knapsack

import "sawbill/nest/internal/instance"

// stageSlack is how the levels of cuts that are left confine what can still be cut around a
// rectangle.
type stageSlack uint8

const (
	noStageLeft    stageSlack = iota // whatever is cut around it breaks a rule
	sameDirection                    // in the direction in which it is divided, over the whole stock's breadth
	oneStageAcross                   // first so, then across that
	unrestricted
)

// stageSlack of a rectangle divided with so many levels of cuts, the first in direction dir.
// What is cut beside it in that direction needs no level more; across it, one, and from
// then on that is the direction.
func (r Rules) stageSlack(dir instance.Dir, levels int) stageSlack {
	left := r.Stages - levels
	if dir == instance.None || left > 2 {
		return unrestricted
	}
	// The last of the directions that come by turns must be the stock's first one.
	if r.FirstCut != instance.None && (left%2 == 0) != (dir == r.FirstCut) {
		left--
	}
	switch left {
	case 2:
		return unrestricted
	case 1:
		return oneStageAcross
	case 0:
		return sameDirection
	}
	return noStageLeft
}

// fillConfinedRow reckons one row of the tables of the most that is cut around a rectangle where a
// level is left for cuts across its own: beside it first, then across that; or it stays at
// its own direction and what is beside it has the level.
func (b *bounds) fillConfinedRow(i int) {
	cols := len(b.y.points)
	xs, ys := b.x.points, b.y.points
	last := len(xs) - 1
	row := func(t table, i int) table { return t[i*cols : (i+1)*cols] }
	free := b.rules.FirstCut == instance.None // else the stock's first cut is across

	// In a strip that leaves ys[j] across; what is left of the stock is ripped.
	cells := row(b.confined[instance.Crosscut], i)
	strip, rest := row(b.inner.under[instance.Crosscut], i), row(b.inner.deep[instance.Rip], last)
	for j := range cells {
		cells[j] = strip[b.y.floor[ys[cols-1]-ys[j]]] + rest[j]
		switch {
		case j > 0:
			cells[j] = max(cells[j], cells[j-1])
		case free:
			cells[j] = max(cells[j], row(b.inner.deep[instance.Crosscut], i)[cols-1])
		}
	}
	// In one that leaves xs[i] beyond its end.
	cells = row(b.confined[instance.Rip], i)
	strip = row(b.inner.under[instance.Rip], int(b.x.floor[xs[last]-xs[i]]))
	length := row(b.inner.deep[instance.Crosscut], i)[cols-1]
	for j := range cells {
		cells[j] = strip[j] + length
		switch {
		case i > 0:
			cells[j] = max(cells[j], row(b.confined[instance.Rip], i-1)[j])
		case free:
			cells[j] = max(cells[j], row(b.inner.deep[instance.Rip], last)[j])
		}
	}
}

// beyond is the room that a rectangle leaves in its direction.
func beyond(dir instance.Dir, restL, restW int64) (int64, int64) {
	if dir == instance.Crosscut {
		return restL, 0
	}
	return 0, restW
}
