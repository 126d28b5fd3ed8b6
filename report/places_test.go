package report

import (
	"testing"

	"sawbill/stock"
	"sawbill/stock/casework"
)

// A label lies right on its piece: length to the right, width upwards, the face
// that is named towards the reader.
func TestFaceEdgeAndEndOfALabelAgree(t *testing.T) {
	p := &places{of: &casework.Case{Solids: []casework.Solid{{Role: "side"}, {Role: "side", At: casework.Point{stock.Inch}}}}}
	for _, tt := range []struct {
		of   casework.Solid
		want string
	}{
		// A shelf from above: left to right, front to back.
		{casework.Solid{Along: casework.X, Across: casework.Y, Through: casework.Z}, "upper face, front, right"},
		// A rail from in front.
		{casework.Solid{Along: casework.X, Across: casework.Z, Through: casework.Y}, "front face, lower, right"},
		// Uprights with the top to the right and the front below show their left.
		{casework.Solid{Along: casework.Z, Across: casework.Y, Through: casework.X}, "left face, front, top"},
		{casework.Solid{Role: "side", Along: casework.Z, Across: casework.Y, Through: casework.X}, "outer face, front, top"},
		{casework.Solid{Role: "side", At: casework.Point{stock.Inch}, Along: casework.Z, Across: casework.Y, Through: casework.X}, "inner face, front, top"},
		// A stile with the top to the right and its left edge below is seen from behind.
		{casework.Solid{Along: casework.Z, Across: casework.X, Through: casework.Y}, "back face, left, top"},
		{casework.Solid{}, ", , "},
	} {
		face, edge, end := p.sides(tt.of)
		if got := face + ", " + edge + ", " + end; got != tt.want {
			t.Errorf("%v: %s, want %s", tt.of, got, tt.want)
		}
	}
}
