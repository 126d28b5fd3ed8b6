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
func (p *polisher) evaluate(plan *instance.Plan) objectives {
	p.finalState.load(plan)
	p.evaluator.evaluateAll(p.finalState)
	return p.evaluator.total(p.finalState).truncate(p.lastObjective)
}

// restartFrom takes complete plan p over.
func (p *polisher) restartFrom(plan *instance.Plan, m objectives) {
	p.best, p.value, p.found = plan, m, m
	p.goal, p.insertion.blinks = plan.Cost, true
	p.goal.Bought++ // no more, but as much
	p.state.load(plan)
	p.spare = none
	p.resetAcceptance()
}

// resetAcceptance prepares for a walk from the present state.
func (p *polisher) resetAcceptance() {
	p.evaluator.evaluateAll(p.state)
	p.state.begin()
	score := p.score(p.evaluator.total(p.state))
	// A good plan is left only by way of worse ones.
	p.acceptance.reset(score, score+abs(score)/leeway)
}

// score of the state, whose merit is m: less is better.
func (p *polisher) score(m objectives) int64 {
	score := missingWeight * p.state.missingArea
	if p.lastObjective >= coverObjective {
		score -= int64(m.covered) * (coverWeight / int64(p.e.pieces))
	}
	if p.lastObjective >= offcutObjective {
		score -= p.state.value
	}
	if p.lastObjective >= setupObjective {
		score += int64(m.setups) * setupWeight
	}
	if p.lastObjective >= cutObjective {
		score += int64(m.cuts) * cutWeight
	}
	return score
}

// run makes n steps, or fewer when stop says so.
func (p *polisher) run(n int64, stop func() bool) {
	if p.seeksSpare {
		p.addSpare()
	}
	for i := int64(0); i < n; i++ {
		if i&31 == 0 && stop() {
			break
		}
		p.step()
	}
}

func (p *polisher) step() {
	p.steps++
	s := p.state
	s.begin()
	p.ruin()
	p.sort(order(p.below(int(orderCount))))
	p.chooseStripDirection()
	p.recreate(p.goal)
	p.evaluator.evaluateChanged(s)
	m := p.evaluator.total(s)
	if p.acceptance.accept(p.score(m), false) {
		s.commit()
		p.updateBest(m.truncate(p.lastObjective))
	} else {
		s.undo()
	}
}

// updateBest keeps the plan at hand, whose merit is m, if it is the best so far.
func (p *polisher) updateBest(m objectives) {
	s := p.state
	switch {
	case p.spare != none && len(s.missing) == 0:
		p.removeSpare()
		return
	case p.spare != none && len(s.missing) == 1 && s.missing[0] == p.spare:
	case len(s.missing) > 0:
		return
	}
	if !s.cost.Less(p.best.Cost) && m.compare(p.found) <= 0 {
		return
	}
	p.found = m
	p.keepIfBest()
}

// keepIfBest takes the plan at hand for the best, if as told it is.
func (p *polisher) keepIfBest() {
	plan := p.state.plan()
	clear(plan.Missing) // of the spare, at most
	if m := p.evaluate(plan); plan.Cost.Less(p.best.Cost) || m.compare(p.value) > 0 {
		p.best, p.value = plan, m
		p.goal = plan.Cost
		p.goal.Bought++
	}
}

// chooseStripDirection settles for a step which way strips run, or leaves it free: parts in
// strips of one direction share settings, which no placing of a single part
// sees.
func (p *polisher) chooseStripDirection() {
	p.insertion.avoidCut = instance.None
	if n := p.below(4); n < 2 {
		p.insertion.avoidCut = instance.Rip + instance.Dir(n)
	}
}
