package casework

import (
	"fmt"

	"sawbill/stock"
)

// boxPieces are the parts of all drawers to be made.
func (r *reckoner) boxPieces() {
	for _, b := range r.bays {
		for _, o := range b.openings {
			fronts := r.fronts(o)
			for i, x := range o.stack {
				r.drawersSoFar++
				r.drawerLoads = append(r.drawerLoads, x.load)
				if x.measured {
					r.standFinished(b, o, x, fronts[i])
					continue
				}
				r.drawerPieces(b, o, i, fronts[i], []string{r.drawerPlace(b, o, i)})
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
//	box width   = bay - hinge clearances - 2 side clearances
//	box depth   = inside depth - what doors take - inset front - gap behind, or as given
//	side        = box depth
//	front, back = box width - 2 sides + 2 rabbets; in box joints, box width
//	bottom      = inside of the box + 2 grooves - clearance, both ways
//
// A box stands in the middle of the height that its front covers of the opening.
func (r *reckoner) drawerPieces(b bay, o opening, i int, front stock.Length, place []string) {
	s, x := r.made.drawers, o.stack[i]
	wide := plus(minus(given(b.width, b.name), s.takenBeside(o)), stock.Term{Times: -2, Value: s.side, Label: "side clearance"})
	before := plus(s.takenBefore(o), s.insetFront(o))
	deep := plus(minus(given(r.depth.clear, "inside depth"), before), stock.Term{Times: -1, Value: s.behind, Label: "gap behind"})
	if s.boxDepth.Set {
		deep = given(s.boxDepth.Value, "box depth")
	}
	high := r.boxHeight(o, i)
	sides := stock.Term{Times: -2, Value: s.box.thickness, Label: "drawer side"}
	inside := plus(wide, sides)
	ends := plus(inside, s.corner.term(2))
	if s.corner.Reach(DrawerCorner) == Through {
		ends = wide
	}
	from, to := r.covered(o, i, front)
	at := Point{b.left + s.takenLeft(o) + s.side, before.Total(), from + (to-from-high.Total())/2}
	behind := at[Y] + deep.Total() - s.box.thickness
	endAt := at[X] + (wide.Total()-ends.Total())/2
	bottom := []stock.Term{s.groove.term(2), {Times: -1, Value: s.bottomClearance, Label: "clearance"}}

	r.add(piece{role: "drawer side", places: place, panel: s.box, count: 2, length: deep, width: high,
		way: endwise, stands: r.ofDrawer(at, Point{at[X] + wide.Total() - s.box.thickness, at[Y], at[Z]})})
	r.add(piece{role: "drawer front and back", places: place, panel: s.box, count: 2, length: ends, width: high,
		way: across, stands: r.ofDrawer(Point{endAt, at[Y], at[Z]}, Point{endAt, behind, at[Z]})})
	inGroove := s.box.thickness - s.groove.depth + s.bottomClearance/2
	r.add(piece{role: "drawer bottom", dryFit: true, places: place, panel: s.bottom, count: 1,
		length: plus(inside, bottom...), width: plus(plus(deep, sides), bottom...),
		way: level, stands: r.ofDrawer(Point{at[X] + inGroove, at[Y] + inGroove, at[Z] + s.underBottom})})
	r.store(x, place[0], Storage{Width: inside.Total(), Depth: plus(deep, sides).Total()}, high)
	if s.falseFronts(o) {
		front := Point{b.left + s.takenLeft(o) + s.gap, s.takenBefore(o).Total(), front}
		if s.front == "overlay" {
			front[X], front[Y] = b.left-s.overlay, -s.frontPanel.thickness
		}
		r.add(piece{role: "false front", dryFit: true, places: place, panel: s.frontPanel, count: 1,
			length: r.frontWidth(b, o), width: given(x.front.Value, "front height"), way: across, stands: r.ofDrawer(front)})
	}
}

// store records what a box of a height holds:
//
//	storage height = box height - under bottom - bottom
func (r *reckoner) store(x box, drawer string, inside Storage, high stock.Sum) {
	s := r.made.drawers
	clear := plus(high, stock.Term{Times: -1, Value: s.underBottom, Label: "under bottom"},
		stock.Term{Times: -1, Value: s.bottom.thickness, Label: "drawer bottom"})
	if high.Total() > 0 && clear.Total() <= 0 {
		r.fault(x.at, "nothing is left above the bottom of the drawer: "+r.reckoned(clear), "make it higher, or under_bottom smaller")
		return
	}
	inside.Drawer, inside.Height = drawer, clear.Total()
	r.storage = append(r.storage, inside)
}

// frontWidth is that of a false front: its gap all round, or its overlay.
func (r *reckoner) frontWidth(b bay, o opening) stock.Sum {
	s := r.made.drawers
	if s.front == "inset" {
		return plus(minus(given(b.width, b.name), s.takenBeside(o)), stock.Term{Times: -2, Value: s.gap, Label: "gap"})
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

// fronts are the lower edges of the fronts in a stack; of drawers without false
// fronts, those of the drawers.
func (r *reckoner) fronts(o opening) []stock.Length {
	s := r.made.drawers
	var edges []stock.Length
	at := o.floor + o.height
	if len(o.stack) == 0 {
		return nil
	}
	switch {
	case !s.falseFronts(o):
		at -= s.above
	case s.front == "inset":
		at -= s.gap
	default:
		at += s.overlay
	}
	for _, x := range o.stack {
		at -= x.front.Value
		edges = append(edges, at)
		at -= s.gap
	}
	return edges
}

// covered is what the front of drawer i, whose lower edge is at front, covers of
// its opening.
func (r *reckoner) covered(o opening, i int, front stock.Length) (from, to stock.Length) {
	from, to = front, front+o.stack[i].front.Value
	return max(from, o.floor), min(to, o.floor+o.height)
}

// ofDrawer are pieces of the drawer that is being made.
func (r *reckoner) ofDrawer(at ...Point) []Solid {
	all := stands(at...)
	for i := range all {
		all[i].Drawer = r.drawersSoFar
	}
	return all
}

// standFinished puts a measured drawer in its opening, in the middle of the width
// that doors leave it.
func (r *reckoner) standFinished(b bay, o opening, x box, front stock.Length) {
	s := r.made.drawers
	room := b.width - s.takenBeside(o).Total()
	r.finished = append(r.finished, Solid{
		Part: -1, Role: "drawer", Drawer: r.drawersSoFar,
		At: Point{b.left + s.takenLeft(o) + (room-x.width)/2, s.takenBefore(o).Total(), front}, Size: Point{x.width, x.depth, x.height},
		Along: X, Across: Z, Through: Y, Weight: x.weight,
	})
}
