package construction

import (
	"fmt"

	"sawbill/stock"
	"sawbill/stock/casework/design"
	"sawbill/stock/casework/internal/sums"
	"sawbill/stock/casework/joints"
)

// Drawers describes all drawers of the case.
type Drawers struct {
	Side              stock.Length // clearance of one slide
	Gap, Above, below stock.Length
	Behind            stock.Length
	Doors             behindDoors
	SlideLine         stock.Length // above the box's lower edge
	SlideLength       stock.Length // 0 where none was given

	Front      string
	FrontPanel design.Panel
	Overlay    stock.Length

	Box             design.Panel
	Corner          joints.Connection
	BoxDepth        design.Length
	HeightClearance stock.Length

	Bottom          design.Panel
	Groove          joints.Connection
	UnderBottom     stock.Length // from the box's lower edge to the bottom
	BottomClearance stock.Length
}

func (r *Construction) buildDrawers() {
	d := r.In.Design.Drawer
	a := r.In.Root.Under(d.Line, "drawer")
	s := Drawers{
		// A side-mount slide takes 1/2 in per side (common practice, no source).
		Side:            r.In.OrDefault(d.SideClearance, stock.Inch/2, stock.Inch/2),
		Gap:             r.In.OrDefault(d.Gap, 3*stock.Millimeter, stock.Inch/8),
		Behind:          d.GapBehind.Value,
		SlideLine:       d.SlideLine.Value,
		SlideLength:     d.SlideLength.Value,
		Front:           design.Or(d.Front, "none"),
		Overlay:         d.Overlay.Value,
		BoxDepth:        d.BoxDepth,
		HeightClearance: r.In.OrDefault(d.HeightClearance, stock.Inch/2, stock.Inch/2),
		BottomClearance: r.In.OrDefault(d.BottomClearance, 3*stock.Millimeter/2, stock.Inch/16),
		// A groove 3/8 in up, without hardware below: confirmed with "Dados and
		// Grooves in Drawers", routerworkshop.com.
		UnderBottom: r.In.OrDefault(d.UnderBottom, 10*stock.Millimeter, 3*stock.Inch/8),
	}
	if s.Front == "inset" && r.AnyDrawer(false) {
		s.Gap = r.In.OrDefault(d.Gap, 2*stock.Millimeter, stock.Inch/16)
	}
	s.Above = r.In.OrDefault(d.GapAbove, s.Gap, s.Gap)
	s.below = r.In.OrDefault(d.GapBelow, s.Gap, s.Gap)
	if r.AnyDrawer(false) {
		r.buildBoxes(a, &s)
	}
	r.Drawers = s
}

// buildBoxes reads what only drawers to be made need.
func (r *Construction) buildBoxes(a design.Place, s *Drawers) {
	d := r.In.Design.Drawer
	s.Box = r.In.Panel(a, "", d.Material, d.Thickness, nil)
	s.Bottom = r.In.Panel(a, "bottom_", d.BottomMaterial, d.BottomThickness, nil)
	s.Groove = joints.Connect(r.In, joints.DrawerBottom, a, design.Word{}, d.GrooveDepth, s.Box)
	s.Corner = joints.Connect(r.In, joints.DrawerCorner, a, d.Corner, d.CornerDepth, s.Box)
	joints.Unused(r.In, joints.DrawerCorner, a, s.Corner, "finger_width", "fingers have", d.FingerWidth)
	fronted := r.AnyOpening(func(o Opening) bool { return len(o.Stack) > 0 && s.FalseFronts(o) })
	if fronted {
		s.FrontPanel = r.In.Panel(a, "front_", d.FrontMaterial, d.FrontThickness, &r.Carcass)
	}
	overlayAt := a.Under(d.Overlay.Line, "overlay")
	switch {
	case s.Front == "overlay" && fronted && !d.Overlay.Set:
		r.In.Doubt(overlayAt)
		r.In.Fault(overlayAt, "not given, and needed", "give how far a front reaches over each edge of its opening")
	case s.Front != "overlay" && d.Overlay.Set && !r.In.Doubtful(a.Path+".front"):
		r.In.Fault(overlayAt, fmt.Sprintf("an overlay has no use, since front is %q", s.Front), `leave it out, or set front = "overlay"`)
	}
}

// WidthNeed is the width that the measured drawers of a bay need, if it has any:
// that of the one that needs most.
func (s Drawers) WidthNeed(b Bay) (most stock.Sum) {
	for _, o := range b.Openings {
		for _, x := range o.Stack {
			if need := s.WidthOf(o, x); x.Measured && (most == nil || need.Total() > most.Total()) {
				most = need
			}
		}
	}
	return most
}

// WidthOf is the width that a measured drawer needs in its opening: a slide's
// clearance on each side, and that of open doors.
func (s Drawers) WidthOf(o Opening, x Box) stock.Sum {
	return sums.Plus(sums.Plus(sums.Of(x.Width, "drawer"), stock.Term{Times: 2, Value: s.Side, Label: "side clearance"}), s.TakenBeside(o)...)
}

// DepthNeed is the least inside depth for a drawer, or nothing if it takes
// what there is.
func (s Drawers) DepthNeed(o Opening, x Box) stock.Sum {
	behind := stock.Term{Times: 1, Value: s.Behind, Label: "gap behind"}
	switch {
	case x.Measured:
		return sums.Plus(sums.Plus(sums.Of(x.Depth, "drawer"), s.TakenBefore(o)...), behind)
	case s.BoxDepth.Set:
		return sums.Plus(sums.Plus(sums.Of(s.BoxDepth.Value, "drawer box"), s.TakenBefore(o)...), s.InsetFront(o), behind)
	}
	return nil
}

// InsetFront is the depth that a front within an opening takes from it.
func (s Drawers) InsetFront(o Opening) stock.Term {
	if s.Front != "inset" || !s.FalseFronts(o) {
		return stock.Term{}
	}
	return stock.Term{Times: 1, Value: s.FrontPanel.Thickness, Label: "inset front"}
}

// FalseFronts reports whether the drawers of a stack get fronts of their own.
// Behind doors no front can reach over the opening.
func (s Drawers) FalseFronts(o Opening) bool {
	return s.Front != "none" && !o.Stack[0].Measured && !(s.Front == "overlay" && o.Doors > 0)
}

// GapsOf is how many gaps a stack has, over which what rounding leaves is spread.
func (s Drawers) GapsOf(o Opening) int {
	if s.FalseFronts(o) && s.Front == "overlay" {
		return len(o.Stack) - 1
	}
	return len(o.Stack) + 1
}

// Wider is how much wider than given each gap of a stack is, whose fronts are settled.
func (s Drawers) Wider(o Opening) stock.Length {
	left := o.Height - s.Gaps(o).Total()
	for _, x := range o.Stack {
		left -= x.Front.Value
	}
	if n := s.GapsOf(o); n > 0 {
		return left / stock.Length(n)
	}
	return 0
}

// Gaps are the spaces between and beside the drawers of a stack. The opening is higher than its
// drawers by them:
//
//	no false fronts  above + (n - 1) gap + below
//	inset            (n + 1) gap
//	overlay          (n - 1) gap - 2 overlay
func (s Drawers) Gaps(o Opening) stock.Sum {
	n := len(o.Stack)
	gap := func(times int) stock.Term { return stock.Term{Times: times, Value: s.Gap, Label: "gap"} }
	switch {
	case !s.FalseFronts(o):
		return sums.Plus(nil, stock.Term{Times: 1, Value: s.Above, Label: "gap above"}, gap(n-1),
			stock.Term{Times: 1, Value: s.below, Label: "gap below"})
	case s.Front == "inset":
		return sums.Plus(nil, gap(n+1))
	}
	return sums.Plus(nil, gap(n-1), stock.Term{Times: -2, Value: s.Overlay, Label: "overlay"})
}
