package search

import (
	"math"
	"slices"

	"sawbill/nest/internal/instance"
)

// refusal lists the placements, and the stock for new trees, that are forbidden to the part that
// is being inserted.
type refusal struct {
	placements []refused
	stocks     []int
}

// refused stands for the placements in a tree in one orientation that begin with one cut.
type refused struct {
	tree   int
	turned bool
	dir    instance.Dir
}

func (r *refusal) has(tree int, turned bool, dir instance.Dir) bool {
	return slices.Contains(r.placements, refused{tree, turned, dir})
}

func (r *refusal) stock(i int) bool { return slices.Contains(r.stocks, i) }

// insertChecked is insert where some stock is checked. A placement stays if the tree is allowed
// then; else another cut, orientation, tree or stock follows.
func (w *walk) insertChecked(k int32, goal instance.Cost, missing []int32) bool {
	s, refusal := w.state, &w.insertion.refusal
	refusal.placements, refusal.stocks = refusal.placements[:0], refusal.stocks[:0]
	for {
		if at, ok := w.bestPlacement(k); ok {
			if w.placeChecked(at, k) {
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
			if w.placeChecked(at, k) {
				return true
			}
		}
		s.close(n)
		refusal.stocks = append(refusal.stocks, stock)
	}
}

// placeChecked places a part of kind k. If its tree is then not allowed, it takes the part back and
// refuses the placement.
func (w *walk) placeChecked(at placement, k int32) bool {
	s := w.state
	s.place(at, k)
	t := s.trees[at.tree]
	if !s.e.stock[t.stock].checked || s.e.in.Allows(int(t.stock), instance.Normalize(t.piece(0))) {
		return true
	}
	before := t.value
	t.remove(t.parts[len(t.parts)-1], nil, s.e)
	s.heads[at.tree] = t.gapSummary()
	s.value += t.value - before
	s.missingArea += s.e.kinds[k].area
	w.insertion.refusal.placements = append(w.insertion.refusal.placements, refused{at.tree, at.orientation.turned, at.dir})
	return false
}
