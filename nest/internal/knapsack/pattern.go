package knapsack

import (
	"cmp"
	"slices"

	"sawbill/nest/internal/instance"
)

// Pattern returns the best pattern found, in the form of [instance.Normalize]. There must be
// one.
func (s *Search) Pattern() instance.Piece { return s.pattern(s.best) }

func (s *Search) pattern(id int32) instance.Piece {
	r := s.rects.at(id)
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

// piece cuts a rectangle out of a piece that is at least as large.
func (s *Search) piece(id int32, l, w int64) instance.Piece {
	r := s.rects.at(id)
	if r.second == none {
		return instance.CutFrom(instance.Piece{L: r.l, W: r.w, Kind: s.items[r.first].Kind, Turned: r.turned}, l, w)
	}
	p := instance.Piece{L: l, W: w, Dir: r.dir, Kind: instance.Leftover}
	first := s.rects.at(r.first)
	if r.dir == instance.Crosscut {
		p.Children = []instance.Piece{s.piece(r.first, first.l, w), s.piece(r.second, l-first.l, w)}
	} else {
		p.Children = []instance.Piece{s.piece(r.first, l, first.w), s.piece(r.second, l, w-first.w)}
	}
	return p
}

// Listed is one pattern that a search has found. It is valid until the next start.
type Listed struct {
	s    *Search
	rect int32
}

// Value returns the value of the pattern.
func (f Listed) Value() int64 { return f.s.rects.at(f.rect).value }

// Count returns how often the pattern holds an item.
func (f Listed) Count(item int) int {
	return int(f.s.packing.fields[item].of(&f.s.rects.at(f.rect).has))
}

// Piece returns the cutting tree; see [Search.Pattern].
func (f Listed) Piece() instance.Piece { return f.s.pattern(f.rect) }

// All asks Halt again after so many rectangles, or comparisons of them.
const (
	allAsks     = 1 << 4
	compareAsks = 1 << 14
)

// All calls yield with every pattern found, the most valuable first. It leaves out patterns
// that are part of another one.
func (s *Search) All(yield func(Listed) bool) {
	var ids []int32
	for id := range int32(s.rects.n) {
		if id%allAsks == 0 && s.Halt.On() {
			return
		}
		if r := s.rects.at(id); !r.dominated && s.isListed(r) && s.maximal(r) {
			ids = append(ids, id)
		}
	}
	compared, halted := 0, false
	slices.SortFunc(ids, func(a, b int32) int {
		if compared++; compared%compareAsks == 0 {
			halted = halted || s.Halt.On()
		}
		if halted {
			return 0 // the sort soon ends
		}
		return cmp.Or(cmp.Compare(s.rects.at(b).value, s.rects.at(a).value), cmp.Compare(a, b))
	})
	if halted {
		return
	}
	for _, id := range ids {
		if !yield(Listed{s, id}) {
			return
		}
	}
}

// isListed reports whether a rectangle is the first with its counts that qualifies.
func (s *Search) isListed(r *rect) bool {
	if !s.qualifies(r) {
		return false
	}
	for i := *s.rects.slot(&r.has); i != none; i = s.rects.at(i).next {
		if o := s.rects.at(i); s.qualifies(o) {
			return o == r
		}
	}
	return false
}

// qualifies reports whether a rectangle is a pattern above the threshold.
func (s *Search) qualifies(r *rect) bool {
	return r.value > s.threshold && s.rules.allow(&r.cuts, s.l-r.l, s.w-r.w)
}

// maximal reports whether no pattern holds one item more. Then none holds several more, since a
// pattern without some of its items is a pattern.
func (s *Search) maximal(r *rect) bool {
	for n := range s.items {
		if s.items[n].Count == 0 {
			continue
		}
		has, ok := s.packing.sum(r.has, s.packing.one(n))
		if !ok {
			continue
		}
		for i := *s.rects.slot(&has); i != none; i = s.rects.at(i).next {
			if s.qualifies(s.rects.at(i)) {
				return false
			}
		}
	}
	return true
}
