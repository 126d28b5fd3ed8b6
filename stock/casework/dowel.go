package casework

import "sawbill/stock"

// soldDowels are those of one diameter.
type soldDowels struct {
	diameter stock.Length
	lengths  []stock.Length // the longest first
}

// dowelsSold are the usual ones, from memory.
func (r *reckoner) dowelsSold() []soldDowels {
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
func (r *reckoner) dowelsFor(thickness stock.Length) soldDowels {
	sold := r.dowelsSold()
	best := sold[0]
	for _, s := range sold[1:] {
		if distance(12*s.diameter, 5*thickness) < distance(12*best.diameter, 5*thickness) {
			best = s
		}
	}
	return best
}

// dowel is that for a joint: the longest that reaches into the end no more than
// twice as far as into the face, or else the shortest (common practice, no source).
func (r *reckoner) dowel(p pegged, end, into Solid, key at) peg {
	sold := r.dowelsFor(end.Size[end.Through])
	p.peg = peg{what: dowelHole, thick: sold.diameter, across: sold.diameter, glue: r.glueRoom(),
		thickAt: key, acrossAt: key, lengthAt: key}
	for _, p.length = range sold.lengths {
		if inEnd, inFace := p.reaches(end, into); inEnd <= 2*inFace {
			break
		}
	}
	return p.peg
}

// dowelCentres are two diameters from both edges, in a narrow joint a quarter of it,
// and at most 150 mm (6 in) apart: common practice, no source.
func (r *reckoner) dowelCentres(long, diameter stock.Length) []stock.Length {
	edge, most := min(2*diameter, long/4), r.orDefault(Length{}, 150*stock.Millimetre, 6*stock.Inch)
	return evenly(long, edge, 1+max(1, spaces(long-2*edge, most)))
}
