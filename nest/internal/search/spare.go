package search

// Cover that chance does not find is sought with a spare: a kind that no
// leftover holds is wanted once more than it is, for the length of a walk. Where
// all can be placed, one of that kind is taken out again, and the leftover in
// its place holds it.

// addSpare starts from the best plan with a spare of a kind that it does not
// cover, or with none if it covers all that there is room for.
func (t *polisher) addSpare() {
	t.restartFrom(t.best, t.value)
	s := t.state
	var room int64
	for _, tree := range s.trees {
		room += tree.freeArea
	}
	t.evaluator.total(s)
	chosen := 0
	for _, k := range t.evaluator.uncovered {
		if t.e.kinds[k].area > room {
			continue
		}
		if chosen++; t.below(chosen) == 0 {
			t.spare = k
		}
	}
	if t.spare == none {
		return
	}
	s.missing = append(s.missing, t.spare)
	s.missingArea += t.e.kinds[t.spare].area
	t.resetAcceptance()
}

// removeSpare takes that piece of the spare's kind out which leaves the best plan,
// and keeps that if it is the best so far. The state remains.
func (t *polisher) removeSpare() {
	s := t.state
	tree, part := none, none
	best := t.found
	for i := range s.trees {
		for j := range s.trees[i].parts { // undo exchanges trees, but not the order of their parts
			n := s.trees[i].parts[j]
			if s.trees[i].nodes[n].kind != t.spare {
				continue
			}
			s.begin()
			s.remove(i, n)
			t.evaluator.evaluateChanged(s)
			if m := t.evaluator.total(s).truncate(t.lastObjective); m.compare(best) > 0 || s.cost.Less(t.best.Cost) {
				tree, part, best = int32(i), n, m
			}
			s.undo()
		}
	}
	if part == none {
		return
	}
	t.found = best
	s.begin()
	s.remove(int(tree), part)
	t.keepIfBest()
	s.undo()
	s.begin()
}
