package checks

import (
	"fmt"
	"slices"

	"sawbill/stock"
	"sawbill/stock/casework/construction"
	"sawbill/stock/casework/design"
	"sawbill/stock/casework/internal/wording"
	"sawbill/stock/casework/joints"
	"sawbill/stock/casework/solid"
)

// Hardware is fittings to buy, an estimate by common practice (no source).
type Hardware struct {
	Name  string // "pairs of slides"; of one, "pair of slides"
	Count int
	How   string // "one for each drawer"
}

// nailSpacing is that along the edges of a back that lies on or in a rabbet
// (common practice, no source).
func (r *checker) nailSpacing() stock.Length {
	return r.In.OrDefault(design.Length{}, 150*stock.Millimeter, 6*stock.Inch)
}

func (r *checker) hardware(pegs []joints.Pegged) []Hardware {
	drawers, doors, hinges, catches, loose, nails, wall := 0, 0, 0, 0, 0, 0, 0
	for _, s := range r.Solids {
		drawers = max(drawers, s.Drawer)
		switch s.Role {
		case "door":
			doors++
			hinges += construction.Hinges(s.Size[solid.Z])
			catches += construction.Catches(s.Size[solid.Z])
		case "shelf":
			if r.Built.Shelf.Loose {
				loose++
			}
		case "hanging rail":
			wall += 2
		case "back":
			if !r.Built.Back.InGrooves() {
				nails += 2 * (joints.Spaces(s.Size[solid.X], r.nailSpacing()) + joints.Spaces(s.Size[solid.Z], r.nailSpacing()))
			}
		}
	}
	if r.Built.Hung() && r.Built.Frame != nil {
		wall = 2 * r.Built.Base.Rails
	}
	restraints := 0
	if r.tips() != nil {
		restraints = 2
	}
	var all []Hardware
	for _, h := range []Hardware{
		{wording.Many(drawers, "pair of slides", "pairs of slides"), drawers, "one for each drawer"},
		{wording.Many(drawers+doors, "handle", "handles"), drawers + doors, "one for each drawer and door; two on a wide drawer"},
		{"hinges", hinges, "two for a door up to 900 mm (35 in) high, three up to 1600 mm (63 in), then one more for each 400 mm (16 in)"},
		{wording.Many(catches, "catch", "catches"), catches, "one for a door, two over 1000 mm (40 in) high; none with hinges that close by themselves"},
		{"shelf pins", 4 * loose, "four for each loose shelf"},
		{"screws or nails for the back", nails, fmt.Sprintf("one every %s along its edges", r.In.Print(r.nailSpacing()))},
		{"tip restraints", restraints, "one near each end; which kind is yours to choose, by the standard for it, the wall that there is and licensed practice"},
		{"fixings into the wall", wall, "two at least for each rail, made for the wall that there is"},
	} {
		if h.Count > 0 {
			all = append(all, h)
		}
	}
	return append(all, r.dowelsOf(pegs)...)
}

// dowelsOf are counted by size.
func (r *checker) dowelsOf(pegs []joints.Pegged) []Hardware {
	var all []Hardware
	for _, p := range pegs {
		if p.What != joints.DowelHole {
			continue
		}
		name := fmt.Sprintf("dowels %s x %s", r.In.Print(p.Thick), r.In.Print(p.Length))
		n := slices.IndexFunc(all, func(h Hardware) bool { return h.Name == name })
		if n < 0 {
			n = len(all)
			all = append(all, Hardware{Name: name, How: "as marked; the diameter about a third to half of the thickness"})
		}
		all[n].Count += len(p.Centers)
	}
	return all
}
