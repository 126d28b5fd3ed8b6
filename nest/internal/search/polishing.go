package search

import "sawbill/nest/internal/instance"

// polishing is the state of all polishers of a search: when they run, and their result.
type polishing struct {
	polishers []*polisher // as many as walks, in whose places they run
	value     objectives  // of the best plan
	// roundsLeft counts the rounds left to polish, and patience those without a better plan.
	roundsLeft, patience int
	polishNow            bool // little time is left
}

const (
	maxPolishRounds = 48 // for plans of one cost
	polishPatience  = 8
	polishEvery     = 96 // rounds between two of polish, while the price is not proven
)

func newPolishers(in *instance.Instance, seed uint64, walks int) []*polisher {
	e := newEnv(in, true)
	var polishers []*polisher
	for i := range walks {
		polishers = append(polishers, newPolisher(e, seed, uint64(walks+2+i)))
	}
	return polishers
}

// polishingWalks returns how many polishers run in this round: all if the price is proven or
// little time is left. Else one runs now and then, in case time is up early.
func (s *Search) polishingWalks() int {
	switch {
	case s.roundsLeft == 0 || s.areaRounds > 0 && s.Proven():
		return 0
	case s.Proven() || s.polishNow:
		return len(s.polishers)
	case s.round%polishEvery == polishEvery-1:
		return 1
	}
	return 0
}

// restartPolish moves all polishers to a cheaper plan.
func (p *polishing) restartPolish(best *instance.Plan) {
	p.roundsLeft, p.patience = maxPolishRounds, polishPatience
	p.value = p.polishers[0].evaluate(best)
	for _, w := range p.polishers {
		w.restartFrom(best, p.value)
	}
}

// joinPolish ends a round of polish and reports whether the plan improved.
func (s *Search) joinPolish() bool {
	better := false
	for _, p := range s.polishers {
		if p.best.Cost.Less(s.best.Cost) {
			s.best = p.best
			s.migrate() // restarts polish too
			return true
		}
		if !s.best.Cost.Less(p.best.Cost) && p.value.compare(s.value) > 0 {
			s.best, s.value, better = p.best, p.value, true
		}
	}
	s.roundsLeft--
	s.patience--
	if better && !s.Halt.On() {
		s.patience = polishPatience
		for _, p := range s.polishers {
			if p.best != s.best {
				p.restartFrom(s.best, s.value)
			}
		}
	}
	if s.patience == 0 {
		s.roundsLeft = 0
	}
	return better
}
