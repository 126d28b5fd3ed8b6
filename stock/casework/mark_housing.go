package casework

import (
	"slices"
	"strings"

	"sawbill/stock"
)

// housing is a joint in which one piece enters another, or stands against it.
// Both solids take up the same room where they meet, and that room is what is
// cut:
//
//	     _______________
//	____|               |   depth
//	____|  piece enters |
//	    |_______________|
//	|   |   width
//	  at, from the edge
type housing struct {
	enters, into []Role
	name         string // "dado"; "butt" if nothing is cut
	axis         Axis   // that the position is measured along
	fromBack     bool   // measured from the back, not the front
	// clearance is what the piece that enters is smaller than its housings.
	clearance stock.Length
}

// housings marks dados, rabbets and grooves, and of panels and the middle members of
// frames that are butted the line of their lower or left face.
func (m *marker) housings() {
	b := m.made
	all := []housing{
		{[]Role{"partition"}, []Role{"top", "bottom"}, b.partition.joint.name, X, false, 0},
		{[]Role{"divider"}, []Role{"side", "partition"}, b.divider.joint.name, Z, false, 0},
	}
	if b.corner.depth > 0 {
		all = append(m.corners(), all...)
	}
	if !b.shelf.loose {
		all = append(all, housing{[]Role{"shelf"}, []Role{"side", "partition"}, b.shelf.joint.name, Z, false, 0})
	}
	if b.back.fit == "rabbet" || b.back.fit == "groove" {
		all = append(all, housing{[]Role{"back"}, []Role{"side", "top", "bottom", "stile", "mid stile", "rail"},
			b.back.fit, Y, true, b.back.clearance})
	}
	if f := b.frame; f != nil && (f.corner == "butt" || f.corner == "box-joint") {
		all = append(all, housing{[]Role{"mid stile"}, []Role{"rail"}, "butt", X, false, 0},
			housing{[]Role{"mid rail"}, []Role{"stile", "mid stile"}, "butt", Z, false, 0})
	}
	if b.base.rails > 0 {
		all = append(all, housing{[]Role{"hanging rail"}, []Role{"side", "partition"}, "butt", Z, false, 0})
	}
	if b.drawers.corner == "rabbet" {
		all = append(all, housing{[]Role{"drawer front and back"}, []Role{"drawer side"}, "rabbet", Y, false, 0})
	}
	all = append(all, housing{[]Role{"drawer bottom"}, []Role{"drawer side", "drawer front and back"},
		"groove", Z, false, b.drawers.bottomClearance})
	for _, h := range all {
		m.housing(h)
	}
}

// corners are those of the box: a panel between the others enters them.
func (m *marker) corners() []housing {
	b := m.made
	var between, outside []Role
	for _, end := range []struct {
		role    Role
		outside bool
	}{{"top", b.topOver}, {"bottom", b.bottomUnder}} {
		if end.outside {
			outside = append(outside, end.role)
		} else {
			between = append(between, end.role)
		}
	}
	return []housing{
		{between, []Role{"side"}, b.corner.name, Z, false, 0},
		{[]Role{"side"}, outside, b.corner.name, X, false, 0},
	}
}

// housing marks every piece that is entered, each of its faces by itself.
func (m *marker) housing(h housing) {
	for _, i := range m.of(h.into...) {
		into := m.solids[i]
		depth := into.Through
		if into.Role.Unit() == "frames" {
			depth = into.Across
		}
		marks := make(map[string]*Mark)
		rooms := make(map[string]Solid)
		var faces []string // of marks, in the order found
		for _, j := range m.of(h.enters...) {
			enters := m.solids[j]
			if enters.Drawer != into.Drawer {
				continue
			}
			room, meet := shared(into, grown(enters, h.clearance))
			if !meet || room.Size[h.axis] == 0 || h.name != "butt" && room.Size[depth] == 0 {
				continue
			}
			k := Mark{What: h.name, Width: room.Size[h.axis], Depth: room.Size[depth]}
			if h.name == "butt" {
				k.What = string(enters.Role) + " line"
			}
			if stop := room.At[Y] - into.At[Y]; k.What == "dado" && stop > 0 {
				k.Note, k.Stops[0] = "stopped "+m.print(stop)+" behind the front edge", stop
			}
			at := room.At[h.axis] - into.At[h.axis]
			k.From = edgeOf(into, h.axis)
			if h.fromBack {
				at = into.End()[h.axis] - room.End()[h.axis]
				k.From = "back " + k.From[len("front "):]
			}
			face := faceOf(into, room, depth)
			if marks[face] == nil {
				marks[face], rooms[face] = &k, room
				faces = append(faces, face)
			}
			rooms[face] = around(rooms[face], room)
			if on := marks[face]; !slices.Contains(on.At, at) {
				on.At = append(on.At, at)
			}
		}
		for _, face := range faces {
			slices.Sort(marks[face].At)
			if name := marks[face].What; name == "groove" || name == "rabbet" {
				run := X + Y + Z - h.axis - depth
				marks[face].Stops, marks[face].Note = m.stops(into, rooms[face], run)
			}
			m.add(Spot{Solid: i, Face: face}, *marks[face])
		}
	}
}

// stops tells how far from the ends of a piece a cut that runs along an axis is
// stopped, and words it; "" where it runs through, of a piece with tenons from shoulder to shoulder. A
// wall at the end that is too thin to stand is cut away where a strip covers it.
func (m *marker) stops(into, room Solid, run Axis) (by [2]stock.Length, said string) {
	low := edgeOf(into, run)
	side, end, _ := strings.Cut(low, " ")
	high := map[string]string{"left": "right", "front": "back", "bottom": "top", "lower": "upper"}[side] + " " + end
	var stopped, out []string
	for n, stop := range []struct {
		by    stock.Length
		plane stock.Length // of the end
		from  string
	}{{room.At[run] - into.At[run], into.At[run], low}, {into.End()[run] - room.End()[run], into.End()[run], high}} {
		by[n] = max(0, stop.by)
		switch {
		case stop.by <= m.tenonOn(into, run):
		case stop.by < m.thinWall() && m.covered(room, run, stop.plane):
			by[n] = 0
			out = append(out, stop.from)
		default:
			stopped = append(stopped, m.print(stop.by)+" from the "+stop.from)
		}
	}
	var all []string
	if stopped != nil {
		all = append(all, "stopped "+strings.Join(stopped, " and "))
	}
	if out != nil {
		all = append(all, "cut right through the "+and(out)+", where the trim covers it")
	}
	return by, strings.Join(all, ", ")
}

// tenonOn is how long the tenons of a piece are at its ends along an axis.
func (m *marker) tenonOn(s Solid, run Axis) stock.Length {
	if f := m.made.frame; f != nil && s.Role.inFrame() && run == s.Along {
		return f.tenon
	}
	return 0
}

// thinWall is the least that is left beside a cut without breaking out: 3 mm (1/8 in),
// common practice, no source.
func (r *reckoner) thinWall() stock.Length {
	return r.orDefault(Length{}, 3*stock.Millimetre, stock.Inch/8)
}

// covered reports whether a strip lies against the end of a piece, in that plane across an
// axis, before a cut that runs towards it.
func (m *marker) covered(room Solid, run Axis, plane stock.Length) bool {
	return slices.ContainsFunc(m.solids, func(s Solid) bool {
		if !s.Role.Strip() || s.At[run] != plane && s.End()[run] != plane {
			return false
		}
		for _, a := range []Axis{(run + 1) % 3, (run + 2) % 3} {
			if s.End()[a] < room.End()[a] || room.At[a] < s.At[a] {
				return false
			}
		}
		return true
	})
}

// around is the least box that holds two.
func around(a, b Solid) Solid {
	for axis := range a.At {
		from, to := min(a.At[axis], b.At[axis]), max(a.End()[axis], b.End()[axis])
		a.At[axis], a.Size[axis] = from, to-from
	}
	return a
}

// faceOf names the face or the edge of a piece in which room is cut, the depth
// along an axis. Pieces between two bays have two.
func faceOf(s, room Solid, depth Axis) string {
	face := "face"
	if depth == s.Across {
		face = "edge"
	}
	if !s.Role.partsBays() {
		return "inner " + face
	}
	if room.At[depth] == s.At[depth] {
		return "left " + face
	}
	return "right " + face
}

// grown is a panel with its clearance given back, half of it at each edge.
func grown(s Solid, clearance stock.Length) Solid {
	for _, a := range []Axis{s.Along, s.Across} {
		s.At[a] -= clearance / 2
		s.Size[a] += clearance
	}
	return s
}

// shared is the room that two solids both take up. They meet if they touch;
// its size may be 0 in one direction then.
func shared(a, b Solid) (room Solid, meet bool) {
	touching := 0
	for axis := range a.At {
		from, to := max(a.At[axis], b.At[axis]), min(a.End()[axis], b.End()[axis])
		if to < from {
			return Solid{}, false
		}
		if to == from {
			touching++
		}
		room.At[axis], room.Size[axis] = from, to-from
	}
	return room, touching < 2
}
