package casework

import (
	"slices"

	"sawbill/stock"
)

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

// Solid is one piece where it stands in the case: a box along the axes. Stock
// for joinery, such as strips for loose tenons, stands nowhere. What is
// cut into it or off it by joints is not taken out, so that neighbours overlap by
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
	// Weight is that of a drawer that stands on the bench; 0 if it is not known.
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

// way is how a piece stands: the axes of its length, width and thickness.
type way [3]Axis

var (
	upright = way{Z, Y, X} // a side
	level   = way{X, Y, Z} // a shelf
	facing  = way{Z, X, Y} // a stile, a back
	across  = way{X, Z, Y} // a rail, a front
	endwise = way{Y, Z, X} // a drawer's side
)

// overlaps reports whether two solids share room.
func (s Solid) overlaps(other Solid) bool {
	for a := range s.At {
		if s.End()[a] <= other.At[a] || other.End()[a] <= s.At[a] {
			return false
		}
	}
	return true
}

// solids are the pieces one by one, and the drawers that were measured.
func (r *reckoner) solids() []Solid {
	var all []Solid
	for i, p := range r.pieces {
		for _, s := range p.solids() {
			s.Part = i
			all = append(all, s)
		}
	}
	return append(all, r.finished...)
}

// solids are those of one piece where it stands.
func (p piece) solids() []Solid {
	all := slices.Clone(p.stands)
	for i := range all {
		s := &all[i]
		if s.Role == "" {
			s.Role = p.role
		}
		s.Along, s.Across, s.Through = p.way[0], p.way[1], p.way[2]
		s.Size[s.Along], s.Size[s.Across], s.Size[s.Through] = p.length.Total(), p.width.Total(), p.panel.thickness
	}
	return all
}

// at is one piece that begins there.
func stands(at ...Point) []Solid {
	all := make([]Solid, len(at))
	for i, p := range at {
		all[i].At = p
	}
	return all
}
