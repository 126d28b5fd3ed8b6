// Package search finds plans by ruin and recreate on cutting trees. The same moves on one piece
// of stock price patterns heuristically (Filler), which fills whole plans in sequential value
// correction (ValueCorrection). Polish improves the secondary objectives (polisher).
//
// Schrimpf et al., J. Comput. Phys. 159, 2000; Gardeyn and Wauters, Eur. J. Oper. Res. 301,
// 2022, arXiv:2508.19306. Each type names its other sources.
package search

import (
	"slices"

	"sawbill/nest/internal/halt"
	"sawbill/nest/internal/instance"
	"sawbill/nest/internal/pool"
)

// Search improves the plan of one instance in rounds. In a round every walk runs on its own, in
// any order and on any number of processors. Between rounds Join passes the best plan on. So
// the course of a search depends on its seed and number of walks, never on the machine.
type Search struct {
	// Halt says that no round follows. Join and Complete then only look for the best plan.
	Halt halt.Signal

	in           *instance.Instance
	bound        int64
	walks        []*walk
	completer    *walk // completes plans of other methods
	best         *instance.Plan
	targets      [][]int          // pieces per stock that a cheaper plan may have
	restartPlans []*instance.Plan // cheaper than best, but not complete
	// areaRounds counts the rounds left to reduce the area at the same price, once that is
	// proven.
	areaRounds int
	round      int
	pool       *pool.Pool // of recorded patterns; or nil
	polishing
}

// maxAreaRounds follow each new best plan.
const maxAreaRounds = 8

// New returns a search with a first plan, which is incomplete if there is too little stock. No
// plan costs less than bound. The first plan costs no more than last, unless last is nil or
// lacks parts for which there is no room.
func New(in *instance.Instance, bound int64, seed uint64, walks int, last *instance.Plan) *Search {
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
	if last != nil {
		s.startFrom(last)
	}
	s.migrate()
	return s
}

// startFrom makes plan p, with what it lacks, the first plan unless the one constructed is
// better. It stays if both cost the same, since it may be polished.
func (s *Search) startFrom(p *instance.Plan) {
	w := s.completer
	w.state.load(p)
	w.sort(byArea)
	w.recreate(noGoal)
	w.state.commit()
	w.best = w.state.plan()
	if s.improves(w) || w.best.Complete() && !s.best.Cost.Less(w.best.Cost) {
		s.best = w.best
	}
}

// RecordInto makes walks record their patterns, and Join collect them.
func (s *Search) RecordInto(patterns *pool.Pool) {
	s.pool = patterns
	for _, w := range s.walks {
		w.recorder = patterns.NewRecorder()
	}
}

// Best returns the best plan so far.
func (s *Search) Best() *instance.Plan { return s.best }

// Proven reports whether no plan can cost less than Best.
func (s *Search) Proven() bool { return s.best.Complete() && s.best.Cost.Price <= s.bound }

// Done reports whether further rounds are not worth their time.
func (s *Search) Done() bool { return s.Proven() && s.areaRounds == 0 && s.roundsLeft == 0 }

// StartPolish makes all walks polish, since little time is left.
func (s *Search) StartPolish() { s.polishNow = true }

// SetBound sets a lower bound, and the counts of each stock that cheaper plans may have. It
// reports whether the bound has risen.
func (s *Search) SetBound(bound int64, targets [][]int) bool {
	s.targets = targets
	greater := bound > s.bound
	s.bound = max(s.bound, bound)
	return greater
}

// Walks returns the number of walks in a round.
func (s *Search) Walks() int { return len(s.walks) }

// Walk runs part i of a round: n steps, or fewer if stop is on.
func (s *Search) Walk(i int, n int64, stop halt.Signal) {
	if i < s.polishingWalks() {
		s.polishers[(s.round/polishEvery+i)%len(s.polishers)].run(n, stop)
	} else if !s.Proven() || s.areaRounds > 0 {
		s.walks[i].run(n, stop)
	}
}

// Join ends a round and reports whether the plan improved.
func (s *Search) Join() bool {
	polishing := s.polishingWalks() > 0
	s.round++
	s.areaRounds = max(0, s.areaRounds-1)
	better := false
	for _, w := range s.walks {
		if w.recorder != nil {
			s.pool.Collect(w.recorder)
		}
		if w.best != nil && w.best != s.best && s.improves(w) {
			s.best, better = w.best, true
		}
	}
	if better {
		s.migrate()
	}
	for _, w := range s.walks {
		if w.stagnant() && s.best.Complete() && !s.Halt.On() {
			s.restart(w)
		}
	}
	return polishing && s.joinPolish() || better
}

func (s *Search) improves(w *walk) bool {
	switch {
	case !s.best.Complete():
		return w.best.Complete() || s.in.MissingArea(w.best) < s.in.MissingArea(s.best)
	case !w.best.Complete():
		return false
	}
	return w.best.Cost.Less(s.best.Cost)
}

// Complete places what p lacks. If the result is the best plan so far, Complete adopts it and
// returns true.
func (s *Search) Complete(p *instance.Plan) bool {
	if s.Halt.On() && s.best.Complete() && !p.Complete() {
		return false // there is no time to place what it lacks
	}
	w := s.completer
	w.state.load(s.in.DropForbidden(p))
	w.goal = noGoal
	if s.best.Complete() {
		w.goal = s.best.Cost
	}
	w.sort(byArea)
	w.recreate(w.goal)
	w.state.commit()
	w.best = w.state.plan()
	if !s.improves(w) {
		if s.best.Complete() && w.best.Cost.Less(s.best.Cost) {
			s.restartPlans = append(s.restartPlans, w.best)
			s.restartPlans = s.restartPlans[max(0, len(s.restartPlans)-maxStarts):]
		}
		return false
	}
	s.best = w.best
	s.migrate()
	return true
}

// maxStarts limits restartPlans.
const maxStarts = 8

// restart restarts a walk: from an incomplete plan, or from the best plan, towards target
// counts or any. With a single size the price alone says how many pieces to cut.
func (s *Search) restart(w *walk) {
	switch n := w.below(4); {
	case len(s.targets) > 0 && !s.singleSize() && n > 0:
		w.restart(s.best, s.best.Cost, s.targets[w.below(len(s.targets))])
	case len(s.restartPlans) > 0 && n < 2:
		w.restart(s.restartPlans[w.below(len(s.restartPlans))], s.best.Cost, nil)
	default:
		w.restart(s.best, s.best.Cost, nil)
	}
}

// migrate moves the walks that lag to the best plan.
func (s *Search) migrate() {
	if s.Halt.On() {
		return
	}
	for _, w := range s.walks {
		if w.best == nil || s.best.Complete() && s.best.Cost.Less(w.goal) {
			w.migrateTo(s.best)
		}
	}
	if s.best.Complete() {
		s.restartPlans = slices.DeleteFunc(s.restartPlans, func(p *instance.Plan) bool { return !p.Cost.Less(s.best.Cost) })
		s.restartPolish(s.best)
		s.areaRounds = maxAreaRounds
		if s.singleSize() {
			s.areaRounds = 0 // the price implies the area
		}
	}
}

// singleSize reports whether all stock for sale has one size and a price.
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

// Steps counts the steps of all walks.
func (s *Search) Steps() int64 {
	var n int64
	for i, w := range s.walks {
		n += w.steps + s.polishers[i].steps
	}
	return n
}
