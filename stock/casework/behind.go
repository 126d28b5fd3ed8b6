package casework

import (
	"fmt"
	"strings"

	"sawbill/stock"
)

// behindDoors is what doors take of the room of the drawers behind them. A door
// hung at its front corner stands, open at a right angle, with its thickness in
// the opening, and a drawer must pass it on its hinge side:
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
// source); the sizes are reckoned from where a door stands.
type behindDoors struct {
	hinge  stock.Length // clearance on a side with hinges
	inset  stock.Length // thickness of an inset door, 0 if it is not
	before stock.Length // from the door's inner face to a drawer's front
}

func (o opening) drawersBehindDoors() bool { return o.doors > 0 && len(o.stack) > 0 }

// buildBehindDoors reads what drawers behind doors need.
func (r *reckoner) buildBehindDoors() {
	d := r.design.Drawer
	a := r.place.under(d.Line, "drawer")
	if !r.anyOpening(opening.drawersBehindDoors) {
		for _, s := range []struct {
			key string
			Length
		}{{"hinge_clearance", d.HingeClearance}, {"gap_before", d.GapBefore}} {
			if s.Set && !r.doubtfulWithin(r.place.path+".bay") {
				r.fault(a.under(s.Line, s.key), s.key+" has no use, since no drawers are behind doors", "leave it out, or give the drawers' opening doors")
			}
		}
		return
	}
	doors, behind := r.made.doors, behindDoors{
		// Room for a handle (common practice, no source).
		before: r.orDefault(d.GapBefore, 30*stock.Millimetre, 5*stock.Inch/4),
	}
	stands := given(doors.thickness, "door")
	if doors.fit == "inset" {
		behind.inset = doors.thickness
		stands = plus(stands, stock.Term{Times: 1, Value: doors.gap, Label: "gap"})
	} else {
		stands = plus(stands, stock.Term{Times: -1, Value: doors.overlay, Label: "overlay"})
	}
	behind.hinge = max(0, stands.Total())
	if d.HingeClearance.Set {
		behind.hinge = d.HingeClearance.Value
	} else if behind.hinge > 0 {
		r.record("hinge clearance", stands)
	}
	r.made.drawers.doors = behind
}

// takenLeft is what an open door takes of the left of an opening.
func (s drawers) takenLeft(o opening) stock.Length {
	if o.doors == 2 || o.doors == 1 && o.hinged == "left" {
		return s.doors.hinge
	}
	return 0
}

// takenBeside is what open doors take of an opening's width.
func (s drawers) takenBeside(o opening) stock.Sum {
	return plus(nil, stock.Term{Times: o.doors, Value: s.doors.hinge, Label: "hinge clearance"})
}

// takenBefore is what a closed door takes of an opening's depth.
func (s drawers) takenBefore(o opening) stock.Sum {
	if o.doors == 0 {
		return nil
	}
	return plus(nil, stock.Term{Times: 1, Value: s.doors.inset, Label: "inset door"},
		stock.Term{Times: 1, Value: s.doors.before, Label: "gap before"})
}

// cautionBehindDoors tells how drawers behind the doors of an opening are hung
// and used.
func (r *reckoner) cautionBehindDoors(b bay, o opening) {
	if !o.drawersBehindDoors() {
		return
	}
	s, side := r.made.drawers, "each side"
	if o.doors == 1 {
		side = "the " + o.hinged
	}
	text := []string{fmt.Sprintf("In %s %s open the %s to a right angle or further before any drawer.", b.name, o.name, many(o.doors, "door", "doors"))}
	if s.doors.hinge > 0 {
		text = append(text, fmt.Sprintf("Pack the slides out by %s on %s, where an open door stands; try it with the door hung before the packing is fixed.",
			r.print(s.doors.hinge), side))
	}
	text = append(text, fmt.Sprintf("Handles behind doors must stand out less than %s.", r.print(s.doors.before)))
	if s.front == "overlay" && !o.stack[0].measured {
		text = append(text, "Behind a door a front cannot reach over its opening: these drawers have none but their box's own.")
	}
	r.caution("drawers behind doors", strings.Join(text, " "))
}
