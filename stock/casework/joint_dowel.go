package casework

import (
	"sawbill/stock"
)

// dowel is a joint on dowels, bored into the end of one piece and the face of the other.
type dowel struct{ basic }

func (dowel) Name() string { return "dowel" }
func (dowel) Sites() map[Site]string {
	return map[Site]string{CarcassCorner: "sizes as for `\"butt\"`", DividerEnd: "sizes as for `\"butt\"`", FrameCorner: "sizes as for `\"butt\"`"}
}
func (dowel) Close(Site) string { return "on dowels" }
func (dowel) Prepare() string {
	return "Bore the holes for the dowels, with a jig or a stop for their depth."
}

const dowelHole = "dowel hole"

func (j dowel) Mark(m *marker, s seat) {
	m.join(s, func(p pegged) peg { return j.peg(m, p, s.key) })
}

// peg is the dowel for a joint: the longest that reaches into the end no more than
// twice as far as into the face, or else the shortest (common practice, no source).
func (dowel) peg(m *marker, p pegged, key at) peg {
	end, into := m.solids[p.end], m.solids[p.into]
	sold := m.dowelsFor(end.Size[end.Through])
	p.peg = peg{name: "dowel", what: dowelHole, round: true, thick: sold.diameter, across: sold.diameter, apart: 2 * sold.diameter, glue: m.glueRoom(),
		centersOf: func(long stock.Length) []stock.Length { return m.dowelCenters(long, sold.diameter) },
		thickAt:   key, acrossAt: key, lengthAt: key, shorter: "use another joint", thinner: "use another joint, or thicker stock"}
	for _, p.length = range sold.lengths {
		if inEnd, inFace := p.reaches(end, into); inEnd <= 2*inFace {
			break
		}
	}
	p.note = m.print(p.thick) + " in diameter, for a dowel " + m.print(p.length) + " long"
	return p.peg
}

// soldDowels are those of one diameter.
type soldDowels struct {
	diameter stock.Length
	lengths  []stock.Length // the longest first
}

// dowelsSold are the usual ones, from memory.
func (r *reader) dowelsSold() []soldDowels {
	const mm, inch = stock.Millimetre, stock.Inch
	if r.from.Ruler.Units == stock.Inches {
		return []soldDowels{
			{inch / 4, []stock.Length{5 * inch / 4, inch}},
			{5 * inch / 16, []stock.Length{3 * inch / 2, 5 * inch / 4}},
			{3 * inch / 8, []stock.Length{2 * inch, 3 * inch / 2}},
		}
	}
	return []soldDowels{
		{6 * mm, []stock.Length{30 * mm, 25 * mm}},
		{8 * mm, []stock.Length{40 * mm, 35 * mm, 30 * mm}},
		{10 * mm, []stock.Length{40 * mm, 35 * mm, 30 * mm}},
	}
}

// dowelsFor a piece so thick: of the usual diameters the one next to 5/12 of it, in
// the middle between a third and a half (common practice, no source).
func (r *reader) dowelsFor(thickness stock.Length) soldDowels {
	sold := r.dowelsSold()
	best := sold[0]
	for _, s := range sold[1:] {
		if distance(12*s.diameter, 5*thickness) < distance(12*best.diameter, 5*thickness) {
			best = s
		}
	}
	return best
}

// dowelCenters are two diameters from both edges, in a narrow joint a quarter of it,
// and at most 150 mm (6 in) apart: common practice, no source.
func (r *reader) dowelCenters(long, diameter stock.Length) []stock.Length {
	edge, most := min(2*diameter, long/4), r.orDefault(Length{}, 150*stock.Millimetre, 6*stock.Inch)
	return evenly(long, edge, 1+max(1, spaces(long-2*edge, most)))
}
