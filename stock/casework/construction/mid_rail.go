package construction

import (
	"fmt"

	"sawbill/stock"
	"sawbill/stock/casework/design"
	"sawbill/stock/casework/joints"
)

// Mid rails are in the front frame, each before a divider, which stands in the middle
// behind it:
//
//	 stile                  stile
//	|     |   opening      |     |
//	|     |________________|     |
//	|     |    mid rail    |     |   = = =  divider
//	|     |________________|     |
//	|     |   opening      |     |
//
// A stack of openings that doors or false fronts close flush with the frame needs
// them: both meet there, before a divider that stands behind the frame.

// buildMidRails reads how wide they are: 0 for none.
func (r *Construction) buildMidRails(f *joints.Frame) {
	given := r.In.Design.Frame.MidRailWidth
	met := r.AnyBay(r.meetFlush)
	switch {
	case given.Set:
		f.MidRail = given.Value
	case met:
		f.MidRail = f.Rail
	}
	if met && given.Set && given.Value == 0 {
		r.In.Caution("doors on nothing", "Inset doors or fronts lie above one another with no mid rail between: the divider stands behind the frame, a slot as wide as it is stays open, and the doors strike nothing there. "+
			"Leave out mid_rail_width, or fix a strip to the divider.")
	}
}

// meetFlush reports whether a bay has two openings above one another that are both
// closed within the frame.
func (r *Construction) meetFlush(b Bay) bool {
	for i, o := range b.Openings[1:] {
		if r.closedFlush(o) && r.closedFlush(b.Openings[i]) {
			return true
		}
	}
	return false
}

func (r *Construction) closedFlush(o Opening) bool {
	if o.Doors > 0 {
		return design.Or(r.In.Design.Door.Fit, "inset") == "inset"
	}
	return len(o.Stack) > 0 && !o.Stack[0].Measured && r.In.Design.Drawer.Front.Value == "inset"
}

// Between is the member between two openings of a bay, seen from in front.
func (r *Construction) Between() (width stock.Length, name string) {
	if f := r.Frame; f != nil && f.MidRail > 0 {
		return f.MidRail, "mid rail"
	}
	return r.Divider.Thickness, "divider"
}

// DividerBelow is where the divider below an opening begins.
func (r *Construction) DividerBelow(o Opening) stock.Length {
	width, _ := r.Between()
	return o.Floor - width + (width-r.Divider.Thickness)/2
}

// CoversDividers checks that mid rails are no narrower than dividers are thick.
func (r *Construction) CoversDividers() bool {
	f, t := r.Frame, r.Divider.Thickness
	if f == nil || f.MidRail == 0 || f.MidRail >= t {
		return true
	}
	d := r.In.Design.Frame
	r.In.Fault(r.In.Root.Under(d.Line, "frame").Under(d.MidRailWidth.Line, "mid_rail_width"), fmt.Sprintf("a mid rail %s wide does not cover a divider %s thick",
		r.In.Print(f.MidRail), r.In.Print(t)), "give "+r.In.Print(t)+" or more, or a thinner divider")
	return false
}

// MidRails counts those of the case.
func (r *Construction) MidRails() int {
	n := 0
	if f := r.Frame; f != nil && f.MidRail > 0 {
		for _, b := range r.Bays {
			n += len(b.Openings) - 1
		}
	}
	return n
}
