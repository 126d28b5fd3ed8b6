package planfile

import (
	"cmp"
	"errors"
	"slices"

	"sawbill/nest/cutplan"
)

// sound checks the indexes and numbers on which everything else relies.
func sound(p *cutplan.Plan) error {
	bad := errors.New("the plan in the file refers to blanks that it does not have")
	within := func(i int) bool { return i >= 0 && i < len(p.Bill) }
	for _, l := range p.Layouts {
		for _, n := range l.Leaves() {
			if n.Use == cutplan.Part && !within(n.Blank) || l.Repeat < 1 || l.Repeat > mostCounted {
				return bad
			}
		}
	}
	for _, u := range p.Unplaced {
		if !within(u.Blank) {
			return bad
		}
	}
	for _, u := range p.Cover.Uncovered {
		if !within(u.Blank) {
			return bad
		}
	}
	return numbered(p)
}

// numbered checks that each leftover has numbers of its own.
func numbered(p *cutplan.Plan) error {
	bad := errors.New("the offcuts in the file are not numbered as they are kept")
	type corner struct {
		layout int
		spot   spot
	}
	kept := map[corner]int{}
	offcuts := slices.SortedFunc(slices.Values(p.Offcuts()), func(a, b cutplan.NumberedOffcut) int { return cmp.Compare(a.First, b.First) })
	next := 1
	for _, k := range offcuts {
		if k.First < next || k.Layout < 0 || k.Layout >= len(p.Layouts) || k.Count != p.Layouts[k.Layout].Repeat {
			return bad
		}
		next = k.First + k.Count
		kept[corner{k.Layout, spotOf(k.Node)}]++
	}
	for i, l := range p.Layouts {
		for _, n := range l.Leaves() {
			if n.Use == cutplan.Offcut {
				kept[corner{i, spotOf(n)}]--
			}
		}
	}
	for _, n := range kept {
		if n != 0 {
			return bad
		}
	}
	return nil
}
