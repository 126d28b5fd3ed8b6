package joints

import (
	"fmt"

	"sawbill/stock"
	"sawbill/stock/casework/design"
	"sawbill/stock/casework/internal/sums"
	"sawbill/stock/casework/solid"
)

// looseTenon is a joint on tenons of their own, half of each in a mortise in the end of one piece and
// half in the face of another. They are cut from strips: [LooseTenon].
type looseTenon struct{ traits }

var looseTenoned = looseTenon{traits{
	name:    "loose-tenon",
	prepare: "Cut the mortises for the loose tenons, against a stop for their depth; round the edges of their strips to fit, then crosscut the tenons off.",
	at: map[Site]Fit{
		CarcassCorner: {Says: "sizes as for `\"butt\"`", Close: "on loose tenons"},
		FrameCorner:   {Says: "sizes as for `\"butt\"`", Close: "on loose tenons"},
	},
}}

const mortiseCenter = "mortise center"

func (j looseTenon) Mark(m *Marker, s Seat) {
	m.join(s, func(p Pegged) peg { return j.peg(m, m.Solids[p.end].Role) })
}

// IsLoose reports whether a joint has loose tenons.
func IsLoose(j Joint) bool {
	_, is := j.(looseTenon)
	return is
}

// peg is a loose tenon in the end of a frame's member, or of a panel. A frame's joint has one, and a
// corner of the carcass as many as the strips are made for.
func (looseTenon) peg(m *Marker, end solid.Role) peg {
	joined, n := "carcass", 0
	if end.InFrame() {
		joined, n = "frame", 1
	}
	for _, t := range m.Tenons {
		if t.Joined != joined {
			continue
		}
		if n == 0 {
			n = TenonsAlong(m.Run, t.Spacing)
		}
		thick, wide := t.Thick.Total(), t.Wide.Total()
		return peg{name: "loose tenon", What: mortiseCenter, note: m.In.Print(wide) + " wide, " + m.In.Print(thick) + " high, for a loose tenon",
			Thick: thick, across: wide, apart: wide, Length: t.Length, glue: glueRoom(m.In), step: m.In.From.Tools.Step, reach: deepestLoose(m.In),
			centersOf: func(long stock.Length) []stock.Length { return tenonCenters(m.In, long, wide, n) },
			thickAt:   t.thicknessAt, acrossAt: t.WidthAt, lengthAt: t.lengthAt,
			shorter: "make them shorter", thinner: "make it thinner, or use thicker stock"}
	}
	panic("casework: a joint on loose tenons that are not made")
}

// deepestLoose is the deepest mortise for a loose tenon: 75 mm (3 in), about what router
// bits and slot mortisers reach (common practice, no source).
func deepestLoose(r *design.Reader) stock.Length {
	return r.OrDefault(design.Length{}, 75*stock.Millimeter, 3*stock.Inch)
}

// tenonCenters are in the middle of equal shares of the joint, but leave 15 mm
// (5/8 in) at both edges (common practice, no source).
func tenonCenters(r *design.Reader, long, wide stock.Length, n int) []stock.Length {
	share := long / (2 * stock.Length(n))
	if n == 1 {
		return []stock.Length{share}
	}
	return evenly(long, max(share, wide/2+r.OrDefault(design.Length{}, 15*stock.Millimeter, 5*stock.Inch/8)), n)
}

// LooseTenons are those between parts of one thickness.
type LooseTenons struct {
	design.Panel
	Joined      string       // "carcass" or "frame"
	Length      stock.Length // of one
	Thick, Wide stock.Sum
	Spacing     stock.Length
	// of the keys
	thicknessAt, WidthAt, lengthAt design.Place
}

// ReadTenons reads how loose tenons are made, between parts of the carcass or of a frame, if a joint
// of these has them.
func ReadTenons(r *design.Reader, inCarcass, inFrame bool, carcass, frame stock.Length) (all []LooseTenons) {
	d := r.Design.LooseTenon
	if inCarcass {
		all = tenonsOf(r, all, "carcass", carcass)
	}
	if inFrame {
		all = tenonsOf(r, all, "frame", frame)
	}
	inDoubt := r.Doubtful(r.Root.Path+".construction") || r.Doubtful(r.Root.Path+".carcass.joint") || r.Doubtful(r.Root.Path+".frame.corner")
	if !inCarcass && !inFrame && d.Material.Set && !inDoubt {
		r.Fault(r.Root.Under(d.Line, "loose_tenon"), "no joint has loose tenons", `set joint or corner = "loose-tenon", or leave the table out`)
	}
	return all
}

// tenonsOf sizes the tenons between parts of a thickness. Common practice, no
// source: a third of the parts thick, or as the bit next to that, two to four times as wide, the edges
// rounded.
func tenonsOf(r *design.Reader, all []LooseTenons, joined string, parts stock.Length) []LooseTenons {
	if parts == 0 { // its own fault has been told
		return all
	}
	d := r.Design.LooseTenon
	a := r.Root.Under(d.Line, "loose_tenon")
	t := LooseTenons{
		Joined: joined, thicknessAt: a.Under(d.Thickness.Line, "thickness"),
		WidthAt: a.Under(d.Width.Line, "width"), lengthAt: a.Under(d.Length.Line, "length"),
		Length:  r.Required(a, "length", d.Length, "that of one tenon, half of it in each part"),
		Spacing: r.OrDefault(d.Spacing, 150*stock.Millimeter, 6*stock.Inch),
		Thick:   stock.Sum{{Times: 1, Value: parts, Over: 3, Label: joined}},
	}
	bits := r.From.Tools.Bits
	switch bit := design.OneOf(bits, parts/3) - parts/3; {
	case d.Thickness.Set:
		t.Thick = sums.Of(d.Thickness.Value, "given")
		r.WarnOfWidth("mortise for a loose tenon", d.Thickness.Value, bits, "bits")
	case bit < 0:
		t.Thick = sums.Plus(t.Thick, stock.Term{Times: -1, Value: -bit, Label: "to the next bit"})
	default:
		t.Thick = sums.Plus(t.Thick, stock.Term{Times: 1, Value: bit, Label: "to the next bit"})
	}
	thickness := t.Thick.Total()
	if 2*thickness > parts {
		r.Fault(t.thicknessAt, fmt.Sprintf("a tenon %s thick takes more than half of the %s, %s thick",
			r.Print(thickness), joined, r.Print(parts)), "give about a third of it, "+r.Print(parts/3))
	}
	t.Wide = stock.Sum{{Times: 3, Value: thickness, Label: "thickness"}}
	if d.Width.Set {
		t.Wide = sums.Of(d.Width.Value, "given")
	}
	t.Panel = r.Panel(a, "", d.Material, design.Length{Value: thickness, Set: true, Line: d.Thickness.Line}, nil)
	return append(all, t)
}

// TenonsAlong a corner of a carcass: in the middle of equal shares, none longer
// than the spacing, so that no two are farther apart than that.
func TenonsAlong(corner, spacing stock.Length) int { return max(2, Spaces(corner, spacing)) }
