package search

// A spare raises coverage that random moves do not find: for one walk, a kind that no leftover
// holds has one more than its demand. If all parts fit, one of that kind is removed again, and
// the leftover in its place holds it.

// addSpare starts from the best plan with a spare of a random uncovered kind, if one fits the
// free area.
func (p *polisher) addSpare() {
	p.restartFrom(p.best, p.value)
	s := p.state
	var room int64
	for _, tree := range s.trees {
		room += tree.freeArea
	}
	p.evaluator.total(s)
	chosen := 0
	for _, k := range p.evaluator.uncovered {
		if p.e.kinds[k].area > room {
			continue
		}
		if chosen++; p.below(chosen) == 0 {
			p.spare = k
		}
	}
	if p.spare == none {
		return
	}
	s.missing = append(s.missing, p.spare)
	s.missingArea += p.e.kinds[p.spare].area
	p.resetAcceptance()
}

// removeSpare tries to remove each part of the spare's kind, and keeps the best resulting plan
// if it is the best so far. The state does not change.
func (p *polisher) removeSpare() {
	s := p.state
	tree, part := none, none
	best := p.found
	for i := range s.trees {
		for j := range s.trees[i].parts { // undo swaps trees, but keeps the order of their parts
			n := s.trees[i].parts[j]
			if s.trees[i].nodes[n].kind != p.spare {
				continue
			}
			s.begin()
			s.remove(i, n)
			p.evaluator.evaluateChanged(s)
			if m := p.evaluator.total(s).truncate(p.lastObjective); m.compare(best) > 0 || s.cost.Less(p.best.Cost) {
				tree, part, best = int32(i), n, m
			}
			s.undo()
		}
	}
	if part == none {
		return
	}
	p.found = best
	s.begin()
	s.remove(int(tree), part)
	p.keepIfBest()
	s.undo()
	s.begin()
}
