package joints

import (
	"fmt"
	"slices"

	"sawbill/stock"
	"sawbill/stock/casework/design"
	"sawbill/stock/casework/solid"
)

// MortiseAndTenon is tenons at the ends of rails, mid stiles and mid rails, in closed mortises:
//
//	|        |      rail's upper edge
//	|        |_ _   mortise: cut back from the stile's end by a third
//	| stile  |   |  tenon
//	|        |___|  rail's lower edge
type MortiseAndTenon struct{ traits }

var mortised = MortiseAndTenon{traits{name: "mortise-and-tenon", keys: []string{"tenon_length"}, at: map[Site]Fit{
	FrameCorner: {Says: "tenons on the rails", Reach: Tenoned, Close: "at the mortises and tenons"},
	FrameMiddle: {Reach: Tenoned},
}}}

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

// ReadTenon reads the length of the rails' tenons, which end within the stiles; a mid stile's end
// within the rails.
func (MortiseAndTenon) ReadTenon(r *design.Reader, a design.Place, f *Frame, midStiles bool) {
	d := r.Design.Frame
	f.Tenon = r.Required(a, "tenon_length", d.TenonLength, "how far the tenons reach into the stiles")
	into, name := f.Stile, "stile"
	if midStiles && f.Rail < into {
		into, name = f.Rail, "rail"
	}
	if f.Tenon >= into && into > 0 {
		r.Fault(a.Under(d.TenonLength.Line, "tenon_length"), fmt.Sprintf("a tenon %s long goes right through the %s, %s wide", r.Print(f.Tenon), name, r.Print(into)),
			"make the tenon shorter, or the "+name+" wider")
	}
}

// mortiseMore is how much deeper a mortise is than its tenon.
func mortiseMore(r *design.Reader) stock.Length {
	return r.OrDefault(design.Length{}, 3*stock.Millimeter, stock.Inch/8)
}

// cheeks are where the sides of tenons and mortises lie in the thickness of a frame: in its middle, a
// third of it apart, or as far as the chisel next to that is wide.
func (m *Marker) cheeks() solid.Measure {
	third, thick := m.Frame.Thickness/tenonOfStock, m.tenonThick()
	at := []stock.Length{third, 2 * m.Frame.Thickness / tenonOfStock}
	if thick != third {
		from := m.In.Down((m.Frame.Thickness - thick) / 2)
		at = []stock.Length{from, from + thick}
	}
	return solid.Measure{From: solid.Face{Side: solid.Front, Extent: solid.Broad}, At: at}
}

func (m *Marker) tenonThick() stock.Length {
	return design.OneOf(m.In.From.Tools.Chisels, m.Frame.Thickness/tenonOfStock)
}

func (t MortiseAndTenon) Mark(m *Marker, s Seat) {
	if s.Site != FrameCorner { // the corner marks the whole frame, member by member
		return
	}
	f, cheeks, thick := m.Frame, m.cheeks(), m.tenonThick()
	depth := f.Tenon + mortiseMore(m.In)
	t.checkMortise(m, "stile", f.Stile, depth)
	haunch := m.In.Down(f.Rail / haunchOfRail)
	for _, i := range m.Of("rail") {
		cut := m.cutForBack(m.Solids[i])
		edges := []stock.Length{cut, f.Rail - haunch}
		if m.lowest(i) {
			edges = []stock.Length{haunch, f.Rail - cut}
		}
		t.checkTenonLeft(m, edges[1]-edges[0], thick)
		m.tenon(i, f.Tenon)
		m.Add(solid.Spot{Solid: i, Face: solid.BothEnds}, solid.Mark{What: "tenon edges", Measure: solid.Measure{From: m.Solids[i].Near(solid.Z), At: edges}})
	}
	for _, i := range m.Of("stile") {
		s := m.Solids[i]
		cut := m.cutForBack(s)
		m.Add(solid.Spot{Solid: i, Face: solid.Face{Side: solid.Inner, Extent: solid.Edge}}, solid.Mark{What: "mortise", Across: cheeks, Width: f.Rail - haunch - cut, Depth: depth,
			Measure: solid.Measure{From: s.Near(solid.Z), At: []stock.Length{haunch, s.Size[solid.Z] - f.Rail + cut}}})
	}
	t.checkTenonWidth(m, f.Rail-haunch, thick)
	if depth > deepestMortise*thick {
		m.In.Caution("deep mortises", fmt.Sprintf("A mortise %s deep and %s wide is deeper than %d times its width: a shorter tenon will do.",
			m.In.Print(depth), m.In.Print(thick), deepestMortise))
	}
	t.middle(m, "mid stile", f.MidStile, []solid.Role{"rail"}, depth)
	t.middle(m, "mid rail", f.MidRail, []solid.Role{"stile", "mid stile"}, depth)
}

// tenon marks the shoulders at both ends of a piece, and the cheeks.
func (m *Marker) tenon(i int, length stock.Length) {
	s := m.Solids[i]
	m.Add(solid.Spot{Solid: i, Face: solid.BothEnds}, solid.Mark{What: "tenon shoulders", Measure: solid.Measure{From: s.Near(s.Along), At: []stock.Length{length, s.Size[s.Along] - length}}})
	m.Add(solid.Spot{Solid: i, Face: solid.BothEnds}, solid.Mark{What: "tenon cheeks", Measure: m.cheeks()})
}

// middle marks the tenons of mid stiles or mid rails, which are as wide as these, and their mortises
// in the edges of what they stand between.
func (t MortiseAndTenon) middle(m *Marker, role solid.Role, wide stock.Length, into []solid.Role, depth stock.Length) {
	middles, cheeks, thick := m.Of(role), m.cheeks(), m.tenonThick()
	if len(middles) == 0 {
		return
	}
	t.checkTenonWidth(m, wide, thick)
	for _, i := range middles {
		m.tenon(i, m.Frame.Tenon)
		if cut := m.cutForBack(m.Solids[i]); cut > 0 {
			t.checkTenonLeft(m, wide-2*cut, thick)
			m.Add(solid.Spot{Solid: i, Face: solid.BothEnds}, solid.Mark{What: "tenon edges",
				Measure: solid.Measure{From: m.Solids[i].Near(m.Solids[i].Across), At: []stock.Length{cut, wide - cut}}})
		}
	}
	for _, i := range m.Of(into...) {
		s := m.Solids[i]
		cut := m.cutForBack(s)
		t.checkMortise(m, string(s.Role), s.Size[s.Across], depth)
		at := make(map[solid.Side][]stock.Length) // by edge
		for _, j := range middles {
			if room, meet := solid.Shared(s, m.Solids[j]); meet && room.Size[solid.Y] > 0 {
				edge := s.FaceAt(room, s.Across).Side
				at[edge] = append(at[edge], room.At[s.Along]-s.At[s.Along]+cut)
			}
		}
		for _, edge := range []solid.Side{solid.Inner, solid.Left, solid.Right} {
			if at[edge] != nil {
				slices.Sort(at[edge])
				m.Add(solid.Spot{Solid: i, Face: solid.Face{Side: edge, Extent: solid.Edge}}, solid.Mark{What: "mortise", Measure: solid.Measure{From: s.Near(s.Along), At: at[edge]}, Across: cheeks, Width: wide - 2*cut, Depth: depth})
			}
		}
		t.checkFacingMortises(m, s, at[solid.Left], at[solid.Right], wide, depth)
	}
}

// checkFacingMortises refuses mortises in both edges of a mid stile that meet.
func (MortiseAndTenon) checkFacingMortises(m *Marker, s solid.Solid, left, right []stock.Length, wide, depth stock.Length) {
	if 2*depth < s.Size[s.Across] {
		return
	}
	for _, l := range left {
		for _, r := range right {
			if solid.Distance(l, r) < wide {
				m.In.Fault(m.tenonKey(), fmt.Sprintf("mortises %s deep in both edges of a %s %s wide meet", m.In.Print(depth), s.Role, m.In.Print(s.Size[s.Across])),
					"make the tenon shorter, or the mid stile wider, or move the openings so that no two mid rails lie at one height")
				return
			}
		}
	}
}

// cutForBack is the width that a tenon in the back frame loses along an inner edge. It is 0 unless
// the groove or the rabbet of the back cuts into its thickness. Mortises are shorter by as much,
// and end where the groove begins.
//
//	|_______ _|_   rail's shoulder
//	|       | |    groove, as deep as the tenon is cut back
//	| tenon | |
func (m *Marker) cutForBack(member solid.Solid) stock.Length {
	f, b := m.Frame, m.Back
	if b.Depth == 0 || member.At[solid.Y] == 0 {
		return 0
	}
	if behind := f.Thickness - b.SetIn; behind <= m.cheeks().At[0] || behind-b.Thickness >= m.cheeks().At[1] {
		return 0
	}
	return b.Depth
}

// checkTenonLeft refuses a tenon that its back leaves narrower than it is thick.
func (MortiseAndTenon) checkTenonLeft(m *Marker, wide, thick stock.Length) {
	if wide >= thick {
		return
	}
	d := m.In.Design.Back
	m.In.Fault(m.In.Root.Under(d.Line, "back").Under(d.Depth.Line, "depth"),
		fmt.Sprintf("a %s %s deep leaves %s of a tenon %s thick", m.Back.Name(), m.In.Print(d.Depth.Value), m.In.Print(max(0, wide)), m.In.Print(thick)),
		"make it shallower, or the frame's members wider")
}

func (MortiseAndTenon) checkTenonWidth(m *Marker, wide, thick stock.Length) {
	if wide > widestTenon*thick {
		m.In.Caution("wide tenons", fmt.Sprintf("A tenon %s wide and %s thick is wider than %d times its thickness: split it in two.",
			m.In.Print(wide), m.In.Print(thick), widestTenon))
	}
}

// checkMortise refuses a mortise that comes out on the far side.
func (MortiseAndTenon) checkMortise(m *Marker, name string, width, depth stock.Length) {
	if depth < width {
		return
	}
	m.In.Fault(m.tenonKey(), fmt.Sprintf("a mortise %s deep, %s more than its tenon, goes right through the %s, %s wide", m.In.Print(depth), m.In.Print(mortiseMore(m.In)),
		name, m.In.Print(width)), "make the tenon shorter, or the "+name+" wider")
}

// tenonKey is the place of the length of tenons.
func (m *Marker) tenonKey() design.Place {
	d := m.In.Design.Frame
	return m.In.Root.Under(d.Line, "frame").Under(d.TenonLength.Line, "tenon_length")
}
