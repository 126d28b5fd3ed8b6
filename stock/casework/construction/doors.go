package construction

import (
	"fmt"

	"sawbill/stock"
	"sawbill/stock/casework/design"
)

// doors describes all doors of the case.
type doors struct {
	design.Panel
	Fit          string
	Gap, Overlay stock.Length
}

func (r *Construction) buildDoors() {
	d := r.In.Design.Door
	a := r.In.Root.Under(d.Line, "door")
	s := doors{
		Panel:   r.In.Panel(a, "", d.Material, d.Thickness, &r.Carcass),
		Fit:     design.Or(d.Fit, "inset"),
		Gap:     r.In.OrDefault(d.Gap, 3*stock.Millimeter, stock.Inch/8),
		Overlay: d.Overlay.Value,
	}
	if s.Fit == "inset" {
		s.Gap = r.In.OrDefault(d.Gap, 2*stock.Millimeter, stock.Inch/16)
	}
	overlayAt := a.Under(d.Overlay.Line, "overlay")
	switch {
	case s.Fit == "overlay" && !d.Overlay.Set:
		r.In.Doubt(overlayAt)
		r.In.Fault(overlayAt, "not given, and needed", "give how far a door reaches over each edge of its opening")
	case s.Fit != "overlay" && d.Overlay.Set && !r.In.Doubtful(a.Path+".fit"):
		r.In.Fault(overlayAt, fmt.Sprintf("an overlay has no use, since fit is %q", s.Fit), `leave it out, or set fit = "overlay"`)
	}
	r.Doors = s
}

// ShelfFront is the depth that an inset door takes from the shelves behind it, which begin at from.
// In a frame only the part that reaches through it counts.
func (s doors) ShelfFront(o Opening, from stock.Length) stock.Term {
	if o.Doors == 0 || s.Fit != "inset" || s.Thickness <= from {
		return stock.Term{}
	}
	return stock.Term{Times: -1, Value: s.Thickness - from, Label: "inset door"}
}

// CheckNarrowDoors refuses two doors of which more lies over the case than before
// the opening: no hinge is made for them, and their handles would be on the side.
func (r *Construction) CheckNarrowDoors(o Opening, opening, door stock.Length) {
	s := r.Doors
	if s.Fit != "overlay" || door >= 2*s.Overlay {
		return
	}
	r.In.Fault(o.At.Under(o.doorsLine, "doors"),
		fmt.Sprintf("two doors do not go on an opening %s wide: of each, %s wide, %s lie over the case", r.In.Print(opening), r.In.Print(door), r.In.Print(s.Overlay)),
		fmt.Sprintf("set doors = 1, or make the opening at least %s wide", r.In.Print(2*s.Overlay+s.Gap)))
}

// Hinges is how many a door so high hangs on: common practice, no source.
func Hinges(height stock.Length) int {
	const two, three, more = 900 * stock.Millimeter, 1600 * stock.Millimeter, 400 * stock.Millimeter
	switch {
	case height <= two:
		return 2
	case height <= three:
		return 3
	}
	return 3 + int((height-three+more-1)/more)
}

// Catches is how many hold a door so high: one, over 1000 mm (40 in) two (common
// practice, no source).
func Catches(height stock.Length) int {
	if height > 1000*stock.Millimeter {
		return 2
	}
	return 1
}
