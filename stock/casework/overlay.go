package casework

import (
	"fmt"

	"sawbill/stock"
)

// edge is a member that overlay fronts reach over: from one side, or shared by
// fronts on both.
type edge struct {
	name   string
	width  stock.Length
	shared bool
}

// room is the greatest overlay for an edge, with a gap between two fronts.
func (e edge) room(gap stock.Length) stock.Length {
	if e.shared {
		return (e.width - gap) / 2
	}
	return e.width
}

// checkOverlays refuses fronts that reach past the case, or past the middle of
// a member that they share with another front.
func (r *reckoner) checkOverlays() {
	edges := r.overlaidEdges()
	if len(edges) == 0 {
		return
	}
	s := r.made.drawers
	tightest := edges[0]
	for _, e := range edges[1:] {
		if e.room(s.gap) < tightest.room(s.gap) {
			tightest = e
		}
	}
	room := tightest.room(s.gap)
	if s.overlay <= room {
		return
	}
	cause := fmt.Sprintf("an overlay of %s reaches past the %s, which is %s", r.print(s.overlay), tightest.name, r.print(tightest.width))
	if tightest.shared {
		cause = fmt.Sprintf("two fronts with an overlay of %s and a gap of %s need %s of the %s that they share, and it is %s",
			r.print(s.overlay), r.print(s.gap), r.print(2*s.overlay+s.gap), tightest.name, r.print(tightest.width))
	}
	d := r.design.Drawer
	r.fault(r.place.under(d.Line, "drawer").under(d.Overlay.Line, "overlay"), cause+" thick",
		"make the overlay at most "+r.print(max(0, room)))
}

// overlaidEdges are the members that overlay fronts reach over.
func (r *reckoner) overlaidEdges() []edge {
	if r.made.drawers.front != "overlay" {
		return nil
	}
	t := r.made.carcass.thickness
	side, end := edge{name: "side", width: t}, edge{name: "top or bottom", width: t}
	upright := edge{name: "partition", width: r.made.partition.thickness}
	if f := r.made.frame; f != nil {
		side, end = edge{name: "stile", width: f.stile}, edge{name: "rail", width: f.rail}
		upright = edge{name: "mid stile", width: f.midStile}
	}
	var edges []edge
	for i, b := range r.bays {
		if (i == 0 || i == len(r.bays)-1) && r.overlaid(b.openings...) {
			edges = append(edges, side)
		}
		if i > 0 {
			edges = r.met(edges, upright, r.bays[i-1].openings, b.openings)
		}
		for k, o := range b.openings {
			if (k == 0 || k == len(b.openings)-1) && r.overlaid(o) {
				edges = append(edges, end)
			}
			if k > 0 {
				divider := edge{name: "divider", width: r.made.divider.thickness}
				edges = r.met(edges, divider, b.openings[k-1:k], b.openings[k:k+1])
			}
		}
	}
	return edges
}

// met adds a member between two groups of openings, if fronts reach over it.
func (r *reckoner) met(edges []edge, between edge, before, after []opening) []edge {
	first, second := r.overlaid(before...), r.overlaid(after...)
	between.shared = first && second
	if first || second {
		edges = append(edges, between)
	}
	return edges
}

func (r *reckoner) overlaid(openings ...opening) bool {
	for _, o := range openings {
		if len(o.stack) > 0 && r.made.drawers.falseFronts(o) {
			return true
		}
	}
	return false
}
