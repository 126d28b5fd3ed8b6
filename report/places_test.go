package report

import (
	"fmt"
	"testing"

	"sawbill/report/internal/edging"
	"sawbill/stock"
	"sawbill/stock/casework"
)

// box is a solid in mm: where it begins, where it ends, and the axes of its length, width
// and thickness.
func box(role casework.Role, x1, y1, z1, x2, y2, z2 int, along, across, through casework.Axis) casework.Solid {
	at := func(x, y, z int) casework.Point {
		return casework.Point{stock.Length(x) * stock.Millimeter, stock.Length(y) * stock.Millimeter, stock.Length(z) * stock.Millimeter}
	}
	s := casework.Solid{Role: role, At: at(x1, y1, z1), Along: along, Across: across, Through: through}
	end := at(x2, y2, z2)
	for a := range end {
		s.Size[a] = end[a] - s.At[a]
	}
	return s
}

// A label lies right on its piece: length to the right, width upwards, the face that is
// named towards the reader. Panels that have an inside have their label there, so both
// sides, the top and the bottom, and a door show the face on which they are laid out.
func TestFaceEdgeAndEndOfALabelAgree(t *testing.T) {
	const x, y, z = casework.X, casework.Y, casework.Z
	solids := []casework.Solid{
		box("side", 0, 5, 0, 18, 300, 700, z, y, x),
		box("side", 882, 5, 0, 900, 300, 700, z, y, x),
		box("top", 18, 0, 682, 882, 300, 700, x, y, z),
		box("bottom", 18, 0, 0, 882, 300, 18, x, y, z),
		box("shelf", 18, 5, 340, 500, 300, 358, x, y, z),
		box("partition", 500, 0, 18, 518, 300, 682, z, y, x),
		box("door", 0, -18, 0, 450, 0, 700, z, x, y),
		box("back", 0, 300, 0, 900, 306, 700, z, x, y),
		box("side edging", 0, 0, 0, 18, 5, 700, z, x, y),
		box("shelf edging", 18, 0, 340, 500, 5, 358, x, z, y),
		{Role: "loose tenon strip"},
	}
	p := &places{of: &casework.Case{Solids: solids}}
	for i, want := range []string{
		// The left side: from the right its front is on the right where its top is up; with
		// the top to the right the front is above, the back below. The right side is seen
		// from the left, its front below.
		"inner face, back, top; inside true; edging {false true false false}",
		"inner face, front, top; inside true; edging {false false false false}",
		// The top from below: left to right, the back below. The bottom from above.
		"underside, back, right; inside true; edging {false false false false}",
		"upper face, front, right; inside true; edging {false false false false}",
		"upper face, front, right; inside false; edging {true false false false}",
		"left face, front, top; inside false; edging {false false false false}",
		// A door and a back: the door from behind, the back from in front, its top to the right.
		"back face, left, top; inside true; edging {false false false false}",
		"front face, right, top; inside true; edging {false false false false}",
	} {
		var at place
		p.sides(&at, i)
		if got := fmt.Sprintf("%s, %s, %s; inside %v; edging %v", at.face, at.edge, at.end, at.inside, at.edged); got != want {
			t.Errorf("%s: %s, want %s", solids[i].Role, got, want)
		}
	}
	var at place
	if p.sides(&at, len(solids)-1); at.face != "" || at.edged != (edging.Sides{}) {
		t.Errorf("%+v", at)
	}
}
