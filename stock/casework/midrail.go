package casework

import (
	"fmt"

	"sawbill/stock"
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
func (r *reckoner) buildMidRails(f *frame) {
	given := r.design.Frame.MidRailWidth
	met := r.anyBay(r.meetFlush)
	switch {
	case given.Set:
		f.midRail = given.Value
	case met:
		f.midRail = f.rail
	}
	if met && given.Set && given.Value == 0 {
		r.caution("doors on nothing", "Inset doors or fronts lie above one another with no mid rail between: the divider stands behind the frame, a slot as wide as it is stays open, and the doors strike nothing there. "+
			"Leave out mid_rail_width, or fix a strip to the divider.")
	}
}

// meetFlush reports whether a bay has two openings above one another that are both
// closed within the frame.
func (r *reckoner) meetFlush(b bay) bool {
	for i, o := range b.openings[1:] {
		if r.closedFlush(o) && r.closedFlush(b.openings[i]) {
			return true
		}
	}
	return false
}

func (r *reckoner) closedFlush(o opening) bool {
	if o.doors > 0 {
		return or(r.design.Door.Fit, "inset") == "inset"
	}
	return len(o.stack) > 0 && !o.stack[0].measured && r.design.Drawer.Front.Value == "inset"
}

// between is what lies between two openings of a bay, as it is seen from in front.
func (r *reckoner) between() (width stock.Length, name string) {
	if f := r.made.frame; f != nil && f.midRail > 0 {
		return f.midRail, "mid rail"
	}
	return r.made.divider.thickness, "divider"
}

// dividerBelow is where the divider below an opening begins.
func (r *reckoner) dividerBelow(o opening) stock.Length {
	width, _ := r.between()
	return o.floor - width + (width-r.made.divider.thickness)/2
}

// coversDividers checks that mid rails are no narrower than dividers are thick.
func (r *reckoner) coversDividers() bool {
	f, t := r.made.frame, r.made.divider.thickness
	if f == nil || f.midRail == 0 || f.midRail >= t {
		return true
	}
	d := r.design.Frame
	r.fault(r.place.under(d.Line, "frame").under(d.MidRailWidth.Line, "mid_rail_width"), fmt.Sprintf("a mid rail %s wide does not cover a divider %s thick",
		r.print(f.midRail), r.print(t)), "give "+r.print(t)+" or more, or a thinner divider")
	return false
}

// midRailPieces stand between the stiles of their bay:
//
//	between  bay width
//	tenoned  bay width + 2 tenons
//	through  bay width + stile at the sides, half of a mid stile
func (r *reckoner) midRailPieces() {
	f := r.made.frame
	if f.midRail == 0 {
		return
	}
	for i, b := range r.bays {
		ends := [2]stock.Term{{Times: 1, Value: f.tenon, Label: "tenon"}, {Times: 1, Value: f.tenon, Label: "tenon"}}
		if f.corner.Reach(FrameMiddle) == Through {
			half := stock.Term{Times: 1, Value: f.midStile, Over: 2, Label: "mid stile"}
			ends = [2]stock.Term{half, half}
			if i == 0 {
				ends[0] = stock.Term{Times: 1, Value: f.stile, Label: "stile"}
			}
			if i == len(r.bays)-1 {
				ends[1] = stock.Term{Times: 1, Value: f.stile, Label: "stile"}
			}
		}
		var at []Point
		for _, o := range b.openings[:len(b.openings)-1] {
			at = append(at, Point{b.left - stock.Sum(ends[:1]).Total(), 0, o.floor - f.midRail})
		}
		if at != nil {
			r.add(piece{role: "mid rail", places: []string{b.name}, panel: f.panel, count: len(at), width: given(f.midRail, "mid rail width"),
				length: plus(given(b.width, b.name), row(ends[:]...)...), way: across, stands: stands(at...)})
		}
	}
}

// midRails counts those of the case.
func (r *reckoner) midRails() int {
	n := 0
	if f := r.made.frame; f != nil && f.midRail > 0 {
		for _, b := range r.bays {
			n += len(b.openings) - 1
		}
	}
	return n
}
