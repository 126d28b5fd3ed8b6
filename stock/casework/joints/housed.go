package joints

import (
	"fmt"

	"sawbill/stock"
	"sawbill/stock/casework/design"
)

// housedJoint is a joint in which one piece enters a cut in the other, by a depth that the job file
// gives.
type housedJoint interface {
	Joint
	// checkDepth refuses a depth that cannot be cut into a panel.
	checkDepth(r *design.Reader, s Site, depthAt design.Place, depth design.Length, into design.Panel)
}

// housed is common to such joints.
type housed struct{ traits }

func (h housed) Mark(m *Marker, s Seat) { m.housing(s, h.name) }

// inHousings is such a joint at a site.
func inHousings(says, name string) Fit {
	return Fit{Says: says, Reach: Housed, Cut: name, Close: "in the " + name}
}

// checkDepth allows half the thickness of the panel.
func (h housed) checkDepth(r *design.Reader, _ Site, depthAt design.Place, depth design.Length, into design.Panel) {
	switch {
	case !depth.Set:
		r.Fault(depthAt, "a "+h.name+" needs a depth, and none is given", usualDepth(r, into))
	case 2*depth.Value > into.Thickness && into.Thickness > 0:
		r.Fault(depthAt, fmt.Sprintf("a %s %s deep is more than half of the %s that it is cut into", h.name,
			r.Print(depth.Value), r.Print(into.Thickness)), usualDepth(r, into))
	}
}

// usualDepth words the rule of the trade: one quarter of the receiving stock is usually enough,
// rarely over one third (Joinery Rules of Thumb, 2015). Some shops use half as the limit (common
// practice, no source).
func usualDepth(r *design.Reader, into design.Panel) string {
	if into.Thickness == 0 {
		return "a quarter to a third of the panel's thickness is usual"
	}
	return fmt.Sprintf("give a quarter to a third of it, %s to %s", r.Print(into.Thickness/4), r.Print(into.Thickness/3))
}

// ThinWall is the least that is left beside a cut without breaking out: 3 mm (1/8 in),
// common practice, no source.
func ThinWall(r *design.Reader) stock.Length {
	return r.OrDefault(design.Length{}, 3*stock.Millimeter, stock.Inch/8)
}
