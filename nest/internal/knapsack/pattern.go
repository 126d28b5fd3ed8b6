package knapsack

import (
	"cmp"
	"slices"

	"sawbill/nest/internal/instance"
)

// Pattern is how the stock is cut for the best value found. There must be one.
// It has the form of [instance.Compact].
func (s *Search) Pattern() instance.Piece { return s.pattern(s.best) }

func (s *Search) pattern(id int32) instance.Piece {
	r := &s.rects.at[id]
	root := s.piece(id, s.l, s.w)
	switch first := s.rules.first(&r.cuts, s.l-r.l, s.w-r.w); {
	case first == r.dir:
	case first == instance.Crosscut:
		root = instance.Piece{L: s.l, W: s.w, Dir: first, Kind: instance.Rest, Children: []instance.Piece{
			s.piece(id, r.l, s.w), {L: s.l - r.l, W: s.w, Kind: instance.Rest},
		}}
	default:
		root = instance.Piece{L: s.l, W: s.w, Dir: first, Kind: instance.Rest, Children: []instance.Piece{
			s.piece(id, s.l, r.w), {L: s.l, W: s.w - r.w, Kind: instance.Rest},
		}}
	}
	return instance.Compact(root)
}

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
		if !yield(s.rects.at[id].value, s.pattern(id)) {
			return
		}
	}
}

// maximal lists the rectangles above the threshold that hold what no other
// holds, the most valuable first.
func (s *Search) maximal() []int32 {
	var ids []int32
	for id := range s.rects.at {
		r := &s.rects.at[id]
		if r.value > s.above && s.rules.allow(&r.cuts, s.l-r.l, s.w-r.w) {
			ids = append(ids, int32(id))
		}
	}
	// In this order none holds more than one before it.
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
