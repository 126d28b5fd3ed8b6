// Package edging is the sign for edging on labels and in cutting diagrams: a wide line
// beside each edge that gets it.
package edging

import "sawbill/report/internal/drawing"

// Sides are the sides of a piece, as it is drawn, that get edging.
type Sides struct{ Lower, Upper, Left, Right bool }

// Turned are the sides once the piece is turned by a quarter, its right end upwards.
func (s Sides) Turned() Sides {
	return Sides{Lower: s.Left, Upper: s.Right, Left: s.Upper, Right: s.Lower}
}

// Over are the sides once the piece is turned over along its length.
func (s Sides) Over() Sides {
	return Sides{Lower: s.Upper, Upper: s.Lower, Left: s.Left, Right: s.Right}
}

// Inset makes a box smaller on these sides.
func (s Sides) Inset(box drawing.Rect, by float64) drawing.Rect {
	if s.Lower {
		box.H -= by
	}
	if s.Upper {
		box.Y, box.H = box.Y+by, box.H-by
	}
	if s.Left {
		box.X, box.W = box.X+by, box.W-by
	}
	if s.Right {
		box.W -= by
	}
	return box
}

// Draw draws the lines for a piece, so many millimeters outside its outline; within it if
// that is negative.
func (s Sides) Draw(d *drawing.Drawing, box drawing.Rect, off float64) {
	for _, l := range s.lines(box, off) {
		d.Line(l[0], l[1], drawing.Outline)
	}
}

func (s Sides) lines(box drawing.Rect, off float64) (all [][2]drawing.Point) {
	out := box.Inset(-off)
	level := box // of lines beside the lower and the upper edge
	if off < 0 {
		level = out
	}
	add := func(is bool, from, to drawing.Point) {
		if is {
			all = append(all, [2]drawing.Point{from, to})
		}
	}
	add(s.Lower, drawing.Point{X: level.X, Y: out.Bottom()}, drawing.Point{X: level.Right(), Y: out.Bottom()})
	add(s.Upper, drawing.Point{X: level.X, Y: out.Y}, drawing.Point{X: level.Right(), Y: out.Y})
	add(s.Left, drawing.Point{X: out.X, Y: level.Y}, drawing.Point{X: out.X, Y: level.Bottom()})
	add(s.Right, drawing.Point{X: out.Right(), Y: level.Y}, drawing.Point{X: out.Right(), Y: level.Bottom()})
	return all
}

// Boxes are the paper of the lines.
func (s Sides) Boxes(box drawing.Rect, off float64) []drawing.Rect {
	half := drawing.Outline.Width() / 2
	var all []drawing.Rect
	for _, l := range s.lines(box, off) {
		all = append(all, drawing.Rect{X: l[0].X - half, Y: l[0].Y - half, W: l[1].X - l[0].X + 2*half, H: l[1].Y - l[0].Y + 2*half})
	}
	return all
}
