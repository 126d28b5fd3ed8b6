package casework

import (
	"fmt"

	"sawbill/stock"
)

// joinery is wood that goes into joints, so many pieces alike.
type joinery struct {
	panel
	role          Role
	count         int
	length, width stock.Length
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

func (r *reckoner) buildJoinery() {
	r.buildTenons()
	for _, d := range []struct {
		key  string
		role Role
		Joinery
	}{{"spline", "spline", r.design.Spline}, {"glue_block", "glue block", r.design.GlueBlock}} {
		a := r.place.under(d.Line, d.key)
		if d.Count.Value <= 0 {
			if d.Material.Set {
				r.fault(a.under(0, "count"), "not given, and needed", "give how many there are to be, or leave the table out")
			}
			continue
		}
		r.made.loose = append(r.made.loose, joinery{
			role: d.role, count: d.Count.Value, panel: r.panel(a, "", d.Material, d.Thickness, nil),
			length: r.required(a, "length", d.Length, "the length of one"),
			width:  r.required(a, "width", d.Width, "the width of one"),
		})
	}
}

// buildTenons reads how loose tenons are made, if a joint has them.
func (r *reckoner) buildTenons() {
	d := r.design.LooseTenon
	a := r.place.under(d.Line, "loose_tenon")
	inCarcass := r.made.corner.name == "loose-tenon"
	inFrame := r.made.frame != nil && r.made.frame.corner == "loose-tenon"
	if inCarcass {
		r.buildTenonsOf("carcass", r.made.carcass.thickness)
	}
	if inFrame {
		r.buildTenonsOf("frame", r.made.frame.thickness)
	}
	inDoubt := r.doubtful(r.place.path+".construction") || r.doubtful(r.place.path+".carcass.joint") || r.doubtful(r.place.path+".frame.corner")
	if !inCarcass && !inFrame && d.Material.Set && !inDoubt {
		r.fault(a, "no joint has loose tenons", `set joint or corner = "loose-tenon", or leave the table out`)
	}
}

// buildTenonsOf sizes the tenons between parts of a thickness. Common practice, no
// source: a third of the parts thick, two to four times as wide, the edges
// rounded.
func (r *reckoner) buildTenonsOf(joined string, parts stock.Length) {
	if parts == 0 { // its own fault has been told
		return
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
	r.made.looseTenons = append(r.made.looseTenons, t)
}

// longestStrip is the length of a strip that is still easily planed and rounded:
// common practice, no source.
const longestStrip = 24 * stock.Inch

// joineryPieces are the strips for loose tenons, and what was asked for by its
// number. They have no place of their own in the case.
//
//	tenons in a carcass  4 corners x (depth / spacing rounded up, at least 2)
//	tenons in a frame    one at each end of a rail, a mid stile or a mid rail
//	strip                so many tenons + the kerfs between them
func (r *reckoner) joineryPieces() {
	for _, t := range r.made.looseTenons {
		if f := r.made.frame; t.joined == "frame" {
			across := f.rail
			if len(r.bays) > 1 {
				across = min(across, f.midStile)
			}
			if r.midRails() > 0 {
				across = min(across, f.midRail)
			}
			r.strips(t, 8+4*(len(r.bays)-1)+2*r.midRails(), across)
			continue
		}
		along := r.body().depth.Total()
		each := tenonsAlong(along, t.spacing)
		r.strips(t, 4*each, along/stock.Length(each))
	}
	for _, j := range r.made.loose {
		r.add(piece{role: j.role, panel: j.panel, count: j.count, length: given(j.length, "given"), width: given(j.width, "given")})
	}
}

// tenonsAlong a corner of a carcass: in the middle of equal shares, none longer
// than the spacing, so that no two are farther apart than that.
func tenonsAlong(corner, spacing stock.Length) int { return max(2, spaces(corner, spacing)) }

// strips are those for n tenons, each of which has room across to stand in: as
// few as are short enough, all alike.
func (r *reckoner) strips(t looseTenons, n int, room stock.Length) {
	if t.wide.Total() >= room {
		r.fault(t.widthAt, fmt.Sprintf("a tenon %s wide does not stand in the %s that it has in the %s",
			r.print(t.wide.Total()), r.print(room), t.joined), "make it narrower; two to four thicknesses are usual")
		return
	}
	kerf := r.from.Kerf
	most := max(1, int((longestStrip+kerf)/(t.length+kerf)))
	strips := (n + most - 1) / most
	each := (n + strips - 1) / strips
	r.add(piece{role: "loose tenon strip", places: []string{t.joined}, panel: t.panel, strip: r.lumber(t.panel), count: strips, width: t.wide, thickness: t.thick,
		length: plus(stock.Sum{{Times: each, Value: t.length, Label: "tenon"}}, stock.Term{Times: each - 1, Value: kerf, Label: "kerf"})})
}
