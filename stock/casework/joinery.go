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

func (r *reckoner) buildJoinery() {
	inFrame, frame := false, stock.Length(0)
	if f := r.made.frame; f != nil {
		inFrame, frame = isLoose(f.corner), f.thickness
	}
	r.made.looseTenons = r.readTenons(isLoose(r.made.corner.Joint), inFrame, r.made.carcass.thickness, frame)
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
