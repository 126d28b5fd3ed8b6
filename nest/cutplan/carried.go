package cutplan

import (
	"context"
	"fmt"
	"slices"
	"time"

	"sawbill/nest"
	"sawbill/stock"
)

// Stock that is too large to be carried home is cut by its seller first. The solver does
// not model such cuts. A plan with uncut stock, at its price and the price of the fewest
// cuts, gives the bound: every seller's cut could also be part of that plan. Then each
// material is searched by itself for the cuts to order (ordering.go), since materials do
// not compete. The pieces go to the solver as stock on hand.

// untilBound and untilOrder are percentages of the time. The plan with uncut stock ends at
// the first, the search for the seller's cuts at the second.
const (
	untilBound = 25
	untilOrder = 70
)

// mostMore limits how many extra pieces of stock are bought if the last plan falls short.
const mostMore = 8

// makeWithSellerCuts plans a job in which the seller cuts some stock before it is carried home.
func makeWithSellerCuts(ctx context.Context, job stock.Job, o Options) (*Plan, error) {
	start, clock := time.Now(), NewClock(ctx, o)
	c := carrier{job: job, rules: portable(job), options: Options{Seed: o.Seed, Iterations: o.Iterations}}
	c.bill = o.bill(c.rules)
	for _, p := range c.rules.Stock {
		c.offers = append(c.offers, p.Name)
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
		o.Progress = func(p Progress) {
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
		plan.addSellerCuts(job, bought, uncut.Bound)
		if o.Iterations == 0 {
			plan.Seconds = time.Since(start).Seconds()
		}
		if err := verifySellerCuts(job, plan); err != nil {
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
	offers  []string  // of rules.Stock, in its order
	bill    []Blank
	options Options
}

// plan plans with the stock of job. Each stock belongs to an offer of the rules.
func (c carrier) plan(ctx context.Context, job stock.Job, o Options) (*Plan, error) {
	allowed := sourcesIn(c.rules)
	return makeBy(ctx, job, c.rulesFor(job), c.billFor(job), func(b stock.Blank) []nest.Source {
		var all []nest.Source
		for i, s := range job.Stock {
			of := s.Name
			if s.From != "" {
				of = s.From
			}
			for _, from := range allowed(b) {
				if c.offers[from.Stock] == of {
					from.Stock = i
					all = append(all, from)
				}
			}
		}
		return all
	}, o)
}

// rulesFor returns the rules with the parts of job; billFor returns their blanks.
func (c carrier) rulesFor(job stock.Job) stock.Job {
	rules := c.rules
	rules.Parts = job.Parts
	return rules
}

func (c carrier) billFor(job stock.Job) []Blank {
	return slices.DeleteFunc(slices.Clone(c.bill), func(b Blank) bool {
		return !slices.ContainsFunc(job.Parts, func(p stock.Part) bool { return p.Name == b.Part.Name })
	})
}

// portable returns the job with oversize boards shortened to a length that can be
// carried. Gangs cut from them are limited to that length.
func portable(job stock.Job) stock.Job {
	stocks := slices.Clone(job.Stock)
	for _, i := range job.TooLarge() {
		s := &stocks[i]
		d := Division{Stock: *s, Cut: Crosscut, Pieces: []stock.Length{job.Transport.Most(s.Width), 0}}
		if s.Kind == stock.Board && d.Pieces[0] > d.trims(job.Transport.CutTolerance) {
			s.Length, s.Sawn = d.Pieces[0], d.piece(0, job.Transport.CutTolerance).Sawn
		}
	}
	job.Stock = stocks
	return job
}

// uncutStock returns the job with its stock uncut, at the price of the fewest cuts. The
// cuts may come in any order, with the narrower of the two kerfs. So no plan with the
// seller's cuts costs less.
func uncutStock(job stock.Job) stock.Job {
	tooLarge := job.TooLarge()
	var stocks []stock.Stock
	for i, s := range job.Stock {
		if slices.Contains(tooLarge, i) {
			cuts, can := fewestCuts(s, job.Transport)
			if !can {
				continue
			}
			if s.Price > 0 {
				s.Price += job.Transport.CutPrice.Times(cuts)
			}
		}
		stocks = append(stocks, s)
	}
	job.Stock = stocks
	job.Saw.Kerf = min(job.Saw.Kerf, job.Transport.CutKerf)
	job.Saw.FirstCut, job.Saw.BoardFirstCut, job.Saw.NarrowestRip = stock.FirstAny, stock.FirstAny, 0
	if job.Saw.Stages > 0 {
		job.Saw.Stages++ // the seller's
	}
	return job
}

// fewestCuts returns the least number of cuts that give pieces of s that can be carried.
// It returns false if the seller does not make that many.
func fewestCuts(s stock.Stock, t stock.Transport) (int, bool) {
	fewest, can := 0, false
	for _, cut := range cutsOf(s) {
		along, across := Division{Stock: s, Cut: cut}.along()
		most := t.Most(across)
		if most <= 0 {
			continue
		}
		// n + 1 pieces and n kerfs must cover the stock. The stock may be slightly longer
		// than one piece; then a short piece comes off.
		n := int((max(along-most, 0) + most + t.CutKerf - 1) / (most + t.CutKerf))
		if n <= t.Cuts && along > stock.Length(n)*t.CutKerf && (!can || n < fewest) {
			fewest, can = n, true
		}
	}
	return fewest, can
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
func withPieces(job stock.Job, bought []Division) stock.Job {
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

// portableStock returns the job's stock that can be carried home uncut.
func portableStock(job stock.Job) []stock.Stock {
	tooLarge := job.TooLarge()
	var all []stock.Stock
	for i, s := range job.Stock {
		if !slices.Contains(tooLarge, i) {
			all = append(all, s)
		}
	}
	return all
}

// paidFor returns the cost of the divisions, stock and cuts.
func paidFor(divisions []Division, t stock.Transport) stock.Money {
	total := stock.Money(0)
	for _, d := range divisions {
		total += d.each(t).Times(d.Count)
	}
	return total
}

func countOf(divisions []Division) int {
	n := 0
	for _, d := range divisions {
		n += d.Count
	}
	return n
}

// oneMore buys one more of the cheapest division that gives an unplaced blank. It returns
// false if there is none.
func oneMore(bought []Division, p *Plan) bool {
	best := -1
	for k, d := range bought {
		single := d
		single.Count = 1
		helps := slices.ContainsFunc(p.Unplaced, func(u Unplaced) bool {
			return slices.ContainsFunc(pieces([]Division{single}, p.Job.Transport.CutTolerance), func(s piece) bool {
				return s.Serves(p.Bill[u.Blank].Blank) && s.HasRoom(p.Bill[u.Blank].Blank)
			})
		})
		if helps && canAdd(bought, k) && (best < 0 || d.each(p.Job.Transport) < bought[best].each(p.Job.Transport)) {
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
func canAdd(divisions []Division, k int) bool {
	s := divisions[k].Stock
	return s.Count == 0 || boughtOf(divisions, s.Name) < s.Count
}

// boughtOf returns how many pieces of an offer the divisions cut.
func boughtOf(divisions []Division, name string) int {
	n := 0
	for _, d := range divisions {
		if d.Stock.Name == name {
			n += d.Count
		}
	}
	return n
}
