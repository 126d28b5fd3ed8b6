package knapsack

import (
	"cmp"
	"math/bits"
	"slices"

	"sawbill/nest/internal/instance"
)

// filler bounds the value of items in a region by its area alone, each item no
// more often than it may be cut and the last one in part (Dantzig, Oper. Res.
// 5, 1957; from memory).
type filler struct {
	items []loose // the most valuable for their area first
}

// loose is an item without its shape.
type loose struct {
	leastL, leastW int64 // over the ways it may lie
	area, value    int64
	count          int64
	item           int
	field          field
}

// start measures items in units of unitX x unitY, rounded down.
func (f *filler) start(items []Item, unitX, unitY int64, values []int64, form form) {
	f.items = f.items[:0]
	for n, it := range items {
		if it.Count == 0 || values[n] == 0 {
			continue
		}
		l, w := it.L/unitX, it.W/unitY
		o := loose{leastL: l, leastW: w, area: l * w, value: values[n], count: int64(it.Count), item: n, field: form.fields[n]}
		if it.Lies&instance.Turned != 0 {
			l, w = it.W/unitX, it.L/unitY
			if it.Lies&instance.Upright == 0 {
				o.leastL, o.leastW, o.area = l, w, l*w
			} else {
				o.leastL, o.leastW, o.area = min(l, o.leastL), min(w, o.leastW), min(l*w, o.area)
			}
		}
		f.items = append(f.items, o)
	}
	slices.SortStableFunc(f.items, func(a, b loose) int {
		ah, al := bits.Mul64(uint64(a.value), uint64(b.area))
		bh, bl := bits.Mul64(uint64(b.value), uint64(a.area))
		return cmp.Or(cmp.Compare(bh, ah), cmp.Compare(bl, al), cmp.Compare(a.area, b.area))
	})
}

// inside bounds what is cut of a piece.
func (f *filler) inside(l, w int64) (value int64) {
	area := l * w
	for i := range f.items {
		o := &f.items[i]
		if o.leastL > l || o.leastW > w {
			continue
		}
		if n := o.count * o.area; n <= area {
			area -= n
			value += o.count * o.value
			continue
		}
		return value + part(o, area)
	}
	return value
}

// around bounds what is cut around a rectangle that holds has and leaves room
// for restL beside and restW above it, area in all.
func (f *filler) around(has *counts, restL, restW, area int64) (value int64) {
	for i := range f.items {
		o := &f.items[i]
		if o.leastL > restL && o.leastW > restW {
			continue
		}
		count := o.count - o.field.of(has)
		if n := count * o.area; n <= area {
			area -= n
			value += count * o.value
			continue
		}
		return value + part(o, area)
	}
	return value
}

// part is the value of as much of an item as has that area, rounded down: the
// value of whole items is a whole number. The area is below that of all of the
// item there are.
func part(o *loose, area int64) int64 {
	if whole := area / o.area; whole > 0 {
		return whole*o.value + part(o, area%o.area)
	}
	hi, lo := bits.Mul64(uint64(o.value), uint64(area))
	q, _ := bits.Div64(hi, lo, uint64(o.area))
	return int64(q)
}
