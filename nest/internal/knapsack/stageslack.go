package knapsack

import "sawbill/nest/internal/instance"

// stageSlack says how the levels of cuts that are left limit the cuts around a rectangle.
type stageSlack uint8

const (
	noStageLeft    stageSlack = iota // no cut around it is allowed
	sameDirection                    // cuts in its own direction only, across the whole stock
	oneStageAcross                   // such cuts first, then cuts across them
	unrestricted
)

// stageSlack returns that of a rectangle with a number of levels of cuts, the first in
// direction dir. Cuts around it in that direction need no further level. A cut across needs
// one, and sets the direction of the next.
func (r Rules) stageSlack(dir instance.Dir, levels int) stageSlack {
	left := r.Stages - levels
	if dir == instance.None || left > 2 {
		return unrestricted
	}
	// Directions alternate up to the stock's first cut.
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

// fillConfinedRow computes one row of the tables for oneStageAcross. The rectangle either gets
// cuts in its own direction and then across, or only the former, with a further level in what
// is beside it.
func (b *bounds) fillConfinedRow(i int) {
	cols := len(b.y.points)
	xs, ys := b.x.points, b.y.points
	last := len(xs) - 1
	row := func(t table, i int) table { return t[i*cols : (i+1)*cols] }
	free := b.rules.FirstCut == instance.None // else the stock's first cut is across

	// In a strip that leaves ys[j] across; the rest of the stock is ripped.
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
	// In a strip that leaves xs[i] beyond its end.
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

// beyond returns the room that a rectangle leaves in its own direction.
func beyond(dir instance.Dir, restL, restW int64) (int64, int64) {
	if dir == instance.Crosscut {
		return restL, 0
	}
	return 0, restW
}
