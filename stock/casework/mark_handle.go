package casework

import (
	"fmt"

	"sawbill/stock"
)

// handles marks the holes for a handle in the middle of every front that is
// made: one, or two that are handle_spacing apart. Without false fronts they
// are in the box's own.
func (m *marker) handles() {
	for _, i := range m.of("false front", "drawer front and back") {
		s := m.solids[i]
		if s.Role != "false front" && (m.hasFalseFront(s.Drawer) || m.name(i) != "front") {
			continue
		}
		wide, high := s.Size[X], s.Size[Z]
		k := Mark{What: "handle hole", Measure: Measure{edgeOf(s, X), []stock.Length{wide / 2}}, Across: Measure{edgeOf(s, Z), []stock.Length{high / 2}}}
		if spacing := m.design.Drawer.HandleSpacing; spacing.Set {
			from := (wide - spacing.Value) / 2
			k.At = []stock.Length{from, from + spacing.Value}
			if from <= 0 {
				m.fault(m.drawerKey("handle_spacing"), fmt.Sprintf("holes %s apart do not go on a front %s wide", m.print(spacing.Value), m.print(wide)),
					"make handle_spacing less")
				return
			}
		}
		m.add(Spot{Solid: i, Face: "front face"}, k)
	}
}

func (m *marker) hasFalseFront(drawer int) bool {
	for _, i := range m.of("false front") {
		if m.solids[i].Drawer == drawer {
			return true
		}
	}
	return false
}
