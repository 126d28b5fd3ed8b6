package construction

import (
	"sawbill/stock"
	"sawbill/stock/casework/design"
	"sawbill/stock/casework/joints"
	"sawbill/stock/casework/solid"
)

// joinery is wood that goes into joints, so many pieces alike.
type joinery struct {
	design.Panel
	Role          solid.Role
	Count         int
	Length, Width stock.Length
}

func (r *Construction) buildJoinery() {
	inFrame, frame := false, stock.Length(0)
	if f := r.Frame; f != nil {
		inFrame, frame = joints.IsLoose(f.Corner), f.Thickness
	}
	r.LooseTenons = joints.ReadTenons(r.In, joints.IsLoose(r.Corner.Joint), inFrame, r.Carcass.Thickness, frame)
	for _, d := range []struct {
		key  string
		role solid.Role
		design.Joinery
	}{{"spline", "spline", r.In.Design.Spline}, {"glue_block", "glue block", r.In.Design.GlueBlock}} {
		a := r.In.Root.Under(d.Line, d.key)
		if d.Count.Value <= 0 {
			if d.Material.Set {
				r.In.Fault(a.Under(0, "count"), "not given, and needed", "give how many there are to be, or leave the table out")
			}
			continue
		}
		r.Loose = append(r.Loose, joinery{
			Role: d.role, Count: d.Count.Value, Panel: r.In.Panel(a, "", d.Material, d.Thickness, nil),
			Length: r.In.Required(a, "length", d.Length, "the length of one"),
			Width:  r.In.Required(a, "width", d.Width, "the width of one"),
		})
	}
}
