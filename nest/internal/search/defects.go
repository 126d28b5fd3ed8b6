package search

import (
	"math"
	"slices"

	"sawbill/nest/internal/instance"
)

// refusal lists the trees and orientations, and the stock for new trees, in which the part that
// is being inserted would hold a defect.
type refusal struct {
	placements []refused
	stocks     []int
}

type refused struct {
	tree   int
	turned bool
}

func (r *refusal) has(tree int, turned bool) bool {
	return slices.Contains(r.placements, refused{tree, turned})
}

func (r *refusal) stock(i int) bool { return slices.Contains(r.stocks, i) }

// insertClear is insert where some stock has defects. A placement stays if the tree can still
// be arranged around them; else another orientation, tree or stock follows.
func (w *walk) insertClear(k int32, goal instance.Cost, missing []int32) bool {
	s, refusal := w.state, &w.insertion.refusal
	refusal.placements, refusal.stocks = refusal.placements[:0], refusal.stocks[:0]
	for {
		if at, ok := w.bestPlacement(k); ok {
			if w.placeClear(at, k) {
				return true
			}
			continue
		}
		stock := w.chooseStock(k, goal, missing)
		if stock < 0 {
			return false
		}
		n := s.open(stock)
		for {
			var at placement
			best := int64(math.MinInt64)
			if !w.searchTree(k, n, &at, &best, false) {
				break
			}
			if w.placeClear(at, k) {
				return true
			}
		}
		s.close(n)
		refusal.stocks = append(refusal.stocks, stock)
	}
}

// placeClear places a part of kind k. If its tree then has a part in a defect, in any order that
// is found, it takes the part back and refuses the placement.
func (w *walk) placeClear(at placement, k int32) bool {
	s := w.state
	s.place(at, k)
	t := s.trees[at.tree]
	if !s.e.stock[t.stock].flawed {
		return true
	}
	if _, ok := s.e.in.Arrange(int(t.stock), instance.Normalize(t.piece(0))); ok {
		return true
	}
	before := t.value
	t.remove(t.parts[len(t.parts)-1], nil, s.e)
	s.heads[at.tree] = t.gapSummary()
	s.value += t.value - before
	s.missingArea += s.e.kinds[k].area
	w.insertion.refusal.placements = append(w.insertion.refusal.placements, refused{at.tree, at.orientation.turned})
	return false
}
