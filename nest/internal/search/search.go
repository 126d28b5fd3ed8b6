// Package search finds good plans by taking them apart and putting them
// together again.
package search

import (
	"slices"

	"sawbill/nest/internal/instance"
	"sawbill/nest/internal/pool"
)

// Search improves the plan of one instance in rounds. In a round every lane
// walks on its own, in any order and on any number of processors; between
// rounds Join passes the best plan on. So the course of a search depends on
// its seed and its number of lanes, never on the machine.
type Search struct {
	in           *instance.Instance
	bound        int64
	walks        []*walk
	completer    *walk // completes plans that come from elsewhere
	best         *instance.Plan
	targets      [][]int          // per stock: the pieces that a cheaper plan may have
	restartPlans []*instance.Plan // cheaper than best, but some parts are missing
	// areaRounds counts the rounds that are still given to a lesser area at the
	// same price once that is proven.
	areaRounds int
	round      int
	pool       *pool.Pool // or nil
	polishing
}

// maxAreaRounds are given to a lesser area after each new best plan.
const maxAreaRounds = 8

// New makes a search with a first plan, which may be incomplete when there is
// too little stock. No plan costs less than bound.
func New(in *instance.Instance, bound int64, seed uint64, walks int) *Search {
	s := &Search{in: in, bound: bound}
	e := newEnv(in, false)
	for i := range walks {
		s.walks = append(s.walks, newWalk(e, seed, uint64(i)))
	}
	s.completer = newWalk(e, seed, uint64(walks+1))
	s.polishers = newPolishers(in, seed, walks)
	first := s.walks[0]
	first.construct()
	s.best = first.state.plan()
	s.migrate()
	return s
}

// RecordInto notes from now on what patterns the lanes come upon; Join brings them
// into h.
func (s *Search) RecordInto(h *pool.Pool) {
	s.pool = h
	for _, l := range s.walks {
		l.recorder = h.NewRecorder()
	}
}

// Best is the best plan so far.
func (s *Search) Best() *instance.Plan { return s.best }

// Proven reports whether no plan can cost less than Best.
func (s *Search) Proven() bool { return s.best.Complete() && s.best.Cost.Price <= s.bound }

// Done reports whether further rounds are not worth their time.
func (s *Search) Done() bool { return s.Proven() && s.areaRounds == 0 && s.roundsLeft == 0 }

// StartPolish tells that little time is left: it goes to the lesser aims.
func (s *Search) StartPolish() { s.polishNow = true }

// SetBound tells of a bound, and of counts of each stock that cheaper plans might
// have. It reports whether the bound is a greater one.
func (s *Search) SetBound(bound int64, targets [][]int) bool {
	s.targets = targets
	greater := bound > s.bound
	s.bound = max(s.bound, bound)
	return greater
}

// Walks is the number of walks in a round.
func (s *Search) Walks() int { return len(s.walks) }

// Walk does lane i's part of a round: n steps, or fewer when stop says so.
func (s *Search) Walk(i int, n int64, stop func() bool) {
	if i < s.polishingWalks() {
		s.polishers[(s.round/polishEvery+i)%len(s.polishers)].run(n, stop)
	} else if !s.Proven() || s.areaRounds > 0 {
		s.walks[i].run(n, stop)
	}
}

// Join ends a round and reports whether it bettered the plan.
func (s *Search) Join() bool {
	polishing := s.polishingWalks() > 0
	s.round++
	s.areaRounds = max(0, s.areaRounds-1)
	better := false
	for _, l := range s.walks {
		if l.recorder != nil {
			s.pool.Collect(l.recorder)
		}
		if l.best != nil && l.best != s.best && s.improves(l) {
			s.best, better = l.best, true
		}
	}
	if better {
		s.migrate()
	}
	for _, l := range s.walks {
		if l.stagnant() && s.best.Complete() {
			s.restart(l)
		}
	}
	return polishing && s.joinPolish() || better
}

func (s *Search) improves(l *walk) bool {
	switch {
	case !s.best.Complete():
		return l.best.Complete() || s.in.MissingArea(l.best) < s.in.MissingArea(s.best)
	case !l.best.Complete():
		return false
	}
	return l.best.Cost.Less(s.best.Cost)
}

// Complete places what p lacks, takes the plan over if it is the best so far,
// and reports whether it is.
func (s *Search) Complete(p *instance.Plan) bool {
	l := s.completer
	l.state.load(p)
	l.goal = noGoal
	if s.best.Complete() {
		l.goal = s.best.Cost
	}
	l.sort(byArea)
	l.recreate(l.goal)
	l.state.commit()
	l.best = l.state.plan()
	if !s.improves(l) {
		if s.best.Complete() && l.best.Cost.Less(s.best.Cost) {
			s.restartPlans = append(s.restartPlans, l.best)
			s.restartPlans = s.restartPlans[max(0, len(s.restartPlans)-maxStarts):]
		}
		return false
	}
	s.best = l.best
	s.migrate()
	return true
}

// maxStarts is how many plans are kept for lanes to set out from.
const maxStarts = 8

// restart starts lane l anew: from a plan that lacks some parts, towards counts of
// stock that may be enough, or from the best plan once more. Where there is one
// size, the price says how many.
func (s *Search) restart(l *walk) {
	switch n := l.below(4); {
	case len(s.targets) > 0 && !s.singleSize() && n > 0:
		l.restart(s.best, s.best.Cost, s.targets[l.below(len(s.targets))])
	case len(s.restartPlans) > 0 && n < 2:
		l.restart(s.restartPlans[l.below(len(s.restartPlans))], s.best.Cost, nil)
	default:
		l.restart(s.best, s.best.Cost, nil)
	}
}

// migrate sets the lanes that lag behind on the best plan.
func (s *Search) migrate() {
	for _, l := range s.walks {
		if l.best == nil || s.best.Complete() && s.best.Cost.Less(l.goal) {
			l.migrateTo(s.best)
		}
	}
	if s.best.Complete() {
		s.restartPlans = slices.DeleteFunc(s.restartPlans, func(p *instance.Plan) bool { return !p.Cost.Less(s.best.Cost) })
		s.restartPolish(s.best)
		s.areaRounds = maxAreaRounds
		if s.singleSize() {
			s.areaRounds = 0 // the price has settled the area
		}
	}
}

// singleSize reports whether all that is bought is of one size and has a price.
func (s *Search) singleSize() bool {
	sizes := 0
	for _, st := range s.in.Stock {
		if !st.OnHand {
			sizes++
		}
		if !st.OnHand && st.Price == 0 {
			return false
		}
	}
	return sizes <= 1
}

// Steps counts the steps of all lanes.
func (s *Search) Steps() int64 {
	var n int64
	for i, l := range s.walks {
		n += l.steps + s.polishers[i].steps
	}
	return n
}
