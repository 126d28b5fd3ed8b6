package search

import "sawbill/nest/internal/instance"

// tidying is the course of all tidiers of a search: when they walk, and what
// they have found.
type tidying struct {
	tidiers []*tidier // as many as lanes; they take the lanes' places
	merit   merit     // of the best plan
	// tidyLeft counts the rounds still given to tidying, patience those of them
	// without a better plan.
	tidyLeft, patience int
	closing            bool // little time is left
}

const (
	tidyRounds   = 48 // for plans of one cost
	tidyPatience = 8
	tidyEvery    = 96 // rounds, as long as the price is not proven
)

func newTidiers(in *instance.Instance, seed uint64, lanes int) []*tidier {
	e := newEnv(in, true)
	var tidiers []*tidier
	for i := range lanes {
		tidiers = append(tidiers, newTidier(e, seed, uint64(lanes+2+i)))
	}
	return tidiers
}

// tidyingLanes is how many tidiers walk in this round: all once the price is
// proven or time is nearly up; before, now and then one of them, in case time is
// up early.
func (s *Search) tidyingLanes() int {
	switch {
	case s.tidyLeft == 0 || s.trimLeft > 0 && s.Proven():
		return 0
	case s.Proven() || s.closing:
		return len(s.tidiers)
	case s.round%tidyEvery == tidyEvery-1:
		return 1
	}
	return 0
}

// tidyAnew sets all tidiers on a plan that is cheaper than the one before.
func (t *tidying) tidyAnew(best *instance.Plan) {
	t.tidyLeft, t.patience = tidyRounds, tidyPatience
	t.merit = t.tidiers[0].appraise(best)
	for _, l := range t.tidiers {
		l.follow(best, t.merit)
	}
}

// tidied ends a round of tidying and reports whether it bettered the plan.
func (s *Search) tidied() bool {
	better := false
	for _, l := range s.tidiers {
		if l.best.Cost.Less(s.best.Cost) {
			s.best = l.best
			s.spread() // and tidies anew
			return true
		}
		if !s.best.Cost.Less(l.best.Cost) && l.merit.compare(s.merit) > 0 {
			s.best, s.merit, better = l.best, l.merit, true
		}
	}
	s.tidyLeft--
	s.patience--
	if better {
		s.patience = tidyPatience
		for _, l := range s.tidiers {
			if l.best != s.best {
				l.follow(s.best, s.merit)
			}
		}
	}
	if s.patience == 0 {
		s.tidyLeft = 0
	}
	return better
}
