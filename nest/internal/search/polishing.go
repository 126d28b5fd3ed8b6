package search

import "sawbill/nest/internal/instance"

// polishing is the course of all tidiers of a search: when they walk, and what
// they have found.
type polishing struct {
	polishers []*polisher // as many as lanes; they take the lanes' places
	value     objectives  // of the best plan
	// roundsLeft counts the rounds still given to tidying, patience those of them
	// without a better plan.
	roundsLeft, patience int
	polishNow            bool // little time is left
}

const (
	maxPolishRounds = 48 // for plans of one cost
	polishPatience  = 8
	polishEvery     = 96 // rounds, as long as the price is not proven
)

func newPolishers(in *instance.Instance, seed uint64, walks int) []*polisher {
	e := newEnv(in, true)
	var polishers []*polisher
	for i := range walks {
		polishers = append(polishers, newPolisher(e, seed, uint64(walks+2+i)))
	}
	return polishers
}

// polishingWalks is how many tidiers walk in this round: all once the price is
// proven or time is nearly up; before, now and then one of them, in case time is
// up early.
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

// restartPolish sets all tidiers on a plan that is cheaper than the one before.
func (t *polishing) restartPolish(best *instance.Plan) {
	t.roundsLeft, t.patience = maxPolishRounds, polishPatience
	t.value = t.polishers[0].evaluate(best)
	for _, l := range t.polishers {
		l.restartFrom(best, t.value)
	}
}

// joinPolish ends a round of tidying and reports whether it bettered the plan.
func (s *Search) joinPolish() bool {
	better := false
	for _, l := range s.polishers {
		if l.best.Cost.Less(s.best.Cost) {
			s.best = l.best
			s.migrate() // and tidies anew
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
