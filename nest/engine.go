package nest

import (
	"math/bits"
	"slices"

	"sawbill/nest/internal/colgen"
	"sawbill/nest/internal/halt"
	"sawbill/nest/internal/instance"
	"sawbill/nest/internal/lowerbound"
	"sawbill/nest/internal/pool"
	"sawbill/nest/internal/restrictedmaster"
	"sawbill/nest/internal/search"
)

// engine runs the methods on one instance: search, column generation, value correction and the
// restricted-master heuristic. Each works in portions of a fixed size, so that the course
// depends on the seed and never on the machine.
//
// The profile of workshop jobs, until their cost is proven: dives 27 % (two thirds of it
// fillers), bounded pricing 24 %, walks 23 %, heuristic 6 %. Grids, enumeration and value
// correction take 5 % each, recording and fillers before pricing 4 % each. With 1,000 parts:
// value correction 63 %, column generation 29 %, walks 6 %.
type engine struct {
	in               *instance.Instance
	stop             halt.Signal
	seed             uint64
	search           *search.Search
	bound            *lowerbound.Bound           // on the cost
	generator        *colgen.Generator           // nil before its first task, and if pricing would take too long
	pool             *pool.Pool                  // nil if there are too many parts
	heuristic        *restrictedmaster.Heuristic // nil if pool is
	valueCorrection  *search.ValueCorrection     // nil before its first task
	vainPlans        int                         // of value correction, since one was the best
	generatorStarted bool                        // its first task has run
	parts            int64                       // demand in all
	lastStatus       status                      // after the last round
	stagnantWork     int64                       // the generator's work since that changed
	targets          [][]int                     // counts of stock that a cheaper plan may have
	boundCounts      []int                       // the bound's counts when targets were listed
	targetsStale     bool                        // they must be listed again
}

// status is the price of the best plan and the bound.
type status struct{ price, bound int64 }

// task is one method's share of a round.
type task func()

// maxWork limits the grids on which columns are priced, to some tenths of a second each time.
const maxWork = 1 << 28

// The generator's share of a round is so many comparisons for each step of a walk and each
// part. At first a step takes about as long. Later the search gets more of the time, except in
// small jobs whose dives stay within counts.
const (
	workPerPart         = 64
	laterPerPart        = 50
	withinCountsPerPart = 250
)

// The generator's share is halved after stagnationUnit of work without progress, about a
// second, and again each time that has doubled, up to maxHalvings times. A long walk may find
// what dives have not.
const (
	stagnationUnit = 1 << 30
	maxHalvings    = 5
)

// The heuristic's share of a round is heuristicWork comparisons for each step of a walk and
// each part. It grows once the generator is stuck: better plans then mostly need patterns that
// only a master asks for. It is small if a piece holds more than fewPerPiece parts, since
// patterns of different walks then seldom combine. With more than maxPoolParts parts there is
// no pool.
const (
	heuristicWork          = 40
	heuristicWorkStuck     = 200
	heuristicWorkManyParts = 12
	stuck                  = stagnationUnit
	fewPerPiece            = 12
	maxPoolParts           = 1 << 8
)

// correctionWork is the share of value correction, in the same measure. Each plan that is not
// the best halves it, up to maxVainPlans times.
const (
	correctionWork = 100
	maxVainPlans   = 4
)

// maxTargets limits the counts of stock that walks and the heuristic aim at.
const maxTargets = 12

// polishShare is the reciprocal share of steps, or of time, that is left to polish if the price
// is not proven before.
const polishShare = 16

// newEngine takes a bound that is lower if stop is on meanwhile, and begins with a last plan
// unless that is nil.
func newEngine(d *subproblem, last *Last, seed uint64, walks int, stop halt.Signal) *engine {
	in := d.in
	e := &engine{in: in, stop: stop, parts: int64(in.Parts()), seed: seed, bound: lowerbound.New(in, stop)}
	var first *instance.Plan
	if last != nil {
		first = d.adapt(last)
		if last.Plan.Proof != nil {
			for _, g := range last.Plan.Proof.groups {
				d.carry(g, e.bound)
			}
		}
	}
	e.search = search.New(in, e.bound.Value(), seed, walks, first)
	e.search.Halt = stop
	if e.parts <= maxPoolParts {
		e.pool = pool.New(in)
		e.search.RecordInto(e.pool)
		e.heuristic = restrictedmaster.New(in, e.pool, seed, stop)
	}
	return e
}

// plan appends the engine's tasks for a round of so many steps to tasks, within a budget of
// steps in all.
func (e *engine) plan(tasks []task, steps, budget int64) []task {
	left := budget - e.search.Steps()
	if e.search.Done() || left <= 0 {
		return tasks
	}
	if polish := budget / polishShare; left > polish {
		left -= polish
	} else {
		e.search.StartPolish()
	}
	if (e.generator != nil || !e.generatorStarted) && !e.search.Proven() {
		tasks = append(tasks, func() { e.generate(steps) })
	}
	if e.heuristic != nil && !e.search.Proven() {
		// The share is settled here, since the generator changes stagnantWork meanwhile.
		work := steps * e.heuristicShare() * e.parts
		tasks = append(tasks, func() { e.heuristic.Work(work) })
	}
	if !e.search.Proven() {
		tasks = append(tasks, func() { e.correctValues(steps) })
	}
	walks := int64(e.search.Walks())
	steps = min(steps, (left-1)/walks+1)
	for i := range e.search.Walks() {
		if n := min(steps, left); n > 0 {
			tasks = append(tasks, func() { e.search.Walk(i, n, e.stop) })
			left -= n
		}
	}
	return tasks
}

// generate does the generator's share of a round of so many steps. The first task makes the
// generator, whose tables take some time, so that the first plan is reported before.
func (e *engine) generate(steps int64) {
	if !e.generatorStarted {
		e.generatorStarted = true
		if e.generator = colgen.New(e.in, e.bound, maxWork, e.seed, e.pool, e.stop); e.generator != nil {
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

// heuristicShare returns the heuristic's share of a round, in comparisons for each step of a
// walk and each part.
func (e *engine) heuristicShare() int64 {
	switch {
	case e.parts > fewPerPiece*e.maxTargetPieces():
		return heuristicWorkManyParts
	case e.stagnantWork >= stuck:
		return heuristicWorkStuck
	}
	return heuristicWork
}

// maxTargetPieces returns the most pieces that a target has.
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

// correctValues does the share of value correction in a round of so many steps.
func (e *engine) correctValues(steps int64) {
	if e.valueCorrection == nil {
		e.valueCorrection = search.NewValueCorrection(e.in, e.seed)
	}
	e.valueCorrection.Work(steps*correctionWork*e.parts>>min(e.vainPlans, maxVainPlans), e.stop)
}

// join ends a round and reports whether plan or bound improved.
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
	if e.targetsStale && !better { // no walk restarts while plans improve
		e.targetsStale, e.boundCounts = false, counts
		e.targets = e.bound.Candidates(e.search.Best().Cost.Price, maxTargets)
		if e.heuristic != nil {
			e.heuristic.SetTargets(e.targets)
		}
	}
	return e.search.SetBound(e.bound.Value(), e.targets) || better
}
