package cutplan

import (
	"cmp"
	"context"
	"fmt"
	"maps"
	"math"
	"slices"
	"time"

	"sawbill/stock"
)

// Stock that is too large to be carried home is cut by its seller first. The solver
// knows no such cuts: a plan with whole stock, at its price and that of the fewest
// cuts, gives the bound, for what is cut twice could have been cut at once. Then
// divisions of each offer are tried, its pieces put before the solver as if they
// were on hand, in the numbers that the bound allows and in more until all blanks
// are cut; each material by itself, since none competes with another.

// shareOfBound is how much of the time goes to the plan with whole stock, in
// percent, and shareOfTrials how much to the divisions.
const (
	shareOfBound  = 25
	shareOfTrials = 50
)

// mostMore is how many more pieces of stock than the plan with whole stock buys are
// tried.
const mostMore = 8

// makeCarried plans a job some of whose stock is cut before it is carried home.
func makeCarried(ctx context.Context, job stock.Job, o Options) (*Plan, error) {
	start, clock := time.Now(), newClock(ctx, o)
	quiet := Options{Seed: o.Seed, Iterations: o.Iterations}
	whole, err := clock.make(ctx, shareOfBound, wholeStock(job), quiet)
	if err != nil {
		return nil, err
	}
	c := carrier{ctx: ctx, job: job, whole: whole, options: quiet, clock: clock, chosen: map[string]Division{}}
	if err := c.choose(); err != nil {
		return nil, err
	}
	for more := 0; ; more++ {
		plan, err := makeWhole(ctx, withPieces(job, c.chosen), o)
		if err != nil {
			return nil, err
		}
		if !plan.Complete() && more < mostMore && ctx.Err() == nil && c.oneMore(plan) {
			continue
		}
		plan.carry(job, c.chosen, whole)
		if o.Iterations == 0 {
			plan.Seconds = time.Since(start).Seconds()
		}
		if err := verifyCarried(job, plan); err != nil {
			return nil, fmt.Errorf("the pieces that the seller cuts do not add up, which is a fault of this program, not of the job: %w", err)
		}
		return plan, nil
	}
}

// wholeStock is the job with its stock whole, at the price of the fewest cuts, and
// free to be cut in any order: no plan with the seller's cuts costs less.
func wholeStock(job stock.Job) stock.Job {
	tooLarge := job.TooLarge()
	var kept []stock.Stock
	for i, s := range job.Stock {
		if slices.Contains(tooLarge, i) {
			cuts, can := fewestCuts(s, job)
			if !can {
				continue
			}
			if s.Price > 0 {
				s.Price += job.Transport.CutPrice.Times(cuts)
			}
		}
		kept = append(kept, s)
	}
	job.Stock = kept
	job.Transport = stock.Transport{}
	job.Saw.FirstCut, job.Saw.BoardFirstCut, job.Saw.NarrowestRip = stock.FirstAny, stock.FirstAny, 0
	if job.Saw.Stages > 0 {
		job.Saw.Stages++
	}
	return job
}

// fewestCuts is how many cuts make pieces of s that can be carried; false if as many
// are not allowed.
func fewestCuts(s stock.Stock, job stock.Job) (int, bool) {
	kerf := max(job.Transport.CutKerf, job.Saw.Kerf)
	fewest, can := 0, false
	for _, cut := range []Cut{Crosscut, Rip} {
		if cut == Rip && s.Kind == stock.Board {
			continue
		}
		along, across := Division{Stock: s, Cut: cut}.along()
		if most := job.Transport.Most(across); most > 0 {
			pieces := repeated(along, most, kerf, job.Transport.Cuts)
			if n := len(pieces) - 1; pieces[n] <= most && (!can || n < fewest) {
				fewest, can = n, true
			}
		}
	}
	return fewest, can
}

// carrier seeks the divisions.
type carrier struct {
	ctx     context.Context
	job     stock.Job
	whole   *Plan // with whole stock
	options Options
	clock   clock
	chosen  map[string]Division // by the name of the offer; with its count
}

// choose settles the divisions of every material.
func (c *carrier) choose() error {
	offers := map[string][]stock.Stock{}
	var materials []string
	for _, i := range c.job.TooLarge() {
		s := c.job.Stock[i]
		if !slices.Contains(materials, s.Material) {
			materials = append(materials, s.Material)
		}
		if _, can := fewestCuts(s, c.job); can {
			offers[s.Material] = append(offers[s.Material], s)
		}
	}
	for _, m := range materials {
		if err := c.chooseOf(m, offers[m], shareOfTrials/len(materials)); err != nil {
			return err
		}
	}
	return nil
}

// chooseOf tries the divisions of the offers of one material, one offer after
// another.
func (c *carrier) chooseOf(material string, offers []stock.Stock, share int) error {
	job := ofMaterial(c.job, material)
	if len(job.Parts) == 0 {
		return nil
	}
	least := priceOf(c.whole.Buy, material)
	tries := map[string][]Division{}
	trials := 1
	now := map[string]Division{}
	for _, s := range offers {
		tries[s.Name] = divisions(s, job.Transport, job.Saw, c.whole.Bill, c.whole.Layouts)
		trials += len(tries[s.Name])
		if len(tries[s.Name]) > 0 {
			now[s.Name] = tries[s.Name][0]
		}
	}
	best, err := c.settle(job, now, share/trials)
	if err != nil {
		return err
	}
	for _, s := range offers {
		for _, d := range tries[s.Name][min(1, len(tries[s.Name])):] {
			if best.complete && best.cost <= least {
				break
			}
			next := maps.Clone(best.divisions)
			next[s.Name] = d
			other, err := c.settle(job, next, share/trials)
			if err != nil {
				return err
			}
			if other.better(best) {
				best = other
			}
		}
	}
	maps.Copy(c.chosen, best.divisions)
	return nil
}

// carriage is a choice of divisions with their counts, and what comes of it.
type carriage struct {
	divisions map[string]Division
	complete  bool
	missing   int
	cost      stock.Money
}

func (a carriage) better(b carriage) bool {
	return cmp.Or(cmp.Compare(a.missing, b.missing), cmp.Compare(a.cost, b.cost)) < 0
}

// settle finds how many of each offer to buy: as many as the plan with whole stock,
// then more, the cheapest first, until nothing is missing.
func (c *carrier) settle(job stock.Job, divisions map[string]Division, share int) (carriage, error) {
	divisions = maps.Clone(divisions)
	for name, d := range divisions {
		d.Count = bought(c.whole.Buy, name)
		divisions[name] = d
	}
	for more := 0; ; more++ {
		p, err := c.clock.make(c.ctx, max(1, share/2), withPieces(job, divisions), c.options)
		if err != nil {
			return carriage{}, err
		}
		got := carriage{divisions: maps.Clone(divisions), complete: p.Complete(), cost: p.Cost}
		for _, d := range divisions {
			got.cost += paid(d, job.Transport)
		}
		for _, u := range p.Unplaced {
			got.missing += u.Count
		}
		if got.complete || more == mostMore || c.ctx.Err() != nil || !addOne(divisions) {
			return got, nil
		}
	}
}

// addOne buys one more of the cheapest offer that can still be had.
func addOne(divisions map[string]Division) bool {
	name := ""
	for _, n := range slices.Sorted(maps.Keys(divisions)) {
		d := divisions[n]
		if (d.Stock.Count == 0 || d.Count < d.Stock.Count) && (name == "" || d.Stock.Price < divisions[name].Stock.Price) {
			name = n
		}
	}
	if name == "" {
		return false
	}
	d := divisions[name]
	d.Count++
	divisions[name] = d
	return true
}

// oneMore buys one more of an offer whose material a plan lacks.
func (c *carrier) oneMore(p *Plan) bool {
	lacking := map[string]Division{}
	for name, d := range c.chosen {
		if slices.ContainsFunc(p.Unplaced, func(u Unplaced) bool { return p.Bill[u.Blank].Part.Material == d.Stock.Material }) {
			lacking[name] = d
		}
	}
	if !addOne(lacking) {
		return false
	}
	maps.Copy(c.chosen, lacking)
	return true
}

// ofMaterial is what of a job is of one material.
func ofMaterial(job stock.Job, material string) stock.Job {
	job.Parts = slices.DeleteFunc(slices.Clone(job.Parts), func(p stock.Part) bool { return p.Material != material })
	job.Stock = slices.DeleteFunc(slices.Clone(job.Stock), func(s stock.Stock) bool { return s.Material != material })
	job.Rough = slices.DeleteFunc(slices.Clone(job.Rough), func(r stock.Rough) bool { return r.Material != material })
	return job
}

// withPieces is the job with the pieces of what is bought in place of what is too
// large to be carried.
func withPieces(job stock.Job, chosen map[string]Division) stock.Job {
	tooLarge := job.TooLarge()
	var all []stock.Stock
	for i, s := range job.Stock {
		if !slices.Contains(tooLarge, i) {
			all = append(all, s)
			continue
		}
		if d, some := chosen[s.Name]; some && d.Count > 0 {
			all = append(all, d.pieces(job.Transport, d.Count)...)
		}
	}
	job.Stock = all
	return job
}

// paid is what the stock of a division costs with its cuts.
func paid(d Division, t stock.Transport) stock.Money {
	return d.Stock.Price.Times(d.Count) + t.CutPrice.Times(d.Count*d.Cuts())
}

func bought(buy []Purchase, name string) int {
	n := 0
	for _, b := range buy {
		if b.Stock.Name == name {
			n += b.Count
		}
	}
	return n
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

// carry puts what is bought for its pieces into the plan, the pieces that stay whole,
// and the job as it was asked.
func (p *Plan) carry(job stock.Job, chosen map[string]Division, whole *Plan) {
	var buy []Purchase
	for _, s := range job.Stock {
		if d, some := chosen[s.Name]; some && d.Count > 0 {
			d.Cost = job.Transport.CutPrice.Times(d.Count * d.Cuts())
			p.AtSeller = append(p.AtSeller, d)
			p.Cost += paid(d, job.Transport)
			buy = append(buy, Purchase{Stock: d.Stock, Count: d.Count, Cost: d.Stock.Price.Times(d.Count)})
			if d.Stock.Price == 0 {
				p.Unpriced = append(p.Unpriced, Unpriced{Stock: []stock.Stock{d.Stock}, OneSize: true, Area: int64(d.Count)})
			}
		}
		if n := bought(p.Buy, s.Name); n > 0 {
			buy = append(buy, Purchase{Stock: s, Count: n, Cost: s.Price.Times(n)})
		}
	}
	p.Buy = buy
	p.Bound = min(whole.Bound, p.Cost)
	for _, s := range p.Job.Stock {
		if s.From == "" {
			continue
		}
		rest := s.Count
		for _, l := range p.Layouts {
			if l.Stock == s {
				rest -= l.Repeat
			}
		}
		if rest > 0 {
			n := Node{Length: s.Length, Width: s.Width, Use: Waste}
			if p.Job.Offcut.Keeps(s.Length, s.Width) {
				n.Use = Offcut
			}
			s.Trim = 0 // it is left as it is
			p.Layouts = append(p.Layouts, Layout{Stock: s, Repeat: rest, Root: n})
		}
	}
	p.Job = job
	p.Totals = totals(p)
}

// clock shares out the time that a context leaves; where iterations rule, there is
// nothing to share.
type clock struct{ whole time.Duration }

func newClock(ctx context.Context, o Options) clock {
	if until, limited := ctx.Deadline(); limited && o.Iterations == 0 {
		return clock{time.Until(until)}
	}
	return clock{math.MaxInt64 / 1000}
}

// make plans within a share of the time, in percent.
func (c clock) make(ctx context.Context, percent int, job stock.Job, o Options) (*Plan, error) {
	ctx, cancel := context.WithTimeout(ctx, c.whole*time.Duration(percent)/100)
	defer cancel()
	return makeWhole(ctx, job, o)
}
