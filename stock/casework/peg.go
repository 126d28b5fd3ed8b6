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
	join := func(name string, key at, ends, into []string) {
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
					p.peg = r.dowel(solids[i].Size[solids[i].Through], key)
				case "loose-tenon":
					p.peg = b.tenonsIn(solids[i].Role)
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
		[]string{"partition"}, []string{"top", "bottom"})
	join(b.divider.joint.name, r.place.under(d.Divider.Line, "divider").under(d.Divider.Joint.Line, "joint"),
		[]string{"divider"}, []string{"side", "partition"})
	if f := b.frame; f != nil {
		frame := r.place.under(d.Frame.Line, "frame").under(d.Frame.Corner.Line, "corner")
		join(f.corner, frame, []string{"rail"}, []string{"stile"})
		join(f.corner, frame, []string{"mid stile"}, []string{"rail"})
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

// dowel is that for a piece so thick: of the usual diameters the one next to 5/12
// of it, in the middle between a third and a half (common practice, no source).
// Lengths are as sold (from memory).
func (r *reckoner) dowel(thickness stock.Length, key at) peg {
	sold := [][2]stock.Length{{6 * stock.Millimetre, 30 * stock.Millimetre}, {8 * stock.Millimetre, 40 * stock.Millimetre}, {10 * stock.Millimetre, 40 * stock.Millimetre}}
	if r.from.Ruler.Units == stock.Inches {
		sold = [][2]stock.Length{{stock.Inch / 4, 5 * stock.Inch / 4}, {5 * stock.Inch / 16, 3 * stock.Inch / 2}, {3 * stock.Inch / 8, 2 * stock.Inch}}
	}
	best := sold[0]
	for _, s := range sold[1:] {
		if distance(12*s[0], 5*thickness) < distance(12*best[0], 5*thickness) {
			best = s
		}
	}
	return peg{what: dowelHole, thick: best[0], across: best[0], length: best[1],
		thickAt: key, acrossAt: key, lengthAt: key}
}

func (p peg) name() string {
	if p.what == dowelHole {
		return "dowel"
	}
	return "loose tenon"
}

func distance(a, b stock.Length) stock.Length { return max(a-b, b-a) }

// tenonsIn are the loose tenons in the ends of a frame's members, or of panels.
func (b build) tenonsIn(role string) peg {
	joined := "carcass"
	if role == "rail" || role == "mid stile" {
		joined = "frame"
	}
	for _, t := range b.tenons {
		if t.joined == joined {
			return peg{what: mortiseCentre, thick: t.thick.Total(), across: t.wide.Total(), length: t.length, spacing: t.spacing,
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
	case end.Role == "rail" || end.Role == "mid stile":
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
	deep, face := p.depths(end, into)
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
			p.name(), r.print(p.length), r.print(deep), end.Role, r.print(end.Size[end.Along])), shorter)
	case 2*face < p.thick: // common practice, no source: less does not hold
		r.fault(p.lengthAt, fmt.Sprintf("%ss %s thick go only %s into the face of a %s", p.name(), r.print(p.thick), r.print(face), into.Role),
			"use another joint, longer ones, or thicker stock")
	default:
		return true
	}
	return false
}

// dowelCentres are two diameters from both edges, in a narrow joint a quarter of it,
// and at most 150 mm (6 in) apart: common practice, no source.
func (r *reckoner) dowelCentres(long, diameter stock.Length) []stock.Length {
	edge, most := min(2*diameter, long/4), r.orDefault(Length{}, 150*stock.Millimetre, 6*stock.Inch)
	return evenly(long, edge, 1+max(1, spaces(long-2*edge, most)))
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

// opposed reports whether another panel meets the face of a partition from
// beyond, in front of the joint: it may be bored, housed or screwed there.
func (m *marker) opposed(p pegged) bool {
	into, end := m.solids[p.into], m.solids[p.end]
	if into.Role != "partition" {
		return false
	}
	beyond := into.At[end.Along]
	if p.room.At[end.Along] == beyond {
		beyond = into.End()[end.Along]
	}
	panels := []string{"divider"}
	if !m.made.shelf.loose {
		panels = append(panels, "shelf")
	}
	for _, k := range m.of(panels...) {
		room, meet := shared(into, m.solids[k])
		if meet && room.At[end.Along] <= beyond && beyond <= room.End()[end.Along] &&
			room.At[end.Through] < p.room.End()[end.Through] && p.room.At[end.Through] < room.End()[end.Through] {
			return true
		}
	}
	return false
}

// depths are those in the end and in the face: half the peg in each, but
// two thirds at most of what is bored from its face, so that nothing comes
// through, and a third where another panel meets it from beyond.
func (p pegged) depths(end, into Solid) (inEnd, inFace stock.Length) {
	most := 2 * into.Size[end.Along] / 3
	if p.opposed {
		most = into.Size[end.Along] / 3
	}
	inFace = min(p.length/2, most)
	return p.length - inFace, inFace
}
