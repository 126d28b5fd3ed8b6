package casework

import (
	"fmt"

	"sawbill/stock"
)

// cover is what reaches over the edges of its opening: a drawer's front or a
// door. The zero cover reaches over nothing.
type cover struct {
	name         string
	overlay, gap stock.Length
}

// edge is a member that covers reach over: from one side, or shared by two.
type edge struct {
	name          string
	width         stock.Length
	before, after cover
}

func (e edge) shared() bool { return e.before.overlay > 0 && e.after.overlay > 0 }

// other is the cover that c meets on the edge.
func (e edge) other(c cover) cover {
	if e.before == c {
		return e.after
	}
	return e.before
}

// room is the greatest overlay of c on the edge, with a gap between two covers.
func (e edge) room(c cover) stock.Length {
	switch other := e.other(c); {
	case !e.shared():
		return e.width
	case other == c:
		return (e.width - c.gap) / 2
	default:
		return e.width - max(c.gap, other.gap) - other.overlay
	}
}

// checkOverlays refuses fronts and doors that reach past the case, or past
// their share of a member that they meet on. Where doors meet fronts it is told
// of the doors.
func (r *reckoner) checkOverlays() {
	fronts, doors := r.fronted(), r.doored()
	d, s := r.design.Drawer, r.design.Door
	edges := r.overlaidEdges()
	r.checkCover(edges, fronts, r.place.under(d.Line, "drawer").under(d.Overlay.Line, "overlay"))
	r.checkCover(edges, doors, r.place.under(s.Line, "door").under(s.Overlay.Line, "overlay"))
}

// checkCover refuses an overlay of c greater than the tightest of edges allows.
func (r *reckoner) checkCover(edges []edge, c cover, at at) {
	if c.overlay == 0 {
		return
	}
	var tightest edge
	for _, e := range edges {
		mine := e.before == c || e.after == c
		if e.shared() && c == r.fronted() && e.other(c) != c {
			mine = false
		}
		if mine && (tightest.name == "" || e.room(c) < tightest.room(c)) {
			tightest = e
		}
	}
	if tightest.name == "" || c.overlay <= tightest.room(c) {
		return
	}
	e, other := tightest, tightest.other(c)
	var cause string
	switch {
	case !e.shared():
		cause = fmt.Sprintf("an overlay of %s reaches past the %s, which is %s", r.print(c.overlay), e.name, r.print(e.width))
	case other == c:
		cause = fmt.Sprintf("two %ss with an overlay of %s and a gap of %s need %s of the %s that they share, and it is %s", c.name,
			r.print(c.overlay), r.print(c.gap), r.print(2*c.overlay+c.gap), e.name, r.print(e.width))
	default:
		gap := max(c.gap, other.gap)
		cause = fmt.Sprintf("a %s with an overlay of %s, a %s with one of %s and a gap of %s need %s of the %s that they share, and it is %s",
			c.name, r.print(c.overlay), other.name, r.print(other.overlay), r.print(gap), r.print(c.overlay+other.overlay+gap),
			e.name, r.print(e.width))
	}
	if room := e.room(c); room > 0 {
		r.fault(at, cause+" thick", "make the overlay at most "+r.print(room))
		return
	}
	r.fault(at, cause+" thick", "make the overlays smaller, or the "+e.name+" thicker")
}

// fronted is how overlay fronts of drawers reach over.
func (r *reckoner) fronted() cover {
	if s := r.made.drawers; s.front == "overlay" {
		return cover{"front", s.overlay, s.gap}
	}
	return cover{}
}

// doored is how overlay doors reach over.
func (r *reckoner) doored() cover {
	if s := r.made.doors; s.fit == "overlay" {
		return cover{"door", s.overlay, s.gap}
	}
	return cover{}
}

// overlaidEdges are the members that fronts and doors reach over.
func (r *reckoner) overlaidEdges() []edge {
	t := r.made.carcass.thickness
	side, end := edge{name: "side", width: t}, edge{name: "top or bottom", width: t}
	upright := edge{name: "partition", width: r.made.partition.thickness}
	if f := r.made.frame; f != nil {
		side, end = edge{name: "stile", width: f.stile}, edge{name: "rail", width: f.rail}
		upright = edge{name: "mid stile", width: f.midStile}
	}
	width, name := r.between()
	level := edge{name: name, width: width}
	var edges []edge
	for i, b := range r.bays {
		if i == 0 || i == len(r.bays)-1 {
			edges = r.met(edges, side, nil, b.openings)
		}
		if i > 0 {
			edges = r.met(edges, upright, r.bays[i-1].openings, b.openings)
		}
		for k := range b.openings {
			if k == 0 || k == len(b.openings)-1 {
				edges = r.met(edges, end, nil, b.openings[k:k+1])
			}
			if k > 0 {
				edges = r.met(edges, level, b.openings[k-1:k], b.openings[k:k+1])
			}
		}
	}
	return edges
}

// met adds a member between two groups of openings, as often as different
// covers reach over it.
func (r *reckoner) met(edges []edge, between edge, before, after []opening) []edge {
	for _, one := range r.covers(before) {
		for _, other := range r.covers(after) {
			between.before, between.after = one, other
			if one.overlay > 0 || other.overlay > 0 {
				edges = append(edges, between)
			}
		}
	}
	return edges
}

// covers are those of a group of openings; of none, the zero cover.
func (r *reckoner) covers(of []opening) []cover {
	fronts, doors := false, false
	for _, o := range of {
		fronts = fronts || len(o.stack) > 0 && r.made.drawers.falseFronts(o)
		doors = doors || o.doors > 0
	}
	var all []cover
	if c := r.fronted(); fronts && c.overlay > 0 {
		all = append(all, c)
	}
	if c := r.doored(); doors && c.overlay > 0 {
		all = append(all, c)
	}
	if all == nil {
		return []cover{{}}
	}
	return all
}
