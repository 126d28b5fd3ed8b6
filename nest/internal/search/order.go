package search

import (
	"cmp"
	"slices"
)

// order is an order of insertion, the largest part first.
type order int

const (
	byArea order = iota
	byLength
	byWidth
	byLongSide
	byShortSide
	randomOrder
	orderCount

	fixedOrders = randomOrder // number of orders that are not random
)

// rankKinds computes the orders once for all steps.
func (e *env) rankKinds() {
	for o := range fixedOrders {
		size := func(k int32) int64 {
			kd := &e.kinds[k]
			switch o {
			case byLength:
				return int64(kd.l)
			case byWidth:
				return int64(kd.w)
			case byLongSide:
				return int64(max(kd.l, kd.w))
			case byShortSide:
				return int64(min(kd.l, kd.w))
			}
			return kd.area
		}
		kinds := make([]int32, len(e.kinds))
		for k := range kinds {
			kinds[k] = int32(k)
		}
		slices.SortStableFunc(kinds, func(a, b int32) int { return cmp.Compare(size(b), size(a)) })
		ranks := make([]int32, len(kinds))
		for i, k := range kinds {
			ranks[k] = int32(i)
		}
		e.orders[o], e.ranks[o] = kinds, ranks
	}
}

// sort puts the missing parts in order o.
func (w *walk) sort(o order) {
	missing := w.state.missing
	if o == randomOrder {
		for i := len(missing) - 1; i > 0; i-- {
			j := w.below(i + 1)
			missing[i], missing[j] = missing[j], missing[i]
		}
		return
	}
	ranks, kinds := w.e.ranks[o], w.e.orders[o]
	for i, k := range missing {
		missing[i] = ranks[k]
	}
	slices.Sort(missing)
	for i, r := range missing {
		missing[i] = kinds[r]
	}
}
