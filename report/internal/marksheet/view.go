package marksheet

import (
	"sawbill/stock"
	"sawbill/stock/casework"
)

// view is how a face of a piece lies on the paper: as whoever stands before it
// sees it, upright things upright.
//
//	normal to X   front to the left or to the right, the bottom below
//	normal to Y   left and right, the bottom below
//	normal to Z   left on the left; the front below where it is seen from above;
//	              of an upright panel's end the front to the left or to the right
type view struct {
	normal         casework.Axis
	level, upright casework.Axis // of the paper
	// turned: the axis runs to the left, or downwards.
	levelTurned, uprightTurned bool
}

// viewOf looks at a face; towards is whether its normal runs along the axis, not
// against it.
func viewOf(s casework.Solid, normal casework.Axis, towards bool) view {
	v := view{normal: normal, level: casework.X, upright: casework.Z}
	switch {
	case normal == s.Along && normal == casework.Z && s.Size[casework.Y] > s.Size[casework.X]:
		v.level, v.upright, v.uprightTurned = casework.Y, casework.X, towards
	case normal == casework.X:
		v.level, v.levelTurned = casework.Y, !towards
	case normal == casework.Y:
		v.levelTurned = towards
	case normal == casework.Z:
		v.upright, v.uprightTurned = casework.Y, !towards
	}
	return v
}

// measured is the axis of positions; ok is false where there are none, or from an
// edge that is not known.
func measured(m casework.Measure) (axis casework.Axis, ok bool) {
	axis, _, ok = m.From.Side.Axis()
	return axis, ok && len(m.At) > 0
}

// fromZero turns a position into one from the near edge of a piece.
func fromZero(m casework.Measure, at, size stock.Length) stock.Length {
	if _, far, _ := m.From.Side.Axis(); far {
		return size - at
	}
	return at
}

// planes are the normals of the faces that a mark is drawn on: that of the face
// it is on, or, at an end, of those that show it.
//
//	            face         end
//	 shoulders  |            edges _____
//	 ___________|___             |_____| cheeks
//	|           |   | fingers
//	|___________|___| notches
func planes(k casework.Mark, spot casework.Spot, s casework.Solid) []casework.Axis {
	along, ok := measured(k.Measure)
	if !ok {
		return nil
	}
	var normals []casework.Axis
	switch spot.Face.Extent {
	case casework.Broad:
		normals = []casework.Axis{s.Through}
	case casework.Edge:
		normals = []casework.Axis{s.Across}
	case casework.End:
		cut := k.Width > 0 && k.Depth > 0 && len(k.Across.At) == 0
		switch {
		case len(k.Across.At) > 0:
			normals = []casework.Axis{s.Along}
		case along == s.Along, along == s.Across && cut:
			normals = []casework.Axis{s.Through}
		case along == s.Through && cut:
			normals = []casework.Axis{s.Across}
		case along == s.Across: // of a tenon
			normals = []casework.Axis{s.Through, s.Along}
		default:
			normals = []casework.Axis{s.Along}
		}
	}
	across, second := measured(k.Across)
	for _, n := range normals {
		if along == n || second && across == n {
			return nil
		}
	}
	return normals
}

// towards reports whether a face looks along its normal's axis, not against it. An inner face looks
// to the middle of what its piece belongs to. For two ends, and for faces that only show an end's
// marks, it is the front, the top or the right.
func towards(side casework.Side, normal casework.Axis, s casework.Solid, all []casework.Solid) bool {
	if axis, far, ok := side.Axis(); ok && axis == normal {
		return far
	}
	if side != casework.Inner && side != casework.Outer {
		return normal != casework.Y
	}
	var from, to stock.Length
	first := true
	for _, other := range all {
		if other.Drawer != s.Drawer {
			continue
		}
		if first {
			from, to, first = other.At[normal], other.End()[normal], false
		}
		from, to = min(from, other.At[normal]), max(to, other.End()[normal])
	}
	before := s.At[normal]+s.End()[normal] < from+to
	return before == (side == casework.Inner)
}
