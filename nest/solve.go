package nest

import (
	"context"
	"math"
	"runtime"
	"slices"
	"sync/atomic"
	"time"

	"sawbill/nest/internal/crew"
)

// Options steer Solve. The zero value is ready for use.
type Options struct {
	// Seed of the random numbers.
	Seed uint64
	// Iterations limits the improvement steps of each group of blanks that share stock. 0 is no
	// limit if ctx can end, else DefaultIterations.
	Iterations int64
	// Walks is the number of ruin-and-recreate walks; the plan depends on it. 0 is
	// DefaultWalks.
	Walks int
	// Progress, if not nil, is called with each better plan, from one goroutine at a time.
	Progress func(Progress)
}

// Progress is how far Solve has come.
type Progress struct {
	Cost       int64
	Bound      int64
	Pieces     int // bought
	Complete   bool
	Iterations int64
}

const (
	DefaultWalks      = 4
	DefaultIterations = 100_000
)

// Solve seeks the plan that cuts every blank, and among these minimizes, in this order: the
// cost, then the area of bought stock. Secondary objectives follow, again in order: the blanks
// covered ([CoverOf]), the value of the offcuts, the fence settings, the cuts.
//
// Solve has a plan at once and improves it. It stops when the cost is proven and polish finds
// nothing more, when the iterations are spent, or when ctx ends, which is no error. A deadline
// of ctx also decides when polish begins. Apart from that, equal problems, options and
// iteration budgets give equal plans on every machine. An error means that the problem makes no
// sense.
func Solve(ctx context.Context, p Problem, o Options) (Plan, error) {
	return solveOn(ctx, p, o, runtime.GOMAXPROCS(0))
}

// solveOn is Solve on a number of processors.
func solveOn(ctx context.Context, p Problem, o Options, processors int) (Plan, error) {
	if err := p.check(); err != nil {
		return Plan{}, err
	}
	subproblems, unplaced, err := presolve(&p)
	if err != nil {
		return Plan{}, err
	}
	s := newSolver(ctx, subproblems, o)
	s.processors = processors
	if o.Iterations == 0 && ctx.Done() == nil {
		s.budget = DefaultIterations
	}
	s.run(ctx)
	return s.plan(unplaced), nil
}

// solver runs the engines of all subproblems in parallel, round by round.
type solver struct {
	subproblems []*subproblem
	engines     []*engine
	budget      int64
	processors  int
	progress    func(Progress)
}

func newSolver(ctx context.Context, subproblems []*subproblem, o Options) *solver {
	s := &solver{subproblems: subproblems, budget: math.MaxInt64, progress: o.Progress}
	if o.Iterations > 0 {
		s.budget = o.Iterations
	}
	walks := o.Walks
	if walks <= 0 {
		walks = DefaultWalks
	}
	ended := func() bool { return ctx.Err() != nil }
	for _, d := range subproblems {
		s.engines = append(s.engines, newEngine(d.in, o.Seed, walks, ended))
	}
	return s
}

func (s *solver) run(ctx context.Context) {
	var ended atomic.Bool
	defer context.AfterFunc(ctx, func() { ended.Store(true) })()
	polish, cancel := polishStart(ctx)
	defer cancel()
	s.report()
	for round := 0; ctx.Err() == nil; round++ {
		// Rounds are short at first, so that a walk that lags soon migrates.
		steps := int64(roundSteps) << min(round, 4)
		var tasks []task
		for _, e := range s.engines {
			if polish.Err() != nil {
				e.search.StartPolish()
			}
			tasks = e.plan(tasks, steps, s.budget)
		}
		if len(tasks) == 0 {
			return
		}
		s.runParallel(tasks, ended.Load)
		better := false
		for _, e := range s.engines {
			better = e.join() || better
		}
		if better {
			s.report()
		}
	}
}

// polishStart returns a context that ends shortly before ctx does.
func polishStart(ctx context.Context) (context.Context, context.CancelFunc) {
	end, ok := ctx.Deadline()
	if !ok {
		return context.WithCancel(ctx)
	}
	return context.WithDeadline(ctx, end.Add(-time.Until(end)/polishShare))
}

// roundSteps is the length of the first round.
const roundSteps = 64

func (s *solver) runParallel(tasks []task, stop func() bool) {
	var next atomic.Int64
	crew.Run(min(len(tasks), s.processors), func() {
		for {
			i := int(next.Add(1)) - 1
			if i >= len(tasks) {
				return
			}
			tasks[i](stop)
		}
	})
}

func (s *solver) report() {
	if s.progress == nil {
		return
	}
	p := Progress{Complete: true}
	for i, e := range s.engines {
		best := e.search.Best()
		p.Cost += s.subproblems[i].cost(best.Cost.Price)
		p.Bound += s.subproblems[i].cost(e.bound.Value())
		p.Pieces += s.subproblems[i].bought(best)
		p.Complete = p.Complete && best.Complete()
		p.Iterations += e.search.Steps()
	}
	s.progress(p)
}

// plan joins the subproblems' best plans.
func (s *solver) plan(unplaced []Unplaced) Plan {
	plan := Plan{Unplaced: unplaced}
	for i, e := range s.engines {
		best := e.search.Best()
		layouts, missing := s.subproblems[i].postsolve(best)
		plan.Layouts = append(plan.Layouts, layouts...)
		plan.Unplaced = append(plan.Unplaced, missing...)
		plan.Cost += s.subproblems[i].cost(best.Cost.Price)
		plan.Bound += s.subproblems[i].cost(e.bound.Value())
		if u, ok := s.subproblems[i].unpriced(best.Cost.Price, e.bound.Value()); ok {
			plan.Unpriced = append(plan.Unpriced, u)
		}
		plan.Iterations += e.search.Steps()
	}
	slices.SortStableFunc(plan.Layouts, func(a, b Layout) int { return a.Stock - b.Stock })
	slices.SortStableFunc(plan.Unplaced, func(a, b Unplaced) int { return a.Blank - b.Blank })
	return plan
}
