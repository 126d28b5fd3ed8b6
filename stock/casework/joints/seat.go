package joints

import (
	"slices"
	"strings"

	"sawbill/stock"
	"sawbill/stock/casework/design"
	"sawbill/stock/casework/internal/wording"
	"sawbill/stock/casework/solid"
)

// Seat is where a joint is in a case: pieces that enter others, or stand against them. Both solids
// take up the same room where they meet, and that room is cut:
//
//	     _______________
//	____|               |   depth
//	____|  piece enters |
//	    |_______________|
//	|   |   width
//	  at, from the edge
type Seat struct {
	Site         Site
	Joint        Joint
	Enters, Into []solid.Role
	Axis         solid.Axis   // that the position is measured along
	FromBack     bool         // measured from the back, not the front
	Clearance    stock.Length // of the piece that enters, in its housings
	Key          design.Place // of the joint's word
}

// housing marks what is cut into every piece that is entered, each of its faces by itself.
func (m *Marker) housing(s Seat, name string) { m.housed(s, name, true) }

// line marks where every piece that stands against another has its lower or left face.
func (m *Marker) line(s Seat) { m.housed(s, "", false) }

func (m *Marker) housed(h Seat, name string, cut bool) {
	for _, i := range m.Of(h.Into...) {
		into := m.Solids[i]
		depth := into.Through
		if into.Role.Unit() == "frames" {
			depth = into.Across
		}
		marks := make(map[solid.Face]*solid.Mark)
		rooms := make(map[solid.Face]solid.Solid)
		var faces []solid.Face // of marks, in the order found
		for _, j := range m.Of(h.Enters...) {
			enters := m.Solids[j]
			if enters.Drawer != into.Drawer {
				continue
			}
			room, meet := solid.Shared(into, solid.Grown(enters, h.Clearance))
			if !meet || room.Size[h.Axis] == 0 || cut && room.Size[depth] == 0 {
				continue
			}
			k := solid.Mark{What: name, Width: room.Size[h.Axis], Depth: room.Size[depth]}
			if cut {
				m.In.WarnOfNarrow(name, k.Width)
			}
			if !cut {
				k.What = string(enters.Role) + " line"
			}
			if stop := room.At[solid.Y] - into.At[solid.Y]; k.What == "dado" && stop > 0 {
				k.Note, k.Stops[0] = "stopped "+m.In.Print(stop)+" behind the front edge", stop
			}
			at := room.At[h.Axis] - into.At[h.Axis]
			k.From = into.Near(h.Axis)
			if h.FromBack {
				at = into.End()[h.Axis] - room.End()[h.Axis]
				k.From = into.Far(h.Axis)
			}
			face := into.FaceAt(room, depth)
			if marks[face] == nil {
				marks[face], rooms[face] = &k, room
				faces = append(faces, face)
			}
			rooms[face] = solid.Around(rooms[face], room)
			if on := marks[face]; !slices.Contains(on.At, at) {
				on.At = append(on.At, at)
			}
		}
		for _, face := range faces {
			slices.Sort(marks[face].At)
			if name := marks[face].What; name == "groove" || name == "rabbet" {
				run := solid.X + solid.Y + solid.Z - h.Axis - depth
				marks[face].Stops, marks[face].Note = m.stops(into, rooms[face], run)
			}
			m.Add(solid.Spot{Solid: i, Face: face}, *marks[face])
		}
	}
}

// stops returns how far from the ends of a piece a cut along an axis is stopped, and says so in
// words. The words are "" if it runs through, on a piece with tenons from shoulder to shoulder. A
// wall at the end that is too thin to stand is cut away where a strip covers it.
func (m *Marker) stops(into, room solid.Solid, run solid.Axis) (by [2]stock.Length, said string) {
	var stopped, out []string
	for n, stop := range []struct {
		by    stock.Length
		plane stock.Length // of the end
		from  solid.Face
	}{{room.At[run] - into.At[run], into.At[run], into.Near(run)}, {into.End()[run] - room.End()[run], into.End()[run], into.Far(run)}} {
		by[n] = max(0, stop.by)
		switch {
		case stop.by <= m.tenonOn(into, run):
		case stop.by < ThinWall(m.In) && m.covered(room, run, stop.plane):
			by[n] = 0
			out = append(out, stop.from.String())
		default:
			stopped = append(stopped, m.In.Print(stop.by)+" from the "+stop.from.String())
		}
	}
	var all []string
	if stopped != nil {
		all = append(all, "stopped "+strings.Join(stopped, " and "))
	}
	if out != nil {
		all = append(all, "cut right through the "+wording.And(out)+", where the trim covers it")
	}
	return by, strings.Join(all, ", ")
}

// tenonOn is how long the tenons of a piece are at its ends along an axis.
func (m *Marker) tenonOn(s solid.Solid, run solid.Axis) stock.Length {
	if f := m.Frame; f != nil && s.Role.InFrame() && run == s.Along {
		return f.Tenon
	}
	return 0
}

// covered reports whether a strip lies against the end of a piece, in that plane across an
// axis, before a cut that runs towards it.
func (m *Marker) covered(room solid.Solid, run solid.Axis, plane stock.Length) bool {
	return slices.ContainsFunc(m.Solids, func(s solid.Solid) bool {
		if !s.Role.Strip() || s.At[run] != plane && s.End()[run] != plane {
			return false
		}
		for _, a := range []solid.Axis{(run + 1) % 3, (run + 2) % 3} {
			if s.End()[a] < room.End()[a] || room.At[a] < s.At[a] {
				return false
			}
		}
		return true
	})
}
