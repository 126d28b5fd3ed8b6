package recut

import (
	"cmp"
	"context"
	"fmt"
	"slices"

	"sawbill/nest/cutplan"
	"sawbill/nest/cutplan/sellercuts"
	"sawbill/stock"
)

// attempt is a plan of the rest of the job. Some pieces are replanned, the others go on as
// planned.
type attempt struct {
	replanned map[int]bool // indices of pieces
	plan      *cutplan.Plan
}

// better reports whether a is preferred: it cuts more, then costs less, then changes less.
func (a attempt) better(b attempt) bool {
	return cmp.Or(
		cmp.Compare(unplacedParts(a.plan), unplacedParts(b.plan)),
		cmp.Compare(a.plan.Cost, b.plan.Cost),
		cmp.Compare(unpriced(a.plan), unpriced(b.plan)),
		cmp.Compare(len(a.replanned), len(b.replanned)),
	) < 0
}

// reaches reports whether a cuts as much as b at no higher cost.
func (a attempt) reaches(b attempt) bool {
	return unplacedParts(a.plan) <= unplacedParts(b.plan) && a.plan.Cost <= b.plan.Cost && unpriced(a.plan) <= unpriced(b.plan)
}

// bounded returns a with the bound of a plan that may change more.
func (a attempt) bounded(by *cutplan.Plan) (attempt, error) {
	p := a.plan
	p.Bound = by.Bound
	for i := range p.Unpriced {
		u := &p.Unpriced[i]
		u.Bound = 0
		for _, v := range by.Unpriced {
			if slices.Equal(u.Stock, v.Stock) {
				u.Bound = v.Bound
			}
		}
		if u.Bound > u.Area && p.Complete() {
			return a, fmt.Errorf("the rest of the job buys %d, its bound is %d, which is a fault of this program, not of the job", u.Area, u.Bound)
		}
	}
	if p.Complete() && p.Bound > p.Cost {
		return a, fmt.Errorf("the rest of the job costs %v, its bound is %v, which is a fault of this program, not of the job", p.Cost, p.Bound)
	}
	return a, nil
}

// unpriced returns the amount bought without a price.
func unpriced(p *cutplan.Plan) int64 {
	area := int64(0)
	for _, u := range p.Unpriced {
		area += u.Area
	}
	return area
}

func unplacedParts(p *cutplan.Plan) int {
	n := 0
	for _, u := range p.Unplaced {
		n += u.Count * p.Bill[u.Blank].Holds()
	}
	return n
}

// try plans the rest with some pieces replanned. It returns the errors of [sellercuts.Make],
// or a fault of this program.
func (r *rest) try(ctx context.Context, replanned map[int]bool, o cutplan.Options) (attempt, error) {
	wanted := r.wanted(replanned)
	leftovers := r.leftovers(replanned, wanted)
	plan, err := r.make(ctx, wanted, r.stockFor(replanned, leftovers, true), o)
	if err != nil {
		return attempt{}, err
	}
	joined, err := r.join(replanned, leftovers, plan)
	return attempt{replanned, joined}, err
}

// onHandFirst replans so that purchases supply only blanks that stock on hand cannot. It
// returns a unchanged if that costs more, or if nothing is bought.
func (r *rest) onHandFirst(ctx context.Context, a attempt, o cutplan.Options) (attempt, error) {
	if len(a.plan.Buy) == 0 || len(a.plan.AtSeller) > 0 {
		return a, nil
	}
	wanted := r.wanted(a.replanned)
	leftovers := r.leftovers(a.replanned, wanted)
	onHand := r.stockFor(a.replanned, leftovers, false)
	fromHand, err := r.make(ctx, r.withoutSubstitutes(wanted, onHand), onHand, o)
	if err != nil || len(fromHand.Layouts) == 0 || len(fromHand.Estimates) > 0 {
		return a, err
	}
	for i, n := range placed(r.bill, fromHand) {
		wanted[i] -= n
	}
	for _, l := range fromHand.Layouts {
		at := slices.IndexFunc(onHand, func(s stock.Stock) bool { return same(s, l.Stock) })
		if onHand[at].Count -= l.Repeat; onHand[at].Count == 0 {
			onHand = slices.Delete(onHand, at, at+1)
		}
	}
	bought, err := r.make(ctx, wanted, slices.Concat(onHand, r.offers), o)
	if err != nil {
		return a, err
	}
	joined, err := r.join(a.replanned, leftovers, fromHand, bought)
	if b := (attempt{a.replanned, joined}); err == nil && b.reaches(a) {
		return b, nil
	}
	return a, err
}

// withoutSubstitutes returns wanted without the blanks whose sources on hand depend on the
// offers. A thick board, for example, may serve only if no thinner one is for sale.
func (r *rest) withoutSubstitutes(wanted []int, stockOnHand []stock.Stock) []int {
	without, with := r.job, r.job
	without.Stock, with.Stock = stockOnHand, slices.Concat(stockOnHand, r.offers)
	wanted = slices.Clone(wanted)
	for i, b := range r.bill {
		onHand := slices.DeleteFunc(with.Sources(b.Blank), func(k int) bool { return k >= len(stockOnHand) })
		if !slices.Equal(onHand, without.Sources(b.Blank)) {
			wanted[i] = 0
		}
	}
	return wanted
}

// placed counts the blanks of a bill that a plan cuts.
func placed(bill []cutplan.Blank, p *cutplan.Plan) []int {
	of := make([]int, len(p.Bill))
	for _, l := range p.Layouts {
		for range l.Repeat {
			count(l.Root, of)
		}
	}
	all := make([]int, len(bill))
	for k, n := range of {
		for i, b := range bill {
			if b.Mark == p.Bill[k].Mark {
				all[i] += n
			}
		}
	}
	return all
}

// make plans the wanted blanks of the bill, from the stock given.
func (r *rest) make(ctx context.Context, wanted []int, from []stock.Stock, o cutplan.Options) (*cutplan.Plan, error) {
	job := r.job
	job.Parts, o.Bill, o.Marks = nil, nil, r.marks
	for _, p := range r.job.Parts {
		p.Count = 0
		for i, b := range r.bill {
			if b.Part.Name == p.Name && wanted[i] > 0 {
				b.Count = wanted[i]
				p.Count += b.Count * b.Holds()
				o.Bill = append(o.Bill, b)
			}
		}
		if p.Count > 0 {
			job.Parts = append(job.Parts, p)
		}
	}
	if len(job.Parts) == 0 {
		return &cutplan.Plan{}, nil
	}
	job.Stock = slices.DeleteFunc(slices.Clone(from), func(s stock.Stock) bool {
		return !slices.ContainsFunc(job.Parts, func(p stock.Part) bool { return p.Material == s.Material })
	})
	return sellercuts.Make(ctx, job, o)
}

// wanted counts the blanks that the pieces going on do not give.
func (r *rest) wanted(replanned map[int]bool) []int {
	wanted := make([]int, len(r.bill))
	for i, given := range r.plannedBlanks(replanned) {
		wanted[i] = r.bill[i].Count - given
	}
	return wanted
}

// lacking counts the blanks without a source. Blanks of a piece that is replanned are not
// counted.
func (r *rest) lacking() []int {
	lacking := r.wanted(nil)
	for _, p := range r.replanned {
		for _, leaf := range p.Root.Leaves() {
			if leaf.Use != cutplan.Part {
				continue
			}
			mark := r.state.Bill()[leaf.Blank].Mark
			if i := slices.IndexFunc(r.bill, func(b cutplan.Blank) bool { return b.Mark == mark }); i >= 0 {
				lacking[i] -= p.Stock.Count
			}
		}
	}
	return lacking
}

// stockFor returns the free stock, with the offers or without.
func (r *rest) stockFor(replanned map[int]bool, leftovers []leftover, offers bool) []stock.Stock {
	all := slices.Clone(r.free)
	for i, p := range r.pieces {
		if replanned[i] {
			all = append(all, p.Stock)
		}
	}
	for _, l := range leftovers {
		all = append(all, l.stock)
	}
	if offers {
		all = append(all, r.offers...)
	}
	return merged(all)
}
