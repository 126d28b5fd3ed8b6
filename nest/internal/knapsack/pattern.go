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

// Found is one pattern that a search for all has found. It is good until the
// next start.
type Found struct {
	s    *Search
	rect int32
}

// Value of the pattern.
func (f Found) Value() int64 { return f.s.rects.at[f.rect].value }

// Count is how often the pattern holds an item.
func (f Found) Count(item int) int {
	return int(f.s.form.fields[item].of(&f.s.rects.at[f.rect].has))
}

// Piece is how the stock is cut; see [Search.Pattern].
func (f Found) Piece() instance.Piece { return f.s.pattern(f.rect) }

// All calls yield with every pattern that a search for all has found, the most
// valuable first, but for those that hold no item more often than another one
// does.
func (s *Search) All(yield func(Found) bool) {
	var ids []int32
	for id := range s.rects.at {
		if r := &s.rects.at[id]; !r.dead && s.lists(r) && s.maximal(r) {
			ids = append(ids, int32(id))
		}
	}
	slices.SortFunc(ids, func(a, b int32) int {
		return cmp.Or(cmp.Compare(s.rects.at[b].value, s.rects.at[a].value), cmp.Compare(a, b))
	})
	for _, id := range ids {
		if !yield(Found{s, id}) {
			return
		}
	}
}

// lists reports whether a rectangle is a pattern to be listed, and the first of
// those that hold the same.
func (s *Search) lists(r *rect) bool {
	if !s.answers(r) {
		return false
	}
	for i := *s.rects.slot(&r.has); i != none; i = s.rects.at[i].next {
		if o := &s.rects.at[i]; s.answers(o) {
			return o == r
		}
	}
	return false
}

// answers reports whether a rectangle is a pattern above the threshold.
func (s *Search) answers(r *rect) bool {
	return r.value > s.above && s.rules.allow(&r.cuts, s.l-r.l, s.w-r.w)
}

// maximal reports whether no pattern holds one item more. Then none holds more
// at all, for what is taken out of a pattern leaves one.
func (s *Search) maximal(r *rect) bool {
	for n := range s.items {
		if s.items[n].Count == 0 {
			continue
		}
		has, ok := s.form.sum(r.has, s.form.one(n))
		if !ok {
			continue
		}
		for i := *s.rects.slot(&has); i != none; i = s.rects.at[i].next {
			if s.answers(&s.rects.at[i]) {
				return false
			}
		}
	}
	return true
}
