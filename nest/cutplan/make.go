package cutplan

import (
	"context"
	"fmt"
	"slices"
	"time"

	"sawbill/nest"
	"sawbill/stock"
)

// Options steer Make. The zero value is ready for use.
type Options struct {
	// Seed of all that is drawn at random.
	Seed uint64
	// Iterations, if not 0, is the greatest number of improvement steps for
	// each group of blanks that compete for the same stock. Equal runs then
	// give equal plans.
	Iterations int64
	// Progress, if any, is told of each better plan.
	Progress func(Progress)
}

// Progress is how far the planning has come.
type Progress struct {
	Cost, Bound stock.Money
	Pieces      int // to buy
	Complete    bool
}

// Make plans job: the best plan found until it is proven, the iterations are
// spent or ctx ends. An ended ctx is no error. Errors mean that the job makes
// no sense, or that the program broke its word: a cutting bill that does not hold
// its parts, or a plan that nest.Verify refuses, is never returned.
func Make(ctx context.Context, job stock.Job, o Options) (*Plan, error) {
	if len(job.TooLarge()) > 0 {
		return makeCarried(ctx, job, o)
	}
	return makeWhole(ctx, job, o)
}

// makeWhole plans a job whose stock is brought home as it is.
func makeWhole(ctx context.Context, job stock.Job, o Options) (*Plan, error) {
	bill := cuttingBill(job)
	if err := verify(job, bill); err != nil {
		return nil, fmt.Errorf("the cutting bill does not hold, which is a fault of this program, not of the job: %w", err)
	}
	problem := pose(job, bill)
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
	plan := tell(job, bill, problem, answer)
	if err := verify(job, plan.Bill); err != nil {
		return nil, fmt.Errorf("the blanks of the estimate do not hold, which is a fault of this program, not of the job: %w", err)
	}
	if o.Iterations == 0 {
		plan.Seconds = time.Since(start).Seconds()
	}
	return plan, nil
}

// cuttingBill marks the job's blanks.
func cuttingBill(job stock.Job) []Blank {
	var bill []Blank
	for i, b := range job.Blanks() {
		bill = append(bill, Blank{Blank: b, Mark: mark(i), Turnable: turnable(job, b)})
	}
	return bill
}

// mark counts A to Z, AA, AB and so on.
func mark(i int) string {
	m := string(rune('A' + i%26))
	if i >= 26 {
		m = mark(i/26-1) + m
	}
	return m
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

// pose puts the job to the solver: grain becomes "may lie so", material and
// thickness become the list of stock a blank can come from.
func pose(job stock.Job, bill []Blank) nest.Problem {
	p := nest.Problem{
		Kerf:   int64(job.Saw.Kerf),
		Stages: job.Saw.Stages,
		Keep:   nest.Size{Length: int64(job.Offcut.Length), Width: int64(job.Offcut.Width)},
	}
	for i, s := range job.Stock {
		n := nest.Stock{
			Length: int64(s.Length), Width: int64(s.Width),
			TrimLength: int64(s.Trim), TrimWidth: int64(s.TrimWidth()),
			Price: int64(s.Price), Count: s.Count, OnHand: s.OnHand || s.From != "", // pieces are paid for with their offer
		}
		if s.OnHand {
			n.Price = 0
		}
		if s.Kind == stock.Sheet {
			n.FirstCut = firstCut(job.Saw.FirstCut)
			n.NarrowestRip = int64(job.Saw.NarrowestRip)
		} else {
			n.FirstCut = firstCut(boardFirstCut(job, bill, i))
		}
		p.Stock = append(p.Stock, n)
	}
	for _, b := range bill {
		n := nest.Blank{Length: int64(b.Length), Width: int64(b.Width), Count: b.Count}
		for _, i := range job.Sources(b.Blank) {
			upright, turned := job.Lies(b.Blank, job.Stock[i])
			n.From = append(n.From, nest.Source{Stock: i, Upright: upright, Turned: turned})
		}
		p.Blanks = append(p.Blanks, n)
	}
	return p
}

// boardFirstCut is how stock i, boards, is cut first: as the saw says, unless a
// blank takes a board's whole length or width and is freed by the other cut
// alone. Such boards may be cut either way, since not to get the blank would be
// worse.
func boardFirstCut(job stock.Job, bill []Blank, i int) stock.FirstCut {
	first := job.Saw.BoardFirstCut
	length, width := job.Stock[i].Usable()
	for _, b := range bill {
		if !slices.Contains(job.Sources(b.Blank), i) {
			continue
		}
		upright, turned := b.Part.Grain.Lies(job.Stock[i].Grain)
		whole := func(along, across stock.Length) bool {
			return first == stock.FirstCrosscut && along == length && across < width ||
				first == stock.FirstRip && across == width && along < length
		}
		if upright && whole(b.Length, b.Width) || turned && whole(b.Width, b.Length) {
			return stock.FirstAny
		}
	}
	return first
}

// BoardRule is the first cut of boards that the plan's bound takes for granted:
// FirstAny where it makes no difference, since every blank is as wide as the
// boards that it may come from.
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
