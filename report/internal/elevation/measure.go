package elevation

import (
	"slices"

	"sawbill/stock/casework"
)

// What there is to measure in a case.

func (s Subject) bayCount() int {
	last := 0
	for _, o := range s.Openings {
		last = max(last, o.Bay)
	}
	return last
}

func (s Subject) bayWidths() []measure {
	var all []measure
	for _, o := range s.Openings {
		if o.Number == 1 {
			all = append(all, measure{o.At[casework.X], o.At[casework.X] + o.Width})
		}
	}
	return all
}

func (s Subject) openingHeights(bay int) []measure {
	var all []measure
	for _, o := range s.Openings {
		if o.Bay == bay {
			all = append(all, measure{o.At[casework.Z], o.At[casework.Z] + o.Height})
		}
	}
	return all
}

// middleBays are the heights of openings that neither the first nor the last bay
// has: they find no place outside.
func (s Subject) middleBays() []chain {
	var all []chain
	last := s.bayCount()
	for i, width := range s.bayWidths() {
		heights := s.openingHeights(i + 1)
		if slices.Equal(heights, s.openingHeights(1)) || slices.Equal(heights, s.openingHeights(last)) {
			continue
		}
		c := s.chain(within, heights...)
		c.bay = width
		all = append(all, c)
	}
	return all
}

// base is the height of the plinth or the feet; nothing where there is none.
func (s Subject) base() measure {
	var base measure
	for _, piece := range s.Solids {
		if piece.Role.Base() {
			base = measure{piece.At[casework.Z], piece.End()[casework.Z]}
		}
	}
	return base
}

func (s Subject) clearDepth() []measure {
	if len(s.Openings) == 0 {
		return nil
	}
	o := s.Openings[0]
	return []measure{{o.At[casework.Y], o.At[casework.Y] + o.Depth}}
}

// bayOf is the bay that a piece stands in, 0 for none.
func (s Subject) bayOf(piece casework.Solid) int {
	middle := piece.At[casework.X] + piece.Size[casework.X]/2
	for _, o := range s.Openings {
		if o.At[casework.X] <= middle && middle <= o.At[casework.X]+o.Width {
			return o.Bay
		}
	}
	return 0
}

// drawerFront is what is foremost of a drawer, strips and all.
type drawerFront struct {
	bay    int
	height measure
	hidden bool // behind a door
}

// drawerFronts are those of the drawers within bays, in their order.
func (s Subject) drawerFronts() []drawerFront {
	foremost := make(map[int]casework.Solid)
	heights := make(map[int]measure)
	var drawers []int
	for _, piece := range s.Solids {
		if piece.Drawer == 0 {
			continue
		}
		front, known := foremost[piece.Drawer]
		if !known {
			drawers = append(drawers, piece.Drawer)
		}
		from, to := piece.At[casework.Z], piece.End()[casework.Z]
		switch h := heights[piece.Drawer]; {
		case !known || piece.At[casework.Y] < front.At[casework.Y]:
			foremost[piece.Drawer], heights[piece.Drawer] = piece, measure{from, to}
		case piece.At[casework.Y] == front.At[casework.Y]:
			heights[piece.Drawer] = measure{min(h.from, from), max(h.to, to)}
		}
	}
	var all []drawerFront
	for _, n := range drawers {
		if bay := s.bayOf(foremost[n]); bay > 0 {
			all = append(all, drawerFront{bay, heights[n], s.behindDoor(foremost[n])})
		}
	}
	return all
}

// behindDoor reports whether a door hides a piece or some of it from the front.
func (s Subject) behindDoor(piece casework.Solid) bool {
	return slices.ContainsFunc(s.Solids, func(door casework.Solid) bool {
		return door.Role == "door" && door.At[casework.Y] < piece.At[casework.Y] &&
			door.At[casework.X] < piece.End()[casework.X] && piece.At[casework.X] < door.End()[casework.X] &&
			door.At[casework.Z] < piece.End()[casework.Z] && piece.At[casework.Z] < door.End()[casework.Z]
	})
}

// baysWithDrawers are those whose drawers are seen from the front.
func (s Subject) baysWithDrawers() []int {
	var all []int
	for _, f := range s.drawerFronts() {
		if !f.hidden && !slices.Contains(all, f.bay) {
			all = append(all, f.bay)
		}
	}
	slices.Sort(all)
	return all
}

// frontHeights measures the drawers of a bay that are seen from the front, or those
// behind doors.
func (s Subject) frontHeights(bay int, hidden bool) []measure {
	var all []measure
	for _, f := range s.drawerFronts() {
		if f.bay == bay && f.hidden == hidden {
			all = append(all, f.height)
		}
	}
	return all
}
