package knapsack

import "sawbill/nest/internal/instance"

// freedom is how the levels of cuts that are left confine what can still be cut around a
// rectangle.
type freedom uint8

const (
	useless freedom = iota // whatever is cut around it breaks a rule
	beside                 // in the direction in which it is divided, over the whole stock's breadth
	across                 // first so, then across that
	anywhere
)

// freedom of a rectangle divided with so many levels of cuts, the first in direction dir.
// What is cut beside it in that direction needs no level more; across it, one, and from
// then on that is the direction.
func (r Rules) freedom(dir instance.Dir, levels int) freedom {
	left := r.Stages - levels
	if dir == instance.None || left > 2 {
		return anywhere
	}
	// The last of the directions that come by turns must be the stock's first one.
	if r.First != instance.None && (left%2 == 0) != (dir == r.First) {
		left--
	}
	switch left {
	case 2:
		return anywhere
	case 1:
		return across
	case 0:
		return beside
	}
	return useless
}

// confined are tables of the most that is cut around a rectangle where a level is left for
// cuts across its own: beside it, and then across, per direction of its own.
type confined [instance.Crosscut + 1][]int64

// confine reckons one row of the tables once the inner one is done.
func (b *bounds) confine(i int) {
	cols := len(b.y.points)
	xs, ys := b.x.points, b.y.points
	row := func(t []int64, i int) []int64 { return t[i*cols : (i+1)*cols] }
	rows := len(xs) - 1
	// Beside a rectangle in the corner, within a strip that leaves ys[j] across.
	cells := row(b.confined[instance.Crosscut], i)
	for j := range cells {
		strip := row(b.inner, i)[b.y.floor[ys[cols-1]-ys[j]]]
		cells[j] = strip + row(b.inner, rows)[j]
		if j > 0 {
			cells[j] = max(cells[j], cells[j-1])
		}
	}
	cells = row(b.confined[instance.Ripped], i)
	strip := row(b.inner, int(b.x.floor[xs[rows]-xs[i]]))
	for j := range cells {
		cells[j] = strip[j] + row(b.inner, i)[cols-1]
		if i > 0 {
			cells[j] = max(cells[j], row(b.confined[instance.Ripped], i-1)[j])
		}
	}
}

// most is the most that is cut around a rectangle that leaves these points, under what
// confines it.
func (b *bounds) most(f freedom, dir instance.Dir, restL, restW int32) int64 {
	cols := int32(len(b.y.points))
	switch f {
	case useless:
		return nothing
	case beside:
		if dir == instance.Crosscut {
			restW = cols - 1
		} else {
			restL = int32(len(b.x.points)) - 1
		}
		return b.inner[restL*cols+restW]
	case across:
		return b.confined[dir][restL*cols+restW]
	}
	return b.around(restL, restW)
}

// beyond is the room that a rectangle leaves in its direction.
func beyond(dir instance.Dir, restL, restW int64) (int64, int64) {
	if dir == instance.Crosscut {
		return restL, 0
	}
	return 0, restW
}

// nothing is worth so little that no rectangle is kept for it.
const nothing = -1 << 62
