package drawing

import "math"

// Hatch fills a rectangle with narrow lines at 45°, as drafting shows material
// that is cut away or through (ISO 128-3, from memory). Neighboring hatches
// line up, because all lines lie on one grid of the paper; different solids that
// touch are told apart by the lines' direction and pitch.
type Hatch struct {
	Area  Rect
	Falls bool    // to the right, instead of rising
	Pitch float64 // between the lines' crossings of a level edge, mm; 0 is 3
}

// hatchPitch is that of waste, mm.
const hatchPitch = 3.0

// Lines returns the hatching, clipped to the area.
func (h Hatch) Lines() []Line {
	r := h.Area
	if h.Falls { // as rising lines, seen in a level mirror through y = 0
		r.Y = -r.Bottom()
	}
	pitch := h.Pitch
	if pitch == 0 {
		pitch = hatchPitch
	}
	var lines []Line
	// Each line is x + y = c.
	first := math.Ceil((r.X + r.Y) / pitch)
	for c := first * pitch; c < r.Right()+r.Bottom(); c += pitch {
		from := Point{max(r.X, c-r.Bottom()), 0}
		from.Y = c - from.X
		to := Point{min(r.Right(), c-r.Y), 0}
		to.Y = c - to.X
		if h.Falls {
			from.Y, to.Y = -from.Y, -to.Y
		}
		if to.X > from.X {
			lines = append(lines, Line{from, to, Fine})
		}
	}
	return lines
}
