package search

// ruin takes some of the plan apart: parts here and there, a region of a tree,
// or a whole tree, so that recreate can put them together better.
func (l *walk) ruin() {
	s := l.state
	switch n := len(s.trees); {
	case n == 0:
	case l.below(8) == 0:
		s.remove(l.below(n), 0)
		l.ruinRegions(1)
	case l.below(3) == 0:
		l.ruinParts(1 + l.below(meanRuin))
	default:
		l.ruinRegions(1 + l.below(3))
	}
}

// ruinParts removes n parts from anywhere.
func (l *walk) ruinParts(n int) {
	s := l.state
	for range n {
		i := l.below(len(s.trees))
		if t := s.trees[i]; !t.closed {
			s.remove(i, t.parts[l.below(len(t.parts))])
		}
	}
}

// ruinRegions picks a part in n trees and removes it with what lies around it:
// the split some levels above.
func (l *walk) ruinRegions(n int) {
	s := l.state
	for range n {
		i := l.below(len(s.trees))
		t := s.trees[i]
		if t.closed {
			continue
		}
		x := t.parts[l.below(len(t.parts))]
		for up := l.below(4); up > 0 && t.nodes[x].parent != none; up-- {
			x = t.nodes[x].parent
		}
		s.remove(i, x)
	}
}

// meetGoal removes trees until the plan is cheaper than its goal and cuts no more
// pieces than it may, the emptiest first or a random one.
func (l *walk) meetGoal() {
	s := l.state
	for i := range s.used {
		for s.used[i] > l.maxPieces[i] && l.removeTree(int32(i)) {
		}
	}
	for !s.cost.Less(l.goal) && l.removeTree(anyStock) {
	}
	s.commit()
}

// anyStock stands for every stock.
const anyStock = int32(-1)

// removeTree removes one tree of a stock and reports whether there was one.
func (l *walk) removeTree(stock int32) bool {
	s := l.state
	worst, free, chosen := -1, 0.0, 0
	random := l.below(2) == 0
	for i, t := range s.trees {
		if t.closed || stock != anyStock && t.stock != stock {
			continue
		}
		if chosen++; random {
			if l.below(chosen) == 0 {
				worst = i
			}
		} else if f := float64(t.freeArea) / float64(l.e.stock[t.stock].area); worst < 0 || f > free {
			worst, free = i, f
		}
	}
	if worst < 0 {
		return false
	}
	s.remove(worst, 0)
	return true
}
