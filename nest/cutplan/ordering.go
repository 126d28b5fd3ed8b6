package cutplan

import (
	"cmp"
	"context"
	"slices"

	"sawbill/stock"
)

// What to have cut, and how many of each, is sought by trying a few divisions of each
// offer, one offer after another. How many are needed of given divisions is found from
// above: a plan to which the pieces come singly, at their share of the price, tells a
// number that is enough; then fewer are tried, and fewer of one with more of a cheaper
// one. So whatever can be cut of the divisions is cut, though perhaps not of the fewest.

// order is what is bought and cut, and what comes of it.
type order struct {
	divisions []Division // with their counts, none of them 0
	missing   int        // blanks
	cost      stock.Money
	volume    stock.Volume // of what is bought, which counts where there are no prices
}

func (a order) better(b order) bool {
	return cmp.Or(cmp.Compare(a.missing, b.missing), cmp.Compare(a.cost, b.cost), a.volume.Compare(b.volume)) < 0
}

// order seeks what to have cut of every material.
func (c carrier) order(ctx context.Context, whole *Plan) ([]Division, error) {
	byMaterial := map[string][][]Division{} // for each offer
	var materials []string
	trials := 0
	for _, i := range c.job.TooLarge() {
		s := c.job.Stock[i]
		all := divisions(s, c.job.Transport, c.job.Saw, c.bill, whole.Layouts)
		if len(all) == 0 || !slices.ContainsFunc(c.job.Parts, func(p stock.Part) bool { return p.Material == s.Material }) {
			continue
		}
		if !slices.Contains(materials, s.Material) {
			materials = append(materials, s.Material)
		}
		byMaterial[s.Material] = append(byMaterial[s.Material], all)
		trials += 2 * len(all)
	}
	var bought []Division
	clock := NewClock(ctx, c.options)
	for _, m := range materials {
		found := priceOf(whole.Buy, m)
		s := search{carrier: c, ctx: ctx, clock: clock, solves: solvesEach * trials, of: ofMaterial(c.job, m), found: found}
		if whole.Complete() {
			// No other material need cost more, so what is left of the bound is this one's.
			s.least = found - (whole.Cost - whole.Bound)
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

// solvesEach is how many plans it takes about to settle the counts of one choice of
// divisions.
const solvesEach = 3

// search seeks the order of one material.
type search struct {
	carrier
	ctx    context.Context
	clock  Clock
	solves int       // about so many plans are still to be made, of all materials
	of     stock.Job // what of the job is of the material
	// found is what the plan with whole stock costs, least what none undercuts.
	found, least stock.Money
}

// best starts with the likeliest division of each offer, and puts others in its place or beside
// it as long as that is cheaper or cuts more.
func (s *search) best(offers [][]Division) (order, error) {
	var now []Division
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
				next := slices.DeleteFunc(slices.Clone(best.divisions), func(b Division) bool {
					return b.Stock == d.Stock && (!beside || b.same(d))
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

// cannotImprove reports whether it is idle to go on.
func (s *search) cannotImprove(o order) bool {
	return o.missing == 0 && o.cost <= s.found && s.priced(o)
}

func (s *search) priced(o order) bool {
	return !slices.ContainsFunc(o.divisions, func(d Division) bool { return d.Stock.Price == 0 })
}

// settleCounts finds how many of each division to buy.
func (s *search) settleCounts(divisions []Division) (order, error) {
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

// fromSinglePieces is an order of which all is cut that can be cut of the divisions.
func (s *search) fromSinglePieces(divisions []Division) (order, error) {
	divisions = slices.Clone(divisions)
	for k := range divisions {
		divisions[k].Count = 0
	}
	t := s.job.Transport
	job := s.of
	job.Stock = carriedStock(s.of)
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
		return s.evaluate(divisions) // fewer pieces than that plan cuts
	}
	o := s.orderOf(divisions, p)
	for _, b := range p.Buy {
		if b.Stock.From != "" {
			o.cost -= b.Cost
		}
	}
	return o, nil
}

// tooMany takes off what is beyond the offers' own counts, and reports whether that was
// anything.
func tooMany(divisions []Division) bool {
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

// evaluate plans with as many of the divisions as they say.
func (s *search) evaluate(divisions []Division) (order, error) {
	p, err := s.solve(withPieces(s.of, divisions))
	if err != nil {
		return order{}, err
	}
	return s.orderOf(divisions, p), nil
}

// orderOf adds up divisions, and what p buys beside.
func (s *search) orderOf(divisions []Division, p *Plan) order {
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
		o.missing += u.Count
	}
	return o
}

// firstBetter is the first order that is better than o with one less of a division, the
// dearest first, or one more of another in its place; nil where none is.
func (s *search) firstBetter(o order) (*order, error) {
	t := s.job.Transport
	dearest := make([]int, len(o.divisions))
	for k := range dearest {
		dearest[k] = k
	}
	slices.SortStableFunc(dearest, func(a, b int) int {
		return cmp.Compare(o.divisions[b].each(t), o.divisions[a].each(t))
	})
	const none = -1
	for _, instead := range append([]int{none}, dearest...) {
		for _, k := range dearest {
			next := slices.Clone(o.divisions)
			next[k].Count--
			if instead != none {
				if instead == k || !canAdd(next, instead) || next[instead].each(t) >= next[k].each(t) {
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

// canComplete reports whether an order of the divisions can be complete at all: where nothing
// can be bought beside them they cost no less than the bound.
func (s *search) canComplete(divisions []Division, current order) bool {
	alone := !slices.ContainsFunc(carriedStock(s.of), func(b stock.Stock) bool { return !b.OnHand })
	return current.missing > 0 || !alone || paidFor(divisions, s.job.Transport) >= s.least
}

// solve plans within its share of the time.
func (s *search) solve(job stock.Job) (*Plan, error) {
	ctx, cancel := s.clock.Share(s.ctx, max(1, s.solves))
	defer cancel()
	s.solves--
	return s.plan(ctx, job, s.options)
}

func priceOf(buy []Purchase, material string) stock.Money {
	total := stock.Money(0)
	for _, b := range buy {
		if b.Stock.Material == material {
			total += b.Cost
		}
	}
	return total
}
