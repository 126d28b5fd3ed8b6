package casework

import (
	"fmt"
	"slices"

	"sawbill/stock"
)

// mortiseAndTenon is tenons at the ends of rails, mid stiles and mid rails, in closed mortises:
//
//	|        |      rail's upper edge
//	|        |_ _   mortise: cut back from the stile's end by a third
//	| stile  |   |  tenon
//	|        |___|  rail's lower edge
type mortiseAndTenon struct{ basic }

func (mortiseAndTenon) Name() string { return "mortise-and-tenon" }
func (mortiseAndTenon) Sites() map[Site]string {
	return map[Site]string{FrameCorner: "tenons on the rails"}
}
func (mortiseAndTenon) Reach(Site) Reach  { return Tenoned }
func (mortiseAndTenon) Keys() []string    { return []string{"tenon_length"} }
func (mortiseAndTenon) Close(Site) string { return "at the mortises and tenons" }

// Rules for tenons. A third of the stock for the thickness, a mortise 1/8 in
// (3 mm) deeper than the tenon and up to five times as deep as it is wide, and a
// tenon up to six times as wide as it is thick: confirmed with "Joinery Rules of
// Thumb" (2015).
const (
	tenonOfStock   = 3
	widestTenon    = 6
	deepestMortise = 5
)

// haunchOfRail is the part of a rail's width by which its tenon is cut back from
// the end of the stile, so that the mortise is closed: a third (common
// practice, no source).
const haunchOfRail = 3

// readTenon reads the length of the rails' tenons, which end within the stiles; a mid stile's end
// within the rails.
func (mortiseAndTenon) readTenon(r *reader, a at, f *frame, midStiles bool) {
	d := r.design.Frame
	f.tenon = r.required(a, "tenon_length", d.TenonLength, "how far the tenons reach into the stiles")
	into, name := f.stile, "stile"
	if midStiles && f.rail < into {
		into, name = f.rail, "rail"
	}
	if f.tenon >= into && into > 0 {
		r.fault(a.under(d.TenonLength.Line, "tenon_length"), fmt.Sprintf("a tenon %s long goes right through the %s, %s wide", r.print(f.tenon), name, r.print(into)),
			"make the tenon shorter, or the "+name+" wider")
	}
}

// mortiseMore is how much deeper a mortise is than its tenon.
func (r *reader) mortiseMore() stock.Length {
	return r.orDefault(Length{}, 3*stock.Millimetre, stock.Inch/8)
}

// cheeks are where the sides of tenons and mortises lie in the thickness of a frame: at a third and
// at two thirds.
func (f *frame) cheeks() Measure {
	return Measure{Face{Front, Broad}, []stock.Length{f.thickness / tenonOfStock, 2 * f.thickness / tenonOfStock}}
}

func (t mortiseAndTenon) Mark(m *marker, s seat) {
	if s.site != FrameCorner { // the corner marks the whole frame, member by member
		return
	}
	f, cheeks := m.frame, m.frame.cheeks()
	third := cheeks.At[0]
	depth := f.tenon + m.mortiseMore()
	t.checkMortise(m, "stile", f.stile, depth)
	haunch := f.rail / haunchOfRail
	for _, i := range m.of("rail") {
		cut := m.cutForBack(m.solids[i])
		edges := []stock.Length{cut, f.rail - haunch}
		if m.lowest(i) {
			edges = []stock.Length{haunch, f.rail - cut}
		}
		t.checkTenonLeft(m, edges[1]-edges[0], third)
		m.tenon(i, f.tenon)
		m.add(Spot{Solid: i, Face: bothEnds}, Mark{What: "tenon edges", Measure: Measure{m.solids[i].near(Z), edges}})
	}
	for _, i := range m.of("stile") {
		s := m.solids[i]
		cut := m.cutForBack(s)
		m.add(Spot{Solid: i, Face: Face{Inner, Edge}}, Mark{What: "mortise", Across: cheeks, Width: f.rail - haunch - cut, Depth: depth,
			Measure: Measure{s.near(Z), []stock.Length{haunch, s.Size[Z] - f.rail + cut}}})
	}
	t.checkTenonWidth(m, f.rail-haunch, third)
	if depth > deepestMortise*third {
		m.caution("deep mortises", fmt.Sprintf("A mortise %s deep and %s wide is deeper than %d times its width: a shorter tenon will do.",
			m.print(depth), m.print(third), deepestMortise))
	}
	t.middle(m, "mid stile", f.midStile, []Role{"rail"}, depth)
	t.middle(m, "mid rail", f.midRail, []Role{"stile", "mid stile"}, depth)
}

// tenon marks the shoulders at both ends of a piece, and the cheeks.
func (m *marker) tenon(i int, length stock.Length) {
	s := m.solids[i]
	m.add(Spot{Solid: i, Face: bothEnds}, Mark{What: "tenon shoulders", Measure: Measure{s.near(s.Along), []stock.Length{length, s.Size[s.Along] - length}}})
	m.add(Spot{Solid: i, Face: bothEnds}, Mark{What: "tenon cheeks", Measure: m.frame.cheeks()})
}

// middle marks the tenons of mid stiles or mid rails, which are as wide as these, and their mortises
// in the edges of what they stand between.
func (t mortiseAndTenon) middle(m *marker, role Role, wide stock.Length, into []Role, depth stock.Length) {
	middles, cheeks := m.of(role), m.frame.cheeks()
	if len(middles) == 0 {
		return
	}
	t.checkTenonWidth(m, wide, cheeks.At[0])
	for _, i := range middles {
		m.tenon(i, m.frame.tenon)
		if cut := m.cutForBack(m.solids[i]); cut > 0 {
			t.checkTenonLeft(m, wide-2*cut, cheeks.At[0])
			m.add(Spot{Solid: i, Face: bothEnds}, Mark{What: "tenon edges",
				Measure: Measure{m.solids[i].near(m.solids[i].Across), []stock.Length{cut, wide - cut}}})
		}
	}
	for _, i := range m.of(into...) {
		s := m.solids[i]
		cut := m.cutForBack(s)
		t.checkMortise(m, string(s.Role), s.Size[s.Across], depth)
		at := make(map[Side][]stock.Length) // by edge
		for _, j := range middles {
			if room, meet := shared(s, m.solids[j]); meet && room.Size[Y] > 0 {
				edge := s.faceAt(room, s.Across).Side
				at[edge] = append(at[edge], room.At[s.Along]-s.At[s.Along]+cut)
			}
		}
		for _, edge := range []Side{Inner, Left, Right} {
			if at[edge] != nil {
				slices.Sort(at[edge])
				m.add(Spot{Solid: i, Face: Face{edge, Edge}}, Mark{What: "mortise", Measure: Measure{s.near(s.Along), at[edge]}, Across: cheeks, Width: wide - 2*cut, Depth: depth})
			}
		}
		t.checkFacingMortises(m, s, at[Left], at[Right], wide, depth)
	}
}

// checkFacingMortises refuses mortises in both edges of a mid stile that meet.
func (mortiseAndTenon) checkFacingMortises(m *marker, s Solid, left, right []stock.Length, wide, depth stock.Length) {
	if 2*depth < s.Size[s.Across] {
		return
	}
	for _, l := range left {
		for _, r := range right {
			if distance(l, r) < wide {
				m.fault(m.tenonKey(), fmt.Sprintf("mortises %s deep in both edges of a %s %s wide meet", m.print(depth), s.Role, m.print(s.Size[s.Across])),
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
	f, b := m.frame, m.back
	if b.depth == 0 || member.At[Y] == 0 {
		return 0
	}
	if behind := f.thickness - b.setIn; behind <= f.thickness/tenonOfStock || behind-b.thickness >= 2*f.thickness/tenonOfStock {
		return 0
	}
	return b.depth
}

// checkTenonLeft refuses a tenon that its back leaves narrower than it is thick.
func (mortiseAndTenon) checkTenonLeft(m *marker, wide, thick stock.Length) {
	if wide >= thick {
		return
	}
	d := m.design.Back
	m.fault(m.place.under(d.Line, "back").under(d.Depth.Line, "depth"),
		fmt.Sprintf("a %s %s deep leaves %s of a tenon %s thick", m.back.Name(), m.print(d.Depth.Value), m.print(max(0, wide)), m.print(thick)),
		"make it shallower, or the frame's members wider")
}

func (mortiseAndTenon) checkTenonWidth(m *marker, wide, thick stock.Length) {
	if wide > widestTenon*thick {
		m.caution("wide tenons", fmt.Sprintf("A tenon %s wide and %s thick is wider than %d times its thickness: split it in two.",
			m.print(wide), m.print(thick), widestTenon))
	}
}

// checkMortise refuses a mortise that comes out on the far side.
func (mortiseAndTenon) checkMortise(m *marker, name string, width, depth stock.Length) {
	if depth < width {
		return
	}
	m.fault(m.tenonKey(), fmt.Sprintf("a mortise %s deep, %s more than its tenon, goes right through the %s, %s wide", m.print(depth), m.print(m.mortiseMore()),
		name, m.print(width)), "make the tenon shorter, or the "+name+" wider")
}

// tenonKey is the place of the length of tenons.
func (m *marker) tenonKey() at {
	d := m.design.Frame
	return m.place.under(d.Line, "frame").under(d.TenonLength.Line, "tenon_length")
}
