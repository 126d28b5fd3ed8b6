// Package solid has the pieces of a case as boxes where they stand, the names of their faces, and what
// is laid out on them.
package solid

import "sawbill/stock"

// Axis is a direction of the case.
type Axis int

const (
	X Axis = iota // from the left side to the right
	Y             // from the front to the back
	Z             // from the floor up
)

// Point lies so far right, behind and above the case's left lower corner in
// front; its zero is where the outside sizes of the case begin.
type Point [3]stock.Length

// Solid is one piece where it stands in the case: a box along the axes. Stock for joinery, such as
// strips for loose tenons, stands nowhere. Joints are not cut out of it, so neighbors overlap by
// the depth of their joint.
type Solid struct {
	// Part is an index into Case.Parts; -1 for a drawer that stands on the bench.
	Part int
	Role Role  // "side"; of drawers "drawer"
	At   Point // the corner next to the zero point
	Size Point
	// Along, Across and Through are the axes of length, width and thickness.
	Along, Across, Through Axis
	// Drawer numbers the drawer that the piece belongs to, from 1; 0 for none.
	Drawer int
	// Weight is the weight of a drawer that stands on the bench; 0 if it is not known.
	Weight stock.Grams
}

// End is the corner opposite At.
func (s Solid) End() Point {
	var end Point
	for a := range end {
		end[a] = s.At[a] + s.Size[a]
	}
	return end
}

// Way is how a piece stands: the axes of its length, width and thickness.
type Way [3]Axis

var (
	Upright = Way{Z, Y, X} // a side
	Level   = Way{X, Y, Z} // a shelf
	Facing  = Way{Z, X, Y} // a stile, a back
	Across  = Way{X, Z, Y} // a rail, a front
	Endwise = Way{Y, Z, X} // a drawer's side
)

// Overlaps reports whether two solids share room.
func (s Solid) Overlaps(other Solid) bool {
	for a := range s.At {
		if s.End()[a] <= other.At[a] || other.End()[a] <= s.At[a] {
			return false
		}
	}
	return true
}

// at is one piece that begins there.
func Stands(at ...Point) []Solid {
	all := make([]Solid, len(at))
	for i, p := range at {
		all[i].At = p
	}
	return all
}
