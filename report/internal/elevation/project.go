package elevation

import (
	"slices"

	"sawbill/stock"
	"sawbill/stock/casework"
)

// eye is how a view looks at the case: which axis runs to the right of the
// picture, which upwards, and along which it looks, rising or falling.
type eye struct {
	right, up, along casework.Axis
	falling          bool
	cut              bool
}

func (v View) eye() eye {
	switch v {
	case Front:
		return eye{right: casework.X, up: casework.Z, along: casework.Y}
	case Level:
		return eye{right: casework.X, up: casework.Y, along: casework.Z, falling: true, cut: true}
	}
	return eye{right: casework.Y, up: casework.Z, along: casework.X, falling: true, cut: v == Upright}
}

// area is a rectangle of the picture, in lengths of the case; y runs up.
type area struct{ x1, y1, x2, y2 stock.Length }

func (a area) empty() bool { return a.x1 >= a.x2 || a.y1 >= a.y2 }

func (a area) meet(b area) area {
	return area{max(a.x1, b.x1), max(a.y1, b.y1), min(a.x2, b.x2), min(a.y2, b.y2)}
}

// without is a less b, in up to four pieces.
func (a area) without(b area) []area {
	m := a.meet(b)
	if m.empty() {
		return []area{a}
	}
	return slices.DeleteFunc([]area{
		{a.x1, a.y1, m.x1, a.y2}, {m.x2, a.y1, a.x2, a.y2},
		{m.x1, a.y1, m.x2, m.y1}, {m.x1, m.y2, m.x2, a.y2},
	}, area.empty)
}

// shape is a solid as a view sees it.
type shape struct {
	casework.Solid
	area
	near stock.Length // how far from the eye it begins
	cut  bool         // the section goes through it
}

// picture is what a view sees, from far to near.
type picture struct {
	outline area
	shapes  []shape
}

// project looks at the case.
func (s Subject) project(v View) picture {
	e := v.eye()
	all := s.extent()
	p := picture{outline: area{all.from[e.right], all.from[e.up], all.to[e.right], all.to[e.up]}}
	var plane stock.Length
	if e.cut {
		plane = s.plane(e.along)
	}
	for _, piece := range s.Solids {
		from, to := piece.At, piece.End()
		sh := shape{Solid: piece, area: area{from[e.right], from[e.up], to[e.right], to[e.up]}, near: from[e.along]}
		if e.falling {
			sh.near = -to[e.along]
		}
		if e.cut { // the sections are seen along a falling axis
			if from[e.along] >= plane {
				continue
			}
			if sh.cut = to[e.along] > plane; sh.cut {
				sh.near = -plane
			}
		}
		p.shapes = append(p.shapes, sh)
	}
	p.shapes = inDrawingOrder(p.shapes)
	return p
}

// inDrawingOrder sorts shapes so that each comes after all that it hides. Solids
// that share no room and lie over one another in the picture are parted by a plane
// across the view, so that the nearer begins nearer. Those that begin equally near
// share the room of a joint: what is let in comes after what it is let into.
func inDrawingOrder(shapes []shape) []shape {
	slices.SortStableFunc(shapes, func(a, b shape) int {
		switch {
		case a.near > b.near:
			return -1
		case a.near < b.near:
			return 1
		}
		return 0
	})
	for from, to := 0, 0; from < len(shapes); from = to {
		for to = from; to < len(shapes) && shapes[to].near == shapes[from].near; to++ {
		}
		orderLevel(shapes[from:to])
	}
	return shapes
}

// orderLevel sorts shapes that begin equally near. In a ring of joints none is free of
// the others: then the first that is left goes.
func orderLevel(shapes []shape) {
	over := make([][]int, len(shapes)) // by shape: those that lie on it
	under := make([]int, len(shapes))  // by shape: how many that are left it lies on
	for i, a := range shapes {
		for k, b := range shapes {
			if !a.meet(b.area).empty() && lies(a.Solid, b.Solid) {
				over[k] = append(over[k], i)
				under[i]++
			}
		}
	}
	var order []int
	done := make([]bool, len(shapes))
	first := 0 // that is left
	for len(order) < len(shapes) {
		for done[first] {
			first++
		}
		next := first
		for i := first; i < len(shapes); i++ {
			if !done[i] && under[i] == 0 {
				next = i
				break
			}
		}
		done[next] = true
		order = append(order, next)
		for _, i := range over[next] {
			under[i]--
		}
	}
	sorted := make([]shape, len(shapes))
	for i, k := range order {
		sorted[i] = shapes[k]
	}
	copy(shapes, sorted)
}

// lies reports whether a is seen where it shares room with b.
func lies(a, b casework.Solid) bool {
	// Members of frames meet in one plane: stiles run through, mid stiles end at the
	// rails, and mid rails at either.
	frame := a.Role == "stile" && b.Role == "rail" || a.Role == "rail" && b.Role == "mid stile" ||
		b.Role == "mid rail" && (a.Role == "stile" || a.Role == "mid stile")
	return letInto(a, b) || frame && shareRoom(a, b)
}

// letInto reports whether a reaches into a housing of b: what they share is all
// of a's thickness, but not of b's.
func letInto(a, b casework.Solid) bool {
	shared := sharedRoom(a, b)
	return shareRoom(a, b) && shared[a.Through] == a.Size[a.Through] && shared[b.Through] < b.Size[b.Through]
}

func shareRoom(a, b casework.Solid) bool {
	shared := sharedRoom(a, b)
	return min(shared[casework.X], shared[casework.Y], shared[casework.Z]) > 0
}

// sharedRoom is how far two solids overlap along each axis.
func sharedRoom(a, b casework.Solid) casework.Point {
	var shared casework.Point
	for axis := range shared {
		shared[axis] = min(a.End()[axis], b.End()[axis]) - max(a.At[axis], b.At[axis])
	}
	return shared
}

// seen is what of shape i nothing hides, in pieces.
func (p picture) seen(i int) []area {
	left := []area{p.shapes[i].area}
	for _, over := range p.shapes[i+1:] {
		var still []area
		for _, a := range left {
			still = append(still, a.without(over.area)...)
		}
		left = still
	}
	return left
}
