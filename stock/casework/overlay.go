package casework

import (
	"fmt"

	"sawbill/stock"
)

// checkOverlays refuses fronts that reach past the case, or past the middle of
// a member that they share with another front.
func (r *reckoner) checkOverlays() {
	if r.made.drawers.front != "overlay" {
		return
	}
	side, upright := r.made.carcass.thickness, r.made.partition.thickness
	end := side
	if f := r.made.frame; f != nil {
		side, upright, end = f.stile, f.midStile, f.rail
	}
	for i, b := range r.bays {
		if !r.overlaid(b.openings...) {
			continue
		}
		r.checkOverlay("side", side, false)
		if i > 0 {
			r.checkOverlay("upright", upright, r.overlaid(r.bays[i-1].openings...))
		}
		for k, o := range b.openings {
			if !r.overlaid(o) {
				continue
			}
			r.checkOverlay("top and bottom", end, false)
			if k > 0 {
				r.checkOverlay("divider", r.made.divider.thickness, r.overlaid(b.openings[k-1]))
			}
		}
	}
}

func (r *reckoner) overlaid(openings ...opening) bool {
	for _, o := range openings {
		if len(o.stack) > 0 && r.made.drawers.falseFronts(o) {
			return true
		}
	}
	return false
}

func (r *reckoner) checkOverlay(member string, thickness stock.Length, shared bool) {
	s := r.made.drawers
	need := s.overlay
	if shared {
		need = 2*s.overlay + s.gap
	}
	if need <= thickness {
		return
	}
	cause := fmt.Sprintf("an overlay of %s reaches past the %s, %s thick", r.print(s.overlay), member, r.print(thickness))
	remedy := "make the overlay at most " + r.print(thickness)
	if shared {
		cause = fmt.Sprintf("two fronts with an overlay of %s and a gap of %s need a %s of %s, and it is %s", r.print(s.overlay),
			r.print(s.gap), member, r.print(need), r.print(thickness))
		remedy = "make the overlay at most " + r.print(max(0, (thickness-s.gap)/2))
	}
	r.fault(r.place.under(r.design.Drawer.Line, "drawer").under(r.design.Drawer.Overlay.Line, "overlay"), cause, remedy)
}
