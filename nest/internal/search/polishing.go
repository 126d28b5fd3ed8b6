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
// little time is left, else now and then one, in case time is up early.
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
func (t *polishing) restartPolish(best *instance.Plan) {
	t.roundsLeft, t.patience = maxPolishRounds, polishPatience
	t.value = t.polishers[0].evaluate(best)
	for _, l := range t.polishers {
		l.restartFrom(best, t.value)
	}
}

// joinPolish ends a round of polish and reports whether the plan improved.
func (s *Search) joinPolish() bool {
	better := false
	for _, l := range s.polishers {
		if l.best.Cost.Less(s.best.Cost) {
			s.best = l.best
			s.migrate() // restarts polish too
			return true
		}
		if !s.best.Cost.Less(l.best.Cost) && l.value.compare(s.value) > 0 {
			s.best, s.value, better = l.best, l.value, true
		}
	}
	s.roundsLeft--
	s.patience--
	if better {
		s.patience = polishPatience
		for _, l := range s.polishers {
			if l.best != s.best {
				l.restartFrom(s.best, s.value)
			}
		}
	}
	if s.patience == 0 {
		s.roundsLeft = 0
	}
	return better
}
