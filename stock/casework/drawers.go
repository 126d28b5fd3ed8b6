package casework

import (
	"fmt"

	"sawbill/stock"
)

// drawers is what all drawers of the case have in common.
type drawers struct {
	side              stock.Length // clearance of one slide
	gap, above, below stock.Length
	behind            stock.Length
	slideLine         stock.Length // above the box's lower edge
	slideLength       stock.Length // 0 where none was given

	front      string
	frontPanel panel
	overlay    stock.Length

	box             panel
	corner          string
	cornerDepth     stock.Length
	boxDepth        Length
	heightClearance stock.Length

	bottom          panel
	groove          stock.Length
	underBottom     stock.Length // from the box's lower edge to the bottom
	bottomClearance stock.Length
}

func (r *reckoner) buildDrawers() {
	d := r.design.Drawer
	a := r.place.under(d.Line, "drawer")
	s := drawers{
		// A side-mount slide takes 1/2 in per side (common practice, no source).
		side:            r.orDefault(d.SideClearance, stock.Inch/2, stock.Inch/2),
		gap:             r.orDefault(d.Gap, 3*stock.Millimetre, stock.Inch/8),
		behind:          d.GapBehind.Value,
		slideLine:       d.SlideLine.Value,
		slideLength:     d.SlideLength.Value,
		front:           or(d.Front, "none"),
		overlay:         d.Overlay.Value,
		corner:          or(d.Corner, "butt"),
		boxDepth:        d.BoxDepth,
		heightClearance: r.orDefault(d.HeightClearance, stock.Inch/2, stock.Inch/2),
		bottomClearance: r.orDefault(d.BottomClearance, 3*stock.Millimetre/2, stock.Inch/16),
		// A groove 3/8 in up, without hardware below: confirmed with "Dados and
		// Grooves in Drawers", routerworkshop.com.
		underBottom: r.orDefault(d.UnderBottom, 10*stock.Millimetre, 3*stock.Inch/8),
	}
	if s.front == "inset" && r.anyDrawer(false) {
		s.gap = r.orDefault(d.Gap, 2*stock.Millimetre, stock.Inch/16)
	}
	s.above = r.orDefault(d.GapAbove, s.gap, s.gap)
	s.below = r.orDefault(d.GapBelow, s.gap, s.gap)
	if r.anyDrawer(false) {
		r.buildBoxes(a, &s)
	}
	r.made.drawers = s
}

// buildBoxes reads what only drawers to be made need.
func (r *reckoner) buildBoxes(a at, s *drawers) {
	d := r.design.Drawer
	s.box = r.panel(a, "", d.Material, d.Thickness, nil)
	s.bottom = r.panel(a, "bottom_", d.BottomMaterial, d.BottomThickness, nil)
	s.groove = r.joint(a, "bottom", Word{Value: "groove", Set: true}, "groove_depth", d.GrooveDepth, s.box).depth
	s.cornerDepth = r.joint(a, "corner", d.Corner, "corner_depth", d.CornerDepth, s.box).depth
	if s.front != "none" {
		s.frontPanel = r.panel(a, "front_", d.FrontMaterial, d.FrontThickness, &r.made.carcass)
	}
	overlayAt := a.under(d.Overlay.Line, "overlay")
	switch {
	case s.front == "overlay" && !d.Overlay.Set:
		r.unsettled = true
		r.fault(overlayAt, "not given, and needed", "give how far a front reaches over each edge of its opening")
	case s.front != "overlay" && d.Overlay.Set:
		r.fault(overlayAt, fmt.Sprintf("an overlay has no use, since front is %q", s.front), `leave it out, or set front = "overlay"`)
	}
}

// widthNeed is the width that the measured drawers of a bay need, if it has
// any: the widest and a slide's clearance on each side.
func (s drawers) widthNeed(b bay) (need stock.Sum, widest stock.Length) {
	for _, o := range b.openings {
		for _, x := range o.stack {
			widest = max(widest, x.width)
		}
	}
	if widest == 0 {
		return nil, 0
	}
	return plus(given(widest, "drawer"), stock.Term{Times: 2, Value: s.side, Label: "side clearance"}), widest
}

// depthNeed is the least inside depth for a drawer, or nothing if it takes
// what there is.
func (s drawers) depthNeed(x box) stock.Sum {
	behind := stock.Term{Times: 1, Value: s.behind, Label: "gap behind"}
	switch {
	case x.measured:
		return plus(given(x.depth, "drawer"), behind)
	case s.boxDepth.Set:
		return plus(given(s.boxDepth.Value, "drawer box"), s.insetFront(), behind)
	}
	return nil
}

// insetFront is what a front within the opening takes of its depth.
func (s drawers) insetFront() stock.Term {
	if s.front != "inset" {
		return stock.Term{}
	}
	return stock.Term{Times: 1, Value: s.frontPanel.thickness, Label: "inset front"}
}

// falseFronts reports whether the drawers of a stack get fronts of their own.
func (s drawers) falseFronts(o opening) bool {
	return s.front != "none" && !o.stack[0].measured
}

// gaps is what stands between and beside the drawers of a stack, by which the
// height of their opening is more than their own:
//
//	no false fronts  above + (n - 1) gap + below
//	inset            (n + 1) gap
//	overlay          (n - 1) gap - 2 overlay
func (s drawers) gaps(o opening) stock.Sum {
	n := len(o.stack)
	gap := func(times int) stock.Term { return stock.Term{Times: times, Value: s.gap, Label: "gap"} }
	switch {
	case !s.falseFronts(o):
		return plus(nil, stock.Term{Times: 1, Value: s.above, Label: "gap above"}, gap(n-1),
			stock.Term{Times: 1, Value: s.below, Label: "gap below"})
	case s.front == "inset":
		return plus(nil, gap(n+1))
	}
	return plus(nil, gap(n-1), stock.Term{Times: -2, Value: s.overlay, Label: "overlay"})
}

// fronts are the heights of a stack, as far as they are known.
func (o opening) fronts() (members []member, settled bool) {
	settled = true
	for i, x := range o.stack {
		m := member{name: "front", size: given(x.front.Value, "given"), settled: x.front.Set}
		if top := o.stack[0].front; o.graded.Set && top.Set {
			m = member{name: "front", size: plus(given(top.Value, "top front"), o.steps(i)), settled: true}
		}
		if x.measured {
			m = member{name: "drawer", size: given(x.height, "measured"), settled: true}
		}
		settled = settled && m.settled
		members = append(members, m)
	}
	return members, settled
}

// heightNeed is the height of an opening whose drawers settle it.
func (s drawers) heightNeed(o opening) (stock.Sum, bool) {
	fronts, settled := o.fronts()
	if len(fronts) == 0 || !settled {
		return nil, false
	}
	terms := make([]stock.Term, len(fronts))
	for i, f := range fronts {
		terms[i] = stock.Term{Times: 1, Value: f.size.Total(), Label: f.name}
	}
	return plus(row(terms...), s.gaps(o)...), true
}
