package stock

import (
	"cmp"
	"slices"
)

// Zone is a stretch of a board, over its whole width, that no part may
// contain: knots, splits, rot. It is measured from the reference end.
type Zone struct{ From, To Length }

// Section tells where a piece of stock lies on the board that it is first cut
// out of, between defects or between a defect and an end. The zero Section is
// of stock that is whole.
type Section struct {
	From  Length // from the board's reference end
	Board Length // length of the whole board
}

// ClearSections cuts a board apart at its defects: what is left between them
// and inside the trim, from the reference end on, each a piece of its own
// without trim. A board without defects inside its trim is its own only section.
//
// The blade runs inside a defect. One wider than a kerf costs its own width;
// one narrower costs a kerf, which begins where the defect does and takes the
// rest from the section behind it. At the ends of the board nothing is cut off
// beyond trim and defects.
func (s Stock) ClearSections(defects []Zone, kerf Length) []Stock {
	defects = slices.SortedFunc(slices.Values(defects), func(a, b Zone) int { return cmp.Compare(a.From, b.From) })
	end := s.Length - s.Trim
	var sections []Stock
	from := s.Trim // where the next section may begin
	add := func(to Length) {
		if to = min(to, end); to <= from {
			return
		}
		section := s
		section.Length, section.Trim = to-from, 0
		section.Section = Section{From: from, Board: s.Length}
		sections = append(sections, section)
		from = to + kerf
	}
	for _, d := range defects {
		add(d.From)
		from = max(from, d.To)
	}
	add(end)
	if len(sections) == 1 && sections[0].Length == end-s.Trim {
		return []Stock{s} // no defect reaches beyond the trim
	}
	return sections
}

// OnBoard is the stretch of its board that a section takes; of a whole board,
// all of it.
func (s Stock) OnBoard() Zone { return Zone{s.Section.From, s.Section.From + s.Length} }

// IsSection reports whether s is first cut out of a larger board.
func (s Stock) IsSection() bool { return s.Section != Section{} }
