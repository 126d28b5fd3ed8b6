package checks

import (
	"fmt"

	"sawbill/stock"
	"sawbill/stock/casework/solid"
)

// cautionHanging says how to fix a hung case, and estimates the load on its fixing. The rules are
// common practice, no source.
func (r *checker) cautionHanging() {
	if !r.Built.Hung() {
		return
	}
	through := "its hanging rails"
	if r.Built.Frame != nil {
		through = "the rails of its back frame"
	}
	load, said := r.shelfLoad()
	var laden float64
	for _, s := range r.Solids {
		if s.Drawer == 0 && (s.Role.Carries() || s.Role == "bottom") {
			laden += inMillimeters(s.Size[solid.X]) * inMillimeters(s.Size[solid.Y]) * load
		}
	}
	filled := stock.Grams(laden / squareMeterLoad / 1e6 * 1000)
	units := r.In.From.Ruler.Units
	bears := fmt.Sprintf(" With %s on its bottom and all its shelves the fixing must bear some %s and its own weight.", said, filled.PrintUnit(units))
	if unweighed(&r.Standing) == nil {
		own := TakeOff(&r.Standing).Weight
		bears = fmt.Sprintf(" It weighs some %s empty; with %s on its bottom and all its shelves the fixing must bear some %s.",
			own.PrintUnit(units), said, (filled + own).PrintUnit(units))
	}
	r.In.Caution("hanging", "Screw the case through "+through+" into studs, or with anchors made for it into a solid wall, never into plasterboard, plaster or a hollow wall alone; "+
		"two screws at least at each rail, washers under their heads. Look for pipes and cables first."+bears+
		" That is an estimate: the wall and the fixing must be good for several times as much, which whoever knows the wall must judge. Rest it on a ledger or have it held by a second person until all screws are in."+defers)
}
