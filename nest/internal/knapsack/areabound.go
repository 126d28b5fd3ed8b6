package knapsack

import (
	"cmp"
	"math/bits"
	"slices"

	"sawbill/nest/internal/instance"
)

// areaBound is the fractional knapsack by area: Dantzig, Oper. Res. 5, 1957; from memory. It
// bounds the value of items in a region, each at most as often as it may be cut, the last one
// in part.
type areaBound struct {
	items []areaItem // by value per area, the best first
}

// areaItem is an item without its shape.
type areaItem struct {
	minL, minW  int64 // over its orientations
	area, value int64
	count       int64
	item        int
	field       field
}

// start measures items in units of unitX x unitY, rounded down.
func (f *areaBound) start(items []Item, unitX, unitY int64, values []int64, packing packing) {
	f.items = f.items[:0]
	for n, it := range items {
		if it.Count == 0 || values[n] == 0 {
			continue
		}
		l, w := it.L/unitX, it.W/unitY
		o := areaItem{minL: l, minW: w, area: l * w, value: values[n], count: int64(it.Count), item: n, field: packing.fields[n]}
		if it.Orientations&instance.Turned != 0 {
			l, w = it.W/unitX, it.L/unitY
			if it.Orientations&instance.Upright == 0 {
				o.minL, o.minW, o.area = l, w, l*w
			} else {
				o.minL, o.minW, o.area = min(l, o.minL), min(w, o.minW), min(l*w, o.area)
			}
		}
		f.items = append(f.items, o)
	}
	slices.SortStableFunc(f.items, func(a, b areaItem) int {
		ah, al := bits.Mul64(uint64(a.value), uint64(b.area))
		bh, bl := bits.Mul64(uint64(b.value), uint64(a.area))
		return cmp.Or(cmp.Compare(bh, ah), cmp.Compare(bl, al), cmp.Compare(a.area, b.area))
	})
}

// inside returns the bound for a piece.
func (f *areaBound) inside(l, w int64) (value int64) {
	area := l * w
	for i := range f.items {
		o := &f.items[i]
		if o.minL > l || o.minW > w {
			continue
		}
		if n := o.count * o.area; n <= area {
			area -= n
			value += o.count * o.value
			continue
		}
		return value + fraction(o, area)
	}
	return value
}

// around returns the bound around a rectangle that holds has. It leaves restL beside it, restW
// above it, and area in all.
func (f *areaBound) around(has *counts, restL, restW, area int64) (value int64) {
	for i := range f.items {
		o := &f.items[i]
		if o.minL > restL && o.minW > restW {
			continue
		}
		count := o.count - o.field.of(has)
		if n := count * o.area; n <= area {
			area -= n
			value += count * o.value
			continue
		}
		return value + fraction(o, area)
	}
	return value
}

// fraction returns the value of a fraction of an item with that area, rounded down, since
// values are integers. The area is below that of all of the item.
func fraction(o *areaItem, area int64) int64 {
	if whole := area / o.area; whole > 0 {
		return whole*o.value + fraction(o, area%o.area)
	}
	hi, lo := bits.Mul64(uint64(o.value), uint64(area))
	q, _ := bits.Div64(hi, lo, uint64(o.area))
	return int64(q)
}
