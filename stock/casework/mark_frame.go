package casework

import (
	"fmt"
	"slices"

	"sawbill/stock"
)

// frameJoints marks the half laps, or the mortises and tenons, of the frames.
func (m *marker) frameJoints() {
	f := m.made.frame
	if f == nil {
		return
	}
	switch f.corner {
	case "half-lap":
		m.laps()
	case "mortise-and-tenon":
		m.tenons()
	}
}

// laps marks where members cross: as wide as the other is, and half as deep as
// they are thick.
func (m *marker) laps() {
	half := m.made.frame.thickness / 2
	each := func(pieces []int, axis Axis, others []int, face string) {
		for _, i := range pieces {
			s := m.solids[i]
			widths := make(map[stock.Length]bool)
			for _, j := range others {
				room, meet := shared(s, m.solids[j])
				if !meet || room.Size[Y] == 0 || widths[room.Size[axis]] {
					continue
				}
				widths[room.Size[axis]] = true
				k := Mark{What: "half lap", Measure: Measure{From: edgeOf(s, axis)}, Width: room.Size[axis], Depth: half}
				for _, other := range others {
					if room, meet := shared(s, m.solids[other]); meet && room.Size[Y] > 0 && room.Size[axis] == k.Width {
						k.At = append(k.At, room.At[axis]-s.At[axis])
					}
				}
				slices.Sort(k.At)
				m.add(Spot{Solid: i, Face: face}, k)
			}
		}
	}
	each(m.of("stile", "mid stile"), Z, m.of("rail"), "back face")
	each(m.of("rail"), X, m.of("stile", "mid stile"), "front face")
}

// Rules for tenons. A third of the stock for the thickness, a mortise 1/8 in
// (3 mm) deeper than the tenon and up to five times as deep as it is wide, and a
// tenon up to six times as wide as it is thick: confirmed with "Joinery Rules of
// Thumb" (2015).
const (
	tenonOfStock   = 3
	widestTenon    = 6
	deepestMortise = 5
)

// mortiseMore is how much deeper a mortise is than its tenon.
func (r *reckoner) mortiseMore() stock.Length {
	return r.orDefault(Length{}, 3*stock.Millimetre, stock.Inch/8)
}

// haunchOfRail is the part of a rail's width by which its tenon is cut back from
// the end of the stile, so that the mortise is closed: a third (common
// practice, no source).
const haunchOfRail = 3

// tenons marks the tenons of rails and mid stiles, and their mortises in stiles
// and rails:
//
//	|        |      rail's upper edge
//	|        |_ _   mortise: cut back from the stile's end by a third
//	| stile  |   |  tenon
//	|        |___|  rail's lower edge
func (m *marker) tenons() {
	f := m.made.frame
	third := f.thickness / tenonOfStock
	cheeks := Measure{"front face", []stock.Length{third, 2 * f.thickness / tenonOfStock}}
	depth := f.tenon + m.mortiseMore()
	m.checkMortise("stile", f.stile, depth)
	haunch := f.rail / haunchOfRail
	for _, i := range m.of("rail") {
		edges := []stock.Length{0, f.rail - haunch}
		if m.name(i) == "front lower" || m.name(i) == "rear lower" {
			edges = []stock.Length{haunch, f.rail}
		}
		m.tenon(i, X, cheeks)
		m.add(Spot{Solid: i, Face: "both ends"}, Mark{What: "tenon edges", Measure: Measure{edgeOf(m.solids[i], Z), edges}})
	}
	for _, i := range m.of("stile") {
		s := m.solids[i]
		m.add(Spot{Solid: i, Face: "inner edge"}, Mark{What: "mortise", Across: cheeks, Width: f.rail - haunch, Depth: depth,
			Measure: Measure{edgeOf(s, Z), []stock.Length{haunch, s.Size[Z] - f.rail}}})
	}
	m.checkTenonWidth(f.rail-haunch, third)
	if depth > deepestMortise*third {
		m.caution("deep mortises", fmt.Sprintf("A mortise %s deep and %s wide is deeper than %d times its width: a shorter tenon will do.",
			m.print(depth), m.print(third), deepestMortise))
	}
	m.middleTenons(cheeks, depth)
}

// tenon marks the shoulders at both ends of a piece, and the cheeks.
func (m *marker) tenon(i int, along Axis, cheeks Measure) {
	s, length := m.solids[i], m.made.frame.tenon
	m.add(Spot{Solid: i, Face: "both ends"}, Mark{What: "tenon shoulders", Measure: Measure{edgeOf(s, along), []stock.Length{length, s.Size[along] - length}}})
	m.add(Spot{Solid: i, Face: "both ends"}, Mark{What: "tenon cheeks", Measure: cheeks})
}

// middleTenons marks the tenons of mid stiles, which are as wide as these, and
// their mortises in the rails.
func (m *marker) middleTenons(cheeks Measure, depth stock.Length) {
	f, middles := m.made.frame, m.of("mid stile")
	if len(middles) == 0 {
		return
	}
	m.checkMortise("rail", f.rail, depth)
	m.checkTenonWidth(f.midStile, cheeks.At[0])
	for _, i := range middles {
		m.tenon(i, Z, cheeks)
	}
	for _, i := range m.of("rail") {
		s := m.solids[i]
		k := Mark{What: "mortise", Measure: Measure{From: edgeOf(s, X)}, Across: cheeks, Width: f.midStile, Depth: depth}
		for _, j := range middles {
			if m.solids[j].At[Y] == s.At[Y] {
				k.At = append(k.At, m.solids[j].At[X]-s.At[X])
			}
		}
		m.add(Spot{Solid: i, Face: "inner edge"}, k)
	}
}

func (m *marker) checkTenonWidth(wide, thick stock.Length) {
	if wide > widestTenon*thick {
		m.caution("wide tenons", fmt.Sprintf("A tenon %s wide and %s thick is wider than %d times its thickness: split it in two.",
			m.print(wide), m.print(thick), widestTenon))
	}
}

// checkMortise refuses a mortise that comes out on the far side.
func (m *marker) checkMortise(name string, width, depth stock.Length) {
	if depth < width {
		return
	}
	d := m.design.Frame
	m.fault(m.place.under(d.Line, "frame").under(d.TenonLength.Line, "tenon_length"),
		fmt.Sprintf("a mortise %s deep, %s more than its tenon, goes right through the %s, %s wide", m.print(depth), m.print(m.mortiseMore()),
			name, m.print(width)), "make the tenon shorter, or the "+name+" wider")
}
