package joints

import (
	"fmt"

	"sawbill/stock"
	"sawbill/stock/casework/design"
	"sawbill/stock/casework/solid"
)

// boxJoint is fingers and gaps across the ends of both pieces. The one starts with a finger where
// the other starts with a gap, so one set of edges serves both:
//
//	0       1/n     2/n     3/n  ...   width
//	|finger | gap   |finger |          side, stile
//	|gap    |finger | gap   |          front and back, rail
//
// In a frame it joins the corners; mid stiles and mid rails are butted.
type boxJoint struct{ traits }

var fingered = boxJoint{traits{name: "box-joint", keys: []string{"finger_width"}, at: map[Site]Fit{
	FrameCorner:  {Reach: Through, Close: "at the box joints"},
	FrameMiddle:  {Reach: Between},
	DrawerCorner: {Reach: Through, Close: "to the sides at the box joints"},
}}}

func (j boxJoint) Mark(m *Marker, s Seat) {
	f, d := m.Frame, m.In.Design
	switch s.Site {
	case FrameMiddle:
		m.line(s)
	case FrameCorner:
		key := m.In.Root.Under(d.Frame.Line, "frame").Under(d.Frame.FingerWidth.Line, "finger_width")
		m.later(func() {
			j.mates(m, key, d.Frame.FingerWidth, s, solid.Y, f.Thickness, [2]stock.Length{f.Rail, f.Stile})
		})
	case DrawerCorner:
		m.later(func() {
			t := m.Solids[m.Of(s.Into...)[0]].Size[solid.X]
			j.mates(m, m.In.DrawerKey("finger_width"), d.Drawer.FingerWidth, s, solid.Z, t, [2]stock.Length{t, t})
		})
	}
}

// mates marks the pieces that start with a finger, then those that start with a gap. The width they
// share out lies along axis; a finger is as deep as its mate is thick, in a frame as wide.
func (boxJoint) mates(m *Marker, key design.Place, given design.Length, s Seat, axis solid.Axis, thickness stock.Length, depth [2]stock.Length) {
	for n, roles := range [2][]solid.Role{s.Into, s.Enters} {
		for _, i := range m.Of(roles...) {
			s := m.Solids[i]
			edges := m.fingerEdges(key, given, s.Size[axis], thickness)
			if edges == nil {
				return
			}
			m.Add(solid.Spot{Solid: i, Face: solid.BothEnds}, solid.Mark{What: "box-joint fingers", Measure: solid.Measure{From: s.Near(axis), At: edges[1 : len(edges)-1]},
				Width: edges[1], Depth: depth[n], GapFirst: n == 1, Note: m.fingerNote(edges, n == 0)})
		}
	}
}

// fingerEdges are the edges of fingers and gaps, both ends of the width
// included; nil where they cannot be cut.
func (m *Marker) fingerEdges(key design.Place, given design.Length, width, thickness stock.Length) []stock.Length {
	finger := min(thickness, (width+2)/3)
	if given.Set {
		finger = given.Value
	}
	switch {
	case width < 2*finger:
		m.In.Fault(key, fmt.Sprintf("fingers %s wide leave fewer than two on a width of %s", m.In.Print(finger), m.In.Print(width)), "make them narrower")
		return nil
	case width/finger > design.Most:
		m.In.Fault(key, fmt.Sprintf("fingers %s wide are more than %d on a width of %s", m.In.Print(finger), design.Most, m.In.Print(width)), "make them wider")
		return nil
	}
	edges := suggestedFingers(width, thickness, m.In.From.Tools.Bits)
	if given.Set {
		edges = givenFingers(width, given.Value)
		m.In.WarnOfFingers(given.Value)
	}
	if narrow := edges[1]; narrow < m.In.From.Kerf {
		m.In.Fault(key, fmt.Sprintf("a finger %s wide is narrower than the kerf, %s", m.In.Print(narrow), m.In.Print(m.In.From.Kerf)),
			"give wider fingers, or another corner")
		return nil
	}
	return edges
}

// suggestedFingers divides a width into an odd number of equal fingers and
// gaps, so that both ends match: three, or as few as make a finger no wider
// than the stock is thick. From five on it is then more than half as wide; from
// half to all of the thickness is usual (common practice, no source). Each edge
// is a multiple of the exact finger, rounded down once.
//
// Where one of the bits is as wide as that, or three of it fill the width, fingers are as wide as the
// bit, and the last takes the rest. An odd number is best, then the least rest, then the widest bit.
func suggestedFingers(width, thickness stock.Length, bits []stock.Length) []stock.Length {
	best, odd := stock.Length(0), stock.Length(0)
	for _, b := range bits {
		switch n := width / b; {
		case 2*b < thickness || b > thickness || n < 3:
		case best == 0 || n%2 > odd, n%2 == odd && width%b <= width%best:
			best, odd = b, n%2
		}
	}
	if best == 0 { // a width that holds but three
		for _, b := range bits {
			if width/b == 3 {
				best = max(best, b)
			}
		}
	}
	if best > 0 {
		return givenFingers(width, best)
	}
	n := max(3, (width+thickness-1)/thickness)
	n += 1 - n%2
	edges := make([]stock.Length, n+1)
	for i := range edges {
		edges[i] = stock.Length(i) * width / n
	}
	return edges
}

// givenFingers divides a width by a given finger. The last takes the rest.
func givenFingers(width, finger stock.Length) []stock.Length {
	n := width / finger
	edges := make([]stock.Length, n+1)
	for i := range edges {
		edges[i] = stock.Length(i) * finger
	}
	edges[n] = width
	return edges
}

// fingerNote says how a piece starts and ends, how many fingers and gaps there
// are together, and of a last one that is wider.
func (m *Marker) fingerNote(edges []stock.Length, fingerFirst bool) string {
	names := [2]string{"finger", "gap"}
	if !fingerFirst {
		names = [2]string{"gap", "finger"}
	}
	n := len(edges) - 1
	note := fmt.Sprintf("starts with a %s, ends with a %s, %d in all", names[0], names[(n-1)%2], n)
	if last := edges[n] - edges[n-1]; last-edges[1] > 1 { // equal ones differ by their rounding
		note += ", the last " + m.In.Print(last) + " wide"
	}
	return note
}
