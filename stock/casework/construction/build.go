// Package construction reads how a case is made: its panels, frames, back, base, drawers, doors and
// joints, and what goes into its openings. Only the sizes that follow from others are still open.
package construction

import (
	"fmt"

	"sawbill/stock"
	"sawbill/stock/casework/design"
	"sawbill/stock/casework/joints"
)

// Construction is how a case is made: every word read, every material looked up,
// every default filled in.
type Construction struct {
	In   *design.Reader
	Bays []Bay // their sizes are settled later

	Carcass     design.Panel
	TopOver     bool // top over the sides' ends, not between the sides
	BottomUnder bool
	Corner      joints.Connection

	Frame *joints.Frame // nil in a case of panels alone
	Back  joints.Back
	Base  base

	Partition, Divider fixedPanel
	Shelf              shelf
	Drawers            Drawers
	Doors              doors
	Edgings            []Edging

	LooseTenons []joints.LooseTenons
	Loose       []joinery
}

// fixedPanel is a partition or a divider.
type fixedPanel struct {
	design.Panel
	Joint joints.Connection
}

type shelf struct {
	design.Panel
	Joint     joints.Connection
	Loose     bool
	Clearance stock.Length // of loose shelves
	SetBack   stock.Length
}

// Read reads all of the design but its sizes. Tables that the case has no use for are not read: a
// case without drawers needs no material for them.
func Read(in *design.Reader) *Construction {
	r := &Construction{In: in}
	r.layOut()
	r.build()
	return r
}

func (r *Construction) build() {
	d, b := &r.In.Design, r
	a := r.In.Root.Under(d.Carcass.Line, "carcass")
	b.Carcass = r.In.Panel(a, "", d.Carcass.Material, d.Carcass.Thickness, nil)
	b.TopOver = d.Carcass.Top.Value == "over"
	b.BottomUnder = d.Carcass.Bottom.Value == "under"
	b.Corner = joints.Connect(r.In, joints.CarcassCorner, a, d.Carcass.Joint, d.Carcass.JointDepth, b.Carcass)

	r.buildFrame()
	r.buildBack()
	r.buildBase()
	uprights := []design.Panel{b.Carcass}
	if len(r.Bays) > 1 {
		b.Partition = r.fixedPanel("partition", d.Partition, b.Carcass)
		uprights = append(uprights, b.Partition.Panel)
	}
	thinnest := thinnest(uprights)
	if r.AnyBay(func(o Bay) bool { return len(o.Openings) > 1 }) {
		b.Divider = r.fixedPanel("divider", d.Divider, thinnest)
	}
	if r.AnyOpening(func(o Opening) bool { return o.Shelves > 0 }) {
		r.buildShelf(thinnest)
	}
	if r.AnyOpening(func(o Opening) bool { return len(o.Stack) > 0 }) {
		r.buildDrawers()
	}
	if r.AnyOpening(func(o Opening) bool { return o.Doors > 0 }) {
		r.buildDoors()
	}
	r.buildBehindDoors()
	r.buildEdgings()
	r.buildJoinery()
}

// thinnest is the panel that a joint cut into any of them must spare most.
func thinnest(panels []design.Panel) design.Panel {
	least := panels[0]
	for _, p := range panels[1:] {
		if p.Thickness < least.Thickness {
			least = p
		}
	}
	return least
}

func (r *Construction) fixedPanel(key string, d design.Divider, into design.Panel) fixedPanel {
	a := r.In.Root.Under(d.Line, key)
	return fixedPanel{
		Panel: r.In.Panel(a, "", d.Material, d.Thickness, &r.Carcass),
		Joint: joints.Connect(r.In, joints.DividerEnd, a, d.Joint, d.JointDepth, into),
	}
}

func (r *Construction) buildShelf(into design.Panel) {
	d := r.In.Design.Shelf
	a := r.In.Root.Under(d.Line, "shelf")
	held := design.Word{Value: design.Or(d.Held, "pins"), Set: true}
	s := shelf{
		Panel:     r.In.Panel(a, "", d.Material, d.Thickness, &r.Carcass),
		Loose:     held.Value == "pins",
		Clearance: r.In.OrDefault(d.Clearance, 3*stock.Millimeter, stock.Inch/8),
		SetBack:   d.SetBack.Value,
		Joint:     joints.Connect(r.In, joints.ShelfEnd, a, held, d.JointDepth, into),
	}
	if !s.Loose && d.Clearance.Set && !r.In.Doubtful(a.Path+".held") {
		r.In.Fault(a.Under(d.Clearance.Line, "clearance"), fmt.Sprintf("a clearance has no use, since held is %q", d.Held.Value),
			`leave it out, or set held = "pins"`)
	}
	r.Shelf = s
}

func (r *Construction) buildBack() {
	d := r.In.Design.Back
	a := r.In.Root.Under(d.Line, "back")
	fit := design.Or(d.Fit, "none")
	if fit == "none" {
		if d.Material.Set && !d.Fit.Set {
			r.In.Fault(a.Under(0, "fit"), "a back is described, but not how it is fitted", `give "applied", "rabbet" or "groove"`)
		}
		r.Back = joints.Back{Fit: "none"}
		return
	}
	b := joints.Back{
		Fit:       fit,
		Panel:     r.In.Panel(a, "", d.Material, d.Thickness, nil),
		SetIn:     r.setIn(a, fit, d.SetIn),
		Clearance: r.In.OrDefault(d.Clearance, 3*stock.Millimeter/2, stock.Inch/16),
	}
	into := r.Carcass
	if r.Frame != nil {
		into = r.Frame.Panel
		into.Thickness = min(r.Frame.Stile, r.Frame.Rail)
	}
	b.Connection = joints.Connect(r.In, joints.BackEdge, a, d.Fit, d.Depth, into)
	if r.Frame != nil && b.Thickness > 0 && r.Frame.Thickness > 0 {
		r.backInFrame(a, b)
	}
	r.Back = b
}

// setIn is how much wood is left behind a grooved back: 6 mm (1/4 in) by default. A
// wall of less than half of that breaks out. Both are common practice, no source.
func (r *Construction) setIn(a design.Place, fit string, given design.Length) stock.Length {
	setInAt, usual := a.Under(given.Line, "set_in"), 2*joints.ThinWall(r.In)
	switch {
	case fit != "groove" && given.Set && !r.In.Doubtful(a.Path+".fit"):
		r.In.Fault(setInAt, fmt.Sprintf("set_in has no use, since fit is %q", fit), "leave one of the two out")
	case fit != "groove":
		return 0
	case !given.Set:
		return usual
	case given.Value < joints.ThinWall(r.In):
		r.In.Fault(setInAt, fmt.Sprintf("%s of wood behind the groove would break out", r.In.Print(given.Value)),
			"leave "+r.In.Print(usual)+`, or set fit = "rabbet"`)
	}
	return given.Value
}

// backInFrame checks that the back frame holds what is cut into it.
func (r *Construction) backInFrame(a design.Place, b joints.Back) {
	f := r.Frame
	if b.Takes().Total() > f.Thickness {
		r.In.Fault(a, fmt.Sprintf("a back of %s, set in %s, does not go into a back frame %s thick",
			r.In.Print(b.Thickness), r.In.Print(b.SetIn), r.In.Print(f.Thickness)), `use a thinner back, or fit = "applied"`)
	}
	if len(r.Bays) > 1 && 2*b.Depth >= f.MidStile && f.MidStile > 0 {
		r.In.Fault(a.Under(r.In.Design.Back.Depth.Line, "depth"), fmt.Sprintf("two %ss %s deep meet in a mid stile %s wide", b.Name(),
			r.In.Print(b.Depth), r.In.Print(f.MidStile)), "make them shallower, or the mid stile wider")
	}
}
