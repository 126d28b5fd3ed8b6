package search

import "sawbill/nest/internal/instance"

// polisher is a walk through plans that cost no more than the best one, towards
// what the lesser aims ask for. It ruins and recreates as a lane does, where
// leftovers lie, and accepts by a score in which the aims weigh against one
// another, so that one can be given up on the way to more; what it finds is
// compared strictly in their order.
type polisher struct {
	walk
	evaluator     evaluator
	finalState    *state // where a plan is appraised as it would be told
	lastObjective objective
	value         objectives // of best
	found         objectives // the best of a state so far; as told it may be less
	seeksSpare    bool       // its walks want a spare
	spare         int32      // the kind wanted once more than it is, or none
}

// Weights of the score. A stock's area is 2^AreaBits at most; an offcut is worth
// the square of its share of that.
const (
	coverWeight = 1 << instance.AreaBits // all parts
	setupWeight = 1 << (instance.AreaBits - 9)
	cutWeight   = 1 << (instance.AreaBits - 12)
	leeway      = 8 // of the score, at first
)

func newPolisher(e *env, seed, number uint64) *polisher {
	return &polisher{
		walk: *newWalk(e, seed, number), evaluator: evaluator{e: e}, finalState: newState(e), lastObjective: cutObjective,
		seeksSpare: number%2 == 1, spare: none,
	}
}

// evaluate finds the merit of plan p as it is told.
func (t *polisher) evaluate(p *instance.Plan) objectives {
	t.finalState.load(p)
	t.evaluator.evaluateAll(t.finalState)
	return t.evaluator.total(t.finalState).truncate(t.lastObjective)
}

// restartFrom takes complete plan p over.
func (t *polisher) restartFrom(p *instance.Plan, m objectives) {
	t.best, t.value, t.found = p, m, m
	t.goal, t.insertion.blinks = p.Cost, true
	t.goal.Bought++ // no more, but as much
	t.state.load(p)
	t.spare = none
	t.resetAcceptance()
}

// resetAcceptance prepares for a walk from the present state.
func (t *polisher) resetAcceptance() {
	t.evaluator.evaluateAll(t.state)
	t.state.begin()
	score := t.score(t.evaluator.total(t.state))
	// A good plan is left only by way of worse ones.
	t.acceptance.reset(score, score+abs(score)/leeway)
}

// score of the state, whose merit is m: less is better.
func (t *polisher) score(m objectives) int64 {
	score := missingWeight * t.state.missingArea
	if t.lastObjective >= coverObjective {
		score -= int64(m.covered) * (coverWeight / int64(t.e.pieces))
	}
	if t.lastObjective >= offcutObjective {
		score -= t.state.value
	}
	if t.lastObjective >= setupObjective {
		score += int64(m.setups) * setupWeight
	}
	if t.lastObjective >= cutObjective {
		score += int64(m.cuts) * cutWeight
	}
	return score
}

// run makes n steps, or fewer when stop says so.
func (t *polisher) run(n int64, stop func() bool) {
	if t.seeksSpare {
		t.addSpare()
	}
	for i := int64(0); i < n; i++ {
		if i&31 == 0 && stop() {
			break
		}
		t.step()
	}
}

func (t *polisher) step() {
	t.steps++
	s := t.state
	s.begin()
	t.ruin()
	t.sort(order(t.below(int(orderCount))))
	t.chooseStripDirection()
	t.recreate(t.goal)
	t.evaluator.evaluateChanged(s)
	m := t.evaluator.total(s)
	if t.acceptance.accept(t.score(m), false) {
		s.commit()
		t.updateBest(m.truncate(t.lastObjective))
	} else {
		s.undo()
	}
}

// updateBest keeps the plan at hand, whose merit is m, if it is the best so far.
func (t *polisher) updateBest(m objectives) {
	s := t.state
	switch {
	case t.spare != none && len(s.missing) == 0:
		t.removeSpare()
		return
	case t.spare != none && len(s.missing) == 1 && s.missing[0] == t.spare:
	case len(s.missing) > 0:
		return
	}
	if !s.cost.Less(t.best.Cost) && m.compare(t.found) <= 0 {
		return
	}
	t.found = m
	t.keepIfBest()
}

// keepIfBest takes the plan at hand for the best, if as told it is.
func (t *polisher) keepIfBest() {
	p := t.state.plan()
	clear(p.Missing) // of the spare, at most
	if m := t.evaluate(p); p.Cost.Less(t.best.Cost) || m.compare(t.value) > 0 {
		t.best, t.value = p, m
		t.goal = p.Cost
		t.goal.Bought++
	}
}

// chooseStripDirection settles for a step which way strips run, or leaves it free: parts in
// strips of one direction share settings, which no placing of a single part
// sees.
func (t *polisher) chooseStripDirection() {
	t.insertion.avoidCut = instance.None
	if n := t.below(4); n < 2 {
		t.insertion.avoidCut = instance.Rip + instance.Dir(n)
	}
}
