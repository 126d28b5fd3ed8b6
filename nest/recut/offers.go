package recut

import (
	"slices"

	"sawbill/nest/cutplan"
	"sawbill/stock"
)

// offersNow lists the stock that can still be bought, by the changed job if there is one.
// Limited numbers are reduced by earlier purchases.
func (r *rest) offersNow(p *cutplan.Plan, o Options) []stock.Stock {
	remaining := offersOf(p)
	if o.Is == nil {
		return remaining
	}
	var all []stock.Stock
	for _, s := range o.Is.Stock {
		if s.OnHand {
			continue
		}
		named := func(t stock.Stock) bool { return !t.OnHand && t.Name == s.Name && t.Section == s.Section }
		was := slices.IndexFunc(o.Was.Stock, named)
		if s.Count > 0 && was >= 0 && o.Was.Stock[was].Count > 0 {
			left := 0
			if i := slices.IndexFunc(remaining, named); i >= 0 {
				left = remaining[i].Count
			}
			if s.Count += left - o.Was.Stock[was].Count; s.Count <= 0 {
				continue
			}
		}
		all = append(all, s)
	}
	return all
}

// newOnHand lists stock on hand that only the changed job has.
func (r *rest) newOnHand(p *cutplan.Plan, o Options) []stock.Stock {
	var all []stock.Stock
	for _, s := range o.Is.Stock {
		named := func(t stock.Stock) bool { return t.Name == s.Name }
		if s.OnHand && !r.onRack[s.Name] && !slices.ContainsFunc(o.Was.Stock, named) && !slices.ContainsFunc(p.Job.Stock, named) {
			all = append(all, s)
		}
	}
	return all
}

// offersOf lists the plan's offers that can still be bought, less its purchases if their
// number is limited.
func offersOf(p *cutplan.Plan) []stock.Stock {
	var all []stock.Stock
	for _, s := range p.Job.Stock {
		if s.OnHand {
			continue
		}
		limited := s.Count > 0
		for _, b := range p.Buy {
			if limited && b.Stock.Name == s.Name && b.Stock.Section == s.Section {
				s.Count -= b.Count
			}
		}
		if !limited || s.Count > 0 {
			all = append(all, s)
		}
	}
	return all
}
