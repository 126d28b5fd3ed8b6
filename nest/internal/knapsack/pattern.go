package knapsack

import (
	"cmp"
	"slices"

	"sawbill/nest/internal/instance"
)

// Pattern is how the stock is cut for the best value found. There must be one.
func (s *Search) Pattern() instance.Piece { return s.piece(s.best, s.l, s.w) }

// piece cuts a rectangle out of a piece that may be larger.
func (s *Search) piece(id int32, l, w int64) instance.Piece {
	r := &s.rects.at[id]
	if r.second == none {
		return instance.Trim(instance.Piece{L: r.l, W: r.w, Kind: s.items[r.first].Kind, Turned: r.turned}, l, w)
	}
	p := instance.Piece{L: l, W: w, Dir: r.dir, Kind: instance.Rest}
	first := &s.rects.at[r.first]
	if r.dir == instance.Crosscut {
		p.Children = []instance.Piece{s.piece(r.first, first.l, w), s.piece(r.second, l-first.l, w)}
	} else {
		p.Children = []instance.Piece{s.piece(r.first, l, first.w), s.piece(r.second, l, w-first.w)}
	}
	return p
}

// All calls yield with every pattern that a search for all has found, but for
// those that hold no item more often than another one does.
func (s *Search) All(yield func(value int64, pattern instance.Piece) bool) {
	for _, id := range s.maximal() {
		if !yield(s.rects.at[id].value, s.piece(id, s.l, s.w)) {
			return
		}
	}
}

// maximal lists the rectangles above the threshold that hold what no other
// holds, the most valuable first.
func (s *Search) maximal() []int32 {
	var ids []int32
	for id, r := range s.rects.at {
		if r.value > s.above && !r.dead {
			ids = append(ids, int32(id))
		}
	}
	// None holds what one before it in this order holds, and more.
	slices.SortFunc(ids, func(a, b int32) int {
		p, q := &s.rects.at[a], &s.rects.at[b]
		return cmp.Or(cmp.Compare(q.value, p.value), cmp.Compare(s.form.total(&q.has), s.form.total(&p.has)), cmp.Compare(a, b))
	})
	kept := ids[:0]
	for _, id := range ids {
		if !slices.ContainsFunc(kept, func(k int32) bool { return s.form.within(&s.rects.at[id].has, &s.rects.at[k].has) }) {
			kept = append(kept, id)
		}
	}
	return kept
}
