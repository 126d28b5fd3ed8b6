package pieces

import (
	"fmt"

	"sawbill/stock"
	"sawbill/stock/casework/construction"
	"sawbill/stock/casework/internal/sums"
	"sawbill/stock/casework/joints"
	"sawbill/stock/casework/solid"
)

// boxPieces are the parts of all drawers to be made.
func (r *Maker) boxPieces() {
	for _, b := range r.Built.Bays {
		for _, o := range b.Openings {
			fronts := r.fronts(o)
			for i, x := range o.Stack {
				r.drawersSoFar++
				r.DrawerLoads = append(r.DrawerLoads, x.Load)
				if x.Measured {
					r.standFinished(b, o, x, fronts[i])
					continue
				}
				r.drawerPieces(b, o, i, fronts[i], []string{r.drawerPlace(b, o, i)})
			}
		}
	}
}

// drawerPlace names drawer i of an opening, in as few words as tell it apart.
func (r *Maker) drawerPlace(b construction.Bay, o construction.Opening, i int) string {
	place := fmt.Sprint("drawer ", i+1)
	if r.Built.AnyBay(func(b construction.Bay) bool { return len(b.Openings) > 1 }) {
		place = o.Name + " " + place
	}
	if len(r.Built.Bays) > 1 {
		place = b.Name + " " + place
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
func (r *Maker) drawerPieces(b construction.Bay, o construction.Opening, i int, front stock.Length, place []string) {
	s, x := r.Built.Drawers, o.Stack[i]
	wide := sums.Plus(sums.Minus(sums.Of(b.Width, b.Name), s.TakenBeside(o)), stock.Term{Times: -2, Value: s.Side, Label: "side clearance"})
	wide, beside := r.In.Fitted(wide, 2, s.Side, "side clearance")
	before := sums.Plus(s.TakenBefore(o), s.InsetFront(o))
	deep := sums.Plus(sums.Minus(sums.Of(r.Sizes.Depth.Clear, "inside depth"), before), stock.Term{Times: -1, Value: s.Behind, Label: "gap behind"})
	deep, _ = r.In.Fitted(deep, 1, s.Behind, "gap behind")
	if s.BoxDepth.Set {
		deep = sums.Of(s.BoxDepth.Value, "box depth")
	}
	high := r.boxHeight(o, i)
	sides := stock.Term{Times: -2, Value: s.Box.Thickness, Label: "drawer side"}
	inside := sums.Plus(wide, sides)
	ends := sums.Plus(inside, s.Corner.Term(2))
	if joints.FitOf(s.Corner, joints.DrawerCorner).Reach == joints.Through {
		ends = wide
	}
	from, to := r.covered(o, i, front)
	at := solid.Point{b.Left + s.TakenLeft(o) + s.Side + beside/2, before.Total(), from + (to-from-high.Total())/2}
	if low := r.Built.OnStep(at[solid.Z]); s.FalseFronts(o) && low >= from && low+high.Total() <= to {
		at[solid.Z] = low
	}
	behind := at[solid.Y] + deep.Total() - s.Box.Thickness
	endAt := at[solid.X] + (wide.Total()-ends.Total())/2
	held := []stock.Term{s.Groove.Term(2), {Times: -1, Value: s.BottomClearance, Label: "clearance"}}
	bottomLong, moreLong := r.In.Fitted(sums.Plus(inside, held...), 1, s.BottomClearance, "clearance")
	bottomWide, moreWide := r.In.Fitted(sums.Plus(sums.Plus(deep, sides), held...), 1, s.BottomClearance, "clearance")

	r.add(Piece{Role: "drawer side", places: place, Panel: s.Box, Count: 2, Length: deep, Width: high,
		way: solid.Endwise, Stands: r.ofDrawer(at, solid.Point{at[solid.X] + wide.Total() - s.Box.Thickness, at[solid.Y], at[solid.Z]})})
	r.add(Piece{Role: "drawer front and back", places: place, Panel: s.Box, Count: 2, Length: ends, Width: high,
		way: solid.Across, Stands: r.ofDrawer(solid.Point{endAt, at[solid.Y], at[solid.Z]}, solid.Point{endAt, behind, at[solid.Z]})})
	inGroove := s.Box.Thickness - s.Groove.Depth + s.BottomClearance/2
	r.add(Piece{Role: "drawer bottom", dryFit: true, places: place, Panel: s.Bottom, Count: 1,
		Length: bottomLong, Width: bottomWide,
		way: solid.Level, Stands: r.ofDrawer(solid.Point{at[solid.X] + inGroove + moreLong/2, at[solid.Y] + inGroove + moreWide/2, at[solid.Z] + s.UnderBottom})})
	r.store(x, place[0], Storage{Width: inside.Total(), Depth: sums.Plus(deep, sides).Total()}, high)
	if s.FalseFronts(o) {
		wide, beside := r.frontWidth(b, o)
		front := solid.Point{b.Left + s.TakenLeft(o) + s.Gap + beside/2, s.TakenBefore(o).Total(), front}
		if s.Front == "overlay" {
			front[solid.X], front[solid.Y] = b.Left-s.Overlay, -s.FrontPanel.Thickness
		}
		r.add(Piece{Role: "false front", dryFit: true, places: place, Panel: s.FrontPanel, Count: 1,
			Length: wide, Width: sums.Of(x.Front.Value, "front height"), way: solid.Across, Stands: r.ofDrawer(front)})
	}
}

// store records what a box of a height holds:
//
//	storage height = box height - under bottom - bottom
func (r *Maker) store(x construction.Box, drawer string, inside Storage, high stock.Sum) {
	s := r.Built.Drawers
	clear := sums.Plus(high, stock.Term{Times: -1, Value: s.UnderBottom, Label: "under bottom"},
		stock.Term{Times: -1, Value: s.Bottom.Thickness, Label: "drawer bottom"})
	if high.Total() > 0 && clear.Total() <= 0 {
		r.In.Fault(x.At, "nothing is left above the bottom of the drawer: "+r.In.Explained(clear), "make it higher, or under_bottom smaller")
		return
	}
	inside.Drawer, inside.Height = drawer, clear.Total()
	r.Storage = append(r.Storage, inside)
}

// frontWidth is the width of a false front: its gap all round, or its overlay. More is what its two
// gaps take besides.
func (r *Maker) frontWidth(b construction.Bay, o construction.Opening) (wide stock.Sum, more stock.Length) {
	s := r.Built.Drawers
	if s.Front == "inset" {
		wide = sums.Plus(sums.Minus(sums.Of(b.Width, b.Name), s.TakenBeside(o)), stock.Term{Times: -2, Value: s.Gap, Label: "gap"})
		return r.In.Fitted(wide, 2, s.Gap, "gap")
	}
	return sums.Plus(sums.Of(b.Width, b.Name), stock.Term{Times: 2, Value: s.Overlay, Label: "overlay"}), 0
}

// boxHeight is the height of the box of drawer i: the part of the opening that its front covers,
// less the clearance. Without a false front it is the front itself.
func (r *Maker) boxHeight(o construction.Opening, i int) stock.Sum {
	s, x := r.Built.Drawers, o.Stack[i]
	share := sums.Of(x.Front.Value, "front height")
	if !s.FalseFronts(o) {
		if x.BoxHeight.Set {
			r.In.Fault(x.At.Under(x.BoxHeight.Line, "box_height"), "a box without a false front is as high as its front",
				"give front_height instead")
		}
		return share
	}
	if s.Front == "overlay" {
		ends := 0
		if i == 0 {
			ends++
		}
		if i == len(o.Stack)-1 {
			ends++
		}
		share = sums.Plus(share, stock.Term{Times: -ends, Value: s.Overlay, Label: "overlay"})
	}
	if !x.BoxHeight.Set {
		high, _ := r.In.Fitted(sums.Plus(share, stock.Term{Times: -1, Value: s.HeightClearance, Label: "height clearance"}), 1, s.HeightClearance, "height clearance")
		return high
	}
	if x.BoxHeight.Value > share.Total() {
		r.In.Fault(x.At.Under(x.BoxHeight.Line, "box_height"), fmt.Sprintf("a box %s high does not go into its share of the opening, %s",
			r.In.Print(x.BoxHeight.Value), r.In.Explained(share)), "make it lower, or the front higher")
	}
	return sums.Of(x.BoxHeight.Value, "box height")
}

// fronts are the lower edges of the fronts in a stack; of drawers without false
// fronts, those of the drawers. These move up to the step where the gap above stays as wide
// as it was given, for their slides are laid out from the step.
func (r *Maker) fronts(o construction.Opening) []stock.Length {
	s := r.Built.Drawers
	var edges []stock.Length
	at := o.Floor + o.Height
	if len(o.Stack) == 0 {
		return nil
	}
	wider := s.Wider(o)
	switch {
	case !s.FalseFronts(o):
		at -= s.Above + wider
	case s.Front == "inset":
		at -= s.Gap + wider
	default:
		at += s.Overlay
	}
	for i, x := range o.Stack {
		at -= x.Front.Value
		edge, ceiling := at, o.Floor+o.Height-s.Above
		if i > 0 {
			ceiling = edges[i-1] - s.Gap
		}
		if up := r.Built.StepAbove(at); !s.FalseFronts(o) && up+x.Front.Value <= ceiling {
			edge = up
		}
		edges = append(edges, edge)
		at -= s.Gap + wider
	}
	return edges
}

// covered is the part of its opening that the front of drawer i covers, whose lower edge is at
// front.
func (r *Maker) covered(o construction.Opening, i int, front stock.Length) (from, to stock.Length) {
	from, to = front, front+o.Stack[i].Front.Value
	return max(from, o.Floor), min(to, o.Floor+o.Height)
}

// ofDrawer are pieces of the drawer that is being made.
func (r *Maker) ofDrawer(at ...solid.Point) []solid.Solid {
	all := solid.Stands(at...)
	for i := range all {
		all[i].Drawer = r.drawersSoFar
	}
	return all
}

// standFinished puts a measured drawer in its opening, in the middle of the width
// that doors leave it.
func (r *Maker) standFinished(b construction.Bay, o construction.Opening, x construction.Box, front stock.Length) {
	s := r.Built.Drawers
	room := b.Width - s.TakenBeside(o).Total()
	r.finished = append(r.finished, solid.Solid{
		Part: -1, Role: "drawer", Drawer: r.drawersSoFar,
		At: solid.Point{b.Left + s.TakenLeft(o) + (room-x.Width)/2, s.TakenBefore(o).Total(), front}, Size: solid.Point{x.Width, x.Depth, x.Height},
		Along: solid.X, Across: solid.Z, Through: solid.Y, Weight: x.Weight,
	})
}
