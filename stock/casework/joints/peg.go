package joints

import (
	"fmt"

	"sawbill/stock"
	"sawbill/stock/casework/design"
	"sawbill/stock/casework/solid"
)

// peg is a dowel or a loose tenon, half hidden in the end of one piece and half
// in the face of another.
type peg struct {
	name          string       // "dowel"
	What          string       // its mark: "dowel hole"
	note          string       // of the mark: what is bored or cut around a center
	round         bool         // its hole is a cylinder, not a box
	Length        stock.Length // along the peg
	glue          stock.Length // room for it at the end of every hole
	Thick, across stock.Length // through the piece's thickness, and along the joint; of dowels both are the diameter
	apart         stock.Length // from center to center, at least
	step          stock.Length // of what stops the depth of a hole; 0 for none
	reach         stock.Length // of a cutter: the deepest hole in an end; 0 for any
	// centersOf are the centers in a joint so long, from its beginning.
	centersOf func(long stock.Length) []stock.Length
	// The keys that settle each size; for dowels all three are the key of the joint.
	thickAt, acrossAt, lengthAt design.Place
	// Remedies for a peg that is too long, or too thick.
	shorter, thinner string
}

// Pegged is one joint: room is the plane that the end of one solid and the face of the other share.
//
//	      face            room of the joint, seen on the end
//	______|               ________________________
//	end  =|=  peg        |  o        o        o  |  half the thickness
//	______|               ------------------------
//	      |               front edge -> run
type Pegged struct {
	peg
	end, into int // indices of solids
	room      solid.Solid
	opposed   bool           // another panel meets the face from beyond
	Centers   []stock.Length // along the run, in the case
}

// join puts pegs where the ends of pieces meet the faces of others.
func (m *Marker) join(s Seat, pegFor func(p Pegged) peg) {
	for _, i := range m.Of(s.Enters...) {
		for _, j := range m.Of(s.Into...) {
			p := Pegged{end: i, into: j}
			var meet bool
			if p.room, meet = solid.Shared(m.Solids[i], m.Solids[j]); !meet || p.room.Size[m.Solids[i].Along] > 0 {
				continue
			}
			p.room = m.beforeBack(p.room)
			p.opposed = m.opposed(p)
			p.peg = pegFor(p)
			if !m.goesIn(p, m.Solids[i], m.Solids[j]) {
				return // the others have the same fault
			}
			end := m.Solids[i]
			p.Centers = p.centersOf(p.room.Size[end.Across])
			for n := range p.Centers {
				p.Centers[n] = p.room.At[end.Across] + m.In.Down(p.Centers[n])
			}
			m.Pegs = append(m.Pegs, p)
		}
	}
}

// beforeBack is the part of a room before the rabbet or groove of the back, which would open the
// holes. In a carcass it has less of the run, in a back frame less of the thickness.
func (m *Marker) beforeBack(room solid.Solid) solid.Solid {
	for _, i := range m.Of("back") {
		room.Size[solid.Y] = min(room.Size[solid.Y], m.Solids[i].At[solid.Y]-room.At[solid.Y])
	}
	return room
}

// glueRoom is how much deeper a hole is than the peg reaches, so that the joint
// closes: 1 mm (1/32 in), common practice, no source.
func glueRoom(r *design.Reader) stock.Length {
	return r.OrDefault(design.Length{}, stock.Millimeter, stock.Inch/32)
}

// goesIn refuses pegs that take more than two thirds of the room across them: a
// sheet called 12 mm may be thinner, so half would be too strict. It refuses
// those too that come too close to each other, or to those of the other end.
func (m *Marker) goesIn(p Pegged, end, into solid.Solid) bool {
	long, thick := p.room.Size[end.Across], p.room.Size[end.Through]
	at := p.centersOf(long)
	deep, _ := p.depths(end, into)
	reach, face := p.reaches(end, into)
	switch {
	case 3*p.Thick > 2*thick:
		m.In.Fault(p.thickAt, fmt.Sprintf("a %s %s thick takes more than two thirds of the %s that it has in the end of a %s",
			p.name, m.In.Print(p.Thick), m.In.Print(thick), end.Role), p.thinner)
	case len(at) > 1 && at[1]-at[0] < p.apart:
		m.In.Fault(p.acrossAt, fmt.Sprintf("%ss %s wide come too close in a joint %s long at the end of a %s",
			p.name, m.In.Print(p.across), m.In.Print(long), end.Role), "use another joint, or make the joint longer")
	case 2*deep >= end.Size[end.Along]:
		m.In.Fault(p.lengthAt, fmt.Sprintf("%ss %s long, %s of it in each end, meet within a %s %s long",
			p.name, m.In.Print(p.Length), m.In.Print(reach), end.Role, m.In.Print(end.Size[end.Along])), p.shorter)
	case p.reach > 0 && deep > p.reach:
		m.In.Fault(p.lengthAt, fmt.Sprintf("a mortise %s deep in the end of a %s, for a loose tenon %s long, is deeper than cutters reach",
			m.In.Print(deep), end.Role, m.In.Print(p.Length)), "make it shorter; three to five times as long as it is thick in each piece will do")
	case 2*face < p.Thick: // common practice, no source: less does not hold
		m.In.Fault(p.lengthAt, fmt.Sprintf("%ss %s thick go only %s into the face of a %s", p.name, m.In.Print(p.Thick), m.In.Print(face), into.Role),
			"use another joint, longer ones, or thicker stock")
	default:
		return true
	}
	return false
}

// evenly shares out n > 1 centers, the first and the last so far from the edges.
// Each is a multiple of the exact space, rounded down once.
func evenly(long, edge stock.Length, n int) []stock.Length {
	at := make([]stock.Length, n)
	for i := range at {
		at[i] = edge + stock.Length(i)*(long-2*edge)/stock.Length(n-1)
	}
	return at
}

// opposed reports whether another panel meets the face of a partition, or another
// rail the edge of a mid stile, from beyond, in front of the joint: it may be bored,
// housed or screwed there.
func (m *Marker) opposed(p Pegged) bool {
	into, end := m.Solids[p.into], m.Solids[p.end]
	var beside []solid.Role
	switch into.Role {
	case "partition":
		beside = []solid.Role{"divider"}
		if m.FixedShelves {
			beside = append(beside, "shelf")
		}
	case "mid stile":
		beside = []solid.Role{"mid rail"}
	default:
		return false
	}
	beyond := into.At[end.Along]
	if p.room.At[end.Along] == beyond {
		beyond = into.End()[end.Along]
	}
	for _, k := range m.Of(beside...) {
		room, meet := solid.Shared(into, m.Solids[k])
		if meet && room.At[end.Along] <= beyond && beyond <= room.End()[end.Along] &&
			room.At[end.Through] < p.room.End()[end.Through] && p.room.At[end.Through] < room.End()[end.Through] {
			return true
		}
	}
	return false
}

// reaches is how far a peg goes into the end and into the face: half of it into
// each, but into the face no farther than the hole leaves it.
func (p Pegged) reaches(end, into solid.Solid) (inEnd, inFace stock.Length) {
	inFace = min(p.Length/2, p.deepest(end, into)-p.glue)
	if p.step > 0 && inFace > p.step {
		inFace -= inFace % p.step
	}
	return p.Length - inFace, inFace
}

// deepest hole in a face: two thirds of what is bored, so that nothing comes
// through, and a third where another panel meets it from beyond.
func (p Pegged) deepest(end, into solid.Solid) stock.Length {
	if p.opposed {
		return into.Size[end.Along] / 3
	}
	return 2 * into.Size[end.Along] / 3
}

// depths are the depths of the holes.
func (p Pegged) depths(end, into solid.Solid) (inEnd, inFace stock.Length) {
	inEnd, inFace = p.reaches(end, into)
	return inEnd + p.glue, inFace + p.glue
}

// Spaces is how many spaces no longer than most an edge has. All around a panel there are as many
// nails.
func Spaces(edge, most stock.Length) int { return int((edge + most - 1) / most) }
