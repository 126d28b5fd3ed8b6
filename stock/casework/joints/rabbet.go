package joints

import (
	"fmt"

	"sawbill/stock/casework/design"
)

// rabbet is a step along an edge in which the other piece lies.
type rabbet struct{ housed }

func newRabbet() rabbet { return rabbet{housed{name: "rabbet"}} }

func (rabbet) Sites() map[Site]string {
	return map[Site]string{CarcassCorner: "", BackEdge: "let in flush with them", DrawerCorner: "front and back reach into the sides"}
}

func (h rabbet) Close(s Site) string {
	if s == DrawerCorner {
		return "in the sides' rabbets"
	}
	return h.housed.Close(s)
}

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
