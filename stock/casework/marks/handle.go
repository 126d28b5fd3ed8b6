package marks

import (
	"fmt"
	"slices"

	"sawbill/stock"
	"sawbill/stock/casework/design"
	"sawbill/stock/casework/solid"
)

// handles marks the holes for a handle in the middle of every front that is
// made: one, or two that are handle_spacing apart. Without false fronts they
// are in the box's own.
func (m *layout) handles() {
	for _, i := range m.Marker.Of("false front", "drawer front and back") {
		s := m.Marker.Solids[i]
		if s.Role != "false front" && (m.hasFalseFront(s.Drawer) || m.name(i) != "front") {
			continue
		}
		wide, high := s.Size[solid.X], s.Size[solid.Z]
		at := m.handleHoles(m.In.Design.Drawer.HandleSpacing, m.In.DrawerKey("handle_spacing"), wide, "a front %s wide")
		if at == nil {
			return
		}
		m.Marker.Add(frontFace(i), solid.Mark{What: solid.HandleHole, Diameter: m.handleBore(), Note: handleNote,
			Measure: solid.Measure{From: s.Near(solid.X), At: at}, Across: solid.Measure{From: s.Near(solid.Z), At: []stock.Length{m.In.Down(high / 2)}}})
	}
}

// handleBore is the hole for a handle's screw: 5 mm (3/16 in), common practice, no source.
func (m *layout) handleBore() stock.Length {
	return m.In.OrDefault(design.Length{}, 5*stock.Millimeter, 3*stock.Inch/16)
}

const handleNote = "right through, from the front, scrap behind; see the handle's own screws"

func (m *layout) hasFalseFront(drawer int) bool {
	return slices.ContainsFunc(m.Marker.Of("false front"), func(i int) bool { return m.Marker.Solids[i].Drawer == drawer })
}

// frontFace is the front face of a front or a door.
func frontFace(i int) solid.Spot {
	return solid.Spot{Solid: i, Face: solid.Face{Side: solid.Front, Extent: solid.Broad}}
}

// handleHoles is one hole in the middle of a size, or two with a spacing; nil if they do not go on it.
func (m *layout) handleHoles(spacing design.Length, key design.Place, size stock.Length, on string) []stock.Length {
	from := m.In.Down((size - spacing.Value) / 2)
	switch {
	case !spacing.Set:
		return []stock.Length{from}
	case from < holeEdge(m.In):
		m.In.Fault(key, fmt.Sprintf("holes %s apart do not go on "+on, m.In.Print(spacing.Value), m.In.Print(size)), lessSpacing(m.In, size))
		return nil
	}
	return []stock.Length{from, from + spacing.Value}
}

// doorHandles marks the holes for a handle half-way up every door, near the edge
// that opens: by default 40 mm (1 1/2 in) from it, in a narrow door in the middle
// (common practice, no source). Two holes lie one above the other.
func (m *layout) doorHandles() {
	d := m.In.Design.Door
	for _, i := range m.Marker.Of("door") {
		s := m.Marker.Solids[i]
		wide, high := s.Size[solid.X], s.Size[solid.Z]
		in := min(m.In.OrDefault(d.HandleInset, 40*stock.Millimeter, 3*stock.Inch/2), m.In.Down(wide/2))
		side, single := m.hinged(i)
		if side == "left" {
			in = wide - in
		}
		at := m.handleHoles(d.HandleSpacing, m.In.Root.Under(d.Line, "door").Under(d.HandleSpacing.Line, "handle_spacing"), high, "a door %s high")
		if at == nil {
			return
		}
		k := solid.Mark{What: solid.HandleHole, Diameter: m.handleBore(), Note: handleNote,
			Measure: solid.Measure{From: s.Near(solid.Z), At: at}, Across: solid.Measure{From: s.Near(solid.X), At: []stock.Length{in}}}
		if single {
			k.Note += "; hinged on the " + side
		}
		m.Marker.Add(frontFace(i), k)
	}
}

// holeEdge is the least from the middle of a handle's hole to the end of its front: 10 mm
// (3/8 in), common practice, no source.
func holeEdge(r *design.Reader) stock.Length {
	return r.OrDefault(design.Length{}, 10*stock.Millimeter, 3*stock.Inch/8)
}

// lessSpacing is the remedy for holes too far apart on a front of a size.
func lessSpacing(r *design.Reader, size stock.Length) string {
	if most := size - 2*holeEdge(r); most > 0 {
		return "make handle_spacing at most " + r.Print(most)
	}
	return "leave handle_spacing out"
}

// hinged is the side that a door hangs on, and whether it is alone in its opening.
func (m *layout) hinged(door int) (side string, single bool) {
	s := m.Marker.Solids[door]
	x, z := s.At[solid.X]+s.Size[solid.X]/2, s.At[solid.Z]+s.Size[solid.Z]/2
	for _, b := range m.c.Built.Bays {
		for _, o := range b.Openings {
			if x < b.Left || x > b.Left+b.Width || z < o.Floor || z > o.Floor+o.Height {
				continue
			}
			switch {
			case o.Doors == 1:
				return o.Hinged, true
			case x > b.Left+b.Width/2:
				return "right", false
			}
			return "left", false
		}
	}
	panic("casework: a door before no opening")
}
