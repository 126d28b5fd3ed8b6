package casework

import (
	"fmt"

	"sawbill/stock"
)

// A hung case stands on nothing: screws through its hanging rails hold it to the wall.
// The rails lie below the top and above the bottom. Behind a back that is set in far enough they
// are hidden, and run from side to side; else they lie before it, in each bay. A
// framed case needs none: the rails of its back frame serve.
//
//	  wall                       wall
//	 _______________            _______________
//	|_|_____top_____|          |______top______|
//	| | |                      | |
//	|r| |back                  | |r|
//	|_| |                      | |_|
//	| | |                      |back
//
//	behind a back set in       before it

// buildHanging reads how a hung case hangs.
func (r *reckoner) buildHanging(a at, b *base) {
	d := r.design.Base
	b.rails, b.railWidth = 2, r.orDefault(d.RailWidth, 80*stock.Millimetre, 3*stock.Inch) // common practice, no source
	if d.Rails.Set {
		b.rails = d.Rails.Value
	}
	if b.rails > 2 {
		r.fault(a.under(d.Rails.Line, "rails"), fmt.Sprintf("%d hanging rails are more than one below the top and one above the bottom", b.rails), "give 1 or 2")
	}
	if r.made.frame == nil {
		b.panel = r.panel(a, "", d.Material, d.Thickness, &r.made.carcass)
	}
}

func (r *reckoner) hung() bool { return r.made.base.kind == "hung" }

// hangingRails are made when all else stands, for they must be in nothing's way:
//
//	behind the back   inside width between the panels
//	before it         bay width
func (r *reckoner) hangingRails() {
	b := r.made.base
	if !r.hung() || r.made.frame != nil {
		return
	}
	others := r.solids()
	t := r.made.carcass.thickness
	heights := []stock.Length{r.height.outside - t - b.railWidth, t}[:min(b.rails, 2)]
	add := func(length stock.Sum, from, y stock.Length, place string) {
		var at []Point
		for _, z := range heights {
			at = append(at, Point{from, y, z})
		}
		p := piece{role: "hanging rail", panel: b.panel, count: len(at), length: length, width: given(b.railWidth, "rail width"), way: across, stands: stands(at...)}
		if place != "" {
			p.places = []string{place}
		}
		if r.railsFree(p, others) {
			r.add(p)
		}
	}
	if back := r.made.back; back.inGrooves() && back.setIn >= b.thickness {
		add(given(r.width.clear, "inside width"), t, r.depth.outside-b.thickness, "")
		return
	}
	for _, bay := range r.bays {
		add(given(bay.panels, bay.name), bay.behind, r.depth.clear-b.thickness, bay.name)
	}
}

// railsFree refuses rails in the way of something.
func (r *reckoner) railsFree(rails piece, others []Solid) bool {
	d := r.design.Base
	a := r.place.under(d.Line, "base")
	for _, s := range rails.solids() {
		if z := s.At[Z]; z < r.made.carcass.thickness || s.End()[Z] > r.height.outside-r.made.carcass.thickness {
			r.fault(a.under(d.RailWidth.Line, "rail_width"), fmt.Sprintf("a hanging rail %s wide does not go between top and bottom, %s apart",
				r.print(r.made.base.railWidth), r.print(r.height.clear)), "make it narrower")
			return false
		}
		for _, other := range others {
			if s.overlaps(other) {
				r.fault(a.under(d.Kind.Line, "kind"), "a hanging rail would be in the way of a "+string(other.Role),
					"make the rail narrower, what is in the way shorter behind, or set a grooved back in by the rail's thickness, "+r.print(s.Size[Y]))
				return false
			}
		}
	}
	return true
}

// cautionHanging tells how a hung case is fixed, and what its fixing must bear as far as
// that can be reckoned. The rules are common practice, no source.
func (r *reckoner) cautionHanging(c *Case) {
	if !r.hung() {
		return
	}
	through := "its hanging rails"
	if r.made.frame != nil {
		through = "the rails of its back frame"
	}
	bears := ""
	load, said := r.shelfLoad()
	var laden float64
	for _, s := range c.Solids {
		if s.Drawer == 0 && (s.Role.carries() || s.Role == "bottom") {
			laden += inMillimetres(s.Size[X]) * inMillimetres(s.Size[Y]) * load
		}
	}
	filled := stock.Grams(laden / squareMetreLoad / 1e6 * 1000)
	weighs := ""
	if c.unweighed() == nil {
		own := c.TakeOff().Weight
		filled += own
		weighs = fmt.Sprintf(" It weighs some %s empty", own.PrintUnit(r.from.Ruler.Units))
		bears = weighs + fmt.Sprintf("; with %s on its bottom and all its shelves the fixing must bear some %s.", said, filled.PrintUnit(r.from.Ruler.Units))
	} else {
		bears = fmt.Sprintf(" With %s on its bottom and all its shelves the fixing must bear some %s and its own weight.", said, filled.PrintUnit(r.from.Ruler.Units))
	}
	r.caution("hanging", "Screw the case through "+through+" into studs, or with anchors made for it into a solid wall, never into plasterboard, plaster or a hollow wall alone; "+
		"two screws at least at each rail, washers under their heads. Look for pipes and cables first."+bears+
		" That is an estimate: the wall and the fixing must be good for several times as much, which whoever knows the wall must judge. Rest it on a ledger or have it held by a second person until all screws are in."+defers)
}
