package casework

import (
	"fmt"

	"sawbill/stock"
)

// looseTenon is a joint on tenons of their own, half of each in a mortise in the end of one piece and
// half in the face of another. They are cut from strips: [LooseTenon].
type looseTenon struct{ basic }

func (looseTenon) Name() string { return "loose-tenon" }
func (looseTenon) Sites() map[Site]string {
	return map[Site]string{CarcassCorner: "sizes as for `\"butt\"`", FrameCorner: "sizes as for `\"butt\"`"}
}
func (looseTenon) Close(Site) string { return "on loose tenons" }
func (looseTenon) Prepare() string {
	return "Cut the mortises for the loose tenons, against a stop for their depth; round the edges of their strips to fit, then crosscut the tenons off."
}

const mortiseCentre = "mortise centre"

func (j looseTenon) Mark(m *marker, s seat) {
	m.join(s, func(p pegged) peg { return j.peg(m, m.solids[p.end].Role) })
}

// isLoose reports whether a joint has loose tenons.
func isLoose(j Joint) bool {
	_, is := j.(looseTenon)
	return is
}

// peg is a loose tenon in the end of a frame's member, or of a panel. A frame's joint has one, and a
// corner of the carcass as many as the strips are made for.
func (looseTenon) peg(m *marker, end Role) peg {
	joined, n := "carcass", 0
	if end.inFrame() {
		joined, n = "frame", 1
	}
	for _, t := range m.tenons {
		if t.joined != joined {
			continue
		}
		if n == 0 {
			n = tenonsAlong(m.run, t.spacing)
		}
		thick, wide := t.thick.Total(), t.wide.Total()
		return peg{name: "loose tenon", what: mortiseCentre, note: m.print(wide) + " wide, " + m.print(thick) + " high, for a loose tenon",
			thick: thick, across: wide, apart: wide, length: t.length, glue: m.glueRoom(), reach: m.deepestLoose(),
			centersOf: func(long stock.Length) []stock.Length { return m.tenonCenters(long, wide, n) },
			thickAt:   t.thicknessAt, acrossAt: t.widthAt, lengthAt: t.lengthAt,
			shorter: "make them shorter", thinner: "make it thinner, or use thicker stock"}
	}
	panic("casework: a joint on loose tenons that are not made")
}

// deepestLoose is the deepest mortise for a loose tenon: 75 mm (3 in), about what router
// bits and slot mortisers reach (common practice, no source).
func (r *reader) deepestLoose() stock.Length {
	return r.orDefault(Length{}, 75*stock.Millimetre, 3*stock.Inch)
}

// tenonCenters are in the middle of equal shares of the joint, but leave 15 mm
// (5/8 in) at both edges (common practice, no source).
func (r *reader) tenonCenters(long, wide stock.Length, n int) []stock.Length {
	share := long / (2 * stock.Length(n))
	if n == 1 {
		return []stock.Length{share}
	}
	return evenly(long, max(share, wide/2+r.orDefault(Length{}, 15*stock.Millimetre, 5*stock.Inch/8)), n)
}

// looseTenons are those between parts of one thickness.
type looseTenons struct {
	panel
	joined      string       // "carcass" or "frame"
	length      stock.Length // of one
	thick, wide stock.Sum
	spacing     stock.Length
	// of the keys
	thicknessAt, widthAt, lengthAt at
}

// readTenons reads how loose tenons are made, between parts of the carcass or of a frame, if a joint
// of these has them.
func (r *reader) readTenons(inCarcass, inFrame bool, carcass, frame stock.Length) (all []looseTenons) {
	d := r.design.LooseTenon
	if inCarcass {
		all = r.tenonsOf(all, "carcass", carcass)
	}
	if inFrame {
		all = r.tenonsOf(all, "frame", frame)
	}
	inDoubt := r.doubtful(r.place.path+".construction") || r.doubtful(r.place.path+".carcass.joint") || r.doubtful(r.place.path+".frame.corner")
	if !inCarcass && !inFrame && d.Material.Set && !inDoubt {
		r.fault(r.place.under(d.Line, "loose_tenon"), "no joint has loose tenons", `set joint or corner = "loose-tenon", or leave the table out`)
	}
	return all
}

// tenonsOf sizes the tenons between parts of a thickness. Common practice, no
// source: a third of the parts thick, two to four times as wide, the edges
// rounded.
func (r *reader) tenonsOf(all []looseTenons, joined string, parts stock.Length) []looseTenons {
	if parts == 0 { // its own fault has been told
		return all
	}
	d := r.design.LooseTenon
	a := r.place.under(d.Line, "loose_tenon")
	t := looseTenons{
		joined: joined, thicknessAt: a.under(d.Thickness.Line, "thickness"),
		widthAt: a.under(d.Width.Line, "width"), lengthAt: a.under(d.Length.Line, "length"),
		length:  r.required(a, "length", d.Length, "that of one tenon, half of it in each part"),
		spacing: r.orDefault(d.Spacing, 150*stock.Millimetre, 6*stock.Inch),
		thick:   stock.Sum{{Times: 1, Value: parts, Over: 3, Label: joined}},
	}
	if d.Thickness.Set {
		t.thick = given(d.Thickness.Value, "given")
	}
	thickness := t.thick.Total()
	if 2*thickness > parts {
		r.fault(t.thicknessAt, fmt.Sprintf("a tenon %s thick takes more than half of the %s, %s thick",
			r.print(thickness), joined, r.print(parts)), "give about a third of it, "+r.print(parts/3))
	}
	t.wide = stock.Sum{{Times: 3, Value: thickness, Label: "thickness"}}
	if d.Width.Set {
		t.wide = given(d.Width.Value, "given")
	}
	t.panel = r.panel(a, "", d.Material, Length{Value: thickness, Set: true, Line: d.Thickness.Line}, nil)
	return append(all, t)
}

// tenonsAlong a corner of a carcass: in the middle of equal shares, none longer
// than the spacing, so that no two are farther apart than that.
func tenonsAlong(corner, spacing stock.Length) int { return max(2, spaces(corner, spacing)) }
