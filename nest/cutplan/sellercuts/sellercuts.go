// Package sellercuts plans jobs with stock that is too large to be carried home, so that its
// seller cuts it first.
//
// The solver does not model such cuts. A plan with uncut stock, at its price and the price
// of the fewest cuts, gives the bound: every seller's cut could also be part of that plan.
// Then each material is searched by itself for the cuts to order, since materials do not
// compete. The pieces go to the solver as stock on hand.
package sellercuts

import (
	"context"
	"fmt"
	"slices"
	"time"

	"sawbill/nest/cutplan"
	"sawbill/stock"
)

// untilBound and untilOrder are percentages of the time. The plan with uncut stock ends at
// the first, the search for the seller's cuts at the second.
const (
	untilBound = 25
	untilOrder = 70
)

// mostMore limits how many extra pieces of stock are bought if the last plan falls short.
const mostMore = 8

// Make plans job as [cutplan.Make] does. The seller cuts the stock that is too large to be
// carried home.
func Make(ctx context.Context, job stock.Job, o cutplan.Options) (*cutplan.Plan, error) {
	if len(job.TooLarge()) == 0 {
		return cutplan.Make(ctx, job, o)
	}
	start, clock := time.Now(), cutplan.NewClock(ctx, o)
	c := carrier{job: job, rules: portable(job), options: cutplan.Options{Seed: o.Seed, Iterations: o.Iterations}}
	if c.bill = o.Bill; c.bill == nil {
		c.bill = cutplan.CuttingBill(c.rules)
	}
	bounding, stop := clock.Until(ctx, untilBound)
	defer stop()
	uncut, err := c.plan(bounding, uncutStock(job), c.options)
	if err != nil {
		return nil, err
	}
	ordering, stop := clock.Until(ctx, untilOrder)
	defer stop()
	bought, err := c.findOrder(ordering, uncut)
	if err != nil {
		return nil, err
	}
	paid := paidFor(bought, job.Transport)
	if report := o.Progress; report != nil {
		o.Progress = func(p cutplan.Progress) {
			p.Cost, p.Bound, p.Pieces = p.Cost+paid, uncut.Bound, p.Pieces+countOf(bought)
			report(p)
		}
	}
	for more := 0; ; more++ {
		plan, err := c.plan(ctx, withPieces(job, bought), o)
		if err != nil {
			return nil, err
		}
		if !plan.Complete() && more < mostMore && oneMore(bought, plan) {
			paid = paidFor(bought, job.Transport)
			continue
		}
		addSellerCuts(plan, job, bought, uncut.Bound)
		if o.Iterations == 0 {
			plan.Seconds = time.Since(start).Seconds()
		}
		if err := plan.CheckSellerCuts(); err != nil {
			return nil, fmt.Errorf("what the seller cuts does not add up, which is a fault of this program, not of the job: %w", err)
		}
		return plan, nil
	}
}

// carrier plans one job with its stock uncut or in pieces. It always uses the same bill
// and rules, so its plans can be compared.
type carrier struct {
	job     stock.Job
	rules   stock.Job // with stock no larger than can be carried
	bill    []cutplan.Blank
	options cutplan.Options
}

// plan plans with the stock of job. Each stock belongs to an offer of the rules.
func (c carrier) plan(ctx context.Context, job stock.Job, o cutplan.Options) (*cutplan.Plan, error) {
	rules := c.rules
	rules.Parts = job.Parts
	bill := slices.DeleteFunc(slices.Clone(c.bill), func(b cutplan.Blank) bool {
		return !slices.ContainsFunc(job.Parts, func(p stock.Part) bool { return p.Name == b.Part.Name })
	})
	return cutplan.MakeFrom(ctx, job, rules, bill, o)
}

// ofMaterial returns the parts and stock of one material.
func ofMaterial(job stock.Job, material string) stock.Job {
	job.Parts = slices.DeleteFunc(slices.Clone(job.Parts), func(p stock.Part) bool { return p.Material != material })
	job.Stock = slices.DeleteFunc(slices.Clone(job.Stock), func(s stock.Stock) bool { return s.Material != material })
	job.Rough = slices.DeleteFunc(slices.Clone(job.Rough), func(r stock.Rough) bool { return r.Material != material })
	return job
}

// withPieces returns the job with oversize stock replaced by the pieces of bought, as if
// they were on hand.
func withPieces(job stock.Job, bought []cutplan.Division) stock.Job {
	cut := portableStock(job)
	for _, p := range pieces(bought, job.Transport.CutTolerance) {
		if p.Count = p.count(bought); p.Count > 0 && leavesSome(p.Stock) {
			p.OnHand = true
			cut = append(cut, p.Stock)
		}
	}
	job.Stock = cut
	return job
}

// paidFor returns the cost of the divisions, stock and cuts.
func paidFor(divisions []cutplan.Division, t stock.Transport) stock.Money {
	total := stock.Money(0)
	for _, d := range divisions {
		total += each(d, t).Times(d.Count)
	}
	return total
}

func countOf(divisions []cutplan.Division) int {
	n := 0
	for _, d := range divisions {
		n += d.Count
	}
	return n
}

// oneMore buys one more of the cheapest division that gives an unplaced blank. It returns
// false if there is none.
func oneMore(bought []cutplan.Division, p *cutplan.Plan) bool {
	best := -1
	for k, d := range bought {
		single := d
		single.Count = 1
		helps := slices.ContainsFunc(p.Unplaced, func(u cutplan.Unplaced) bool {
			return slices.ContainsFunc(pieces([]cutplan.Division{single}, p.Job.Transport.CutTolerance), func(s piece) bool {
				return s.Serves(p.Bill[u.Blank].Blank) && s.HasRoom(p.Bill[u.Blank].Blank)
			})
		})
		if helps && canAdd(bought, k) && (best < 0 || each(d, p.Job.Transport) < each(bought[best], p.Job.Transport)) {
			best = k
		}
	}
	if best < 0 {
		return false
	}
	bought[best].Count++
	return true
}

// canAdd reports whether the offer of division k has another piece for sale.
func canAdd(divisions []cutplan.Division, k int) bool {
	s := divisions[k].Stock
	return s.Count == 0 || boughtOf(divisions, s.Name) < s.Count
}

// boughtOf returns how many pieces of an offer the divisions cut.
func boughtOf(divisions []cutplan.Division, name string) int {
	n := 0
	for _, d := range divisions {
		if d.Stock.Name == name {
			n += d.Count
		}
	}
	return n
}
