package joints

import (
	"fmt"

	"sawbill/stock"
	"sawbill/stock/casework/solid"
)

// MarkPegs marks the centers of dowels and loose tenons on both mates. Each is
// measured from an edge of its own piece, and lies in the middle of the room that
// both share, so that the two meet.
func (m *Marker) MarkPegs() {
	m.keepApart(m.Pegs)
	m.cautionPegs(m.Pegs)
	for i := range m.Solids {
		m.pegsInEnds(i, m.Pegs)
		m.pegsInFaces(i, m.Pegs)
	}
}

// cautionPegs warns of pegs that hold little and of mortises that are hard to cut. A peg reaches at
// least as far into a face as it is thick (common practice, no source); for mortises see
// deepestMortise.
func (m *Marker) cautionPegs(joints []Pegged) {
	told := make(map[string]bool)
	for _, p := range joints {
		end, into := m.Solids[p.end], m.Solids[p.into]
		_, inFace := p.reaches(end, into)
		if subject := "shallow " + p.name + "s"; inFace < p.Thick && !told[subject] {
			told[subject] = true
			why := ""
			if p.opposed {
				why = ", for it is met on both sides at one height. Make one opening there higher or lower by " + m.In.Print(end.Size[end.Through]) + " or more, take dados"
			} else {
				why = ": take another joint"
			}
			m.In.Caution(subject, fmt.Sprintf("A %s %s thick reaches only %s into the face of a %s %s thick%s, or thicker stock. As it is, it aligns more than it holds.",
				p.name, m.In.Print(p.Thick), m.In.Print(inFace), into.Role, m.In.Print(into.Size[end.Along]), why))
		}
		deep, _ := p.depths(end, into)
		if !p.round && deep > deepestMortise*p.Thick && !told[p.What] {
			told[p.What] = true
			m.In.Caution("deep mortises", fmt.Sprintf("A mortise %s deep in the end of a %s and %s wide, for a loose tenon %s long, is deeper than %d times its width: a shorter tenon will do.",
				m.In.Print(deep), end.Role, m.In.Print(p.Thick), m.In.Print(p.Length), deepestMortise))
		}
	}
}

// pegsInEnds marks the ends of a piece.
func (m *Marker) pegsInEnds(i int, joints []Pegged) {
	s := m.Solids[i]
	var ends []EndMark
	for _, p := range joints {
		if p.end != i {
			continue
		}
		k := solid.Mark{What: p.What, Note: p.note,
			Measure: solid.Measure{From: s.Near(s.Across), At: solid.MeasuredFrom(s.At[s.Across], p.Centers...)},
			Across:  solid.Measure{From: s.Near(s.Through), At: solid.MeasuredFrom(s.At[s.Through], solid.Middle(p.room, s.Through))}}
		k.Depth, _ = p.depths(s, m.Solids[p.into])
		ends = append(ends, EndMark{s.EndAt(p.room), k})
	}
	m.AddAtEnds(i, ends)
}

// pegsInFaces marks what is bored from the face, or the edge, of a piece. Joints with the
// same places across it are one mark.
func (m *Marker) pegsInFaces(i int, joints []Pegged) {
	s := m.Solids[i]
	var marks []EndMark
	for _, p := range joints {
		if p.into != i {
			continue
		}
		end := m.Solids[p.end]
		along, across := p.Centers, []stock.Length{solid.Middle(p.room, end.Through)}
		if s.Along == end.Through {
			along, across = across, along
		}
		acrossAxis := end.Across + end.Through - s.Along
		k := solid.Mark{What: p.What, Note: p.note,
			Measure: solid.Measure{From: s.Near(s.Along), At: solid.MeasuredFrom(s.At[s.Along], along...)},
			Across:  solid.Measure{From: s.Near(acrossAxis), At: solid.MeasuredFrom(s.At[acrossAxis], across...)}}
		_, k.Depth = p.depths(end, s)
		marks = append(marks, EndMark{s.FaceAt(p.room, end.Along), k})
	}
	m.addJoined(i, marks)
}
