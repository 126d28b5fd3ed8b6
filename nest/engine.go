package nest

import (
	"math/bits"
	"slices"

	"sawbill/nest/internal/assemble"
	"sawbill/nest/internal/bound"
	"sawbill/nest/internal/columns"
	"sawbill/nest/internal/harvest"
	"sawbill/nest/internal/instance"
	"sawbill/nest/internal/search"
)

// engine is all that works on one instance: a search that betters the plan,
// and a generator of columns that raises the bound.
type engine struct {
	in        *instance.Instance
	seed      uint64
	search    *search.Search
	floor     *bound.Floor        // no plan costs less
	generator *columns.Generator  // nil before its first task, and where there is too much to price
	harvest   *harvest.Harvest    // of all patterns; nil where there are too many parts
	assembler *assemble.Assembler // with it
	sequence  *search.Sequence    // nil before its first task
	misses    int                 // its plans since one was the best
	begun     bool                // the generator's first task
	parts     int64               // wanted
	standing  standing            // of the last round
	vain      int64               // the generator's work since that became better
	targets   [][]int             // counts of stock that a cheaper plan may have
	rests     []int               // the counts that the floor rested on when they were listed
	outdated  bool                // targets are
}

// standing is how far an engine has come: what the plan costs, and the floor.
type standing struct{ price, floor int64 }

// task is one engine's share of a round.
type task func(stop func() bool)

// mostWork limits the grids that columns are priced on: some tenths of a second
// each time.
const mostWork = 1 << 28

// The generator's share of a round, in comparisons for each step of a lane and
// each part wanted. At first a step takes about as long; later, when what comes
// easily has come, the search has more of the time, but where dives of a small job
// keep within counts.
const (
	workPerPart   = 64
	laterPerPart  = 50
	withinPerPart = 250
)

// The generator's share is halved when it has worked for so long in vain, about a second,
// and again each time that has doubled, up to mostHalved times: what dives have not found
// by then a long walk may find.
const (
	inVain     = 1 << 30
	mostHalved = 5
)

// assembling is the assembler's share of a round, in comparisons for each step of
// a lane and each part wanted. Once the generator has worked for so long in vain that it
// counts as stuck, what is left to find mostly lies in patterns that only programmes ask
// for. Where a piece holds more than fewPerPiece parts, patterns of different walks seldom
// fit each other; where there are more than mostGathered parts nothing is gathered.
const (
	assembling      = 40
	assemblingStuck = 200
	assemblingMany  = 12
	stuck           = inVain
	fewPerPiece     = 12
	mostGathered    = 1 << 8
)

// sequencing is the share of plans made piece by piece, in the same measure. It is
// halved with each that was not the best, up to mostMisses times.
const (
	sequencing = 100
	mostMisses = 4
)

// mostTargets is how many counts of stock the search is told to aim at.
const mostTargets = 12

// closingShare is the part of the steps, or of the time, that is left to the
// lesser aims if the price has not been proven before: one in so many.
const closingShare = 16

func newEngine(in *instance.Instance, seed uint64, lanes int) *engine {
	e := &engine{in: in, seed: seed, floor: bound.New(in)}
	for _, k := range in.Kinds {
		e.parts += int64(k.Count)
	}
	e.search = search.New(in, e.floor.Price(), seed, lanes)
	if e.parts <= mostGathered {
		e.harvest = harvest.New(in)
		e.search.Glean(e.harvest)
		e.assembler = assemble.New(in, e.harvest, seed)
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
	if closing := budget / closingShare; left > closing {
		left -= closing
	} else {
		e.search.Close()
	}
	if (e.generator != nil || !e.begun) && !e.search.Proven() {
		tasks = append(tasks, func(func() bool) { e.generate(steps) })
	}
	if e.assembler != nil && !e.search.Proven() {
		// The generator counts what it does in vain meanwhile: the share is settled before.
		work := steps * e.assemblersShare() * e.parts
		tasks = append(tasks, func(func() bool) { e.assembler.Work(work) })
	}
	if !e.search.Proven() {
		tasks = append(tasks, func(stop func() bool) { e.follow(steps, stop) })
	}
	lanes := int64(e.search.Lanes())
	steps = min(steps, (left-1)/lanes+1)
	for i := range e.search.Lanes() {
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
	if !e.begun {
		e.begun = true
		if e.generator = columns.New(e.in, e.floor, mostWork, e.seed, e.harvest); e.generator != nil {
			e.generator.Offer(e.search.Best())
		}
	}
	g := e.generator
	if g == nil {
		return
	}
	share := int64(workPerPart)
	switch {
	case g.Within():
		share = withinPerPart
	case g.Late():
		share = laterPerPart
	}
	share >>= min(bits.Len64(uint64(e.vain/inVain)), mostHalved)
	e.vain += steps * share * e.parts
	g.Work(steps * share * e.parts)
}

// assemblersShare is what the assembler has of a round, in comparisons for each step of a
// lane and each part wanted.
func (e *engine) assemblersShare() int64 {
	switch {
	case e.parts > fewPerPiece*e.mostPieces():
		return assemblingMany
	case e.vain >= stuck:
		return assemblingStuck
	}
	return assembling
}

// mostPieces that a cheaper plan may have.
func (e *engine) mostPieces() (most int64) {
	for _, t := range e.targets {
		pieces := int64(0)
		for _, n := range t {
			pieces += int64(n)
		}
		most = max(most, pieces)
	}
	return most
}

// follow does the share of plans made piece by piece of a round of so many steps.
func (e *engine) follow(steps int64, stop func() bool) {
	if e.sequence == nil {
		e.sequence = search.NewSequence(e.in, e.seed)
	}
	e.sequence.Work(steps*sequencing*e.parts>>min(e.misses, mostMisses), stop)
}

// join ends a round and reports whether plan or bound became better.
func (e *engine) join() bool {
	better := e.search.Join()
	if e.generator != nil {
		for _, p := range e.generator.Plans() {
			better = e.search.Complete(p) || better
		}
	}
	if e.assembler != nil {
		if e.generator != nil {
			e.generator.Patterns(e.harvest.Add)
		}
		e.harvest.Appraise(e.assembler.Prices())
		e.assembler.Patterns(e.harvest.Add)
		for _, p := range e.assembler.Plans() {
			better = e.search.Complete(p) || better
		}
	}
	if e.sequence != nil {
		for _, p := range e.sequence.Plans() {
			e.misses++
			if e.generator != nil {
				e.generator.Offer(p)
			}
			if e.search.Complete(p) {
				e.misses, better = 0, true
			}
		}
	}
	if better && e.generator != nil {
		e.generator.Offer(e.search.Best())
	}
	if now := (standing{e.search.Best().Cost.Price, e.floor.Price()}); now != e.standing {
		e.standing, e.vain = now, 0
	}
	counts := e.floor.Counts()
	e.outdated = e.outdated || better || !slices.Equal(counts, e.rests)
	if e.outdated && !better { // while plans become better by themselves, no lane asks
		e.outdated, e.rests = false, counts
		e.targets = e.floor.Candidates(e.search.Best().Cost.Price, mostTargets)
		if e.assembler != nil {
			e.assembler.Aim(e.targets)
		}
	}
	return e.search.Raise(e.floor.Price(), e.targets) || better
}
