package edging

import (
	"testing"

	"sawbill/report/internal/drawing"
)

// A piece that is turned by a quarter has its right end above and its lower edge on the
// right; turned four times it lies as before.
func TestSidesTurnWithThePiece(t *testing.T) {
	for _, tt := range []struct{ of, want Sides }{
		{Sides{Right: true}, Sides{Upper: true}}, {Sides{Lower: true}, Sides{Right: true}},
		{Sides{Left: true}, Sides{Lower: true}}, {Sides{Upper: true}, Sides{Left: true}},
	} {
		if got := tt.of.Turned(); got != tt.want {
			t.Errorf("%v turned is %v, want %v", tt.of, got, tt.want)
		}
		if got := tt.of.Turned().Turned().Turned().Turned(); got != tt.of {
			t.Errorf("%v turned four times is %v", tt.of, got)
		}
	}
}

// Lines within a piece stay within what Inset takes, and do not leave the piece.
func TestLinesLieOnTheirSides(t *testing.T) {
	box := drawing.Rect{X: 10, Y: 20, W: 40, H: 30}
	for _, s := range []Sides{{Lower: true}, {Upper: true}, {Left: true}, {Right: true}, {Lower: true, Upper: true, Left: true, Right: true}} {
		inner := s.Inset(box, 1.6)
		for _, b := range s.Boxes(box, -1.1) {
			if !box.Contains(b) || b.Overlaps(inner) {
				t.Errorf("%v: a line at %.2f, the piece at %v, its room at %v", s, b, box, inner)
			}
		}
		for _, b := range s.Boxes(box, 1) {
			if b.Overlaps(box) {
				t.Errorf("%v: a line outside the piece at %.2f", s, b)
			}
		}
	}
}
