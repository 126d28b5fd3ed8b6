package progress

import (
	"sawbill/nest/cutplan"
	"sawbill/stock"
)

// Remnant is a part of one sheet or board, as the cuts so far have left it.
type Remnant struct {
	// Root is the plan for cutting it further; X and Y are its place in the stock.
	Root cutplan.Node
	// Freed: no planned cut remains. If it is not freed and Root is not a split, it still
	// has to be trimmed or taken in hand.
	Freed bool
	// After is the number of the cut that freed it, 0 if none. Remainder: it is the far
	// side of that cut, not the piece that came off.
	After     int
	Remainder bool
	// Trims are the trim cuts still to be made, if some side is not trimmed yet.
	Trims stock.Trims
}

// outline identifies a remnant within its stock: its place, and the trim left to cut.
type outline struct {
	rectangle
	trims stock.Trims
}

func (l Remnant) outline() outline { return outline{rectangleOf(l.Root), l.Trims} }

// remnants lists the remnants of a sheet or board. They add up to it exactly, less the
// kerfs of the cuts made and the trim.
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

// untrimmed returns the trim still to be cut off each side, and the last trim cut made.
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

// walk follows the tree of a layout along the cuts that were made.
type walk struct {
	made  []bool
	cutAt map[rectangle]int // the cut that takes a piece off
	all   []Remnant
}

type rectangle struct{ x, y, length, width stock.Length }

func rectangleOf(n cutplan.Node) rectangle { return rectangle{n.X, n.Y, n.Length, n.Width} }

// visit collects n, or the remnants that it was divided into.
func (w *walk) visit(n cutplan.Node, after int, remainder bool) {
	if n.Use != cutplan.Split {
		w.all = append(w.all, Remnant{Root: n, Freed: true, After: after, Remainder: remainder})
		return
	}
	off := 0 // number of children cut off
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

// remainderOf returns the part of a split beyond the children that were cut off.
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
