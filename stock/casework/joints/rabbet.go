package joints

import (
	"fmt"

	"sawbill/stock/casework/design"
)

// rabbet is a step along an edge in which the other piece lies.
type rabbet struct{ housed }

var rabbeted = rabbet{housed{traits{name: "rabbet", keys: []string{"joint_depth"}, at: map[Site]Fit{
	CarcassCorner: inHousings("", "rabbets"),
	BackEdge:      inHousings("let in flush with them", "the rabbet for the back"),
	DrawerCorner:  {Says: "front and back reach into the sides", Reach: Housed, Close: "in the sides' rabbets"},
}}}}

// checkDepth lets a rabbet for a back take most of the edge that it runs along: the case side less
// 1/4 to 3/8 in is common practice (no source).
func (h rabbet) checkDepth(r *design.Reader, s Site, depthAt design.Place, depth design.Length, into design.Panel) {
	const remedy = "leave a quarter of an inch, 6 mm, of the panel or more"
	left := into.Thickness - depth.Value
	switch {
	case s != BackEdge:
		h.housed.checkDepth(r, s, depthAt, depth, into)
	case !depth.Set:
		r.Fault(depthAt, "a back in a rabbet needs a depth, and none is given", "give how far it reaches in; "+remedy)
	case into.Thickness > 0 && left < ThinWall(r):
		r.Fault(depthAt, fmt.Sprintf("a rabbet %s deep leaves %s of the %s that it is cut into",
			r.Print(depth.Value), r.PrintOrNothing(left), r.Print(into.Thickness)), remedy)
	}
}
