package casework

import (
	"fmt"

	"sawbill/stock"
)

// build is how the case is made: every word read, every material looked up,
// every default filled in.
type build struct {
	carcass     panel
	topOver     bool // top over the sides' ends, not between the sides
	bottomUnder bool
	corner      connection

	frame *frame // nil in a case of panels alone
	back  back
	base  base

	partition, divider fixedPanel
	shelf              shelf
	drawers            drawers
	doors              doors
	edgings            []edging

	looseTenons []looseTenons
	loose       []joinery
}

// fixedPanel is a partition or a divider.
type fixedPanel struct {
	panel
	joint connection
}

type shelf struct {
	panel
	joint     connection
	loose     bool
	clearance stock.Length // of loose shelves
	setBack   stock.Length
}

// build reads all of the design but its sizes. What the case has no use for is
// not read: a case without drawers needs no material for them.
func (r *reckoner) build() {
	d, b := &r.design, &r.made
	a := r.place.under(d.Carcass.Line, "carcass")
	b.carcass = r.panel(a, "", d.Carcass.Material, d.Carcass.Thickness, nil)
	b.topOver = d.Carcass.Top.Value == "over"
	b.bottomUnder = d.Carcass.Bottom.Value == "under"
	b.corner = r.joint(CarcassCorner, a, d.Carcass.Joint, d.Carcass.JointDepth, b.carcass)

	r.buildFrame()
	r.buildBack()
	r.buildBase()
	uprights := []panel{b.carcass}
	if len(r.bays) > 1 {
		b.partition = r.fixedPanel("partition", d.Partition, b.carcass)
		uprights = append(uprights, b.partition.panel)
	}
	thinnest := thinnest(uprights)
	if r.anyBay(func(o bay) bool { return len(o.openings) > 1 }) {
		b.divider = r.fixedPanel("divider", d.Divider, thinnest)
	}
	if r.anyOpening(func(o opening) bool { return o.shelves > 0 }) {
		r.buildShelf(thinnest)
	}
	if r.anyOpening(func(o opening) bool { return len(o.stack) > 0 }) {
		r.buildDrawers()
	}
	if r.anyOpening(func(o opening) bool { return o.doors > 0 }) {
		r.buildDoors()
	}
	r.buildBehindDoors()
	r.buildEdgings()
	r.buildJoinery()
}

// thinnest is the panel that a joint cut into any of them must spare most.
func thinnest(panels []panel) panel {
	least := panels[0]
	for _, p := range panels[1:] {
		if p.thickness < least.thickness {
			least = p
		}
	}
	return least
}

func (r *reckoner) fixedPanel(key string, d Divider, into panel) fixedPanel {
	a := r.place.under(d.Line, key)
	return fixedPanel{
		panel: r.panel(a, "", d.Material, d.Thickness, &r.made.carcass),
		joint: r.joint(DividerEnd, a, d.Joint, d.JointDepth, into),
	}
}

func (r *reckoner) buildShelf(into panel) {
	d := r.design.Shelf
	a := r.place.under(d.Line, "shelf")
	held := Word{Value: or(d.Held, "pins"), Set: true}
	s := shelf{
		panel:     r.panel(a, "", d.Material, d.Thickness, &r.made.carcass),
		loose:     held.Value == "pins",
		clearance: r.orDefault(d.Clearance, 3*stock.Millimetre, stock.Inch/8),
		setBack:   d.SetBack.Value,
		joint:     r.joint(ShelfEnd, a, held, d.JointDepth, into),
	}
	if !s.loose && d.Clearance.Set && !r.doubtful(a.path+".held") {
		r.fault(a.under(d.Clearance.Line, "clearance"), fmt.Sprintf("a clearance has no use, since held is %q", d.Held.Value),
			`leave it out, or set held = "pins"`)
	}
	r.made.shelf = s
}

// back is what closes the case behind.
type back struct {
	panel
	connection // its depth is that of rabbet or groove, per edge
	fit        string
	setIn      stock.Length
	clearance  stock.Length
}

// housed reports whether it lies in rabbets or grooves.
func (b back) housed() bool {
	_, is := b.Joint.(housedJoint)
	return is
}

// inGrooves reports whether it must be in its place before that is closed.
func (b back) inGrooves() bool {
	_, is := b.Joint.(groove)
	return is
}

// takes is what the back leaves less of the depth of what it is fitted to.
func (b back) takes() stock.Sum {
	if !b.housed() {
		return nil
	}
	return plus(nil, stock.Term{Times: 1, Value: b.thickness, Label: "back"}, stock.Term{Times: 1, Value: b.setIn, Label: "set in"})
}

func (r *reckoner) buildBack() {
	d := r.design.Back
	a := r.place.under(d.Line, "back")
	fit := or(d.Fit, "none")
	if fit == "none" {
		if d.Material.Set && !d.Fit.Set {
			r.fault(a.under(0, "fit"), "a back is described, but not how it is fitted", `give "applied", "rabbet" or "groove"`)
		}
		r.made.back = back{fit: "none"}
		return
	}
	b := back{
		fit:       fit,
		panel:     r.panel(a, "", d.Material, d.Thickness, nil),
		setIn:     r.setIn(a, fit, d.SetIn),
		clearance: r.orDefault(d.Clearance, 3*stock.Millimetre/2, stock.Inch/16),
	}
	into := r.made.carcass
	if r.made.frame != nil {
		into = r.made.frame.panel
		into.thickness = min(r.made.frame.stile, r.made.frame.rail)
	}
	b.connection = r.joint(BackEdge, a, d.Fit, d.Depth, into)
	if r.made.frame != nil && b.thickness > 0 && r.made.frame.thickness > 0 {
		r.backInFrame(a, b)
	}
	r.made.back = b
}

// setIn is how much wood is left behind a grooved back: 6 mm (1/4 in) by default. A
// wall of less than half of that breaks out. Both are common practice, no source.
func (r *reckoner) setIn(a at, fit string, given Length) stock.Length {
	setInAt, usual := a.under(given.Line, "set_in"), 2*r.thinWall()
	switch {
	case fit != "groove" && given.Set && !r.doubtful(a.path+".fit"):
		r.fault(setInAt, fmt.Sprintf("set_in has no use, since fit is %q", fit), "leave one of the two out")
	case fit != "groove":
		return 0
	case !given.Set:
		return usual
	case given.Value < r.thinWall():
		r.fault(setInAt, fmt.Sprintf("%s of wood behind the groove would break out", r.print(given.Value)),
			"leave "+r.print(usual)+`, or set fit = "rabbet"`)
	}
	return given.Value
}

// backInFrame checks that the back frame holds what is cut into it.
func (r *reckoner) backInFrame(a at, b back) {
	f := r.made.frame
	if b.takes().Total() > f.thickness {
		r.fault(a, fmt.Sprintf("a back of %s, set in %s, does not go into a back frame %s thick",
			r.print(b.thickness), r.print(b.setIn), r.print(f.thickness)), `use a thinner back, or fit = "applied"`)
	}
	if len(r.bays) > 1 && 2*b.depth >= f.midStile && f.midStile > 0 {
		r.fault(a.under(r.design.Back.Depth.Line, "depth"), fmt.Sprintf("two %ss %s deep meet in a mid stile %s wide", b.Name(),
			r.print(b.depth), r.print(f.midStile)), "make them shallower, or the mid stile wider")
	}
}
