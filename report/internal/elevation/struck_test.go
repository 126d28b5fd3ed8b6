package elevation

import (
	"math/rand/v2"
	"testing"

	"sawbill/report/internal/drawing"
	"sawbill/stock"
)

// Whatever is drawn across a text must give way to it: the text is drawn later and
// has a white ground. No line drawn after it crosses it, ground or none.
func TestNoLineStrikesThroughWriting(t *testing.T) {
	for seed := range uint64(60) {
		s := subject(t, randomDesign(rand.New(rand.NewPCG(seed, 7))))
		if seed%2 == 1 {
			s.Ruler.Units = stock.Inches
		}
		for _, v := range Views {
			d, _ := s.Fit(v, 90, 90)
			struck(t, seed, v, d)
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
			line, ok := other.(drawing.Line)
			if ok && (j > i || !text.Ground) && passes(line, ink) {
				t.Errorf("seed %d, %s: a line from %.1f to %.1f strikes through %q at %.1f", seed, v.Name(), line.From, line.To, text.String, ink)
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
