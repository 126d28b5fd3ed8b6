package construction

import (
	"sawbill/stock"
	"sawbill/stock/casework/design"
	"sawbill/stock/casework/internal/sums"
)

// behindDoors is the room that doors take from the drawers behind them. A door hung at its front
// corner stands, open at a right angle, with its thickness in the opening, and a drawer must pass
// it on its hinge side:
//
//	      _____________________
//	    || |  |___drawer___|  |     inset    hinge clearance = door + gap
//	side|| |gap               |     overlay  hinge clearance = door - overlay
//	    || |==================|     closed door
//	       ||
//	       || the same door, open
//
// In front a drawer stands back from the closed door, by the room of its handle:
//
//	set back = door, if inset + gap before
//
// Hinges that swing a door clear take less, and the job file may say so: such
// hinges, and packing on the hinge side for others, are common practice (no
// source); the sizes follow from where a door stands.
type behindDoors struct {
	Hinge  stock.Length // clearance on a side with hinges
	Stands stock.Sum    // where it follows from how an open door stands: how
	inset  stock.Length // thickness of an inset door, 0 if it is not
	Before stock.Length // from the door's inner face to a drawer's front
}

// DrawersBehindDoors reports whether an opening has both.
func (o Opening) DrawersBehindDoors() bool { return o.Doors > 0 && len(o.Stack) > 0 }

// buildBehindDoors reads what drawers behind doors need.
func (r *Construction) buildBehindDoors() {
	d := r.In.Design.Drawer
	a := r.In.Root.Under(d.Line, "drawer")
	if !r.AnyOpening(Opening.DrawersBehindDoors) {
		for _, s := range []struct {
			key string
			design.Length
		}{{"hinge_clearance", d.HingeClearance}, {"gap_before", d.GapBefore}} {
			if s.Set && !r.In.DoubtfulWithin(r.In.Root.Path+".bay") {
				r.In.Fault(a.Under(s.Line, s.key), s.key+" has no use, since no drawers are behind doors", "leave it out, or give the drawers' opening doors")
			}
		}
		return
	}
	doors, behind := r.Doors, behindDoors{
		// Room for a handle (common practice, no source).
		Before: r.In.OrDefault(d.GapBefore, 30*stock.Millimeter, 5*stock.Inch/4),
	}
	stands := sums.Of(doors.Thickness, "door")
	if doors.Fit == "inset" {
		behind.inset = doors.Thickness
		stands = sums.Plus(stands, stock.Term{Times: 1, Value: doors.Gap, Label: "gap"})
	} else {
		stands = sums.Plus(stands, stock.Term{Times: -1, Value: doors.Overlay, Label: "overlay"})
	}
	behind.Hinge = max(0, stands.Total())
	if d.HingeClearance.Set {
		behind.Hinge = d.HingeClearance.Value
	} else if behind.Hinge > 0 {
		behind.Stands = stands
	}
	r.Drawers.Doors = behind
}

// TakenLeft is the width that an open door takes on the left of an opening.
func (s Drawers) TakenLeft(o Opening) stock.Length {
	if o.Doors == 2 || o.Doors == 1 && o.Hinged == "left" {
		return s.Doors.Hinge
	}
	return 0
}

// TakenBeside is the width that open doors take from an opening.
func (s Drawers) TakenBeside(o Opening) stock.Sum {
	return sums.Plus(nil, stock.Term{Times: o.Doors, Value: s.Doors.Hinge, Label: "hinge clearance"})
}

// TakenBefore is the depth that a closed door takes from an opening.
func (s Drawers) TakenBefore(o Opening) stock.Sum {
	if o.Doors == 0 {
		return nil
	}
	return sums.Plus(nil, stock.Term{Times: 1, Value: s.Doors.inset, Label: "inset door"},
		stock.Term{Times: 1, Value: s.Doors.Before, Label: "gap before"})
}
