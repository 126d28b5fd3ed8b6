package joints

import (
	"sawbill/stock"
	"sawbill/stock/casework/design"
	"sawbill/stock/casework/solid"
)

// dowel is a joint on dowels, bored into the end of one piece and the face of the other.
type dowel struct{ traits }

var doweled = dowel{traits{name: "dowel", prepare: "Bore the holes for the dowels, with a jig or a stop for their depth.", at: map[Site]Fit{
	CarcassCorner: onDowels,
	DividerEnd:    onDowels,
	FrameCorner:   onDowels,
}}}

var onDowels = Fit{Says: "sizes as for `\"butt\"`", Close: "on dowels"}

const DowelHole = "dowel hole"

func (j dowel) Mark(m *Marker, s Seat) {
	m.join(s, func(p Pegged) peg { return j.peg(m, p, s.Key) })
}

// peg is the dowel for a joint: the longest that reaches into the end no more than
// twice as far as into the face, or else the shortest (common practice, no source).
func (dowel) peg(m *Marker, p Pegged, key design.Place) peg {
	end, into := m.Solids[p.end], m.Solids[p.into]
	diameter, lengths := dowelsFor(m.In, end.Size[end.Through])
	p.peg = peg{name: "dowel", What: DowelHole, round: true, Thick: diameter, across: diameter, apart: 2 * diameter, glue: glueRoom(m.In), step: m.In.From.Tools.Step,
		centersOf: func(long stock.Length) []stock.Length { return dowelCenters(m.In, long, diameter) },
		thickAt:   key, acrossAt: key, lengthAt: key, shorter: "use another joint", thinner: "use another joint, or thicker stock"}
	for _, p.Length = range lengths {
		if inEnd, inFace := p.reaches(end, into); inEnd <= 2*inFace {
			break
		}
	}
	p.note = m.In.Print(p.Thick) + " in diameter, for a dowel " + m.In.Print(p.Length) + " long"
	return p.peg
}

// dowelsFor a piece so thick: of the diameters at hand the one next to 5/12 of it, in the
// middle between a third and a half (common practice, no source), with its lengths, the
// longest first.
func dowelsFor(r *design.Reader, thickness stock.Length) (diameter stock.Length, lengths []stock.Length) {
	all := r.From.Tools.Dowels
	if len(all) == 0 {
		all = design.UsualTools(r.From.Ruler.Units).Dowels
	}
	diameter = all[0].Diameter
	for _, d := range all {
		if solid.Distance(12*d.Diameter, 5*thickness) < solid.Distance(12*diameter, 5*thickness) {
			diameter = d.Diameter
		}
	}
	for _, d := range all {
		if d.Diameter == diameter {
			lengths = append(lengths, d.Length)
		}
	}
	return diameter, lengths
}

// dowelCenters are two diameters from both edges, in a narrow joint a quarter of it,
// and at most 150 mm (6 in) apart: common practice, no source.
func dowelCenters(r *design.Reader, long, diameter stock.Length) []stock.Length {
	edge, most := min(2*diameter, long/4), r.OrDefault(design.Length{}, 150*stock.Millimeter, 6*stock.Inch)
	return evenly(long, edge, 1+max(1, Spaces(long-2*edge, most)))
}
