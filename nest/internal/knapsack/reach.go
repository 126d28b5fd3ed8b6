package knapsack

import (
	"math"

	"sawbill/nest/internal/instance"
)

// reach holds the sizes that rows of items take in one direction, each item no
// more often than it may be cut: normal points (Herz, IBM J. Res. Dev. 16,
// 1972), in units of a length. Sizes are rounded down to units, those of items
// and of stock: a row that fits the stock fits in units too.
type reach struct {
	unit   int64
	points []int64 // ascending from 0 to what stands for the stock
	floor  []int32 // of each number of units: the greatest point within
}

// row is what an item adds to a row.
type row struct {
	sizes [2]int64 // upright and turned
	lies  instance.Lie
	count int
}

// rows are the items' sizes along the length of the stock, or across.
func rows(items []Item, length bool) []row {
	var all []row
	for _, it := range items {
		if it.Count > 0 {
			r := row{[2]int64{it.L, it.W}, it.Lies, it.Count}
			if !length {
				r.sizes = [2]int64{it.W, it.L}
			}
			all = append(all, r)
		}
	}
	return all
}

// newReach is nil where a unit is more than an item measures.
func newReach(size, unit int64, rows []row) *reach {
	for _, r := range rows {
		for lie, s := range r.sizes {
			if r.lies&(1<<lie) != 0 && s < unit {
				return nil
			}
		}
	}
	limit := size / unit
	// How many of the row's item a sum takes at least.
	uses := make([]int, limit+1)
	const never = math.MaxInt
	for z := range uses[1:] {
		uses[1+z] = never
	}
	for _, r := range rows {
		for z, n := range uses {
			if n != never {
				uses[z] = 0
				continue
			}
			for lie, s := range r.sizes {
				if s /= unit; r.lies&(1<<lie) != 0 && s <= int64(z) && uses[int64(z)-s] < r.count {
					uses[z] = min(uses[z], uses[int64(z)-s]+1)
				}
			}
		}
	}
	r := &reach{unit: unit, floor: make([]int32, limit+1)}
	for z, n := range uses {
		if n != never {
			r.points = append(r.points, int64(z))
		}
		r.floor[z] = int32(len(r.points) - 1)
	}
	return r
}

// at is the point for a size.
func (r *reach) at(size int64) int32 { return r.floor[size/r.unit] }

// within rounds a size down to what rows reach, where that is exact.
func (r *reach) within(size int64) int64 {
	if r.unit > 1 {
		return size
	}
	return r.points[r.floor[size]]
}
