package casework

import (
	"fmt"

	"sawbill/stock"
)

// peg is a dowel or a loose tenon, half hidden in the end of one piece and half
// in the face of another.
type peg struct {
	name          string       // "dowel"
	what          string       // its mark: "dowel hole"
	note          string       // of the mark: what is bored or cut around a center
	round         bool         // its hole is a cylinder, not a box
	length        stock.Length // along the peg
	glue          stock.Length // room for it at the end of every hole
	thick, across stock.Length // through the piece's thickness, and along the joint; of dowels both are the diameter
	apart         stock.Length // from center to center, at least
	reach         stock.Length // of a cutter: the deepest hole in an end; 0 for any
	// centersOf are the centers in a joint so long, from its beginning.
	centersOf func(long stock.Length) []stock.Length
	// The keys that settle each size; of dowels all three are that of the joint.
	thickAt, acrossAt, lengthAt at
	// What else the maker may do where it is too long, or too thick.
	shorter, thinner string
}

// pegged is one joint: room is what the end of one solid and the face of the
// other share, no more than a plane.
//
//	      face            room of the joint, seen on the end
//	______|               ________________________
//	end  =|=  peg        |  o        o        o  |  half the thickness
//	______|               ------------------------
//	      |               front edge -> run
type pegged struct {
	peg
	end, into int // indices of solids
	room      Solid
	opposed   bool           // another panel meets the face from beyond
	centers   []stock.Length // along the run, in the case
}

// join puts pegs where the ends of pieces meet the faces of others.
func (m *marker) join(s seat, pegFor func(p pegged) peg) {
	for _, i := range m.of(s.enters...) {
		for _, j := range m.of(s.into...) {
			p := pegged{end: i, into: j}
			var meet bool
			if p.room, meet = shared(m.solids[i], m.solids[j]); !meet || p.room.Size[m.solids[i].Along] > 0 {
				continue
			}
			p.room = m.beforeBack(p.room)
			p.opposed = m.opposed(p)
			p.peg = pegFor(p)
			if !m.goesIn(p, m.solids[i], m.solids[j]) {
				return // the others have the same fault
			}
			end := m.solids[i]
			p.centers = p.centersOf(p.room.Size[end.Across])
			for n := range p.centers {
				p.centers[n] += p.room.At[end.Across]
			}
			m.pegs = append(m.pegs, p)
		}
	}
}

// beforeBack is what a room has before the rabbet or groove of the back, which
// would open the holes: in a carcass less of its run, in a back frame less of its
// thickness.
func (m *marker) beforeBack(room Solid) Solid {
	for _, i := range m.of("back") {
		room.Size[Y] = min(room.Size[Y], m.solids[i].At[Y]-room.At[Y])
	}
	return room
}

// glueRoom is how much deeper a hole is than the peg reaches, so that the joint
// closes: 1 mm (1/32 in), common practice, no source.
func (r *reader) glueRoom() stock.Length {
	return r.orDefault(Length{}, stock.Millimetre, stock.Inch/32)
}

func distance(a, b stock.Length) stock.Length { return max(a-b, b-a) }

// goesIn refuses pegs that take more than two thirds of the room across them: a
// sheet called 12 mm may be thinner, so half would be too strict. It refuses
// those too that come too close to each other, or to those of the other end.
func (m *marker) goesIn(p pegged, end, into Solid) bool {
	long, thick := p.room.Size[end.Across], p.room.Size[end.Through]
	at := p.centersOf(long)
	deep, _ := p.depths(end, into)
	reach, face := p.reaches(end, into)
	switch {
	case 3*p.thick > 2*thick:
		m.fault(p.thickAt, fmt.Sprintf("a %s %s thick takes more than two thirds of the %s that it has in the end of a %s",
			p.name, m.print(p.thick), m.print(thick), end.Role), p.thinner)
	case len(at) > 1 && at[1]-at[0] < p.apart:
		m.fault(p.acrossAt, fmt.Sprintf("%ss %s wide come too close in a joint %s long at the end of a %s",
			p.name, m.print(p.across), m.print(long), end.Role), "use another joint, or make the joint longer")
	case 2*deep >= end.Size[end.Along]:
		m.fault(p.lengthAt, fmt.Sprintf("%ss %s long, %s of it in each end, meet within a %s %s long",
			p.name, m.print(p.length), m.print(reach), end.Role, m.print(end.Size[end.Along])), p.shorter)
	case p.reach > 0 && deep > p.reach:
		m.fault(p.lengthAt, fmt.Sprintf("a mortise %s deep in the end of a %s, for a loose tenon %s long, is deeper than cutters reach",
			m.print(deep), end.Role, m.print(p.length)), "make it shorter; three to five times as long as it is thick in each piece will do")
	case 2*face < p.thick: // common practice, no source: less does not hold
		m.fault(p.lengthAt, fmt.Sprintf("%ss %s thick go only %s into the face of a %s", p.name, m.print(p.thick), m.print(face), into.Role),
			"use another joint, longer ones, or thicker stock")
	default:
		return true
	}
	return false
}

// evenly shares out n > 1 centres, the first and the last so far from the edges.
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
func (m *marker) opposed(p pegged) bool {
	into, end := m.solids[p.into], m.solids[p.end]
	var beside []Role
	switch into.Role {
	case "partition":
		beside = []Role{"divider"}
		if m.fixedShelves {
			beside = append(beside, "shelf")
		}
	case "mid stile":
		beside = []Role{"mid rail"}
	default:
		return false
	}
	beyond := into.At[end.Along]
	if p.room.At[end.Along] == beyond {
		beyond = into.End()[end.Along]
	}
	for _, k := range m.of(beside...) {
		room, meet := shared(into, m.solids[k])
		if meet && room.At[end.Along] <= beyond && beyond <= room.End()[end.Along] &&
			room.At[end.Through] < p.room.End()[end.Through] && p.room.At[end.Through] < room.End()[end.Through] {
			return true
		}
	}
	return false
}

// reaches is how far a peg goes into the end and into the face: half of it into
// each, but into the face no farther than the hole leaves it.
func (p pegged) reaches(end, into Solid) (inEnd, inFace stock.Length) {
	inFace = min(p.length/2, p.deepest(end, into)-p.glue)
	return p.length - inFace, inFace
}

// deepest hole in a face: two thirds of what is bored, so that nothing comes
// through, and a third where another panel meets it from beyond.
func (p pegged) deepest(end, into Solid) stock.Length {
	if p.opposed {
		return into.Size[end.Along] / 3
	}
	return 2 * into.Size[end.Along] / 3
}

// depths are those of the holes.
func (p pegged) depths(end, into Solid) (inEnd, inFace stock.Length) {
	inEnd, inFace = p.reaches(end, into)
	return inEnd + p.glue, inFace + p.glue
}

// spaces is how many spaces no longer than most an edge has. All around a panel there are as many
// nails.
func spaces(edge, most stock.Length) int { return int((edge + most - 1) / most) }
