package whole

import (
	"cmp"
	"slices"
)

// open chooses from a list what can still be part of a solution and the kind
// that is covered first.
func (s *Search) open(depth int, list []option) (work int64) {
	f := &s.frames[depth]
	f.list, f.choices, f.next = f.list[:0], 0, 0
	f.odd = 0
	if len(f.prices) > 0 {
		f.odd = f.prices[len(f.prices)-1].sets.odd(f.wanted)
	}
	work = s.keep(f, list)
	kind, ok := s.scarcest(f)
	if (!ok || len(f.list) < leastRelaxed) && !s.supplied() {
		if !ok {
			return work // without a choice
		}
		return work + s.choose(f, kind)
	}
	if !s.supplied() {
		work += s.recall(f)
		if s.hopeless(f) {
			return work
		}
	}
	p, solving := s.relax(f)
	work += solving
	if s.begins(p) {
		return work
	}
	return work + s.settle(f, p)
}

// settle goes by the prices of a frame's programme from here on.
func (s *Search) settle(f *frame, p *programme) (work int64) {
	p.note()
	p.value()
	work = s.reckon(f)
	if s.hopeless(f) {
		return work // without a choice
	}
	list := f.list
	f.list = f.list[:0] // in the place of those that fall out
	work += s.keep(f, list)
	kind, ok := s.scarcest(f)
	if !ok {
		return work
	}
	if s.roaming != nil {
		kind = s.surest(f, kind)
		defer s.forget(f)
	}
	return work + s.choose(f, kind)
}

// keep lists what can still be part of a solution.
func (s *Search) keep(f *frame, list []option) (work int64) {
	clear(s.options)
	clear(s.greatest)
	for _, o := range list {
		p := &s.patterns[o.pattern]
		work++
		if f.pieces[p.Stock] == 0 {
			continue
		}
		work += int64(2 * len(p.Counts))
		if !s.lose(f, p) {
			continue
		}
		some := false
		for n, c := range p.Counts {
			if s.held[n] > 0 {
				some = true
				s.options[c.Kind]++
				g := &s.greatest[c.Kind*len(f.pieces)+p.Stock]
				*g = max(*g, s.held[n])
			}
		}
		if some {
			f.list = append(f.list, option{o.pattern, s.loss[len(f.prices)-1]})
		}
	}
	return work
}

// scarcest is the kind that the fewest of the list hold; not ok where all pieces
// together do not hold some kind as often as is wanted.
func (s *Search) scarcest(f *frame) (kind int, ok bool) {
	kind = -1
	for k, n := range f.wanted {
		if n == 0 {
			continue
		}
		most := 0
		for t, g := range s.greatest[k*len(f.pieces):][:len(f.pieces)] {
			most += g * f.pieces[t]
		}
		if most < n {
			return kind, false
		}
		if kind < 0 || s.options[k] < s.options[kind] {
			kind = k
		}
	}
	return kind, true
}

// choose brings what covers the kind to the front of the list: what the programme is
// surest of first, if the search roams, then what loses least.
func (s *Search) choose(f *frame, kind int) (work int64) {
	for i := range f.list {
		if s.holds(f.list[i].pattern, kind) {
			f.list[i], f.list[f.choices] = f.list[f.choices], f.list[i]
			f.choices++
		}
	}
	slices.SortFunc(f.list[:f.choices], func(a, b option) int {
		if s.roaming != nil {
			if c := cmp.Compare(s.roaming.sure[b.pattern], s.roaming.sure[a.pattern]); c != 0 {
				return c
			}
		}
		return cmp.Or(cmp.Compare(a.loss, b.loss), cmp.Compare(a.pattern, b.pattern))
	})
	return int64(8*f.choices + 4*len(f.list))
}

func (s *Search) holds(pattern int32, kind int) bool {
	for _, c := range s.patterns[pattern].Counts {
		if c.Kind == kind {
			return true
		}
	}
	return false
}
