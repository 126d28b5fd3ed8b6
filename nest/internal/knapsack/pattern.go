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
		root = instance.Piece{L: s.l, W: s.w, Dir: first, Kind: instance.Leftover, Children: []instance.Piece{
			s.piece(id, r.l, s.w), {L: s.l - r.l, W: s.w, Kind: instance.Leftover},
		}}
	default:
		root = instance.Piece{L: s.l, W: s.w, Dir: first, Kind: instance.Leftover, Children: []instance.Piece{
			s.piece(id, s.l, r.w), {L: s.l, W: s.w - r.w, Kind: instance.Leftover},
		}}
	}
	return instance.Normalize(root)
}

// piece cuts a rectangle out of a piece that may be larger.
func (s *Search) piece(id int32, l, w int64) instance.Piece {
	r := &s.rects.at[id]
	if r.second == none {
		return instance.CutFrom(instance.Piece{L: r.l, W: r.w, Kind: s.items[r.first].Kind, Turned: r.turned}, l, w)
	}
	p := instance.Piece{L: l, W: w, Dir: r.dir, Kind: instance.Leftover}
	first := &s.rects.at[r.first]
	if r.dir == instance.Crosscut {
		p.Children = []instance.Piece{s.piece(r.first, first.l, w), s.piece(r.second, l-first.l, w)}
	} else {
		p.Children = []instance.Piece{s.piece(r.first, l, first.w), s.piece(r.second, l, w-first.w)}
	}
	return p
}

// Listed is one pattern that a search for all has found. It is good until the
// next start.
type Listed struct {
	s    *Search
	rect int32
}

// Value of the pattern.
func (f Listed) Value() int64 { return f.s.rects.at[f.rect].value }

// Count is how often the pattern holds an item.
func (f Listed) Count(item int) int {
	return int(f.s.packing.fields[item].of(&f.s.rects.at[f.rect].has))
}

// Piece is how the stock is cut; see [Search.Pattern].
func (f Listed) Piece() instance.Piece { return f.s.pattern(f.rect) }

// All calls yield with every pattern that a search for all has found, the most
// valuable first, but for those that hold no item more often than another one
// does.
func (s *Search) All(yield func(Listed) bool) {
	var ids []int32
	for id := range s.rects.at {
		if r := &s.rects.at[id]; !r.dominated && s.isListed(r) && s.maximal(r) {
			ids = append(ids, int32(id))
		}
	}
	slices.SortFunc(ids, func(a, b int32) int {
		return cmp.Or(cmp.Compare(s.rects.at[b].value, s.rects.at[a].value), cmp.Compare(a, b))
	})
	for _, id := range ids {
		if !yield(Listed{s, id}) {
			return
		}
	}
}

// isListed reports whether a rectangle is a pattern to be listed, and the first of
// those that hold the same.
func (s *Search) isListed(r *rect) bool {
	if !s.qualifies(r) {
		return false
	}
	for i := *s.rects.slot(&r.has); i != none; i = s.rects.at[i].next {
		if o := &s.rects.at[i]; s.qualifies(o) {
			return o == r
		}
	}
	return false
}

// qualifies reports whether a rectangle is a pattern above the threshold.
func (s *Search) qualifies(r *rect) bool {
	return r.value > s.threshold && s.rules.allow(&r.cuts, s.l-r.l, s.w-r.w)
}

// maximal reports whether no pattern holds one item more. Then none holds more
// at all, for what is taken out of a pattern leaves one.
func (s *Search) maximal(r *rect) bool {
	for n := range s.items {
		if s.items[n].Count == 0 {
			continue
		}
		has, ok := s.packing.sum(r.has, s.packing.one(n))
		if !ok {
			continue
		}
		for i := *s.rects.slot(&has); i != none; i = s.rects.at[i].next {
			if s.qualifies(&s.rects.at[i]) {
				return false
			}
		}
	}
	return true
}
