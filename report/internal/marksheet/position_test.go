package marksheet

import (
	"math"
	"slices"
	"strings"
	"testing"

	"sawbill/report/internal/drawing"
	"sawbill/stock"
	"sawbill/stock/casework"
)

// paperSide is where an edge lies on the paper of a face that is looked at along
// a direction, reckoned by vectors: whoever looks along d, u being up on the paper,
// has d x u on the right.
func (s Subject) paperSide(t *testing.T, f figure, name casework.Face) string {
	t.Helper()
	axis, far, _ := name.Side.Axis()
	var look, up [3]int
	look[f.normal] = 1
	if towards(f.face.Side, f.normal, f.solid, s.Solids) {
		look[f.normal] = -1
	}
	up[f.upright] = 1
	if f.uprightTurned {
		up[f.upright] = -1
	}
	right := [3]int{look[1]*up[2] - look[2]*up[1], look[2]*up[0] - look[0]*up[2], look[0]*up[1] - look[1]*up[0]}
	sign := 1
	if !far {
		sign = -1
	}
	switch {
	case right[axis]*sign > 0:
		return "right"
	case right[axis]*sign < 0:
		return "left"
	case up[axis]*sign > 0:
		return "top"
	case up[axis]*sign < 0:
		return "bottom"
	}
	t.Errorf("the %s of %s lies on no side", name, f.face)
	return ""
}

// A dot stands for each position, as far from the circle at the edge that is
// named as the scale has it, and the figure of it is written; the circle lies at
// that edge. Where a stretch is left out on the way, it is as far from the nearer end.
func TestPositionsAreToScaleFromTheNamedEdge(t *testing.T) {
	whole, holes := 0, 0
	everySubject(t, func(t *testing.T, s Subject) {
		faces, _, _ := s.figures()
		for _, f := range faces {
			at := s.draw(f, rooms[0].X, rooms[0].Y)
			for _, k := range f.marks {
				for n, m := range []casework.Measure{k.Measure, k.Across} {
					if len(m.At) == 0 {
						continue
					}
					side := s.paperSide(t, f, m.From)
					fold := at.x
					if side == "top" || side == "bottom" {
						fold = at.y
					}
					for i, p := range m.At {
						text, middle := s.Ruler.Print(p), p
						if n == 0 && k.Width > 0 {
							text += " to " + s.Ruler.Print(p+k.Width)
							middle += k.Width / 2
						}
						if n == 1 && k.Width > 0 && len(m.At) == 2 {
							if i == 1 {
								continue // told with the first
							}
							text += " to " + s.Ruler.Print(m.At[1])
							middle = (p + m.At[1]) / 2
						}
						if !written(at.Drawing, text) {
							t.Errorf("%s of %s: %q is not written", k.What, s.parts(f), text)
						}
						if len(fold.breaks) == 0 {
							whole++
							if n == 0 && len(k.Across.At) == 0 && !drawnAt(at, side, lengthOf(p, at.ratio)) {
								t.Errorf("%s of %s: nothing is drawn %s from the %s", k.What, s.parts(f), text, m.From)
							}
							if !dotted(at, side, lengthOf(middle, at.ratio)) {
								t.Errorf("%s of %s: no dot %s from the %s", k.What, s.parts(f), text, m.From)
							}
						}
					}
				}
				if len(k.Across.At) > 0 && k.What != casework.SlideLine && k.Width == 0 && len(at.x.breaks)+len(at.y.breaks) == 0 {
					holes += s.wantHoles(t, f, at, k)
				}
			}
		}
	})
	if whole == 0 || holes == 0 {
		t.Errorf("%d positions and %d holes were looked at", whole, holes)
	}
}

// written reports whether a text is a figure, or begins with it.
func written(d drawing.Drawing, figure string) bool {
	return slices.ContainsFunc(d.Texts(), func(t drawing.Text) bool {
		return t.String == figure || strings.HasPrefix(t.String, figure+" ")
	})
}

func near(a, b float64) bool { return math.Abs(a-b) < 0.01 }

// away is a place so far from one side of a figure's outline.
func away(at drawn, side string, distance float64) float64 {
	switch side {
	case "left":
		return at.box.X + distance
	case "right":
		return at.box.Right() - distance
	case "top":
		return at.box.Y + distance
	}
	return at.box.Bottom() - distance
}

// drawnAt reports whether a line, or what is cut away, begins so far from a side
// of the outline.
func drawnAt(at drawn, side string, distance float64) bool {
	place := away(at, side, distance)
	return slices.ContainsFunc(at.Marks, func(m drawing.Mark) bool {
		var from, to drawing.Point
		switch m := m.(type) {
		case drawing.Line:
			if m.Pen == drawing.Fine || m.Pen == drawing.Narrow {
				return false
			}
			from, to = m.From, m.To
		case drawing.Hatch:
			from, to = drawing.Point{X: m.Area.X, Y: m.Area.Y}, drawing.Point{X: m.Area.Right(), Y: m.Area.Bottom()}
		default:
			return false
		}
		if side == "left" || side == "right" {
			return near(from.X, place) || near(to.X, place)
		}
		return near(from.Y, place) || near(to.Y, place)
	})
}

func dotted(at drawn, side string, distance float64) bool {
	return slices.ContainsFunc(at.Marks, func(m drawing.Mark) bool {
		dot, ok := m.(drawing.Disc)
		if !ok || dot.Radius != dotSize {
			return false
		}
		if side == "top" || side == "bottom" {
			return near(dot.Center.Y, away(at, side, distance))
		}
		return near(dot.Center.X, away(at, side, distance))
	})
}

// wantHoles wants a circle for each position with each of the other measure.
func (s Subject) wantHoles(t *testing.T, f figure, at drawn, k casework.Mark) int {
	count := 0
	for _, a := range k.At {
		for _, b := range k.Across.At {
			var c drawing.Point
			for _, from := range []struct {
				name casework.Face
				at   stock.Length
			}{{k.From, a}, {k.Across.From, b}} {
				place := away(at, s.paperSide(t, f, from.name), lengthOf(from.at, at.ratio))
				if side := s.paperSide(t, f, from.name); side == "left" || side == "right" {
					c.X = place
				} else {
					c.Y = place
				}
			}
			count++
			if !slices.ContainsFunc(at.Marks, func(m drawing.Mark) bool {
				hole, ok := m.(drawing.Disc)
				return ok && hole.Radius == holeRadius && near(hole.Center.X, c.X) && near(hole.Center.Y, c.Y)
			}) {
				t.Errorf("no hole of the %s at %.2f", k.What, c)
			}
		}
	}
	return count
}
