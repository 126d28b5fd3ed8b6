package elevation

import (
	"math/rand/v2"
	"testing"

	"sawbill/report/internal/drawing"
	"sawbill/stock"
)

// Whatever is drawn across a text must give way to it: the text is drawn later and
// has a white ground. No line or hatch drawn after it crosses it, ground or none.
func TestNothingStrikesThroughWriting(t *testing.T) {
	for seed := range uint64(20) {
		s := subject(t, randomDesign(rand.New(rand.NewPCG(seed, 7))))
		if seed%2 == 1 {
			s.Ruler.Units = stock.Inches
		}
		for _, v := range Views {
			for _, room := range []float64{60, 90, 190} {
				d, _ := s.Fit(v, room, room)
				struck(t, seed, v, d)
			}
		}
	}
}

func struck(t *testing.T, seed uint64, v View, d drawing.Drawing) {
	t.Helper()
	for i, m := range d.Marks {
		text, ok := m.(drawing.Text)
		if !ok {
			continue
		}
		ink := text.Box().Inset(0.05)
		for j, other := range d.Marks {
			if text.Ground && j < i {
				continue
			}
			crossed := false
			switch other := other.(type) {
			case drawing.Line:
				crossed = passes(other, ink)
			case drawing.Hatch:
				crossed = other.Area.Overlaps(ink)
			}
			if crossed {
				t.Errorf("seed %d, %s: %T strikes through %q at %.1f: %.1f", seed, v.Name(), other, text.String, ink, other)
			}
		}
	}
}

// passes reports whether a line has a point within a box: looked at step by step.
func passes(l drawing.Line, box drawing.Rect) bool {
	const steps = 400
	for i := range steps + 1 {
		part := float64(i) / steps
		x, y := l.From.X+part*(l.To.X-l.From.X), l.From.Y+part*(l.To.Y-l.From.Y)
		if box.X < x && x < box.Right() && box.Y < y && y < box.Bottom() {
			return true
		}
	}
	return false
}
