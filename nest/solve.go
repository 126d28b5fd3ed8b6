package nest

import (
	"context"
	"math"
	"runtime"
	"slices"
	"sync/atomic"
	"time"

	"sawbill/nest/internal/crew"
	"sawbill/nest/internal/halt"
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
	// Last is an earlier plan to begin with; nil if there is none. The plan depends on it. It is
	// left out unless it is a plan of its problem.
	Last *Last
	// Workers limits the goroutines that work at a time; 0 is as many as GOMAXPROCS. A caller
	// who wants a processor for itself asks for one less. The plan does not depend on it.
	Workers int
	// Progress, if not nil, is called with the first plan, and whenever plan or bound have
	// improved. Solve calls it on its own goroutine between two rounds and waits for it, so it
	// needs no lock. If it blocks, the search stands still, and the end of ctx is seen late.
	Progress func(Progress)
}

// Progress is how far Solve has come.
type Progress struct {
	Cost       int64
	Bound      int64
	Pieces     int // bought
	Complete   bool
	Iterations int64
	// Better is set if the plan has improved. Otherwise only the bound has.
	Better bool

	plan func() Plan
}

// Plan returns the best plan so far, as Solve would return it now. It may be called during the
// call of Progress only. The plan is the caller's.
func (p Progress) Plan() Plan { return p.plan() }

const (
	DefaultWalks      = 4
	DefaultIterations = 100_000
)

// Solve seeks the plan that cuts every blank, and among these minimizes, in this order: the
// cost, then the area of bought stock. Secondary objectives follow, again in order: the blanks
// covered ([CoverOf]), the value of the offcuts, the fence settings, the cuts.
//
// Solve has a plan at once and improves it. It stops when the cost is proven and polish finds
// nothing more, when the iterations are spent, or when ctx ends, which is no error. It then
// returns within some milliseconds, unless the first plan takes longer. A deadline of ctx also
// decides when polish begins. Nothing of the search stays in memory. Apart from that, equal problems, options and iteration budgets
// give equal plans on every machine. An error means that the problem makes no sense.
func Solve(ctx context.Context, p Problem, o Options) (Plan, error) {
	if err := p.check(); err != nil {
		return Plan{}, err
	}
	subproblems, unplaced, err := presolve(&p)
	if err != nil {
		return Plan{}, err
	}
	stop, release := signalOf(ctx)
	defer release()
	s := newSolver(stop, subproblems, unplaced, o)
	if o.Iterations == 0 && ctx.Done() == nil {
		s.budget = DefaultIterations
	}
	s.run(polishStart(ctx))
	plan := s.plan()
	releaseMemory()
	return plan, nil
}

// signalOf returns a signal that is on once ctx ends. At a deadline it looks at the clock: if
// all processors are busy, the context's own timer may fire some milliseconds late.
func signalOf(ctx context.Context) (stop halt.Signal, release func()) {
	var ended atomic.Bool
	cancel := context.AfterFunc(ctx, func() { ended.Store(true) })
	if ctx.Err() != nil {
		ended.Store(true) // the function may not have run yet
	}
	stop = ended.Load
	if end, ok := ctx.Deadline(); ok {
		stop = func() bool { return ended.Load() || !time.Now().Before(end) }
	}
	return stop, func() { cancel() }
}

// solver runs the engines of all subproblems in parallel, round by round.
type solver struct {
	subproblems []*subproblem
	unplaced    []Unplaced // blanks that fit nowhere
	engines     []*engine
	stop        halt.Signal
	budget      int64
	workers     int
	progress    func(Progress)
}

func newSolver(stop halt.Signal, subproblems []*subproblem, unplaced []Unplaced, o Options) *solver {
	s := &solver{subproblems: subproblems, unplaced: unplaced, stop: stop, budget: math.MaxInt64, workers: o.Workers, progress: o.Progress}
	if o.Iterations > 0 {
		s.budget = o.Iterations
	}
	if s.workers <= 0 {
		s.workers = runtime.GOMAXPROCS(0)
	}
	walks := o.Walks
	if walks <= 0 {
		walks = DefaultWalks
	}
	last := o.Last
	if !last.usable() {
		last = nil
	}
	for _, d := range subproblems {
		s.engines = append(s.engines, newEngine(d, last, o.Seed, walks, stop))
	}
	return s
}

// run improves the plan until all is done or time is up. polish reports whether to polish from
// now on.
func (s *solver) run(polish halt.Signal) {
	s.report(true)
	for round := 0; !s.stop.On(); round++ {
		// Rounds are short at first, so that a walk that lags soon migrates.
		steps := int64(roundSteps) << min(round, 4)
		var tasks []task
		for _, e := range s.engines {
			if polish.On() {
				e.search.StartPolish()
			}
			tasks = e.plan(tasks, steps, s.budget)
		}
		if len(tasks) == 0 {
			return
		}
		s.runParallel(tasks)
		improved, better := false, false
		for _, e := range s.engines {
			before := e.search.Best()
			improved = e.join() || improved
			better = better || e.search.Best() != before
		}
		if improved {
			s.report(better)
		}
	}
}

// polishStart returns a signal that is on from shortly before the deadline of ctx, if any.
func polishStart(ctx context.Context) halt.Signal {
	end, ok := ctx.Deadline()
	if !ok {
		return nil
	}
	start := end.Add(-time.Until(end) / polishShare)
	return func() bool { return !time.Now().Before(start) }
}

// roundSteps is the length of the first round.
const roundSteps = 64

func (s *solver) runParallel(tasks []task) {
	var next atomic.Int64
	crew.Run(min(len(tasks), s.workers), func() {
		for {
			i := int(next.Add(1)) - 1
			if i >= len(tasks) {
				return
			}
			tasks[i]()
		}
	})
}

// report tells the listener how far the search is.
func (s *solver) report(better bool) {
	if s.progress == nil {
		return
	}
	p := Progress{Complete: len(s.unplaced) == 0, Better: better, plan: s.plan}
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
func (s *solver) plan() Plan {
	plan := Plan{Unplaced: slices.Clone(s.unplaced), Proof: &Proof{}}
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
		plan.Proof.groups = append(plan.Proof.groups, s.subproblems[i].prove(e.bound))
	}
	slices.SortStableFunc(plan.Layouts, func(a, b Layout) int { return a.Stock - b.Stock })
	slices.SortStableFunc(plan.Unplaced, func(a, b Unplaced) int { return a.Blank - b.Blank })
	return plan
}
