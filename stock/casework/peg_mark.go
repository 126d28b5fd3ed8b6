package casework

import (
	"fmt"
	"slices"

	"sawbill/stock"
)

// markPegs marks the centers of dowels and loose tenons on both mates. Each is
// measured from an edge of its own piece, and lies in the middle of the room that
// both share, so that the two meet.
func (m *marker) markPegs() {
	m.keepApart(m.pegs)
	m.cautionPegs(m.pegs)
	for i := range m.solids {
		m.pegsInEnds(i, m.pegs)
		m.pegsInFaces(i, m.pegs)
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
		if subject := "shallow " + p.name + "s"; inFace < p.thick && !told[subject] {
			told[subject] = true
			why := ""
			if p.opposed {
				why = ", for it is met on both sides at one height. Make one opening there higher or lower by " + m.print(end.Size[end.Through]) + " or more, take dados"
			} else {
				why = ": take another joint"
			}
			m.caution(subject, fmt.Sprintf("A %s %s thick reaches only %s into the face of a %s %s thick%s, or thicker stock. As it is, it aligns more than it holds.",
				p.name, m.print(p.thick), m.print(inFace), into.Role, m.print(into.Size[end.Along]), why))
		}
		deep, _ := p.depths(end, into)
		if !p.round && deep > deepestMortise*p.thick && !told[p.what] {
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
		k := Mark{What: p.what, Note: p.note,
			Measure: Measure{s.near(s.Across), from(s.At[s.Across], p.centers...)},
			Across:  Measure{s.near(s.Through), from(s.At[s.Through], middle(p.room, s.Through))}}
		k.Depth, _ = p.depths(s, m.solids[p.into])
		ends = append(ends, endMark{s.endAt(p.room), k})
	}
	m.addAtEnds(i, ends)
}

// pegsInFaces marks what is bored from the face, or the edge, of a piece. Joints with the
// same places across it are one mark.
func (m *marker) pegsInFaces(i int, joints []pegged) {
	s := m.solids[i]
	var faces []Face
	var marks []Mark
joints:
	for _, p := range joints {
		if p.into != i {
			continue
		}
		end := m.solids[p.end]
		along, across := p.centers, []stock.Length{middle(p.room, end.Through)}
		if s.Along == end.Through {
			along, across = across, along
		}
		acrossAxis := end.Across + end.Through - s.Along
		k := Mark{What: p.what, Note: p.note,
			Measure: Measure{s.near(s.Along), from(s.At[s.Along], along...)},
			Across:  Measure{s.near(acrossAxis), from(s.At[acrossAxis], across...)}}
		_, k.Depth = p.depths(end, s)
		face := s.faceAt(p.room, end.Along)
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
