// Package search finds good plans by taking them apart and putting them
// together again.
package search

import (
	"slices"

	"sawbill/nest/internal/harvest"
	"sawbill/nest/internal/instance"
)

// Search improves the plan of one instance in rounds. In a round every lane
// walks on its own, in any order and on any number of processors; between
// rounds Join passes the best plan on. So the course of a search depends on
// its seed and its number of lanes, never on the machine.
type Search struct {
	in       *instance.Instance
	bound    int64
	lanes    []*lane
	finisher *lane // completes plans that come from elsewhere
	best     *instance.Plan
	targets  [][]int          // per stock: the pieces that a cheaper plan may have
	starts   []*instance.Plan // cheaper than best, but some parts are missing
	// trimLeft counts the rounds that are still given to a lesser area at the
	// same price once that is proven.
	trimLeft int
	round    int
	harvest  *harvest.Harvest // or nil
	tidying
}

// trimRounds are given to a lesser area after each new best plan.
const trimRounds = 8

// New makes a search with a first plan, which may be incomplete when there is
// too little stock. No plan costs less than bound.
func New(in *instance.Instance, bound int64, seed uint64, lanes int) *Search {
	s := &Search{in: in, bound: bound}
	e := newEnv(in, false)
	for i := range lanes {
		s.lanes = append(s.lanes, newLane(e, seed, uint64(i)))
	}
	s.finisher = newLane(e, seed, uint64(lanes+1))
	s.tidiers = newTidiers(in, seed, lanes)
	first := s.lanes[0]
	first.construct()
	s.best = first.state.plan()
	s.spread()
	return s
}

// Glean notes from now on what patterns the lanes come upon; Join brings them
// into h.
func (s *Search) Glean(h *harvest.Harvest) {
	s.harvest = h
	for _, l := range s.lanes {
		l.gleaner = h.Gleaner()
	}
}

// Best is the best plan so far.
func (s *Search) Best() *instance.Plan { return s.best }

// Proven reports whether no plan can cost less than Best.
func (s *Search) Proven() bool { return s.best.Complete() && s.best.Cost.Price <= s.bound }

// Done reports whether further rounds are not worth their time.
func (s *Search) Done() bool { return s.Proven() && s.trimLeft == 0 && s.tidyLeft == 0 }

// Close tells that little time is left: it goes to the lesser aims.
func (s *Search) Close() { s.closing = true }

// Raise tells of a bound, and of counts of each stock that cheaper plans might
// have. It reports whether the bound is a greater one.
func (s *Search) Raise(bound int64, targets [][]int) bool {
	s.targets = targets
	greater := bound > s.bound
	s.bound = max(s.bound, bound)
	return greater
}

// Lanes is the number of walks in a round.
func (s *Search) Lanes() int { return len(s.lanes) }

// Walk does lane i's part of a round: n steps, or fewer when stop says so.
func (s *Search) Walk(i int, n int64, stop func() bool) {
	if i < s.tidyingLanes() {
		s.tidiers[(s.round/tidyEvery+i)%len(s.tidiers)].walk(n, stop)
	} else if !s.Proven() || s.trimLeft > 0 {
		s.lanes[i].walk(n, stop)
	}
}

// Join ends a round and reports whether it bettered the plan.
func (s *Search) Join() bool {
	tidying := s.tidyingLanes() > 0
	s.round++
	s.trimLeft = max(0, s.trimLeft-1)
	better := false
	for _, l := range s.lanes {
		if l.gleaner != nil {
			s.harvest.Take(l.gleaner)
		}
		if l.best != nil && l.best != s.best && s.betters(l) {
			s.best, better = l.best, true
		}
	}
	if better {
		s.spread()
	}
	for _, l := range s.lanes {
		if l.stale() && s.best.Complete() {
			s.setOut(l)
		}
	}
	return tidying && s.tidied() || better
}

func (s *Search) betters(l *lane) bool {
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
	l := s.finisher
	l.state.load(p)
	l.goal = noGoal
	if s.best.Complete() {
		l.goal = s.best.Cost
	}
	l.sort(byArea)
	l.recreate(l.goal)
	l.state.settle()
	l.best = l.state.plan()
	if !s.betters(l) {
		if s.best.Complete() && l.best.Cost.Less(s.best.Cost) {
			s.starts = append(s.starts, l.best)
			s.starts = s.starts[max(0, len(s.starts)-mostStarts):]
		}
		return false
	}
	s.best = l.best
	s.spread()
	return true
}

// mostStarts is how many plans are kept for lanes to set out from.
const mostStarts = 8

// setOut starts lane l anew: from a plan that lacks some parts, towards counts of
// stock that may be enough, or from the best plan once more. Where there is one
// size, the price says how many.
func (s *Search) setOut(l *lane) {
	switch n := l.below(4); {
	case len(s.targets) > 0 && !s.oneSize() && n > 0:
		l.setOut(s.best, s.best.Cost, s.targets[l.below(len(s.targets))])
	case len(s.starts) > 0 && n < 2:
		l.setOut(s.starts[l.below(len(s.starts))], s.best.Cost, nil)
	default:
		l.setOut(s.best, s.best.Cost, nil)
	}
}

// spread sets the lanes that lag behind on the best plan.
func (s *Search) spread() {
	for _, l := range s.lanes {
		if l.best == nil || s.best.Complete() && s.best.Cost.Less(l.goal) {
			l.follow(s.best)
		}
	}
	if s.best.Complete() {
		s.starts = slices.DeleteFunc(s.starts, func(p *instance.Plan) bool { return !p.Cost.Less(s.best.Cost) })
		s.tidyAnew(s.best)
		s.trimLeft = trimRounds
		if s.oneSize() {
			s.trimLeft = 0 // the price has settled the area
		}
	}
}

// oneSize reports whether all that is bought is of one size and has a price.
func (s *Search) oneSize() bool {
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
	for i, l := range s.lanes {
		n += l.steps + s.tidiers[i].steps
	}
	return n
}
