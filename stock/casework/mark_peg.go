package casework

import (
	"fmt"
	"slices"

	"sawbill/stock"
)

// pegs marks the centres of dowels and loose tenons on both mates. Each is
// measured from an edge of its own piece, and lies in the middle of the room that
// both share, so that the two meet.
func (m *marker) pegs() {
	joints := m.pegged(m.solids)
	m.keepApart(joints)
	m.cautionPegs(joints)
	for i := range m.solids {
		m.pegsInEnds(i, joints)
		m.pegsInFaces(i, joints)
	}
}

// cautionPegs tells of pegs that hold little and of mortises that are hard to cut:
// it is common practice (no source) that a peg reaches as far into a face as it is
// thick, at the least; for mortises see deepestMortise.
func (m *marker) cautionPegs(joints []pegged) {
	told := make(map[string]bool)
	for _, p := range joints {
		end, into := m.solids[p.end], m.solids[p.into]
		_, inFace := p.reaches(end, into)
		if subject := "shallow " + p.name() + "s"; inFace < p.thick && !told[subject] {
			told[subject] = true
			why := ""
			if p.opposed {
				why = ", for it is met on both sides at one height. Make one opening there higher or lower by " + m.print(end.Size[end.Through]) + " or more, take dados"
			} else {
				why = ": take another joint"
			}
			m.caution(subject, fmt.Sprintf("A %s %s thick reaches only %s into the face of a %s %s thick%s, or thicker stock. As it is, it aligns more than it holds.",
				p.name(), m.print(p.thick), m.print(inFace), into.Role, m.print(into.Size[end.Along]), why))
		}
		deep, _ := p.depths(end, into)
		if p.what == mortiseCentre && deep > deepestMortise*p.thick && !told[p.what] {
			told[p.what] = true
			m.caution("deep mortises", fmt.Sprintf("A mortise %s deep in the end of a %s and %s wide, for a loose tenon %s long, is deeper than %d times its width: a shorter tenon will do.",
				m.print(deep), end.Role, m.print(p.thick), m.print(p.length), deepestMortise))
		}
	}
}

// pegsInEnds marks the ends of a piece.
func (m *marker) pegsInEnds(i int, joints []pegged) {
	s := m.solids[i]
	var ends []endMark
	for _, p := range joints {
		if p.end != i {
			continue
		}
		k := Mark{What: p.what, Note: m.pegNote(p.peg),
			Measure: Measure{edgeOf(s, s.Across), from(s.At[s.Across], p.centres...)},
			Across:  Measure{edgeOf(s, s.Through), from(s.At[s.Through], middle(p.room, s.Through))}}
		k.Depth, _ = p.depths(s, m.solids[p.into])
		ends = append(ends, endMark{endOf(s, p.room), k})
	}
	m.addAtEnds(i, ends)
}

// pegsInFaces marks what is bored from the face, or the edge, of a piece. Joints with the
// same places across it are one mark.
func (m *marker) pegsInFaces(i int, joints []pegged) {
	s := m.solids[i]
	var faces []string
	var marks []Mark
joints:
	for _, p := range joints {
		if p.into != i {
			continue
		}
		end := m.solids[p.end]
		along, across := p.centres, []stock.Length{middle(p.room, end.Through)}
		if s.Along == end.Through {
			along, across = across, along
		}
		acrossAxis := end.Across + end.Through - s.Along
		k := Mark{What: p.what, Note: m.pegNote(p.peg),
			Measure: Measure{edgeOf(s, s.Along), from(s.At[s.Along], along...)},
			Across:  Measure{edgeOf(s, acrossAxis), from(s.At[acrossAxis], across...)}}
		_, k.Depth = p.depths(end, s)
		face := faceOf(s, p.room, end.Along)
		for n := range marks {
			on := &marks[n]
			if faces[n] == face && on.Across.same(k.Across) && on.Depth == k.Depth && on.Note == k.Note {
				on.At = append(on.At, k.At...)
				slices.Sort(on.At)
				continue joints
			}
		}
		faces, marks = append(faces, face), append(marks, k)
	}
	for n, k := range marks {
		m.add(Spot{Solid: i, Face: faces[n]}, k)
	}
}

// pegNote tells what is bored or cut around a centre.
func (m *marker) pegNote(p peg) string {
	if p.what == dowelHole {
		return m.print(p.thick) + " in diameter, for a dowel " + m.print(p.length) + " long"
	}
	return m.print(p.across) + " wide, " + m.print(p.thick) + " high, for a loose tenon"
}

// from measures places of the case from the edge of a piece.
func from(edge stock.Length, places ...stock.Length) []stock.Length {
	at := make([]stock.Length, len(places))
	for i, p := range places {
		at[i] = p - edge
	}
	return at
}

// middle of a room along an axis.
func middle(room Solid, a Axis) stock.Length { return room.At[a] + room.Size[a]/2 }
