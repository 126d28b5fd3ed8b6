package marksheet

import (
	"slices"

	"sawbill/report/internal/drawing"
	"sawbill/stock"
	"sawbill/stock/casework"
)

const (
	thinnest = 1.0 // mm that a cut takes on the paper, at least
)

// sketch is a figure as it is drawn: the shapes on the piece, then the lanes
// around it.
type sketch struct {
	placing
	ruler stock.Ruler
	size  float64 // of figures, pt
	d     drawing.Drawing
	lanes []*lane
	mark  int // that is being drawn
	// origin is where the outline lies once the sketch is finished.
	origin drawing.Point
}

// shapes draws what each mark cuts away, or where it lies, and takes its
// positions.
func (s *sketch) shapes() {
	for i, k := range s.marks {
		s.mark = i
		axis, _ := measured(k.Measure)
		_, second := measured(k.Across)
		switch {
		case k.What == casework.SlideLine:
			s.slides(k, axis)
		case k.What == casework.Hinge || k.What == casework.Catch:
			s.fittings(k, axis)
		case second && k.Width > 0 && len(k.Across.At) == 2:
			s.holes(k, axis)
		case second:
			s.points(k, axis)
		case s.face.Extent == casework.End && k.Width > 0:
			s.notches(k, axis)
		case s.face.Extent == casework.End:
			s.tenon(k, axis)
		default:
			s.bands(k, axis)
		}
	}
}

// bands are cuts from edge to edge, or lines.
func (s *sketch) bands(k casework.Mark, axis casework.Axis) {
	other := s.other(axis)
	from, to := k.Stops[0], s.solid.Size[other]-k.Stops[1]
	for i, at := range k.At {
		r := s.cut(k.Measure, axis, at, k.Width, from, to)
		switch {
		case k.Width == 0:
			s.edges(r, axis, drawing.FineCut)
		case k.Depth > 0:
			s.d.Hatch(r)
			s.d.Box(r, drawing.Narrow, drawing.NoFill)
		default:
			s.edges(r, axis, drawing.Dashed)
		}
		s.position(k, k.Measure, axis, at, k.Width, i, r)
	}
}

// cut is the paper of what is cut at a position and so wide, between two places
// of the other axis.
func (s *sketch) cut(m casework.Measure, axis casework.Axis, at, width, from, to stock.Length) drawing.Rect {
	size := s.solid.Size[axis]
	a, b := fromZero(m, at, size), fromZero(m, at+width, size)
	r := s.rect(axis, a, b, from, to)
	if width == 0 {
		return r
	}
	if axis == s.level && r.W < thinnest {
		if s.along(axis, b) < s.along(axis, a) {
			r.X -= thinnest - r.W
		}
		r.W = thinnest
	}
	if axis == s.upright && r.H < thinnest {
		if s.along(axis, b) < s.along(axis, a) {
			r.Y -= thinnest - r.H
		}
		r.H = thinnest
	}
	return r
}

// edges are the two lines, or the one, that bound a rectangle along an axis.
func (s *sketch) edges(r drawing.Rect, axis casework.Axis, pen drawing.Pen) {
	if axis == s.level {
		s.d.Line(drawing.Point{X: r.X, Y: r.Y}, drawing.Point{X: r.X, Y: r.Bottom()}, pen)
		if r.W > 0 {
			s.d.Line(drawing.Point{X: r.Right(), Y: r.Y}, drawing.Point{X: r.Right(), Y: r.Bottom()}, pen)
		}
		return
	}
	s.d.Line(drawing.Point{X: r.X, Y: r.Y}, drawing.Point{X: r.Right(), Y: r.Y}, pen)
	if r.H > 0 {
		s.d.Line(drawing.Point{X: r.X, Y: r.Bottom()}, drawing.Point{X: r.Right(), Y: r.Bottom()}, pen)
	}
}

// holes are mortises: between two lines across, and so long.
func (s *sketch) holes(k casework.Mark, axis casework.Axis) {
	other, _ := measured(k.Across)
	size := s.solid.Size[other]
	a, b := fromZero(k.Across, k.Across.At[0], size), fromZero(k.Across, k.Across.At[1], size)
	for i, at := range k.At {
		r := s.cut(k.Measure, axis, at, k.Width, min(a, b), max(a, b))
		s.d.Hatch(r)
		s.d.Box(r, drawing.Narrow, drawing.NoFill)
		s.position(k, k.Measure, axis, at, k.Width, i, r)
		if i == 0 {
			s.position(casework.Mark{What: k.What}, k.Across, other, k.Across.At[0], k.Across.At[1]-k.Across.At[0], i, r)
		}
	}
}

// points are holes, each row with each position.
func (s *sketch) points(k casework.Mark, axis casework.Axis) {
	other, _ := measured(k.Across)
	var all []drawing.Point
	for _, at := range k.At {
		for _, row := range k.Across.At {
			a, b := fromZero(k.Measure, at, s.solid.Size[axis]), fromZero(k.Across, row, s.solid.Size[other])
			r := s.rect(axis, a, a, b, b)
			all = append(all, drawing.Point{X: r.X, Y: r.Y})
		}
	}
	around := func(keep func(drawing.Point) bool) drawing.Rect {
		var r drawing.Rect
		first := true
		for _, c := range all {
			if !keep(c) {
				continue
			}
			if first {
				r, first = drawing.Rect{X: c.X, Y: c.Y}, false
			}
			x, y := min(r.X, c.X), min(r.Y, c.Y)
			r = drawing.Rect{X: x, Y: y, W: max(r.Right(), c.X) - x, H: max(r.Bottom(), c.Y) - y}
		}
		return r
	}
	for _, c := range all {
		s.hole(k.What, c)
	}
	positions := func(k casework.Mark, m casework.Measure, axis casework.Axis) {
		for i, at := range m.At {
			on := s.along(axis, fromZero(m, at, s.solid.Size[axis]))
			s.position(k, m, axis, at, 0, i, around(func(c drawing.Point) bool {
				along := c.X
				if axis == s.upright {
					along = c.Y
				}
				return along-on < lineHair && on-along < lineHair
			}))
		}
	}
	positions(k, k.Measure, axis)
	positions(casework.Mark{What: k.What}, k.Across, other)
}

// notches are cut out at the ends that have them, from the end as far in as they
// are deep.
func (s *sketch) notches(k casework.Mark, axis casework.Axis) {
	along := s.other(axis)
	size := s.solid.Size[along]
	var ends [][2]stock.Length
	_, far, one := s.face.Side.Axis()
	if !one || !far {
		ends = append(ends, [2]stock.Length{0, k.Depth})
	}
	if !one || far {
		ends = append(ends, [2]stock.Length{size - k.Depth, size})
	}
	for i, at := range k.At {
		for _, e := range ends {
			r := s.cut(k.Measure, axis, at, k.Width, e[0], e[1])
			s.d.Hatch(r)
			s.d.Box(r, drawing.FineCut, drawing.NoFill)
			s.position(k, k.Measure, axis, at, k.Width, i, r)
		}
	}
}

// tenon draws one of the marks of a tenon: its shoulders across the piece; its
// cheeks or its edges from the end to the shoulders, and away from them what is
// cut off.
func (s *sketch) tenon(k casework.Mark, axis casework.Axis) {
	other := s.other(axis)
	ends := [][2]stock.Length{{0, s.solid.Size[other]}}
	for _, l := range s.marks {
		if along, _ := measured(l.Measure); along == other && axis != s.solid.Along && len(l.At) == 2 {
			if other == s.solid.Along { // the shoulders
				ends = [][2]stock.Length{{0, l.At[0]}, {l.At[1], s.solid.Size[other]}}
			}
		}
	}
	for i, at := range k.At {
		for _, e := range ends {
			r := s.cut(k.Measure, axis, at, 0, e[0], e[1])
			s.edges(r, axis, drawing.FineCut)
			s.position(k, k.Measure, axis, at, 0, i, r)
		}
	}
	if axis == s.solid.Along || len(k.At) != 2 {
		return
	}
	for _, e := range ends {
		size := s.solid.Size[axis]
		a, b := fromZero(k.Measure, k.At[0], size), fromZero(k.Measure, k.At[1], size)
		s.d.Hatch(s.rect(axis, 0, min(a, b), e[0], e[1]))
		s.d.Hatch(s.rect(axis, max(a, b), size, e[0], e[1]))
	}
}

// other is the axis across one, on the paper.
func (s *sketch) other(a casework.Axis) casework.Axis {
	if a == s.level {
		return s.upright
	}
	return s.level
}

// position adds one position of a mark to the lane of its edge; r is drawn there. A cut with a
// width is dimensioned from edge to edge.
func (s *sketch) position(k casework.Mark, m casework.Measure, axis casework.Axis, at, width stock.Length, i int, r drawing.Rect) {
	var l *lane
	s.lanes, l = laneOf(s.lanes, m.From, s.size, s.placing)
	text := s.ruler.Print(at)
	size := s.solid.Size[axis]
	on := s.along(axis, fromZero(m, at, size))
	if width > 0 {
		text += " to " + s.ruler.Print(at+width)
		on = (on + s.along(axis, fromZero(m, at+width, size))) / 2
	}
	text += " " + k.Kind()
	start := r.X
	switch {
	case l.level && !l.far:
		start = r.Bottom()
	case l.level:
		start = r.Y
	case !l.far:
		start = r.Right()
	}
	l.add(tick{at: on, start: start, text: text, between: i > 0 && i < len(m.At)-1, mark: s.mark})
}

// places are where something is drawn on an axis, to be kept where it is broken.
func (f figure) places(a casework.Axis) []stock.Length {
	size := f.solid.Size[a]
	var all []stock.Length
	for _, k := range f.marks {
		for _, m := range []casework.Measure{k.Measure, k.Across} {
			axis, ok := measured(m)
			if !ok {
				continue
			}
			if axis != a {
				if sameMeasure(m, k.Measure) && (len(k.Across.At) == 0 || k.What == casework.SlideLine) {
					all = append(all, k.Stops[0], size-k.Stops[1])
					if f.face.Extent == casework.End && k.Width > 0 {
						all = append(all, k.Depth, size-k.Depth)
					}
				}
				continue
			}
			for _, at := range m.At {
				all = append(all, fromZero(m, at, size))
				if sameMeasure(m, k.Measure) && k.Width > 0 {
					all = append(all, fromZero(m, at+k.Width, size))
				}
			}
		}
	}
	return slices.DeleteFunc(all, func(l stock.Length) bool { return l < 0 || l > size })
}
