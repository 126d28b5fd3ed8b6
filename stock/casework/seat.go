package casework

import (
	"slices"
	"strings"

	"sawbill/stock"
)

// seat is where a joint is in a case: pieces that enter others, or stand against them. Both solids
// take up the same room where they meet, and that room is what is cut:
//
//	     _______________
//	____|               |   depth
//	____|  piece enters |
//	    |_______________|
//	|   |   width
//	  at, from the edge
type seat struct {
	site         Site
	joint        Joint
	enters, into []Role
	axis         Axis         // that the position is measured along
	fromBack     bool         // measured from the back, not the front
	clearance    stock.Length // of the piece that enters, in its housings
	key          at           // of the joint's word
}

// housing marks what is cut into every piece that is entered, each of its faces by itself.
func (m *marker) housing(s seat, name string) { m.housed(s, name, true) }

// line marks where every piece that stands against another has its lower or left face.
func (m *marker) line(s seat) { m.housed(s, "", false) }

func (m *marker) housed(h seat, name string, cut bool) {
	for _, i := range m.of(h.into...) {
		into := m.solids[i]
		depth := into.Through
		if into.Role.Unit() == "frames" {
			depth = into.Across
		}
		marks := make(map[Face]*Mark)
		rooms := make(map[Face]Solid)
		var faces []Face // of marks, in the order found
		for _, j := range m.of(h.enters...) {
			enters := m.solids[j]
			if enters.Drawer != into.Drawer {
				continue
			}
			room, meet := shared(into, grown(enters, h.clearance))
			if !meet || room.Size[h.axis] == 0 || cut && room.Size[depth] == 0 {
				continue
			}
			k := Mark{What: name, Width: room.Size[h.axis], Depth: room.Size[depth]}
			if !cut {
				k.What = string(enters.Role) + " line"
			}
			if stop := room.At[Y] - into.At[Y]; k.What == "dado" && stop > 0 {
				k.Note, k.Stops[0] = "stopped "+m.print(stop)+" behind the front edge", stop
			}
			at := room.At[h.axis] - into.At[h.axis]
			k.From = into.near(h.axis)
			if h.fromBack {
				at = into.End()[h.axis] - room.End()[h.axis]
				k.From = into.far(h.axis)
			}
			face := into.faceAt(room, depth)
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
	var stopped, out []string
	for n, stop := range []struct {
		by    stock.Length
		plane stock.Length // of the end
		from  Face
	}{{room.At[run] - into.At[run], into.At[run], into.near(run)}, {into.End()[run] - room.End()[run], into.End()[run], into.far(run)}} {
		by[n] = max(0, stop.by)
		switch {
		case stop.by <= m.tenonOn(into, run):
		case stop.by < m.thinWall() && m.covered(room, run, stop.plane):
			by[n] = 0
			out = append(out, stop.from.String())
		default:
			stopped = append(stopped, m.print(stop.by)+" from the "+stop.from.String())
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
	if f := m.frame; f != nil && s.Role.inFrame() && run == s.Along {
		return f.tenon
	}
	return 0
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
