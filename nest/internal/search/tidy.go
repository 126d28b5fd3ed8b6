package search

import "sawbill/nest/internal/instance"

// tidier is a walk through plans that cost no more than the best one, towards
// what the lesser aims ask for. It ruins and recreates as a lane does, where
// leftovers lie, and accepts by a score in which the aims weigh against one
// another, so that one can be given up on the way to more; what it finds is
// compared strictly in their order.
type tidier struct {
	lane
	appraiser appraiser
	judge     *state // where a plan is appraised as it would be told
	last      aim
	merit     merit // of best
	found     merit // the best of a state so far; as told it may be less
	spares    bool  // its walks want a spare
	spare     int32 // the kind wanted once more than it is, or none
}

// Weights of the score. A stock's area is 2^AreaBits at most; an offcut is worth
// the square of its share of that.
const (
	coverWeight = 1 << instance.AreaBits // all parts
	setupWeight = 1 << (instance.AreaBits - 9)
	cutWeight   = 1 << (instance.AreaBits - 12)
	leeway      = 8 // of the score, at first
)

func newTidier(e *env, seed, number uint64) *tidier {
	return &tidier{
		lane: *newLane(e, seed, number), appraiser: appraiser{e: e}, judge: newState(e), last: cutAim,
		spares: number%2 == 1, spare: none,
	}
}

// appraise finds the merit of plan p as it is told.
func (t *tidier) appraise(p *instance.Plan) merit {
	t.judge.load(p)
	t.appraiser.all(t.judge)
	return t.appraiser.merit(t.judge).upTo(t.last)
}

// follow takes complete plan p over.
func (t *tidier) follow(p *instance.Plan, m merit) {
	t.best, t.merit, t.found = p, m, m
	t.goal, t.blinks = p.Cost, true
	t.goal.Bought++ // no more, but as much
	t.state.load(p)
	t.spare = none
	t.resume()
}

// resume prepares for a walk from the present state.
func (t *tidier) resume() {
	t.appraiser.all(t.state)
	t.state.begin()
	t.current = t.score(t.appraiser.merit(t.state))
	// A good plan is left only by way of worse ones.
	patience := t.current + abs(t.current)/leeway
	for i := range t.history {
		t.history[i] = patience
	}
}

// score of the state, whose merit is m: less is better.
func (t *tidier) score(m merit) int64 {
	score := missingWeight * t.state.missingArea
	if t.last >= coverAim {
		score -= int64(m.covered) * (coverWeight / int64(t.e.pieces))
	}
	if t.last >= offcutAim {
		score -= t.state.value
	}
	if t.last >= setupAim {
		score += int64(m.setups) * setupWeight
	}
	if t.last >= cutAim {
		score += int64(m.cuts) * cutWeight
	}
	return score
}

// walk makes n steps, or fewer when stop says so.
func (t *tidier) walk(n int64, stop func() bool) {
	if t.spares {
		t.wantSpare()
	}
	for i := int64(0); i < n; i++ {
		if i&31 == 0 && stop() {
			break
		}
		t.step()
	}
}

func (t *tidier) step() {
	t.steps++
	s := t.state
	s.begin()
	t.ruin()
	t.sort(order(t.below(int(orderCount))))
	t.prefer()
	t.recreate(t.goal)
	t.appraiser.changed(s)
	m := t.appraiser.merit(s)
	score := t.score(m)
	slot := &t.history[t.turn]
	if score <= t.current || score <= *slot {
		t.current = score
		s.settle()
		t.record(m.upTo(t.last))
	} else {
		s.undo()
	}
	*slot = min(*slot, t.current)
	t.turn++
	if t.turn == len(t.history) {
		t.turn = 0
	}
}

// record keeps the plan at hand, whose merit is m, if it is the best so far.
func (t *tidier) record(m merit) {
	s := t.state
	switch {
	case t.spare != none && len(s.missing) == 0:
		t.freeSpare()
		return
	case t.spare != none && len(s.missing) == 1 && s.missing[0] == t.spare:
	case len(s.missing) > 0:
		return
	}
	if !s.cost.Less(t.best.Cost) && m.compare(t.found) <= 0 {
		return
	}
	t.found = m
	t.keep()
}

// keep takes the plan at hand for the best, if as told it is.
func (t *tidier) keep() {
	p := t.state.plan()
	clear(p.Missing) // of the spare, at most
	if m := t.appraise(p); p.Cost.Less(t.best.Cost) || m.compare(t.merit) > 0 {
		t.best, t.merit = p, m
		t.goal = p.Cost
		t.goal.Bought++
	}
}

// prefer settles for a step which way strips run, or leaves it free: parts in
// strips of one direction share settings, which no placing of a single part
// sees.
func (t *tidier) prefer() {
	t.avoid = instance.None
	if n := t.below(4); n < 2 {
		t.avoid = instance.Ripped + instance.Dir(n)
	}
}
