package sizes

import (
	"fmt"

	"sawbill/stock"
	"sawbill/stock/casework/construction"
	"sawbill/stock/casework/design"
)

// cover is a drawer's front or a door that reaches over the edges of its opening. The zero cover
// reaches over nothing.
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

// checkOverlays refuses fronts and doors that reach past the case, or past their share of a member
// that they meet on. Where doors meet fronts the doors get the fault.
func (r *Sizes) checkOverlays() {
	fronts, doors := r.fronted(), r.doored()
	d, s := r.In.Design.Drawer, r.In.Design.Door
	edges := r.overlaidEdges()
	r.checkCover(edges, fronts, r.In.Root.Under(d.Line, "drawer").Under(d.Overlay.Line, "overlay"))
	r.checkCover(edges, doors, r.In.Root.Under(s.Line, "door").Under(s.Overlay.Line, "overlay"))
}

// checkCover refuses an overlay of c greater than the tightest of edges allows.
func (r *Sizes) checkCover(edges []edge, c cover, at design.Place) {
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
		cause = fmt.Sprintf("an overlay of %s reaches past the %s, which is %s", r.In.Print(c.overlay), e.name, r.In.Print(e.width))
	case other == c:
		cause = fmt.Sprintf("two %ss with an overlay of %s and a gap of %s need %s of the %s that they share, and it is %s", c.name,
			r.In.Print(c.overlay), r.In.Print(c.gap), r.In.Print(2*c.overlay+c.gap), e.name, r.In.Print(e.width))
	default:
		gap := max(c.gap, other.gap)
		cause = fmt.Sprintf("a %s with an overlay of %s, a %s with one of %s and a gap of %s need %s of the %s that they share, and it is %s",
			c.name, r.In.Print(c.overlay), other.name, r.In.Print(other.overlay), r.In.Print(gap), r.In.Print(c.overlay+other.overlay+gap),
			e.name, r.In.Print(e.width))
	}
	if room := e.room(c); room > 0 {
		r.In.Fault(at, cause+" thick", "make the overlay at most "+r.In.Print(room))
		return
	}
	r.In.Fault(at, cause+" thick", "make the overlays smaller, or the "+e.name+" thicker")
}

// fronted is how overlay fronts of drawers reach over.
func (r *Sizes) fronted() cover {
	if s := r.Built.Drawers; s.Front == "overlay" {
		return cover{"front", s.Overlay, s.Gap}
	}
	return cover{}
}

// doored is how overlay doors reach over.
func (r *Sizes) doored() cover {
	if s := r.Built.Doors; s.Fit == "overlay" {
		return cover{"door", s.Overlay, s.Gap}
	}
	return cover{}
}

// overlaidEdges are the members that fronts and doors reach over.
func (r *Sizes) overlaidEdges() []edge {
	t := r.Built.Carcass.Thickness
	side, end := edge{name: "side", width: t}, edge{name: "top or bottom", width: t}
	upright := edge{name: "partition", width: r.Built.Partition.Thickness}
	if f := r.Built.Frame; f != nil {
		side, end = edge{name: "stile", width: f.Stile}, edge{name: "rail", width: f.Rail}
		upright = edge{name: "mid stile", width: f.MidStile}
	}
	width, name := r.Built.Between()
	level := edge{name: name, width: width}
	var edges []edge
	for i, b := range r.Built.Bays {
		if i == 0 || i == len(r.Built.Bays)-1 {
			edges = r.met(edges, side, nil, b.Openings)
		}
		if i > 0 {
			edges = r.met(edges, upright, r.Built.Bays[i-1].Openings, b.Openings)
		}
		for k := range b.Openings {
			if k == 0 || k == len(b.Openings)-1 {
				edges = r.met(edges, end, nil, b.Openings[k:k+1])
			}
			if k > 0 {
				edges = r.met(edges, level, b.Openings[k-1:k], b.Openings[k:k+1])
			}
		}
	}
	return edges
}

// met adds a member between two groups of openings, as often as different
// covers reach over it.
func (r *Sizes) met(edges []edge, between edge, before, after []construction.Opening) []edge {
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

// covers lists the covers of a group of openings; the zero cover if there is none.
func (r *Sizes) covers(of []construction.Opening) []cover {
	fronts, doors := false, false
	for _, o := range of {
		fronts = fronts || len(o.Stack) > 0 && r.Built.Drawers.FalseFronts(o)
		doors = doors || o.Doors > 0
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
