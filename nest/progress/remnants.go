package progress

import (
	"sawbill/nest/cutplan"
	"sawbill/stock"
)

// Remnant is a piece of one piece of stock as the cuts so far have left it.
type Remnant struct {
	// Root says how it is to be cut further; X and Y are those in the stock.
	Root cutplan.Node
	// Freed: it is what it was to become. If it is not and Root is no split, it still
	// has to be trimmed or taken in hand.
	Freed bool
	// After is the cut that it came of, 0 none; Rest tells what remained of that cut
	// from what came off.
	After     int
	Remainder bool
	// Trims are those still to be made; only of what was not trimmed all round.
	Trims stock.Trims
}

// outline tells one piece of a stock from the others: its place, and the trim left to cut.
type outline struct {
	rectangle
	trims stock.Trims
}

func (l Remnant) outline() outline { return outline{rectangleOf(l.Root), l.Trims} }

// Remnants lists what there is of a piece of stock, with the places in it: layout and copy as
// printed, from 1.
func (s *State) Remnants(layout, copy int) []Remnant { return s.remnants(layout-1, copy-1) }

// remnants is what there is of one piece of stock: exactly it, less the kerfs of the cuts
// made and what was trimmed off.
func (s *State) remnants(layout, copy int) []Remnant {
	l, c, steps := s.plan.Layouts[layout], s.copies[layout][copy], s.steps[layout]
	if left, trimmed := untrimmed(l.Stock, steps, c.made); left != (stock.Trims{}) || !c.begun() {
		return []Remnant{{Root: l.Root, After: trimmed, Trims: left}}
	}
	w := walk{made: c.made, cutAt: map[rectangle]int{}}
	after := 0
	for _, st := range steps {
		if st.Trim {
			after = st.Number
		} else {
			w.cutAt[rectangleOf(*st.OffNode)] = st.Number
		}
	}
	w.visit(l.Root, after, false)
	return w.all
}

// untrimmed is what is still to be trimmed off each side, and the last such cut made.
func untrimmed(s stock.Stock, steps []cutplan.Step, made []bool) (left stock.Trims, last int) {
	t := s.Trims()
	for i, st := range steps {
		switch {
		case !st.Trim:
		case made[i]:
			last = st.Number
		case st.Cut == cutplan.Rip && st.Y == s.Width-t.FarEdge:
			left.FarEdge = t.FarEdge
		case st.Cut == cutplan.Rip:
			left.NearEdge = t.NearEdge
		case st.Cut == cutplan.Crosscut && st.X == s.Length-t.FarEnd:
			left.FarEnd = t.FarEnd
		default:
			left.NearEnd = t.NearEnd
		}
	}
	return left, last
}

// walk goes through the tree of a layout along the cuts that were made.
type walk struct {
	made  []bool
	cutAt map[rectangle]int // the cut that takes a piece off
	all   []Remnant
}

type rectangle struct{ x, y, length, width stock.Length }

func rectangleOf(n cutplan.Node) rectangle { return rectangle{n.X, n.Y, n.Length, n.Width} }

// visit notes n, or what it was divided into.
func (w *walk) visit(n cutplan.Node, after int, remainder bool) {
	if n.Use != cutplan.Split {
		w.all = append(w.all, Remnant{Root: n, Freed: true, After: after, Remainder: remainder})
		return
	}
	off := 0 // children that were cut off
	for off < len(n.Children) {
		cut, isCut := w.cutAt[rectangleOf(n.Children[off])]
		if !isCut || !w.made[cut-1] {
			break
		}
		w.visit(n.Children[off], cut, false)
		after, remainder = cut, true
		off++
	}
	if off == len(n.Children) {
		return // the last blade ran off the edge
	}
	last := n.Children[off]
	_, isCut := w.cutAt[rectangleOf(last)]
	if off == len(n.Children)-1 && !isCut && off > 0 {
		w.visit(last, after, remainder)
		return
	}
	if off > 0 {
		n = remainderOf(n, off)
	}
	w.all = append(w.all, Remnant{Root: n, After: after, Remainder: remainder})
}

// remainderOf is what remains of a split behind the children that were cut off.
func remainderOf(n cutplan.Node, off int) cutplan.Node {
	first := n.Children[off]
	n.Children = n.Children[off:]
	if n.Cut == cutplan.Rip {
		n.Width -= first.Y - n.Y
		n.Y = first.Y
	} else {
		n.Length -= first.X - n.X
		n.X = first.X
	}
	return n
}
