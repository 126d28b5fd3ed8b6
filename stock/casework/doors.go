package casework

import (
	"fmt"

	"sawbill/stock"
)

// doors is what all doors of the case have in common.
type doors struct {
	panel
	fit          string
	gap, overlay stock.Length
}

func (r *reckoner) buildDoors() {
	d := r.design.Door
	a := r.place.under(d.Line, "door")
	s := doors{
		panel:   r.panel(a, "", d.Material, d.Thickness, &r.made.carcass),
		fit:     or(d.Fit, "inset"),
		gap:     r.orDefault(d.Gap, 3*stock.Millimetre, stock.Inch/8),
		overlay: d.Overlay.Value,
	}
	if s.fit == "inset" {
		s.gap = r.orDefault(d.Gap, 2*stock.Millimetre, stock.Inch/16)
	}
	overlayAt := a.under(d.Overlay.Line, "overlay")
	switch {
	case s.fit == "overlay" && !d.Overlay.Set:
		r.doubt(overlayAt)
		r.fault(overlayAt, "not given, and needed", "give how far a door reaches over each edge of its opening")
	case s.fit != "overlay" && d.Overlay.Set && !r.doubtful(a.path+".fit"):
		r.fault(overlayAt, fmt.Sprintf("an overlay has no use, since fit is %q", s.fit), `leave it out, or set fit = "overlay"`)
	}
	r.made.doors = s
}

// shelfFront is what an inset door takes of the depth of the shelves behind it,
// which begin at from: in a frame no more than reaches through it.
func (s doors) shelfFront(o opening, from stock.Length) stock.Term {
	if o.doors == 0 || s.fit != "inset" || s.thickness <= from {
		return stock.Term{}
	}
	return stock.Term{Times: -1, Value: s.thickness - from, Label: "inset door"}
}

// doorPieces are the doors; their grain stands upright.
//
//	inset    opening - gap all round and between
//	overlay  opening + 2 overlays - gap between
//
// Two doors share the width, rounded down to the unit of Length.
func (r *reckoner) doorPieces() {
	s := r.made.doors
	for _, b := range r.bays {
		for _, o := range b.openings {
			if o.doors == 0 {
				continue
			}
			name, n := b.name+" "+o.name, o.doors
			wide, high := given(b.width, b.name), given(o.height, name+" height")
			from := Point{b.left + s.gap, 0, o.floor + s.gap}
			if s.fit == "inset" {
				wide = plus(wide, stock.Term{Times: -n - 1, Value: s.gap, Label: "gap"})
				high = plus(high, stock.Term{Times: -2, Value: s.gap, Label: "gap"})
			} else {
				over := stock.Term{Times: 2, Value: s.overlay, Label: "overlay"}
				wide = plus(wide, over, stock.Term{Times: 1 - n, Value: s.gap, Label: "gap"})
				high = plus(high, over)
				from = Point{b.left - s.overlay, -s.thickness, o.floor - s.overlay}
			}
			at := []Point{from}
			if n == 2 {
				r.record(name+" width of both doors", wide)
				both := wide.Total()
				wide = stock.Sum{{Times: 1, Value: both, Over: 2, Label: "both doors"}}
				from[X] += both + s.gap - wide.Total()
				at = append(at, from)
				r.checkNarrowDoors(o, b.width, wide.Total())
			}
			r.add(piece{role: "door", dryFit: true, places: []string{name}, panel: s.panel, count: n, length: high, width: wide,
				way: facing, stands: stands(at...)})
		}
	}
}

// checkNarrowDoors refuses two doors of which more lies over the case than before
// the opening: no hinge is made for them, and their handles would be on the side.
func (r *reckoner) checkNarrowDoors(o opening, opening, door stock.Length) {
	s := r.made.doors
	if s.fit != "overlay" || door >= 2*s.overlay {
		return
	}
	r.fault(o.at.under(o.doorsLine, "doors"),
		fmt.Sprintf("two doors do not go on an opening %s wide: of each, %s wide, %s lie over the case", r.print(opening), r.print(door), r.print(s.overlay)),
		fmt.Sprintf("set doors = 1, or make the opening at least %s wide", r.print(2*s.overlay+s.gap)))
}
