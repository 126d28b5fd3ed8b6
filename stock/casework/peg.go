package casework

import (
	"fmt"

	"sawbill/stock"
)

// peg is a dowel or a loose tenon, half hidden in the end of one piece and half
// in the face of another.
type peg struct {
	what          string       // its mark: "dowel hole"
	length        stock.Length // along the peg
	glue          stock.Length // room for it at the end of every hole
	thick, across stock.Length // through the piece's thickness, and along the joint; of dowels both are the diameter
	spacing       stock.Length // of tenons: at most
	// The keys that settle each size; of dowels all three are that of the joint.
	thickAt, acrossAt, lengthAt at
}

const (
	dowelHole     = "dowel hole"
	mortiseCentre = "mortise centre"
)

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
	centres   []stock.Length // along the run, in the case
}

// pegged lists the joints on dowels or loose tenons.
func (r *reckoner) pegged(solids []Solid) []pegged {
	m := &marker{reckoner: r, solids: solids}
	b, d := r.made, r.design
	var all []pegged
	join := func(name string, key at, ends, into []Role) {
		for _, i := range m.of(ends...) {
			for _, j := range m.of(into...) {
				p := pegged{end: i, into: j}
				var meet bool
				if p.room, meet = shared(solids[i], solids[j]); !meet || p.room.Size[solids[i].Along] > 0 {
					continue
				}
				p.room = m.beforeBack(p.room)
				p.opposed = m.opposed(p)
				switch name {
				case "dowel":
					p.peg = r.dowel(p, solids[i], solids[j], key)
				case "loose-tenon":
					p.peg = r.tenonsIn(solids[i].Role)
				default:
					continue
				}
				if !r.goesIn(p, solids[i], solids[j]) {
					return // the others have the same fault
				}
				p.centres = r.centres(p, solids[i])
				all = append(all, p)
			}
		}
	}
	carcass := r.place.under(d.Carcass.Line, "carcass").under(d.Carcass.Joint.Line, "joint")
	for _, c := range m.corners() {
		join(b.corner.name, carcass, c.enters, c.into)
	}
	join(b.partition.joint.name, r.place.under(d.Partition.Line, "partition").under(d.Partition.Joint.Line, "joint"),
		[]Role{"partition"}, []Role{"top", "bottom"})
	join(b.divider.joint.name, r.place.under(d.Divider.Line, "divider").under(d.Divider.Joint.Line, "joint"),
		[]Role{"divider"}, []Role{"side", "partition"})
	if f := b.frame; f != nil {
		frame := r.place.under(d.Frame.Line, "frame").under(d.Frame.Corner.Line, "corner")
		join(f.corner, frame, []Role{"rail"}, []Role{"stile"})
		join(f.corner, frame, []Role{"mid stile"}, []Role{"rail"})
		join(f.corner, frame, []Role{"mid rail"}, []Role{"stile", "mid stile"})
	}
	return all
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
func (r *reckoner) glueRoom() stock.Length {
	return r.orDefault(Length{}, stock.Millimetre, stock.Inch/32)
}

func (p peg) name() string {
	if p.what == dowelHole {
		return "dowel"
	}
	return "loose tenon"
}

func distance(a, b stock.Length) stock.Length { return max(a-b, b-a) }

// tenonsIn are the loose tenons in the ends of a frame's members, or of panels.
func (r *reckoner) tenonsIn(role Role) peg {
	joined := "carcass"
	if role.inFrame() {
		joined = "frame"
	}
	for _, t := range r.made.looseTenons {
		if t.joined == joined {
			return peg{what: mortiseCentre, thick: t.thick.Total(), across: t.wide.Total(), length: t.length, spacing: t.spacing, glue: r.glueRoom(),
				thickAt: t.thicknessAt, acrossAt: t.widthAt, lengthAt: t.lengthAt}
		}
	}
	panic("casework: a joint on loose tenons that are not made")
}

// centres are those of a joint's pegs along its run, in the case.
func (r *reckoner) centres(p pegged, end Solid) []stock.Length {
	at := r.along(p, end)
	for i := range at {
		at[i] += p.room.At[end.Across]
	}
	return at
}

// along are the same, from the beginning of the joint. A frame's joint has one
// loose tenon, and a corner of the carcass as many as the strips are made for.
func (r *reckoner) along(p pegged, end Solid) []stock.Length {
	long := p.room.Size[end.Across]
	switch {
	case p.what == dowelHole:
		return r.dowelCentres(long, p.across)
	case end.Role.inFrame():
		return r.tenonCentres(long, p.across, 1)
	}
	return r.tenonCentres(long, p.across, tenonsAlong(r.body().depth.Total(), p.spacing))
}

// goesIn refuses pegs that take more than two thirds of the room across them: a
// sheet called 12 mm may be thinner, so half would be too strict. It refuses
// those too that come too close to each other, or to those of the other end.
func (r *reckoner) goesIn(p pegged, end, into Solid) bool {
	long, thick := p.room.Size[end.Across], p.room.Size[end.Through]
	at, apart := r.along(p, end), p.across
	if p.what == dowelHole {
		apart = 2 * p.across
	}
	deep, _ := p.depths(end, into)
	reach, face := p.reaches(end, into)
	shorter, thinner := "make them shorter", "make it thinner, or use thicker stock"
	if p.what == dowelHole {
		shorter, thinner = "use another joint", "use another joint, or thicker stock"
	}
	switch {
	case 3*p.thick > 2*thick:
		r.fault(p.thickAt, fmt.Sprintf("a %s %s thick takes more than two thirds of the %s that it has in the end of a %s",
			p.name(), r.print(p.thick), r.print(thick), end.Role), thinner)
	case len(at) > 1 && at[1]-at[0] < apart:
		r.fault(p.acrossAt, fmt.Sprintf("%ss %s wide come too close in a joint %s long at the end of a %s",
			p.name(), r.print(p.across), r.print(long), end.Role), "use another joint, or make the joint longer")
	case 2*deep >= end.Size[end.Along]:
		r.fault(p.lengthAt, fmt.Sprintf("%ss %s long, %s of it in each end, meet within a %s %s long",
			p.name(), r.print(p.length), r.print(reach), end.Role, r.print(end.Size[end.Along])), shorter)
	case p.what == mortiseCentre && deep > r.deepestLoose():
		r.fault(p.lengthAt, fmt.Sprintf("a mortise %s deep in the end of a %s, for a loose tenon %s long, is deeper than cutters reach",
			r.print(deep), end.Role, r.print(p.length)), "make it shorter; three to five times as long as it is thick in each piece will do")
	case 2*face < p.thick: // common practice, no source: less does not hold
		r.fault(p.lengthAt, fmt.Sprintf("%ss %s thick go only %s into the face of a %s", p.name(), r.print(p.thick), r.print(face), into.Role),
			"use another joint, longer ones, or thicker stock")
	default:
		return true
	}
	return false
}

// deepestLoose is the deepest mortise for a loose tenon: 75 mm (3 in), about what router
// bits and slot mortisers reach (common practice, no source).
func (r *reckoner) deepestLoose() stock.Length {
	return r.orDefault(Length{}, 75*stock.Millimetre, 3*stock.Inch)
}

// tenonCentres are in the middle of equal shares of the joint, but leave 15 mm
// (5/8 in) at both edges (common practice, no source).
func (r *reckoner) tenonCentres(long, wide stock.Length, n int) []stock.Length {
	share := long / (2 * stock.Length(n))
	if n == 1 {
		return []stock.Length{share}
	}
	return evenly(long, max(share, wide/2+r.orDefault(Length{}, 15*stock.Millimetre, 5*stock.Inch/8)), n)
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
		if !m.made.shelf.loose {
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
