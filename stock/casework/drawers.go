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
	doors             behindDoors
	slideLine         stock.Length // above the box's lower edge
	slideLength       stock.Length // 0 where none was given

	front      string
	frontPanel panel
	overlay    stock.Length

	box             panel
	corner          connection
	boxDepth        Length
	heightClearance stock.Length

	bottom          panel
	groove          connection
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
	s.groove = r.joint(DrawerBottom, a, Word{}, d.GrooveDepth, s.box)
	s.corner = r.joint(DrawerCorner, a, d.Corner, d.CornerDepth, s.box)
	r.unused(DrawerCorner, a, s.corner, "finger_width", "fingers have", d.FingerWidth)
	fronted := r.anyOpening(func(o opening) bool { return len(o.stack) > 0 && s.falseFronts(o) })
	if fronted {
		s.frontPanel = r.panel(a, "front_", d.FrontMaterial, d.FrontThickness, &r.made.carcass)
	}
	overlayAt := a.under(d.Overlay.Line, "overlay")
	switch {
	case s.front == "overlay" && fronted && !d.Overlay.Set:
		r.doubt(overlayAt)
		r.fault(overlayAt, "not given, and needed", "give how far a front reaches over each edge of its opening")
	case s.front != "overlay" && d.Overlay.Set && !r.doubtful(a.path+".front"):
		r.fault(overlayAt, fmt.Sprintf("an overlay has no use, since front is %q", s.front), `leave it out, or set front = "overlay"`)
	}
}

// widthNeed is the width that the measured drawers of a bay need, if it has any:
// that of the one that needs most.
func (s drawers) widthNeed(b bay) (most stock.Sum) {
	for _, o := range b.openings {
		for _, x := range o.stack {
			if need := s.widthOf(o, x); x.measured && (most == nil || need.Total() > most.Total()) {
				most = need
			}
		}
	}
	return most
}

// widthOf is the width that a measured drawer needs in its opening: a slide's
// clearance on each side, and that of open doors.
func (s drawers) widthOf(o opening, x box) stock.Sum {
	return plus(plus(given(x.width, "drawer"), stock.Term{Times: 2, Value: s.side, Label: "side clearance"}), s.takenBeside(o)...)
}

// depthNeed is the least inside depth for a drawer, or nothing if it takes
// what there is.
func (s drawers) depthNeed(o opening, x box) stock.Sum {
	behind := stock.Term{Times: 1, Value: s.behind, Label: "gap behind"}
	switch {
	case x.measured:
		return plus(plus(given(x.depth, "drawer"), s.takenBefore(o)...), behind)
	case s.boxDepth.Set:
		return plus(plus(given(s.boxDepth.Value, "drawer box"), s.takenBefore(o)...), s.insetFront(o), behind)
	}
	return nil
}

// insetFront is what a front within an opening takes of its depth.
func (s drawers) insetFront(o opening) stock.Term {
	if s.front != "inset" || !s.falseFronts(o) {
		return stock.Term{}
	}
	return stock.Term{Times: 1, Value: s.frontPanel.thickness, Label: "inset front"}
}

// falseFronts reports whether the drawers of a stack get fronts of their own.
// Behind doors no front can reach over the opening.
func (s drawers) falseFronts(o opening) bool {
	return s.front != "none" && !o.stack[0].measured && !(s.front == "overlay" && o.doors > 0)
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
