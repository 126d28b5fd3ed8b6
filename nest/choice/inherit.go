package choice

import (
	"reflect"
	"slices"

	"sawbill/nest/cutplan"
	"sawbill/stock"
)

// isRestriction reports whether every plan of few is also a plan of many. That holds if
// many has all the stock of few, and the same blanks with the same sources in that stock.
// Another board may forbid a much thicker one, or change the number of resawn layers.
func isRestriction(few, many stock.Job) bool {
	place := make([]int, len(few.Stock)) // in many.Stock
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

// inherit shares results between the plans. A plan of a restricted choice is a plan of the
// wider one; a bound of the wider choice holds for the restricted one.
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
			// Unpriced stock costs nothing, so a bound that leaves it out does not hold
			// for a choice with a price for everything.
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

// better reports whether a, whose purchases all have prices, is preferred to b.
func better(a, b *cutplan.Plan) bool {
	if d := unplaced(a) - unplaced(b); d != 0 {
		return d < 0
	}
	return len(b.Unpriced) == 0 && a.Cost < b.Cost
}
