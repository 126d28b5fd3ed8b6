package knapsack

import "sawbill/nest/internal/instance"

// points holds the normal points in one direction, with demand. These are the sizes of rows of
// items, each at most as often as it may be cut. Herz, IBM J. Res. Dev. 16, 1972. Sizes of
// items and stock are rounded down to units, so a row that fits the stock fits in units too.
type points struct {
	unit   int64
	points []int64 // ascending from 0 to the one for the stock
	floor  []int32 // per number of units: the greatest point within
}

// row is one item as part of a row.
type row struct {
	sizes        [2]int64 // upright and turned
	orientations instance.Orientation
	count        int
}

// rows returns the items' sizes along the length of the stock, or across.
func rows(items []Item, length bool) []row {
	var all []row
	for _, it := range items {
		if it.Count > 0 {
			r := row{[2]int64{it.L, it.W}, it.Orientations, it.Count}
			if !length {
				r.sizes = [2]int64{it.W, it.L}
			}
			all = append(all, r)
		}
	}
	return all
}

// newPoints returns nil if a unit is more than an item measures.
func newPoints(size, unit int64, rows []row) *points {
	for _, r := range rows {
		for lie, s := range r.sizes {
			if r.orientations&(1<<lie) != 0 && s < unit {
				return nil
			}
		}
	}
	limit := size / unit
	sums := make(sizes, limit/64+1)
	sums[0] = 1
	for _, r := range rows {
		sums.extend(r, unit, limit)
	}
	r := &points{unit: unit, floor: make([]int32, limit+1)}
	for z := range r.floor {
		if sums[z/64]>>(z%64)&1 != 0 {
			r.points = append(r.points, int64(z))
		}
		r.floor[z] = int32(len(r.points) - 1)
	}
	return r
}

// sizes is a bit set: bit z stands for z units.
type sizes []uint64

// extend adds the sums of all sizes with up to the item's count of its sizes, in any mixture of
// orientations.
func (z sizes) extend(r row, unit, limit int64) {
	var steps []int64
	for lie, s := range r.sizes {
		if s /= unit; r.orientations&(1<<lie) != 0 && s <= limit {
			steps = append(steps, s)
		}
	}
	if len(steps) == 0 {
		return
	}
	if len(steps) == 1 {
		steps = append(steps, steps[0])
	}
	for range min(int64(r.count), limit/min(steps[0], steps[1])) {
		for i := len(z) - 1; i >= 0; i-- { // lower words are not extended yet
			z[i] |= z.shifted(i, steps[0]) | z.shifted(i, steps[1])
		}
	}
}

// shifted returns word i of the set with every size longer by step.
func (z sizes) shifted(i int, step int64) uint64 {
	from, by := i-int(step/64), uint(step%64)
	if from < 0 {
		return 0
	}
	word := z[from] << by
	if from > 0 {
		word |= z[from-1] >> (64 - by)
	}
	return word
}

// index returns the point for a size.
func (r *points) index(size int64) int32 { return r.floor[size/r.unit] }

// roundDown rounds a size down to a point, if points are exact.
func (r *points) roundDown(size int64) int64 {
	if r.unit > 1 {
		return size
	}
	return r.points[r.floor[size]]
}
