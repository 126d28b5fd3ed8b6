package casework

import (
	"fmt"

	"sawbill/stock"
)

// boxPieces are the parts of all drawers to be made.
func (r *reckoner) boxPieces() {
	for _, b := range r.bays {
		for _, o := range b.openings {
			for i, x := range o.stack {
				if !x.measured {
					r.drawerPieces(b, o, i, []string{r.drawerPlace(b, o, i)})
				}
			}
		}
	}
}

// drawerPlace names drawer i of an opening, in as few words as tell it apart.
func (r *reckoner) drawerPlace(b bay, o opening, i int) string {
	place := fmt.Sprint("drawer ", i+1)
	if r.anyBay(func(b bay) bool { return len(b.openings) > 1 }) {
		place = o.name + " " + place
	}
	if len(r.bays) > 1 {
		place = b.name + " " + place
	}
	return place
}

// drawerPieces are the parts of drawer i of an opening:
//
//	box width   = bay - 2 side clearances
//	box depth   = inside depth - gap behind - inset front, or as given
//	side        = box depth
//	front, back = box width - 2 sides + 2 rabbets; in box joints, box width
//	bottom      = inside of the box + 2 grooves - clearance, both ways
func (r *reckoner) drawerPieces(b bay, o opening, i int, place []string) {
	s, x := r.made.drawers, o.stack[i]
	wide := plus(given(b.width, b.name), stock.Term{Times: -2, Value: s.side, Label: "side clearance"})
	insetFront := s.insetFront()
	insetFront.Times = -insetFront.Times
	deep := plus(given(r.depth.clear, "inside depth"), insetFront, stock.Term{Times: -1, Value: s.behind, Label: "gap behind"})
	if s.boxDepth.Set {
		deep = given(s.boxDepth.Value, "box depth")
	}
	high := r.boxHeight(o, i)
	sides := stock.Term{Times: -2, Value: s.box.thickness, Label: "drawer side"}
	inside := plus(wide, sides)
	front := plus(inside, stock.Term{Times: 2, Value: s.cornerDepth, Label: "rabbet"})
	if s.corner == "box-joint" {
		front = wide
	}
	bottom := []stock.Term{{Times: 2, Value: s.groove, Label: "groove"}, {Times: -1, Value: s.bottomClearance, Label: "clearance"}}

	r.add(piece{role: "drawer side", places: place, panel: s.box, count: 2, length: deep, width: high})
	r.add(piece{role: "drawer front and back", places: place, panel: s.box, count: 2, length: front, width: high})
	r.add(piece{role: "drawer bottom", places: place, panel: s.bottom, count: 1,
		length: plus(inside, bottom...), width: plus(plus(deep, sides), bottom...)})
	if s.falseFronts(o) {
		r.add(piece{role: "false front", places: place, panel: s.frontPanel, count: 1,
			length: r.frontWidth(b), width: given(x.front.Value, "front height")})
	}
}

// frontWidth is that of a false front: its gap all round, or its overlay.
func (r *reckoner) frontWidth(b bay) stock.Sum {
	s := r.made.drawers
	if s.front == "inset" {
		return plus(given(b.width, b.name), stock.Term{Times: -2, Value: s.gap, Label: "gap"})
	}
	return plus(given(b.width, b.name), stock.Term{Times: 2, Value: s.overlay, Label: "overlay"})
}

// boxHeight is that of the box of drawer i: what its front covers of the
// opening, less the clearance. Without a false front it is the front itself.
func (r *reckoner) boxHeight(o opening, i int) stock.Sum {
	s, x := r.made.drawers, o.stack[i]
	share := given(x.front.Value, "front height")
	if !s.falseFronts(o) {
		if x.boxHeight.Set {
			r.fault(x.at.under(x.boxHeight.Line, "box_height"), "a box without a false front is as high as its front",
				"give front_height instead")
		}
		return share
	}
	if s.front == "overlay" {
		ends := 0
		if i == 0 {
			ends++
		}
		if i == len(o.stack)-1 {
			ends++
		}
		share = plus(share, stock.Term{Times: -ends, Value: s.overlay, Label: "overlay"})
	}
	if !x.boxHeight.Set {
		return plus(share, stock.Term{Times: -1, Value: s.heightClearance, Label: "height clearance"})
	}
	if x.boxHeight.Value > share.Total() {
		r.fault(x.at.under(x.boxHeight.Line, "box_height"), fmt.Sprintf("a box %s high does not go into its share of the opening, %s",
			r.print(x.boxHeight.Value), r.reckoned(share)), "make it lower, or the front higher")
	}
	return given(x.boxHeight.Value, "box height")
}
