package choice

import (
	"slices"

	"sawbill/nest/cutplan"
	"sawbill/stock"
)

// priceUnit returns the greatest common divisor of all prices for sale; 1 if nothing has a
// price.
func priceUnit(j stock.Job) stock.Money {
	unit := stock.Money(0)
	for _, s := range j.Stock {
		if s.OnHand {
			continue
		}
		for a := s.Price; a != 0; {
			unit, a = a, unit%a
		}
	}
	return max(unit, 1)
}

// sameProblem reports whether two jobs with equal parts have the same best cuts. They may
// differ in names, sellers and a common factor of the prices. Cuts that the seller makes
// have a price of their own, so such jobs are never the same.
func sameProblem(a, b stock.Job) bool {
	if len(a.TooLarge())+len(b.TooLarge()) > 0 {
		return false
	}
	ua, ub := priceUnit(a), priceUnit(b)
	return slices.EqualFunc(a.Stock, b.Stock, func(s, t stock.Stock) bool {
		return shape(s) == shape(t) && s.Count == t.Count &&
			(s.OnHand && s.Name == t.Name || !s.OnHand && s.Price/ua == t.Price/ub)
	})
}

// reprice returns p with the stock of j, whose problem is the same.
func reprice(p *cutplan.Plan, j stock.Job) *cutplan.Plan {
	if len(j.TooLarge()) > 0 {
		return p // p was planned for j itself, and its layouts cut pieces of the stock
	}
	from, to := priceUnit(p.Job), priceUnit(j)
	other := func(s stock.Stock) stock.Stock { return j.Stock[slices.Index(p.Job.Stock, s)] }
	q := *p
	q.Job = j
	q.Cost = p.Cost / from * to
	// Costs are whole multiples of the unit, so the bound rounds up to the next multiple.
	q.Bound = (p.Bound + from - 1) / from * to
	q.Layouts = slices.Clone(p.Layouts)
	for i, l := range q.Layouts {
		q.Layouts[i].Stock = other(l.Stock)
	}
	q.Buy = slices.Clone(p.Buy)
	for i, b := range q.Buy {
		s := other(b.Stock)
		q.Buy[i] = cutplan.Purchase{Stock: s, Count: b.Count, Cost: s.Price.Times(b.Count)}
	}
	q.Unpriced = slices.Clone(p.Unpriced)
	for i, u := range q.Unpriced {
		q.Unpriced[i].Stock = slices.Clone(u.Stock)
		for k, s := range u.Stock {
			q.Unpriced[i].Stock[k] = other(s)
		}
	}
	return &q
}
