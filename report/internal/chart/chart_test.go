package chart

import (
	"math"
	"testing"

	"sawbill/report/internal/drawing"
)

// Bars are as long as their amounts, hatched as far as is proven, and nothing
// is written over anything else or off the paper.
func TestBarsAreToScale(t *testing.T) {
	d := Draw([]Group{{Heading: "ply", Bars: []Bar{
		{Name: "dear", Amount: 200, Proven: 100, Text: "2.00"},
		{Name: "cheap", Amount: 50, Proven: 50, Text: "0.50", Best: true},
		{Name: "nothing", Text: "0.00"},
	}}}, 150)
	var boxes, hatched []float64
	for _, m := range d.Marks {
		switch m := m.(type) {
		case drawing.Polygon:
			boxes = append(boxes, m.Points[1].X-m.Points[0].X)
		case drawing.Hatch:
			hatched = append(hatched, m.Area.W)
		}
	}
	if len(boxes) != 2 || math.Abs(boxes[0]-4*boxes[1]) > 1e-9 {
		t.Errorf("bars of 200 and 50 are %v long", boxes)
	}
	if len(hatched) != 2 || math.Abs(hatched[0]-boxes[0]/2) > 1e-9 || hatched[1] != boxes[1] {
		t.Errorf("of %v are hatched %v", boxes, hatched)
	}
	paper := drawing.Rect{W: d.Width, H: d.Height}
	texts := d.Texts()
	for i, a := range texts {
		if !paper.Contains(a.Box()) {
			t.Errorf("%q lies off the paper", a.String)
		}
		for _, b := range texts[:i] {
			if a.Box().Overlaps(b.Box()) {
				t.Errorf("%q lies over %q", a.String, b.String)
			}
		}
	}
}
