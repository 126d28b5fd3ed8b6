package drawing

import "math"

// Hatch fills a rectangle with narrow lines at 45°, as drafting shows material
// that is cut away or through (ISO 128-3, from memory). Neighbouring hatches
// line up, because all lines lie on one grid of the paper.
type Hatch struct {
	Area Rect
}

// hatchPitch is the distance between the lines' crossings of a level edge, mm.
const hatchPitch = 3.0

// Lines returns the hatching, clipped to the area.
func (h Hatch) Lines() []Line {
	var lines []Line
	r := h.Area
	// Each line is x + y = c.
	first := math.Ceil((r.X + r.Y) / hatchPitch)
	for c := first * hatchPitch; c < r.Right()+r.Bottom(); c += hatchPitch {
		from := Point{max(r.X, c-r.Bottom()), 0}
		from.Y = c - from.X
		to := Point{min(r.Right(), c-r.Y), 0}
		to.Y = c - to.X
		if to.X > from.X {
			lines = append(lines, Line{from, to, Fine})
		}
	}
	return lines
}
