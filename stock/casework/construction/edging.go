package construction

import (
	"fmt"
	"slices"
	"strings"

	"sawbill/stock/casework/design"
	"sawbill/stock/casework/internal/wording"
	"sawbill/stock/casework/joints"
	"sawbill/stock/casework/solid"
)

// Edging is one kind of strips.
type Edging struct {
	design.Panel
	At    design.Place
	FitAt design.Place
	On    string
	Added bool
	Miter bool
}

// Roles lists the panels that the edging is on.
func (e Edging) Roles() []solid.Role {
	switch e.On {
	case "carcass":
		return []solid.Role{"side", "top", "bottom"}
	case "shelves":
		return []solid.Role{"shelf"}
	case "fronts":
		return []solid.Role{"door", "false front"}
	}
	return []solid.Role{solid.Role(strings.TrimSuffix(e.On, "s"))}
}

// buildEdgings reads all edgings. Whether they fit shows when the sizes of the
// panels are known.
func (r *Construction) buildEdgings() {
	for i, d := range r.In.Design.Edgings {
		a := r.In.Root.Nth(d.Line, "edging", i+1)
		if r.In.Doubtful(a.Path + ".on") {
			continue
		}
		e := Edging{
			Panel: r.In.Panel(a, "", d.Material, d.Thickness, nil),
			At:    a.Under(d.On.Line, "on"), FitAt: a.Under(d.Fit.Line, "fit"), On: design.Or(d.On, "carcass"),
			Added: d.Fit.Value == "added", Miter: d.Corner.Value == "miter",
		}
		if r.EdgingOn(e.On) {
			r.In.Fault(e.At, fmt.Sprintf("two edgings are on the %s", e.On), "leave one of the two out")
		}
		r.edgingFits(a, d, e)
		r.Edgings = append(r.Edgings, e)
	}
}

// EdgingOn reports whether an edging is on those panels already.
func (r *Construction) EdgingOn(on string) bool {
	return slices.ContainsFunc(r.Edgings, func(e Edging) bool { return e.On == on })
}

// edgingFits refuses strips that have no room, or no sense, whatever the sizes.
func (r *Construction) edgingFits(a design.Place, d design.Edging, e Edging) {
	switch {
	case r.Frame != nil && e.On != "shelves" && e.On != "fronts":
		r.In.Fault(e.At, "the front edges of its panels lie behind the frame", `leave it out, or put it on "shelves" or "fronts"`)
	case e.Added && e.On == "fronts":
		r.In.Fault(e.FitAt, "strips added to a front would fill its gaps", `set fit = "taken-off"`)
	case e.On == "top" && !r.TopOver && r.In.Doubtful(r.In.Root.Path+".carcass.top"):
	case e.On == "top" && !r.TopOver:
		r.In.Fault(e.At, "a top between the sides shows its front edge alone", `set top = "over", or put the edging on the "carcass"`)
	case e.On == "top" && !e.Added && r.Corner.Depth > 0:
		var uncut []string
		for _, j := range joints.CarcassCorner.Joints() {
			if joints.FitOf(j, joints.CarcassCorner).Reach == joints.Between {
				uncut = append(uncut, j.Name())
			}
		}
		r.In.Fault(e.At, fmt.Sprintf("the sides rise %s into the top, where its strips would be", r.In.Print(r.Corner.Depth)),
			`set the carcass's joint = `+wording.OneOf(uncut)+`, or fit = "added"`)
	case d.Corner.Set && e.On != "top" && e.On != "fronts":
		r.In.Fault(a.Under(d.Corner.Line, "corner"), fmt.Sprintf("strips on the %s meet at no corner", e.On), "leave it out")
	}
}
