package casework

import (
	"fmt"
	"slices"
	"strings"

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
// they are thick. A mid rail ends in the middle of a mid stile.
func (m *marker) laps() {
	uprights, levels := m.of("stile", "mid stile"), m.of("rail", "mid rail")
	for _, i := range uprights {
		m.lapsOn(i, levels, Z, "back face")
	}
	for _, i := range levels {
		m.lapsOn(i, uprights, X, "front face")
	}
}

// lapsOn marks those of one member, along an axis. Those as wide, and as far across it,
// are one mark.
func (m *marker) lapsOn(i int, others []int, axis Axis, face string) {
	s := m.solids[i]
	var marks []Mark
	for _, j := range others {
		room, meet := shared(s, m.solids[j])
		if !meet || room.Size[Y] == 0 || room.Size[axis] == 0 {
			continue
		}
		by, said := m.stops(s, room, s.Across)
		k := Mark{What: "half lap", Measure: Measure{edgeOf(s, axis), []stock.Length{room.At[axis] - s.At[axis]}},
			Width: room.Size[axis], Depth: m.made.frame.thickness / 2, Stops: by, Note: said}
		n := slices.IndexFunc(marks, func(l Mark) bool { return l.Width == k.Width && l.Note == k.Note })
		if n < 0 {
			marks = append(marks, k)
			continue
		}
		marks[n].At = append(marks[n].At, k.At...)
		slices.Sort(marks[n].At)
	}
	for _, k := range marks {
		m.add(Spot{Solid: i, Face: face}, k)
	}
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

// tenons marks the tenons of rails, mid stiles and mid rails, and their mortises:
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
		cut := m.cutForBack(m.solids[i])
		edges := []stock.Length{cut, f.rail - haunch}
		if strings.HasSuffix(m.name(i), "lower") {
			edges = []stock.Length{haunch, f.rail - cut}
		}
		m.checkTenonLeft(edges[1]-edges[0], third)
		m.tenon(i, X, cheeks)
		m.add(Spot{Solid: i, Face: "both ends"}, Mark{What: "tenon edges", Measure: Measure{edgeOf(m.solids[i], Z), edges}})
	}
	for _, i := range m.of("stile") {
		s := m.solids[i]
		cut := m.cutForBack(s)
		m.add(Spot{Solid: i, Face: "inner edge"}, Mark{What: "mortise", Across: cheeks, Width: f.rail - haunch - cut, Depth: depth,
			Measure: Measure{edgeOf(s, Z), []stock.Length{haunch, s.Size[Z] - f.rail + cut}}})
	}
	m.checkTenonWidth(f.rail-haunch, third)
	if depth > deepestMortise*third {
		m.caution("deep mortises", fmt.Sprintf("A mortise %s deep and %s wide is deeper than %d times its width: a shorter tenon will do.",
			m.print(depth), m.print(third), deepestMortise))
	}
	m.middleTenons("mid stile", Z, f.midStile, []Role{"rail"}, cheeks, depth)
	m.middleTenons("mid rail", X, f.midRail, []Role{"stile", "mid stile"}, cheeks, depth)
}

// tenon marks the shoulders at both ends of a piece, and the cheeks.
func (m *marker) tenon(i int, along Axis, cheeks Measure) {
	s, length := m.solids[i], m.made.frame.tenon
	m.add(Spot{Solid: i, Face: "both ends"}, Mark{What: "tenon shoulders", Measure: Measure{edgeOf(s, along), []stock.Length{length, s.Size[along] - length}}})
	m.add(Spot{Solid: i, Face: "both ends"}, Mark{What: "tenon cheeks", Measure: cheeks})
}

// middleTenons marks the tenons of mid stiles or mid rails, which are as wide as
// these, and their mortises in the edges of what they stand between.
func (m *marker) middleTenons(role Role, along Axis, wide stock.Length, into []Role, cheeks Measure, depth stock.Length) {
	middles := m.of(role)
	if len(middles) == 0 {
		return
	}
	m.checkTenonWidth(wide, cheeks.At[0])
	for _, i := range middles {
		m.tenon(i, along, cheeks)
		if cut := m.cutForBack(m.solids[i]); cut > 0 {
			m.checkTenonLeft(wide-2*cut, cheeks.At[0])
			m.add(Spot{Solid: i, Face: "both ends"}, Mark{What: "tenon edges",
				Measure: Measure{edgeOf(m.solids[i], m.solids[i].Across), []stock.Length{cut, wide - cut}}})
		}
	}
	for _, i := range m.of(into...) {
		s := m.solids[i]
		cut := m.cutForBack(s)
		m.checkMortise(string(s.Role), s.Size[s.Across], depth)
		at := make(map[string][]stock.Length) // by edge
		for _, j := range middles {
			if room, meet := shared(s, m.solids[j]); meet && room.Size[Y] > 0 {
				edge := faceOf(s, room, s.Across)
				at[edge] = append(at[edge], room.At[s.Along]-s.At[s.Along]+cut)
			}
		}
		for _, edge := range []string{"inner edge", "left edge", "right edge"} {
			if at[edge] != nil {
				slices.Sort(at[edge])
				m.add(Spot{Solid: i, Face: edge}, Mark{What: "mortise", Measure: Measure{edgeOf(s, s.Along), at[edge]}, Across: cheeks, Width: wide - 2*cut, Depth: depth})
			}
		}
		m.checkFacingMortises(s, at["left edge"], at["right edge"], wide, depth)
	}
}

// checkFacingMortises refuses mortises in both edges of a mid stile that meet.
func (m *marker) checkFacingMortises(s Solid, left, right []stock.Length, wide, depth stock.Length) {
	if 2*depth < s.Size[s.Across] {
		return
	}
	for _, l := range left {
		for _, r := range right {
			if distance(l, r) < wide {
				d := m.design.Frame
				m.fault(m.place.under(d.Line, "frame").under(d.TenonLength.Line, "tenon_length"),
					fmt.Sprintf("mortises %s deep in both edges of a %s %s wide meet", m.print(depth), s.Role, m.print(s.Size[s.Across])),
					"make the tenon shorter, or the mid stile wider, or move the openings so that no two mid rails lie at one height")
				return
			}
		}
	}
}

// cutForBack is what a tenon in the back frame loses along an inner edge where the
// groove or the rabbet of the back cuts into what would be its thickness; 0 where it
// does not. Mortises are shorter by as much, and end where the groove begins.
//
//	|_______ _|_   rail's shoulder
//	|       | |    groove, as deep as the tenon is cut back
//	| tenon | |
func (m *marker) cutForBack(member Solid) stock.Length {
	f, b := m.made.frame, m.made.back
	if b.depth == 0 || member.At[Y] == 0 {
		return 0
	}
	if behind := f.thickness - b.setIn; behind <= f.thickness/tenonOfStock || behind-b.thickness >= 2*f.thickness/tenonOfStock {
		return 0
	}
	return b.depth
}

// checkTenonLeft refuses a tenon that its back leaves narrower than it is thick.
func (m *marker) checkTenonLeft(wide, thick stock.Length) {
	if wide >= thick {
		return
	}
	d := m.design.Back
	m.fault(m.place.under(d.Line, "back").under(d.Depth.Line, "depth"),
		fmt.Sprintf("a %s %s deep leaves %s of a tenon %s thick", m.made.back.fit, m.print(d.Depth.Value), m.print(max(0, wide)), m.print(thick)),
		"make it shallower, or the frame's members wider")
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
