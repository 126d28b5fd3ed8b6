package diagram

import (
	"cmp"
	"slices"

	"sawbill/nest/cutplan"
	"sawbill/stock"
)

// runningLine is marks that are all measured from one reference end.
type runningLine struct {
	from  stock.Length // where the piece begins whose end is the reference
	to    stock.Length // where it ends
	marks []mark
}

// mark is where a crosscut's near side lies: X from the stock's end, at from the
// reference end.
type mark struct {
	x, at   stock.Length
	numbers []int
	off     stock.Length // of trim that has no setting: what falls off, kerf included
	stop    stock.Length // setting of the stop, from the cut before; 0 where there is none
}

// runningLines gathers crosscuts into lines; strips that are cut at the same marks
// share one.
func runningLines(splits [][]parting) []runningLine {
	var lines []runningLine
	for _, split := range splits {
		if split[0].step.Cut != cutplan.Crosscut {
			continue
		}
		l := runningLine{from: split[0].step.X - split[0].step.Mark}
		for _, p := range split {
			l.marks = append(l.marks, mark{x: p.step.X, at: p.step.Mark, numbers: p.numbers, stop: stopOf(p.step)})
			l.to = p.step.X
		}
		at := slices.IndexFunc(lines, func(k runningLine) bool { return k.sameMarks(l) })
		if at < 0 {
			lines = append(lines, l)
			continue
		}
		for i := range l.marks {
			m := &lines[at].marks[i]
			m.numbers = slices.Sorted(slices.Values(append(slices.Clone(m.numbers), l.marks[i].numbers...)))
		}
	}
	return lines
}

// stopOf is what the stop is set to; 0 where the cut has another guide.
func stopOf(s cutplan.Step) stock.Length {
	if s.Guide != cutplan.Stop {
		return 0
	}
	return s.Setting
}

func (l runningLine) sameMarks(k runningLine) bool {
	return l.from == k.from && slices.EqualFunc(l.marks, k.marks, func(a, b mark) bool { return a.x == b.x })
}

// levels puts lines that do not lie over one another beside one another.
func levels(lines []runningLine) [][]runningLine {
	var all [][]runningLine
	for _, l := range lines {
		at := slices.IndexFunc(all, func(level []runningLine) bool {
			return !slices.ContainsFunc(level, func(k runningLine) bool { return l.from < k.to && k.from < l.to })
		})
		if at < 0 {
			at = len(all)
			all = append(all, nil)
		}
		all[at] = append(all[at], l)
	}
	for _, level := range all {
		slices.SortStableFunc(level, func(a, b runningLine) int { return cmp.Compare(a.from, b.from) })
	}
	return all
}
