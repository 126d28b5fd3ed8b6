package casework

import (
	"fmt"
	"slices"

	"sawbill/stock"
)

// Hardware is fittings to buy, an estimate by common practice (no source).
type Hardware struct {
	Name  string // "pairs of slides"; of one, "pair of slides"
	Count int
	How   string // "one for each drawer"
}

// nailSpacing is that along the edges of a back that lies on or in a rabbet
// (common practice, no source).
func (r *reckoner) nailSpacing() stock.Length {
	return r.orDefault(Length{}, 150*stock.Millimetre, 6*stock.Inch)
}

func (r *reckoner) hardware(c *Case, pegs []pegged) []Hardware {
	drawers, doors, hinges, loose, nails, wall := 0, 0, 0, 0, 0, 0
	for _, s := range c.Solids {
		drawers = max(drawers, s.Drawer)
		switch s.Role {
		case "door":
			doors++
			hinges += hingesFor(s.Size[Z])
		case "shelf":
			if r.made.shelf.loose {
				loose++
			}
		case "hanging rail":
			wall += 2
		case "back":
			if !r.made.back.inGrooves() {
				nails += 2 * (spaces(s.Size[X], r.nailSpacing()) + spaces(s.Size[Z], r.nailSpacing()))
			}
		}
	}
	if r.hung() && r.made.frame != nil {
		wall = 2 * r.made.base.rails
	}
	restraints := 0
	if r.tips() != nil {
		restraints = 2
	}
	var all []Hardware
	for _, h := range []Hardware{
		{many(drawers, "pair of slides", "pairs of slides"), drawers, "one for each drawer"},
		{many(drawers+doors, "handle", "handles"), drawers + doors, "one for each drawer and door; two on a wide drawer"},
		{"hinges", hinges, "two for a door up to 900 mm (35 in) high, three up to 1600 mm (63 in), then one more for each 400 mm (16 in)"},
		{"shelf pins", 4 * loose, "four for each loose shelf"},
		{"screws or nails for the back", nails, fmt.Sprintf("one every %s along its edges", r.print(r.nailSpacing()))},
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
func (r *reckoner) dowelsOf(pegs []pegged) []Hardware {
	var all []Hardware
	for _, p := range pegs {
		if p.what != dowelHole {
			continue
		}
		name := fmt.Sprintf("dowels %s x %s", r.print(p.thick), r.print(p.length))
		n := slices.IndexFunc(all, func(h Hardware) bool { return h.Name == name })
		if n < 0 {
			n = len(all)
			all = append(all, Hardware{Name: name, How: "as marked; the diameter about a third to half of the thickness"})
		}
		all[n].Count += len(p.centers)
	}
	return all
}

// hingesFor a door so high.
func hingesFor(height stock.Length) int {
	const two, three, more = 900 * stock.Millimetre, 1600 * stock.Millimetre, 400 * stock.Millimetre
	switch {
	case height <= two:
		return 2
	case height <= three:
		return 3
	}
	return 3 + int((height-three+more-1)/more)
}
