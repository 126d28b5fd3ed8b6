package construction

import (
	"fmt"

	"sawbill/stock"
	"sawbill/stock/casework/design"
	"sawbill/stock/casework/joints"
)

func (r *Construction) buildFrame() {
	d := r.In.Design.Frame
	a := r.In.Root.Under(d.Line, "frame")
	if r.In.Design.Construction.Value != "framed" {
		if d.Material.Set && !r.In.Doubtful(r.In.Root.Path+".construction") {
			r.In.Fault(a, "a case of panels has no frame", `set construction = "framed", or leave the table out`)
		}
		return
	}
	f := &joints.Frame{
		Panel:    r.In.Panel(a, "", d.Material, d.Thickness, nil),
		Stile:    r.In.Required(a, "stile_width", d.StileWidth, "the face width of the uprights"),
		Rail:     r.In.Required(a, "rail_width", d.RailWidth, "the face width of the level members"),
		MidStile: d.StileWidth.Value,
		Corner:   joints.FrameCorner.Named(design.Or(d.Corner, "butt")),
		Inset:    d.Inset.Value,
	}
	if d.MidStileWidth.Set {
		f.MidStile = d.MidStileWidth.Value
	}
	r.buildMidRails(f)
	r.Frame = f
	joints.Unused(r.In, joints.FrameCorner, a, f.Corner, "tenon_length", "a tenon has", d.TenonLength)
	joints.Unused(r.In, joints.FrameCorner, a, f.Corner, "finger_width", "fingers have", d.FingerWidth)
	if t, is := f.Corner.(joints.MortiseAndTenon); is {
		t.ReadTenon(r.In, a, f, len(r.Bays) > 1)
	}
	r.frameCovers(a.Under(d.StileWidth.Line, "stile_width"), "stiles", f.Stile)
	r.frameCovers(a.Under(d.RailWidth.Line, "rail_width"), "rails", f.Rail)
}

// frameCovers checks that the edges of the panels lie behind the frame, and
// not in its opening.
func (r *Construction) frameCovers(a design.Place, members string, width stock.Length) {
	f, t := r.Frame, r.Carcass.Thickness
	if t == 0 || width == 0 || r.In.Doubtful(r.In.Root.Path+".frame.inset") {
		return // has its own fault
	}
	if need := f.Inset + t; width < need {
		r.In.Fault(a, fmt.Sprintf("%s %s wide do not cover a panel %s thick with an inset of %s", members,
			r.In.Print(width), r.In.Print(t), r.In.Print(f.Inset)), "make them at least "+r.In.Print(need)+" wide, or the inset smaller")
	}
}
