package search

// Cover that chance does not find is sought with a spare: a kind that no
// leftover holds is wanted once more than it is, for the length of a walk. Where
// all can be placed, one of that kind is taken out again, and the leftover in
// its place holds it.

// addSpare starts from the best plan with a spare of a kind that it does not
// cover, or with none if it covers all that there is room for.
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

// removeSpare takes that piece of the spare's kind out which leaves the best plan,
// and keeps that if it is the best so far. The state remains.
func (p *polisher) removeSpare() {
	s := p.state
	tree, part := none, none
	best := p.found
	for i := range s.trees {
		for j := range s.trees[i].parts { // undo exchanges trees, but not the order of their parts
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
