package cutplan

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"slices"
	"time"

	"sawbill/nest"
	"sawbill/stock"
)

// Options steer Make. The zero value is ready for use.
type Options struct {
	// Seed of the random numbers.
	Seed uint64
	// Iterations, if not 0, limits the improvement steps for each group of blanks that
	// compete for the same stock. Equal runs then give equal plans.
	Iterations int64
	// Progress, if any, is called with each better plan.
	Progress func(Progress)
	// Bill, if not nil, replaces the cutting bill derived from the job's parts. Each blank
	// has a mark, and the bill holds the parts exactly.
	Bill []Blank
	// Marks is the number of marks given so far, if more than Bill has. New blanks get the
	// marks after them.
	Marks int
}

// Progress is the state of the search.
type Progress struct {
	Cost, Bound stock.Money
	Pieces      int // to buy
	Complete    bool
}

// Make plans job. It returns the best plan found when the plan is proven, the iterations
// are spent or ctx ends; an ended ctx is not an error. An error means that the job makes
// no sense or that the program is at fault. Stock that is too large to be carried home is
// an error too: sellercuts.Make plans such a job. Make never returns a bill that does not
// hold its parts, or a plan that nest.Verify refuses.
func Make(ctx context.Context, job stock.Job, o Options) (*Plan, error) {
	if len(job.TooLarge()) > 0 {
		return nil, errors.New("stock is too large to be carried home, so that package sellercuts must plan the job")
	}
	bill := o.Bill
	if bill == nil {
		bill = CuttingBill(job)
	}
	return makeBy(ctx, job, job, bill, sourcesIn(job), o)
}

// MakeFrom plans bill with the stock of job, as Make does. Its stock is pieces of what
// another job offers, or that stock itself, named in From or by the same name. The rules of
// the offers decide which blanks each stock serves, and if the bill is right.
func MakeFrom(ctx context.Context, job, offers stock.Job, bill []Blank, o Options) (*Plan, error) {
	allowed := sourcesIn(offers)
	return makeBy(ctx, job, offers, bill, func(b stock.Blank) []nest.Source {
		var all []nest.Source
		for i, s := range job.Stock {
			for _, from := range allowed(b) {
				if offers.Stock[from.Stock].Name == cmp.Or(s.From, s.Name) {
					from.Stock = i
					all = append(all, from)
				}
			}
		}
		return all
	}, o)
}

// makeBy plans bill with the stock of job. The job called rules decides if the bill is
// right.
func makeBy(ctx context.Context, job, rules stock.Job, bill []Blank, from sources, o Options) (*Plan, error) {
	if err := verify(rules, bill); err != nil {
		return nil, fmt.Errorf("the cutting bill does not hold, which is a fault of this program, not of the job: %w", err)
	}
	problem := toProblem(job, bill, from)
	options := nest.Options{Seed: o.Seed, Iterations: o.Iterations}
	if o.Progress != nil {
		options.Progress = func(p nest.Progress) {
			o.Progress(Progress{stock.Money(p.Cost), stock.Money(p.Bound), p.Pieces, p.Complete})
		}
	}
	start := time.Now()
	answer, err := nest.Solve(ctx, problem, options)
	if err != nil {
		return nil, err
	}
	if err := nest.Verify(problem, answer); err != nil {
		return nil, fmt.Errorf("the solver made a plan that does not hold, which is a fault of this program, not of the job: %w", err)
	}
	plan := fromPlan(job, bill, problem, answer)
	plan.estimate(o.Bill != nil, o.Marks)
	if err := verify(rules, plan.Bill); err != nil {
		return nil, fmt.Errorf("the blanks of the estimate do not hold, which is a fault of this program, not of the job: %w", err)
	}
	if o.Iterations == 0 {
		plan.Seconds = time.Since(start).Seconds()
	}
	return plan, nil
}

// CuttingBill marks the job's blanks.
func CuttingBill(job stock.Job) []Blank {
	var bill []Blank
	for i, b := range job.Blanks() {
		bill = append(bill, Blank{Blank: b, Mark: Mark(i), Turnable: turnable(job, b)})
	}
	return bill
}

// BlanksOf returns the blanks for one part, without marks, as cut from the job's stock.
func BlanksOf(job stock.Job, p stock.Part) []Blank {
	var bill []Blank
	for _, b := range job.BlanksOf(p) {
		bill = append(bill, Blank{Blank: b, Turnable: turnable(job, b)})
	}
	return bill
}

func turnable(job stock.Job, b stock.Blank) bool {
	sources := job.Sources(b)
	for _, i := range sources {
		upright, turned := job.Lies(b, job.Stock[i])
		if !upright || !turned {
			return false
		}
	}
	return len(sources) > 0 || b.Part.Grain == stock.GrainAny
}

// sources returns the stock of a job that a blank may come from, and how it may lie there.
type sources func(stock.Blank) []nest.Source

// sourcesIn returns the sources by the job's own rules.
func sourcesIn(job stock.Job) sources {
	return func(b stock.Blank) []nest.Source {
		var all []nest.Source
		for _, i := range job.Sources(b) {
			upright, turned := job.Lies(b, job.Stock[i])
			all = append(all, nest.Source{Stock: i, Upright: upright, Turned: turned})
		}
		return all
	}
}

// toProblem translates the job for the solver. Grain becomes the orientations a blank may
// have; material and thickness become its list of sources. The solver trims both ends
// alike, and both edges, so any excess at one side is subtracted first.
func toProblem(job stock.Job, bill []Blank, from sources) nest.Problem {
	p := nest.Problem{
		Kerf:   int64(job.Saw.Kerf),
		Stages: job.Saw.Stages,
		Keep:   nest.Size{Length: int64(job.Offcut.Length), Width: int64(job.Offcut.Width)},
	}
	for i, s := range job.Stock {
		length, width := s.Usable()
		t := s.Trims()
		ends, edges := min(t.NearEnd, t.FarEnd), min(t.NearEdge, t.FarEdge)
		n := nest.Stock{
			Length: int64(length + 2*ends), Width: int64(width + 2*edges),
			TrimLength: int64(ends), TrimWidth: int64(edges),
			Price: int64(s.Price), Count: s.Count, OnHand: s.OnHand,
		}
		if s.OnHand {
			n.Price = 0
		}
		if s.Kind == stock.Sheet {
			n.FirstCut = firstCut(s.FirstCutOf(job.Saw.FirstCut))
			n.NarrowestRip = int64(job.Saw.NarrowestRip)
		} else {
			n.FirstCut = firstCut(boardFirstCut(job, bill, i))
		}
		p.Stock = append(p.Stock, n)
	}
	for _, b := range bill {
		p.Blanks = append(p.Blanks, nest.Blank{Length: int64(b.Length), Width: int64(b.Width), Count: b.Count, From: from(b.Blank)})
	}
	return p
}

// boardFirstCut returns the direction of the first cut in stock i, which is boards. The
// saw's rule holds unless a blank has a board's full length or width and only the other
// cut frees it. Such boards may be cut either way, since the blank would otherwise be
// lost.
func boardFirstCut(job stock.Job, bill []Blank, i int) stock.FirstCut {
	first := job.Stock[i].FirstCutOf(job.Saw.BoardFirstCut)
	if job.Stock[i].Next != stock.NextAsSaid {
		return first
	}
	length, width := job.Stock[i].Usable()
	for _, b := range bill {
		if !slices.Contains(job.Sources(b.Blank), i) {
			continue
		}
		upright, turned := b.Part.Grain.Lies(job.Stock[i].Grain)
		fullSize := func(along, across stock.Length) bool {
			return first == stock.FirstCrosscut && along == length && across < width ||
				first == stock.FirstRip && across == width && along < length
		}
		if upright && fullSize(b.Length, b.Width) || turned && fullSize(b.Width, b.Length) {
			return stock.FirstAny
		}
	}
	return first
}

// BoardRule returns the first cut of boards that the plan's bound assumes. It is FirstAny
// if the rule has no effect, since every blank is as wide as its boards.
func (p *Plan) BoardRule() stock.FirstCut {
	for _, b := range p.Bill {
		for _, i := range p.Job.Sources(b.Blank) {
			s := p.Job.Stock[i]
			if s.Kind == stock.Board && b.Width < s.Width && boardFirstCut(p.Job, p.Bill, i) != stock.FirstAny {
				return p.Job.Saw.BoardFirstCut
			}
		}
	}
	return stock.FirstAny
}

func firstCut(f stock.FirstCut) nest.Cut {
	switch f {
	case stock.FirstRip:
		return nest.Rip
	case stock.FirstCrosscut:
		return nest.Crosscut
	}
	return nest.AnyCut
}
