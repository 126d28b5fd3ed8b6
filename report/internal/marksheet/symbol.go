package marksheet

import (
	"sawbill/report/internal/drawing"
	"sawbill/stock/casework"
)

// Symbols on the paper, each kind of mark its own:
//
//	(+)      a dowel or what is bored else     |>------|  a slide, from its start on
//	 *       a shelf pin, black                ==----     a hinge, at its edge
//	((+))    a handle's hole                   <|---      a catch, at its edge
//	[(+)]    the middle of a mortise           ||         an edge with edging
const (
	holeRadius = 0.6 // of a circle that stands for a hole, mm
	centerLine = 1.1 // from the middle of a hole to the end of its center lines, mm
	ring       = 1.2 // radius of the circle around a handle's hole
	wedge      = 2.4 // length of the wedge at the start of a slide
	butt       = 1.4 // half of the bar at its end, and of a hinge
	leaf       = 2.6 // length of a hinge
	edgingOff  = 1.1 // from the outline to the line of edging
)

// hole is a circle with its center lines, told apart by what is bored.
func (s *sketch) hole(what string, c drawing.Point) {
	switch what {
	case casework.HandleHole:
		s.d.Disc(c, ring, drawing.Narrow, drawing.White)
	case casework.ShelfPins:
		s.d.Disc(c, holeRadius, drawing.NoPen, drawing.Black)
		return
	case "mortise center":
		s.d.Box(drawing.Rect{X: c.X - ring, Y: c.Y - ring, W: 2 * ring, H: 2 * ring}, drawing.Narrow, drawing.White)
	}
	s.d.Disc(c, holeRadius, drawing.Fine, drawing.White)
	s.d.Line(drawing.Point{X: c.X - centerLine, Y: c.Y}, drawing.Point{X: c.X + centerLine, Y: c.Y}, drawing.Fine)
	s.d.Line(drawing.Point{X: c.X, Y: c.Y - centerLine}, drawing.Point{X: c.X, Y: c.Y + centerLine}, drawing.Fine)
}

// stretchOf is the line of a mark at a position, from the near stop to the far one, and
// the direction across it on the paper.
func (s *sketch) stretchOf(k casework.Mark, axis casework.Axis, r drawing.Rect) (from, to drawing.Point, across func(p drawing.Point, along, off float64) drawing.Point) {
	other := s.other(axis)
	a, b := s.along(other, k.Stops[0]), s.along(other, s.solid.Size[other]-k.Stops[1])
	sign := 1.0
	if b < a {
		sign = -1
	}
	if axis == s.upright { // the line lies level
		return drawing.Point{X: a, Y: r.Y}, drawing.Point{X: b, Y: r.Y}, func(p drawing.Point, along, off float64) drawing.Point {
			return drawing.Point{X: p.X + sign*along, Y: p.Y + off}
		}
	}
	return drawing.Point{X: r.X, Y: a}, drawing.Point{X: r.X, Y: b}, func(p drawing.Point, along, off float64) drawing.Point {
		return drawing.Point{X: p.X + off, Y: p.Y + sign*along}
	}
}

// slides are lines from where each slide begins, at a wedge, to where it ends.
func (s *sketch) slides(k casework.Mark, axis casework.Axis) {
	other := s.other(axis)
	for i, at := range k.At {
		r := s.cut(k.Measure, axis, at, 0, k.Stops[0], s.solid.Size[other]-k.Stops[1])
		from, to, off := s.stretchOf(k, axis, r)
		s.d.Line(from, to, drawing.FineCut)
		s.d.Polygon(drawing.NoPen, drawing.Black, off(from, 0, -wedge/2), off(from, 0, wedge/2), off(from, wedge, 0))
		s.d.Line(off(to, 0, -butt), off(to, 0, butt), drawing.FineCut)
		s.position(k, k.Measure, axis, at, 0, i, r)
		for j, begin := range k.Across.At {
			s.position(casework.Mark{What: "slide start"}, k.Across, other, begin, 0, j, r)
		}
	}
}

// fittings are short lines from the edge that a hinge or a catch is at.
func (s *sketch) fittings(k casework.Mark, axis casework.Axis) {
	other := s.other(axis)
	for i, at := range k.At {
		r := s.cut(k.Measure, axis, at, 0, k.Stops[0], s.solid.Size[other]-k.Stops[1])
		from, to, off := s.stretchOf(k, axis, r)
		s.d.Line(from, to, drawing.FineCut)
		edge, in := from, 1.0
		if k.Stops[1] == 0 {
			edge, in = to, -1
		}
		if k.What == casework.Hinge {
			s.d.Polygon(drawing.NoPen, drawing.Black, off(edge, 0, -butt/2), off(edge, in*leaf, -butt/2), off(edge, in*leaf, butt/2), off(edge, 0, butt/2))
		} else {
			s.d.Polygon(drawing.NoPen, drawing.Black, edge, off(edge, in*wedge, -butt), off(edge, in*wedge, butt))
		}
		s.position(k, k.Measure, axis, at, 0, i, r)
	}
}

// edging draws a wide line along every edge that gets edging and is seen from the side.
func (s *sketch) edging(box drawing.Rect) {
	for _, e := range s.edged {
		axis, far, _ := e.Side.Axis()
		if axis != s.level && axis != s.upright {
			continue
		}
		place := s.solid.Size[axis]
		if !far {
			place = 0
		}
		at := s.along(axis, place)
		if axis == s.level {
			if at += edgingOff; at < box.Center().X {
				at -= 2 * edgingOff
			}
			s.d.Line(drawing.Point{X: at, Y: box.Y}, drawing.Point{X: at, Y: box.Bottom()}, drawing.Outline)
			continue
		}
		if at += edgingOff; at < box.Center().Y {
			at -= 2 * edgingOff
		}
		s.d.Line(drawing.Point{X: box.X, Y: at}, drawing.Point{X: box.Right(), Y: at}, drawing.Outline)
	}
}
