package search

// ruin removes some of the plan: scattered parts, regions of trees, or a whole tree.
func (w *walk) ruin() {
	s := w.state
	switch n := len(s.trees); {
	case n == 0:
	case w.below(8) == 0:
		s.remove(w.below(n), 0)
		w.ruinRegions(1)
	case w.below(3) == 0:
		w.ruinParts(1 + w.below(meanRuin))
	default:
		w.ruinRegions(1 + w.below(3))
	}
}

// ruinParts removes n random parts.
func (w *walk) ruinParts(n int) {
	s := w.state
	for range n {
		i := w.below(len(s.trees))
		if t := s.trees[i]; !t.closed {
			s.remove(i, t.parts[w.below(len(t.parts))])
		}
	}
}

// ruinRegions picks a part in n trees and removes the split some levels above it.
func (w *walk) ruinRegions(n int) {
	s := w.state
	for range n {
		i := w.below(len(s.trees))
		t := s.trees[i]
		if t.closed {
			continue
		}
		x := t.parts[w.below(len(t.parts))]
		for up := w.below(4); up > 0 && t.nodes[x].parent != none; up-- {
			x = t.nodes[x].parent
		}
		s.remove(i, x)
	}
}

// meetGoal removes trees until the plan costs less than its goal and cuts no more pieces than
// its limits. It removes the emptiest trees or random ones.
func (w *walk) meetGoal() {
	s := w.state
	for i := range s.used {
		for s.used[i] > w.maxPieces[i] && w.removeTree(int32(i)) {
		}
	}
	for !s.cost.Less(w.goal) && w.removeTree(anyStock) {
	}
	s.commit()
}

// anyStock selects every stock.
const anyStock = int32(-1)

// removeTree removes one tree of a stock and reports whether there was one.
func (w *walk) removeTree(stock int32) bool {
	s := w.state
	worst, free, chosen := -1, 0.0, 0
	random := w.below(2) == 0
	for i, t := range s.trees {
		if t.closed || stock != anyStock && t.stock != stock {
			continue
		}
		if chosen++; random {
			if w.below(chosen) == 0 {
				worst = i
			}
		} else if f := float64(t.freeArea) / float64(w.e.stock[t.stock].area); worst < 0 || f > free {
			worst, free = i, f
		}
	}
	if worst < 0 {
		return false
	}
	s.remove(worst, 0)
	return true
}
