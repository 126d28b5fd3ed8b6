package marks

import (
	"fmt"
	"slices"

	"sawbill/stock"
	"sawbill/stock/casework/construction"
	"sawbill/stock/casework/design"
	"sawbill/stock/casework/solid"
)

// pins is how the holes of a loose shelf are bored.
type pins struct {
	inset stock.Length // of a row, from the shelf's front edge, edging and all, and its back edge
	pitch stock.Length
	holes int // for each shelf, in each row; the middle one bears it
	bore  stock.Length
}

// readPins fills in the defaults: rows 37 mm (1 1/2 in) in at a pitch of 32 mm
// (1 1/4 in), common practice, no source; pins of 5 mm (1/4 in). Five holes move a shelf two steps up
// or down.
func readPins(r *design.Reader) pins {
	d := r.Design.Shelf
	p := pins{
		inset: r.OrDefault(d.PinInset, 37*stock.Millimeter, 3*stock.Inch/2),
		pitch: r.OrDefault(d.PinPitch, 32*stock.Millimeter, 5*stock.Inch/4),
		holes: 5,
		bore:  r.OrDefault(d.PinDiameter, 5*stock.Millimeter, stock.Inch/4),
	}
	if d.PinHoles.Set {
		p.holes = d.PinHoles.Value
	}
	return p
}

// shelfPins marks two rows of holes on each face beside a loose shelf. The
// middle hole lies at the shelf's lower face, the others a pitch apart above and
// below. Holes that would come outside the opening are left out, and so are
// those that would come within a pitch of the next shelf's.
func (m *layout) shelfPins() {
	if !m.c.Built.Shelf.Loose {
		return
	}
	p := readPins(m.In)
	for i, b := range m.c.Built.Bays {
		for _, o := range b.Openings {
			shelves := m.shelvesIn(b, o)
			if len(shelves) == 0 {
				continue
			}
			front := m.frontOf(m.Marker.Solids[shelves[0]])
			deep := m.Marker.Solids[shelves[0]].End()[solid.Y] - front
			if 2*p.inset >= deep {
				d := m.In.Design.Shelf
				m.In.Fault(m.In.Root.Under(d.Line, "shelf").Under(d.PinInset.Line, "pin_inset"), fmt.Sprintf("two rows of pins %s from the edges meet under a shelf %s deep",
					m.In.Print(p.inset), m.In.Print(deep)), "give a smaller pin_inset")
				return
			}
			for _, s := range m.besides(i) {
				upright := m.Marker.Solids[s.Solid]
				first := front + p.inset - upright.At[solid.Y]
				if first < m.In.OrDefault(design.Length{}, 5*stock.Millimeter, stock.Inch/4) { // a hole would break out
					d := m.In.Design.Shelf
					m.In.Fault(m.In.Root.Under(d.Line, "shelf").Under(d.PinInset.Line, "pin_inset"),
						fmt.Sprintf("a row of pins %s from the front edge of a shelf would break out at that of the %s", m.In.Print(p.inset), upright.Role),
						"give a greater pin_inset, or thinner edging")
					return
				}
				k := solid.Mark{What: solid.ShelfPins, Diameter: p.bore, Depth: m.pinDepth(upright), Measure: solid.Measure{From: upright.Near(solid.Z)}, Note: b.Name + " " + o.Name,
					Across: solid.Measure{From: upright.Near(solid.Y), At: []stock.Length{first, first + deep - 2*p.inset}}}
				for _, h := range m.pinHeights(p, o, shelves) {
					k.At = append(k.At, h-upright.At[solid.Z])
				}
				m.Marker.Add(s, k)
			}
		}
	}
}

// pinDepth is how deep the hole of a pin is bored: 10 mm (3/8 in), but 3 mm (1/8 in) short
// of the other face, and in a partition 1.5 mm (1/16 in) short of its middle, for a row
// may lie on either side (common practice, no source).
func (m *layout) pinDepth(upright solid.Solid) stock.Length {
	thick := upright.Size[upright.Through]
	most := thick - m.In.OrDefault(design.Length{}, 3*stock.Millimeter, stock.Inch/8)
	if upright.Role == "partition" {
		most = thick/2 - m.In.OrDefault(design.Length{}, 3*stock.Millimeter/2, stock.Inch/16)
	}
	return m.In.Down(max(0, min(most, m.In.OrDefault(design.Length{}, 10*stock.Millimeter, 3*stock.Inch/8))))
}

// frontOf is where a shelf begins with the strip on its front edge, if it has one.
func (m *layout) frontOf(shelf solid.Solid) stock.Length {
	front := shelf.At[solid.Y]
	for _, i := range m.Marker.Of("shelf edging") {
		if s := m.Marker.Solids[i]; s.At[solid.X] == shelf.At[solid.X] && s.At[solid.Z] == shelf.At[solid.Z] && s.End()[solid.Y] == front {
			return s.At[solid.Y]
		}
	}
	return front
}

// shelvesIn are the shelves of an opening, from below.
func (m *layout) shelvesIn(b construction.Bay, o construction.Opening) []int {
	var in []int
	for _, i := range m.Marker.Of("shelf") {
		s := m.Marker.Solids[i]
		if s.At[solid.X] >= b.Behind && s.End()[solid.X] <= b.Behind+b.Panels && s.At[solid.Z] >= o.Floor && s.At[solid.Z] < o.Floor+o.Height {
			in = append(in, i)
		}
	}
	slices.SortFunc(in, func(i, j int) int { return int(m.Marker.Solids[i].At[solid.Z] - m.Marker.Solids[j].At[solid.Z]) })
	return in
}

// pinHeights are the heights of a row's holes, from below.
func (m *layout) pinHeights(p pins, o construction.Opening, shelves []int) []stock.Length {
	steps := stock.Length(p.holes / 2)
	if len(shelves) > 1 { // evenly spaced
		between := m.Marker.Solids[shelves[1]].At[solid.Z] - m.Marker.Solids[shelves[0]].At[solid.Z]
		steps = max(0, min(steps, (between-p.pitch)/(2*p.pitch)))
	}
	var heights []stock.Length
	for _, i := range shelves {
		for step := -steps; step <= steps; step++ {
			if h := m.Marker.Solids[i].At[solid.Z] + step*p.pitch; h > o.Floor && h < o.Floor+o.Height {
				heights = append(heights, h)
			}
		}
	}
	return heights
}
