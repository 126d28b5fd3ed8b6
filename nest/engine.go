package nest

import (
	"math/bits"
	"slices"

	"sawbill/nest/internal/colgen"
	"sawbill/nest/internal/instance"
	"sawbill/nest/internal/lowerbound"
	"sawbill/nest/internal/pool"
	"sawbill/nest/internal/restrictedmaster"
	"sawbill/nest/internal/search"
)

// engine is all that works on one instance: a search that betters the plan,
// and a generator of columns that raises the bound.
type engine struct {
	in               *instance.Instance
	seed             uint64
	search           *search.Search
	bound            *lowerbound.Bound           // no plan costs less
	generator        *colgen.Generator           // nil before its first task, and where there is too much to price
	pool             *pool.Pool                  // of all patterns; nil where there are too many parts
	heuristic        *restrictedmaster.Heuristic // with it
	valueCorrection  *search.ValueCorrection     // nil before its first task
	vainPlans        int                         // its plans since one was the best
	generatorStarted bool                        // the generator's first task
	parts            int64                       // wanted
	lastStatus       status                      // of the last round
	stagnantWork     int64                       // the generator's work since that became better
	targets          [][]int                     // counts of stock that a cheaper plan may have
	boundCounts      []int                       // the counts that the floor rested on when they were listed
	targetsStale     bool                        // targets are
}

// status is how far an engine has come: what the plan costs, and the floor.
type status struct{ price, bound int64 }

// task is one engine's share of a round.
type task func(stop func() bool)

// maxWork limits the grids that columns are priced on: some tenths of a second
// each time.
const maxWork = 1 << 28

// The generator's share of a round, in comparisons for each step of a lane and
// each part wanted. At first a step takes about as long; later, when what comes
// easily has come, the search has more of the time, but where dives of a small job
// keep within counts.
const (
	workPerPart         = 64
	laterPerPart        = 50
	withinCountsPerPart = 250
)

// The generator's share is halved when it has worked for so long in vain, about a second,
// and again each time that has doubled, up to mostHalved times: what dives have not found
// by then a long walk may find.
const (
	stagnationUnit = 1 << 30
	maxHalvings    = 5
)

// heuristicWork is the assembler's share of a round, in comparisons for each step of
// a lane and each part wanted. Once the generator has worked for so long in vain that it
// counts as stuck, what is left to find mostly lies in patterns that only programmes ask
// for. Where a piece holds more than fewPerPiece parts, patterns of different walks seldom
// fit each other; where there are more than mostGathered parts nothing is gathered.
const (
	heuristicWork          = 40
	heuristicWorkStuck     = 200
	heuristicWorkManyParts = 12
	stuck                  = stagnationUnit
	fewPerPiece            = 12
	maxPoolParts           = 1 << 8
)

// correctionWork is the share of plans made piece by piece, in the same measure. It is
// halved with each that was not the best, up to mostMisses times.
const (
	correctionWork = 100
	maxVainPlans   = 4
)

// maxTargets is how many counts of stock the search is told to aim at.
const maxTargets = 12

// polishShare is the part of the steps, or of the time, that is left to the
// lesser aims if the price has not been proven before: one in so many.
const polishShare = 16

func newEngine(in *instance.Instance, seed uint64, walks int) *engine {
	e := &engine{in: in, seed: seed, bound: lowerbound.New(in)}
	for _, k := range in.Kinds {
		e.parts += int64(k.Demand)
	}
	e.search = search.New(in, e.bound.Value(), seed, walks)
	if e.parts <= maxPoolParts {
		e.pool = pool.New(in)
		e.search.RecordInto(e.pool)
		e.heuristic = restrictedmaster.New(in, e.pool, seed)
	}
	return e
}

// plan adds the engine's tasks of a round of so many steps, within the budget
// of steps in all.
func (e *engine) plan(tasks []task, steps, budget int64) []task {
	left := budget - e.search.Steps()
	if e.search.Done() || left <= 0 {
		return tasks
	}
	if closing := budget / polishShare; left > closing {
		left -= closing
	} else {
		e.search.StartPolish()
	}
	if (e.generator != nil || !e.generatorStarted) && !e.search.Proven() {
		tasks = append(tasks, func(func() bool) { e.generate(steps) })
	}
	if e.heuristic != nil && !e.search.Proven() {
		// The generator counts what it does in vain meanwhile: the share is settled before.
		work := steps * e.heuristicShare() * e.parts
		tasks = append(tasks, func(func() bool) { e.heuristic.Work(work) })
	}
	if !e.search.Proven() {
		tasks = append(tasks, func(stop func() bool) { e.correctValues(steps, stop) })
	}
	walks := int64(e.search.Walks())
	steps = min(steps, (left-1)/walks+1)
	for i := range e.search.Walks() {
		if n := min(steps, left); n > 0 {
			tasks = append(tasks, func(stop func() bool) { e.search.Walk(i, n, stop) })
			left -= n
		}
	}
	return tasks
}

// generate does the generator's share of a round of so many steps. It is made
// in its first task: its tables take some time, and the first plan is told
// before.
func (e *engine) generate(steps int64) {
	if !e.generatorStarted {
		e.generatorStarted = true
		if e.generator = colgen.New(e.in, e.bound, maxWork, e.seed, e.pool); e.generator != nil {
			e.generator.AddPlan(e.search.Best())
		}
	}
	g := e.generator
	if g == nil {
		return
	}
	share := int64(workPerPart)
	switch {
	case g.DivesWithinCounts():
		share = withinCountsPerPart
	case g.UsesBoundedPricing():
		share = laterPerPart
	}
	share >>= min(bits.Len64(uint64(e.stagnantWork/stagnationUnit)), maxHalvings)
	e.stagnantWork += steps * share * e.parts
	g.Work(steps * share * e.parts)
}

// heuristicShare is what the assembler has of a round, in comparisons for each step of a
// lane and each part wanted.
func (e *engine) heuristicShare() int64 {
	switch {
	case e.parts > fewPerPiece*e.maxTargetPieces():
		return heuristicWorkManyParts
	case e.stagnantWork >= stuck:
		return heuristicWorkStuck
	}
	return heuristicWork
}

// maxTargetPieces that a cheaper plan may have.
func (e *engine) maxTargetPieces() (most int64) {
	for _, t := range e.targets {
		pieces := int64(0)
		for _, n := range t {
			pieces += int64(n)
		}
		most = max(most, pieces)
	}
	return most
}

// correctValues does the share of plans made piece by piece of a round of so many steps.
func (e *engine) correctValues(steps int64, stop func() bool) {
	if e.valueCorrection == nil {
		e.valueCorrection = search.NewValueCorrection(e.in, e.seed)
	}
	e.valueCorrection.Work(steps*correctionWork*e.parts>>min(e.vainPlans, maxVainPlans), stop)
}

// join ends a round and reports whether plan or bound became better.
func (e *engine) join() bool {
	better := e.search.Join()
	if e.generator != nil {
		for _, p := range e.generator.NewPlans() {
			better = e.search.Complete(p) || better
		}
	}
	if e.heuristic != nil {
		if e.generator != nil {
			e.generator.NewPatterns(e.pool.Add)
		}
		e.pool.SetPrices(e.heuristic.Prices())
		e.heuristic.NewPatterns(e.pool.Add)
		for _, p := range e.heuristic.NewPlans() {
			better = e.search.Complete(p) || better
		}
	}
	if e.valueCorrection != nil {
		for _, p := range e.valueCorrection.NewPlans() {
			e.vainPlans++
			if e.generator != nil {
				e.generator.AddPlan(p)
			}
			if e.search.Complete(p) {
				e.vainPlans, better = 0, true
			}
		}
	}
	if better && e.generator != nil {
		e.generator.AddPlan(e.search.Best())
	}
	if now := (status{e.search.Best().Cost.Price, e.bound.Value()}); now != e.lastStatus {
		e.lastStatus, e.stagnantWork = now, 0
	}
	counts := e.bound.Counts()
	e.targetsStale = e.targetsStale || better || !slices.Equal(counts, e.boundCounts)
	if e.targetsStale && !better { // while plans become better by themselves, no lane asks
		e.targetsStale, e.boundCounts = false, counts
		e.targets = e.bound.Candidates(e.search.Best().Cost.Price, maxTargets)
		if e.heuristic != nil {
			e.heuristic.SetTargets(e.targets)
		}
	}
	return e.search.SetBound(e.bound.Value(), e.targets) || better
}
