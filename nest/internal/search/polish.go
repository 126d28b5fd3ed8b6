package search

import (
	"sawbill/nest/internal/halt"
	"sawbill/nest/internal/instance"
)

// polisher improves the secondary objectives: a ruin-and-recreate walk through plans of at most
// the best plan's cost. It accepts by a weighted sum of the objectives, so that one may worsen
// for a while. It compares results lexicographically.
type polisher struct {
	walk
	evaluator     evaluator
	finalState    *state // for the plan in normal form
	lastObjective objective
	value         objectives // of best
	found         objectives // of the best state so far; its plan in normal form may have less
	seeksSpare    bool       // its walks seek a spare
	spare         int32      // kind with one more than its demand, or none
}

// Weights of the score. A stock's area is at most 2^AreaBits, and an offcut is worth the square
// of its share of that.
const (
	coverWeight = 1 << instance.AreaBits // for all parts
	setupWeight = 1 << (instance.AreaBits - 9)
	cutWeight   = 1 << (instance.AreaBits - 12)
	leeway      = 8 // divisor of the score, for the first threshold
)

func newPolisher(e *env, seed, number uint64) *polisher {
	return &polisher{
		walk: *newWalk(e, seed, number), evaluator: evaluator{e: e}, finalState: newState(e), lastObjective: cutObjective,
		seeksSpare: number%2 == 1, spare: none,
	}
}

// evaluate returns the objectives of a plan in normal form.
func (p *polisher) evaluate(plan *instance.Plan) objectives {
	p.finalState.load(plan)
	p.evaluator.evaluateAll(p.finalState)
	return p.evaluator.total(p.finalState).truncate(p.lastObjective)
}

// restartFrom moves to a complete plan.
func (p *polisher) restartFrom(plan *instance.Plan, m objectives) {
	p.best, p.value, p.found = plan, m, m
	p.goal, p.insertion.blinks = plan.Cost, true
	p.goal.Bought++ // equal cost and area are allowed
	p.state.load(plan)
	p.spare = none
	p.resetAcceptance()
}

// resetAcceptance starts from the present state.
func (p *polisher) resetAcceptance() {
	p.evaluator.evaluateAll(p.state)
	p.state.begin()
	score := p.score(p.evaluator.total(p.state))
	// Only worse plans lead away from a good one.
	p.acceptance.reset(score, score+abs(score)/leeway)
}

// score returns the weighted sum for a state with objectives m; lower is better.
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

// run takes n steps, or fewer if stop is on.
func (p *polisher) run(n int64, stop halt.Signal) {
	if p.seeksSpare {
		p.addSpare()
	}
	for i := int64(0); i < n; i++ {
		if i%p.e.asks == 0 && stop.On() {
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

// updateBest keeps the state, with objectives m, if it is the best so far.
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

// keepIfBest keeps the state's plan if it is the best in normal form.
func (p *polisher) keepIfBest() {
	plan := p.state.plan()
	clear(plan.Missing) // at most the spare is missing
	if !p.e.in.AllowsPlan(plan) {
		return // a layout is forbidden
	}
	if m := p.evaluate(plan); plan.Cost.Less(p.best.Cost) || m.compare(p.value) > 0 {
		p.best, p.value = plan, m
		p.goal = plan.Cost
		p.goal.Bought++
	}
}

// chooseStripDirection chooses the direction of strips for a step, or none. Parts in strips of
// one direction share settings, which the insertion of a single part does not see.
func (p *polisher) chooseStripDirection() {
	p.insertion.avoidCut = instance.None
	if n := p.below(4); n < 2 {
		p.insertion.avoidCut = instance.Rip + instance.Dir(n)
	}
}
