package elevation

import (
	"slices"

	"sawbill/report/internal/drawing"
	"sawbill/stock"
	"sawbill/stock/casework"
)

// place is a point of a view.
type place struct{ x, y stock.Length }

// handles are where holes for handles are bored in what is seen from the front: how wide and
// how deep is told with the marks of the parts.
func (s Subject) handles() []place {
	var all []place
	for _, k := range s.Case.Marks {
		if k.What != casework.HandleHole {
			continue
		}
		for _, spot := range k.Spots {
			if spot.Solid >= len(s.Solids) || spot.Face.Side != casework.Front {
				continue
			}
			piece := s.Solids[spot.Solid]
			at := map[casework.Axis][]stock.Length{}
			for _, m := range []casework.Measure{k.Measure, k.Across} {
				axis, far, ok := m.From.Side.Axis()
				if !ok {
					continue
				}
				for _, from := range m.At {
					if far {
						from = piece.Size[axis] - from
					}
					at[axis] = append(at[axis], piece.At[axis]+from)
				}
			}
			for _, x := range at[casework.X] {
				for _, y := range at[casework.Z] {
					if !s.before(piece, x, y) {
						all = append(all, place{x, y})
					}
				}
			}
		}
	}
	return all
}

// besideGap is how far a place may lie from a piece before it and count as hidden by it: what
// shows between two doors is not to be drawn.
const besideGap = 5 * stock.Millimeter

// before reports whether a place of a piece is hidden from the front, as those of drawers
// behind doors are.
func (s Subject) before(piece casework.Solid, x, y stock.Length) bool {
	return slices.ContainsFunc(s.Solids, func(o casework.Solid) bool {
		end := o.End()
		return o.At[casework.Y] < piece.At[casework.Y] && o.At[casework.X]-besideGap < x && x < end[casework.X]+besideGap && o.At[casework.Z] < y && y < end[casework.Z]
	})
}

// drawHandles draws a small circle with center lines at each.
func (f *frame) drawHandles(at []place) {
	const radius, reach = 0.6, 1.1 // mm
	for _, p := range at {
		c := drawing.Point{X: f.x(p.x), Y: f.y(p.y)}
		f.d.Disc(c, radius, drawing.Fine, drawing.White)
		f.d.Line(drawing.Point{X: c.X - reach, Y: c.Y}, drawing.Point{X: c.X + reach, Y: c.Y}, drawing.Fine)
		f.d.Line(drawing.Point{X: c.X, Y: c.Y - reach}, drawing.Point{X: c.X, Y: c.Y + reach}, drawing.Fine)
	}
}
