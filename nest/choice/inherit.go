package choice

import (
	"reflect"
	"slices"

	"sawbill/nest/cutplan"
	"sawbill/stock"
)

// isRestriction reports whether every plan of the few is one of the many: the many
// have all the stock of the few, the blanks are the same, and each may come
// from the same stock as far as the few have it. Another board can forbid one
// that is much thicker, or resaw into another number of layers.
func isRestriction(few, many stock.Job) bool {
	place := make([]int, len(few.Stock)) // in the many
	for i, s := range few.Stock {
		if place[i] = slices.Index(many.Stock, s); place[i] < 0 {
			return false
		}
	}
	blanks := few.Blanks()
	if !reflect.DeepEqual(blanks, many.Blanks()) {
		return false
	}
	for _, b := range blanks {
		allowed := many.Sources(b)
		own := few.Sources(b)
		for i := range few.Stock {
			if slices.Contains(own, i) != slices.Contains(allowed, place[i]) {
				return false
			}
		}
	}
	return true
}

// inherit gives each plan what the others prove: a plan with less to choose from
// is a plan with more, and a bound with more to choose from holds with less.
func inherit(plans []*cutplan.Plan) {
	best := slices.Clone(plans)
	for i, many := range plans {
		for k, few := range plans {
			if i == k || !isRestriction(few.Job, many.Job) {
				continue
			}
			if len(few.Unpriced) == 0 && better(few, best[i]) {
				best[i] = few
			}
		}
	}
	bounds := make([]stock.Money, len(plans))
	for i, few := range plans {
		bounds[i] = few.Bound
		for k, many := range plans {
			// Unpriced stock counts as nothing, so a bound that leaves it out says
			// nothing of a choice that has a price for all.
			if k != i && isRestriction(few.Job, many.Job) && len(many.Unpriced) == 0 && many.Complete() && few.Complete() {
				bounds[i] = max(bounds[i], many.Bound)
			}
		}
	}
	for i, p := range best {
		q := *p
		q.Job, q.Bound = plans[i].Job, bounds[i]
		plans[i] = &q
	}
}

// better reports whether a, which is all priced, is to be had rather than b.
func better(a, b *cutplan.Plan) bool {
	if d := missing(a) - missing(b); d != 0 {
		return d < 0
	}
	return len(b.Unpriced) == 0 && a.Cost < b.Cost
}
