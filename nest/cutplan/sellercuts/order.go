package sellercuts

import (
	"cmp"
	"context"
	"slices"

	"sawbill/nest/cutplan"
	"sawbill/stock"
)

// The search tries a few divisions of each offer, one offer after another. Counts for
// given divisions are found from above. First a plan buys the pieces one by one, at their
// share of the price, which gives sufficient counts. Then it tries lower counts, and
// replaces one division by a cheaper one. So every blank that the divisions can give is
// cut, though the counts may not be the lowest.

// order lists divisions to buy, and the cost and result of a plan with them.
type order struct {
	divisions []cutplan.Division // with their counts, all positive
	unplaced  int                // blanks
	cost      stock.Money
	volume    stock.Volume // of the purchases; decides between orders without prices
}

func (a order) better(b order) bool {
	return cmp.Or(cmp.Compare(a.unplaced, b.unplaced), cmp.Compare(a.cost, b.cost), a.volume.Compare(b.volume)) < 0
}

// findOrder searches every material for the seller's cuts to order.
func (c carrier) findOrder(ctx context.Context, uncut *cutplan.Plan) ([]cutplan.Division, error) {
	byMaterial := map[string][][]cutplan.Division{} // for each offer
	var materials []string
	trials := 0
	for _, i := range c.job.TooLarge() {
		s := c.job.Stock[i]
		all := divisions(s, c.job.Transport, c.job.Saw, c.bill, uncut.Layouts)
		if len(all) == 0 || !slices.ContainsFunc(c.job.Parts, func(p stock.Part) bool { return p.Material == s.Material }) {
			continue
		}
		if !slices.Contains(materials, s.Material) {
			materials = append(materials, s.Material)
		}
		byMaterial[s.Material] = append(byMaterial[s.Material], all)
		trials += 2 * len(all)
	}
	var bought []cutplan.Division
	clock := cutplan.NewClock(ctx, c.options)
	for _, m := range materials {
		found := priceOf(uncut.Buy, m)
		s := search{carrier: c, ctx: ctx, clock: clock, solves: solvesEach * trials, of: ofMaterial(c.job, m), found: found}
		if uncut.Complete() {
			// The other materials may cost nothing less, so this one takes all of the gap.
			s.least = found - (uncut.Cost - uncut.Bound)
		}
		best, err := s.best(byMaterial[m])
		if err != nil {
			return nil, err
		}
		for _, all := range byMaterial[m] {
			trials -= 2 * len(all)
		}
		bought = append(bought, best.divisions...)
	}
	return bought, nil
}

// solvesEach estimates how many plans it takes to settle the counts of one choice of
// divisions.
const solvesEach = 3

// search finds the order of one material.
type search struct {
	carrier
	ctx    context.Context
	clock  cutplan.Clock
	solves int       // estimated number of plans still to make, for all materials
	of     stock.Job // the material's share of the job
	// found is the cost of the plan with uncut stock; least is a lower bound on any plan.
	found, least stock.Money
}

// best starts with the likeliest division of each offer. It then tries each other
// division, first in place of a division, then beside it, and keeps improvements.
func (s *search) best(offers [][]cutplan.Division) (order, error) {
	var now []cutplan.Division
	for _, all := range offers {
		now = append(now, all[0])
	}
	best, err := s.settleCounts(now)
	if err != nil {
		return order{}, err
	}
	for _, beside := range []bool{false, true} {
		for _, all := range offers {
			for _, d := range all {
				if s.cannotImprove(best) {
					return best, nil
				}
				next := slices.DeleteFunc(slices.Clone(best.divisions), func(b cutplan.Division) bool {
					return b.Stock == d.Stock && (!beside || same(b, d))
				})
				other, err := s.settleCounts(append(next, d))
				if err != nil {
					return order{}, err
				}
				if other.better(best) {
					best = other
				}
			}
		}
	}
	return best, nil
}

// cannotImprove reports whether no better order is possible.
func (s *search) cannotImprove(o order) bool {
	return o.unplaced == 0 && o.cost <= s.found && s.priced(o)
}

func (s *search) priced(o order) bool {
	return !slices.ContainsFunc(o.divisions, func(d cutplan.Division) bool { return d.Stock.Price == 0 })
}

// settleCounts finds how many of each division to buy.
func (s *search) settleCounts(divisions []cutplan.Division) (order, error) {
	best, err := s.fromSinglePieces(divisions)
	if err != nil {
		return order{}, err
	}
	for {
		better, err := s.firstBetter(best)
		if err != nil || better == nil {
			return best, err
		}
		best = *better
	}
}

// fromSinglePieces returns an order that gives every blank the divisions can give.
func (s *search) fromSinglePieces(divisions []cutplan.Division) (order, error) {
	divisions = slices.Clone(divisions)
	for k := range divisions {
		divisions[k].Count = 0
	}
	t := s.job.Transport
	job := s.of
	job.Stock = portableStock(s.of)
	all := pieces(divisions, t.CutTolerance)
	for _, p := range all {
		p.Price = p.share(divisions, t)
		for k, n := range p.of {
			p.Count += n * divisions[k].Stock.Count
		}
		for k, n := range p.of {
			if n > 0 && divisions[k].Stock.Count == 0 {
				p.Count = 0 // no limit
			}
		}
		if leavesSome(p.Stock) {
			job.Stock = append(job.Stock, p.Stock)
		}
	}
	p, err := s.solve(job)
	if err != nil {
		return order{}, err
	}
	for k, n := range needed(divisions, all, p.Layouts, false) {
		divisions[k].Count = n
	}
	if tooMany(divisions) {
		return s.evaluate(divisions) // the counts no longer match that plan
	}
	o := s.orderOf(divisions, p)
	for _, b := range p.Buy {
		if b.Stock.From != "" {
			o.cost -= b.Cost
		}
	}
	return o, nil
}

// tooMany lowers counts to the limits of the offers, and reports whether it changed any.
func tooMany(divisions []cutplan.Division) bool {
	some := false
	for k, d := range divisions {
		if d.Stock.Count == 0 {
			continue
		}
		if left := d.Stock.Count - boughtOf(divisions[:k], d.Stock.Name); d.Count > left {
			divisions[k].Count, some = left, true
		}
	}
	return some
}

// evaluate plans with the divisions and their counts.
func (s *search) evaluate(divisions []cutplan.Division) (order, error) {
	p, err := s.solve(withPieces(s.of, divisions))
	if err != nil {
		return order{}, err
	}
	return s.orderOf(divisions, p), nil
}

// orderOf adds up divisions and the other purchases of p.
func (s *search) orderOf(divisions []cutplan.Division, p *cutplan.Plan) order {
	o := order{cost: p.Cost + paidFor(divisions, s.job.Transport)}
	for _, d := range divisions {
		if d.Count > 0 {
			o.divisions = append(o.divisions, d)
			o.volume = o.volume.Add(d.Stock.Length, d.Stock.Width, d.Stock.Thickness, d.Count)
		}
	}
	for _, b := range p.Buy {
		if b.Stock.From == "" {
			o.volume = o.volume.Add(b.Stock.Length, b.Stock.Width, b.Stock.Thickness, b.Count)
		}
	}
	for _, u := range p.Unplaced {
		o.unplaced += u.Count
	}
	return o
}

// firstBetter returns the first order better than o, or nil. It tries one less of a
// division, the dearest first, alone and with one more of another division.
func (s *search) firstBetter(o order) (*order, error) {
	t := s.job.Transport
	dearest := make([]int, len(o.divisions))
	for k := range dearest {
		dearest[k] = k
	}
	slices.SortStableFunc(dearest, func(a, b int) int {
		return cmp.Compare(each(o.divisions[b], t), each(o.divisions[a], t))
	})
	const none = -1
	for _, instead := range append([]int{none}, dearest...) {
		for _, k := range dearest {
			next := slices.Clone(o.divisions)
			next[k].Count--
			if instead != none {
				if instead == k || !canAdd(next, instead) || each(next[instead], t) >= each(next[k], t) {
					continue
				}
				next[instead].Count++
			}
			if !s.canComplete(next, o) {
				continue
			}
			other, err := s.evaluate(next)
			if err != nil {
				return nil, err
			}
			if other.better(o) {
				return &other, nil
			}
		}
	}
	return nil, nil
}

// canComplete reports whether an order of the divisions can be complete. If nothing else
// is for sale, the divisions must cost at least the bound.
func (s *search) canComplete(divisions []cutplan.Division, current order) bool {
	nothingElse := !slices.ContainsFunc(portableStock(s.of), func(b stock.Stock) bool { return !b.OnHand })
	return current.unplaced > 0 || !nothingElse || paidFor(divisions, s.job.Transport) >= s.least
}

// solve plans job within its share of the time.
func (s *search) solve(job stock.Job) (*cutplan.Plan, error) {
	ctx, cancel := s.clock.Share(s.ctx, max(1, s.solves))
	defer cancel()
	s.solves--
	return s.plan(ctx, job, s.options)
}

func priceOf(buy []cutplan.Purchase, material string) stock.Money {
	total := stock.Money(0)
	for _, b := range buy {
		if b.Stock.Material == material {
			total += b.Cost
		}
	}
	return total
}
