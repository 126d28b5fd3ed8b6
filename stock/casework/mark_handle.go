package casework

import (
	"fmt"

	"sawbill/stock"
)

// handles marks the holes for a handle in the middle of every front that is
// made: one, or two that are handle_spacing apart. Without false fronts they
// are in the box's own.
func (m *layout) handles() {
	for _, i := range m.of("false front", "drawer front and back") {
		s := m.solids[i]
		if s.Role != "false front" && (m.hasFalseFront(s.Drawer) || m.name(i) != "front") {
			continue
		}
		wide, high := s.Size[X], s.Size[Z]
		k := Mark{What: "handle hole", Measure: Measure{s.near(X), []stock.Length{wide / 2}}, Across: Measure{s.near(Z), []stock.Length{high / 2}}}
		if spacing := m.design.Drawer.HandleSpacing; spacing.Set {
			from := (wide - spacing.Value) / 2
			k.At = []stock.Length{from, from + spacing.Value}
			if from < m.holeEdge() {
				m.fault(m.drawerKey("handle_spacing"), fmt.Sprintf("holes %s apart do not go on a front %s wide", m.print(spacing.Value), m.print(wide)),
					m.lessSpacing(wide))
				return
			}
		}
		m.add(Spot{Solid: i, Face: Face{Front, Broad}}, k)
	}
}

func (m *layout) hasFalseFront(drawer int) bool {
	for _, i := range m.of("false front") {
		if m.solids[i].Drawer == drawer {
			return true
		}
	}
	return false
}

// doorHandles marks the holes for a handle half-way up every door, near the edge
// that opens: by default 40 mm (1 1/2 in) from it, in a narrow door in the middle
// (common practice, no source). Two holes lie one above the other.
func (m *layout) doorHandles() {
	d := m.design.Door
	for _, i := range m.of("door") {
		s := m.solids[i]
		wide, high := s.Size[X], s.Size[Z]
		in := min(m.orDefault(d.HandleInset, 40*stock.Millimetre, 3*stock.Inch/2), wide/2)
		side, single := m.hinged(i)
		if side == "left" {
			in = wide - in
		}
		k := Mark{What: "handle hole", Measure: Measure{s.near(Z), []stock.Length{high / 2}}, Across: Measure{s.near(X), []stock.Length{in}}}
		if d.HandleSpacing.Set {
			from := (high - d.HandleSpacing.Value) / 2
			if from < m.holeEdge() {
				m.fault(m.place.under(d.Line, "door").under(d.HandleSpacing.Line, "handle_spacing"),
					fmt.Sprintf("holes %s apart do not go on a door %s high", m.print(d.HandleSpacing.Value), m.print(high)), m.lessSpacing(high))
				return
			}
			k.At = []stock.Length{from, from + d.HandleSpacing.Value}
		}
		if single {
			k.Note = "hinged on the " + side
		}
		m.add(Spot{Solid: i, Face: Face{Front, Broad}}, k)
	}
}

// holeEdge is the least from the middle of a handle's hole to the end of its front: 10 mm
// (3/8 in), common practice, no source.
func (r *reader) holeEdge() stock.Length {
	return r.orDefault(Length{}, 10*stock.Millimetre, 3*stock.Inch/8)
}

// lessSpacing is the remedy for holes too far apart on a front of a size.
func (r *reader) lessSpacing(size stock.Length) string {
	if most := size - 2*r.holeEdge(); most > 0 {
		return "make handle_spacing at most " + r.print(most)
	}
	return "leave handle_spacing out"
}

// hinged is the side that a door hangs on, and whether it is alone in its opening.
func (m *layout) hinged(door int) (side string, single bool) {
	s := m.solids[door]
	x, z := s.At[X]+s.Size[X]/2, s.At[Z]+s.Size[Z]/2
	for _, b := range m.c.bays {
		for _, o := range b.openings {
			if x < b.left || x > b.left+b.width || z < o.floor || z > o.floor+o.height {
				continue
			}
			switch {
			case o.doors == 1:
				return o.hinged, true
			case x > b.left+b.width/2:
				return "right", false
			}
			return "left", false
		}
	}
	panic("casework: a door before no opening")
}
