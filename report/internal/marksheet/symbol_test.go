package marksheet

import (
	"slices"
	"strings"
	"testing"

	"sawbill/report/internal/drawing"
	"sawbill/stock"
	"sawbill/stock/casework"
)

// A slide is a line from where it begins, at a wedge, to where it ends: nothing is drawn
// before its start.
func TestSlidesAreDrawnWhereTheyGo(t *testing.T) {
	slides, begun := 0, 0
	everySubject(t, func(t *testing.T, s Subject) {
		faces, _, _ := s.figures()
		for _, f := range faces {
			for _, k := range f.marks {
				if k.What != casework.SlideLine || f.face.Side == casework.Outer {
					continue
				}
				at := s.draw(f, rooms[0].X, rooms[0].Y)
				if len(at.x.breaks)+len(at.y.breaks) > 0 {
					continue
				}
				front, back := "left", "right"
				if f.levelTurned {
					front, back = back, front
				}
				from, to := away(at, front, lengthOf(k.Stops[0], at.ratio)), away(at, back, lengthOf(k.Stops[1], at.ratio))
				for _, p := range k.At {
					slides++
					if k.Stops[0] > 0 {
						begun++
					}
					y := away(at, "bottom", lengthOf(p, at.ratio))
					if !slices.ContainsFunc(at.Marks, func(m drawing.Mark) bool {
						l, ok := m.(drawing.Line)
						return ok && l.Pen == drawing.FineCut && near(l.From.X, from) && near(l.To.X, to) && near(l.From.Y, y) && near(l.To.Y, y)
					}) {
						t.Errorf("%s: no line of the slide at %s", s.parts(f), s.Ruler.Print(p))
					}
					if !slices.ContainsFunc(at.Marks, func(m drawing.Mark) bool {
						w, ok := m.(drawing.Polygon)
						return ok && w.Fill == drawing.Black && len(w.Points) == 3 && near(w.Points[0].X, from) && near(w.Points[2].Y, y)
					}) {
						t.Errorf("%s: no wedge at the start of the slide at %s", s.parts(f), s.Ruler.Print(p))
					}
				}
			}
		}
	})
	if slides == 0 || begun == 0 {
		t.Errorf("%d slides were looked at, %d of them begin behind the edge", slides, begun)
	}
}

// Every figure of a position says what is there.
func TestEveryPositionSaysWhatItIs(t *testing.T) {
	everySubject(t, func(t *testing.T, s Subject) {
		faces, _, _ := s.figures()
		for _, f := range faces {
			at := s.draw(f, rooms[0].X, rooms[0].Y)
			for _, k := range f.marks {
				for _, p := range k.At {
					text := s.Ruler.Print(p) + " " + k.Kind()
					if k.Width > 0 {
						text = s.Ruler.Print(p) + " to " + s.Ruler.Print(p+k.Width) + " " + k.Kind()
					}
					if len(at.short) == 0 && !slices.ContainsFunc(at.Texts(), func(d drawing.Text) bool { return d.String == text }) {
						t.Errorf("%s: %q is not written", s.parts(f), text)
					}
				}
			}
		}
	})
}

// The figures of the examples are written in 9 pt at least.
func TestFiguresAreLarge(t *testing.T) {
	for name, s := range examples(t) {
		sheet := s.Draw(rooms[0].X, rooms[0].Y)
		for _, d := range slices.Concat(sheet.Faces, sheet.Joints) {
			for _, text := range d.Texts() {
				if text.Size < 9 {
					t.Errorf("%s: %q is written in %v pt", name, text.String, text.Size)
				}
			}
		}
	}
}

// The sides of the wall cabinet get edging in front: a wide line there, and words. No other
// edge has one.
func TestEdgedEdgesAreMarked(t *testing.T) {
	s := examples(t)["wall-cabinet.toml"]
	faces, _, _ := s.figures()
	seen := false
	for _, f := range faces {
		at := s.draw(f, rooms[0].X, rooms[0].Y)
		lines := 0
		for _, m := range at.Marks {
			if l, ok := m.(drawing.Line); ok && l.Pen == drawing.Outline {
				lines++
				if f.solid.Role == "side" && f.face.Extent == casework.Broad && !near(l.From.X, at.box.X-edgingOff) {
					t.Errorf("edging of %s at %v", s.parts(f), l)
				}
			}
		}
		want := 0
		for _, e := range s.Edged(f.members[0].solid) {
			if axis, _, _ := e.Side.Axis(); axis == f.level || axis == f.upright {
				want++
			}
		}
		said := slices.ContainsFunc(at.Texts(), func(d drawing.Text) bool { return strings.HasPrefix(d.String, "edging (wide line) on: ") })
		if lines != want || said != (len(f.edged) > 0) {
			t.Errorf("%s: %d edges with edging, want %d; said: %v", s.parts(f), lines, want, said)
		}
		seen = seen || want > 0
	}
	if !seen {
		t.Error("no edge gets edging")
	}
}

// Kinds are short: "slide", not "slide line".
func TestKindsOfMarks(t *testing.T) {
	for what, want := range map[string]string{"slide line": "slide", "dowel hole": "dowel", "shelf pins": "pin", "mortise center": "mortise", "dado": "dado"} {
		if got := (casework.Mark{What: what, Width: stock.Millimeter}).Kind(); got != want {
			t.Errorf("%s is called %q, want %q", what, got, want)
		}
	}
}
