package diagram

import (
	"sawbill/nest/cutplan"
	"sawbill/report/internal/drawing"
)

// edgeSize is a size of a piece that stands along the edge that it measures.
type edgeSize struct {
	text   string
	size   float64 // pt
	turned bool
	box    drawing.Rect
}

const (
	edgePad  = 0.9 // mm between the figure and its edge
	edgeEnds = 1.2 // and the ends of the edge
)

// edgeSizes finds room for the length of a piece along its lower edge and for its width
// along the left one, apart from what an arrow measures already. It is false where
// either has none.
func (f frame) edgeSizes(n *cutplan.Node, v View, arrows []arrow, r *room) (sizes []edgeSize, ok bool) {
	piece, taken := f.rect(n), r.taken()
	if n.Use == cutplan.Offcut {
		piece = piece.Inset(keepFrame)
	}
	piece = v.lie(n).Edged.Inset(piece, edgedRoom)
	length, width := true, true
	for _, a := range arrows {
		if a.measures(n, f) {
			length, width = length && a.step.Cut == cutplan.Rip, width && a.step.Cut == cutplan.Crosscut
		}
	}
	of := edgeType(min(piece.W, piece.H))
	if of == 0 {
		return nil, false
	}
	if length {
		e := edgeSize{text: v.Ruler.Print(n.Length), size: of}
		if !e.place(piece, taken) {
			return nil, false
		}
		sizes, taken = append(sizes, e), append(taken, kept(e.box, wordGap))
	}
	if width {
		e := edgeSize{text: v.Ruler.Print(n.Width), size: of, turned: true}
		if !e.place(piece, taken) {
			return nil, false
		}
		sizes = append(sizes, e)
	}
	return sizes, true
}

// edgeType is the size of type for a piece that is so narrow, pt; 0 where nothing
// fits along its edges.
func edgeType(narrow float64) float64 {
	switch {
	case narrow > 24:
		return 11
	case narrow > 16:
		return 10
	case narrow > 9:
		return 9
	}
	return 0
}

// place finds room for the figure along its edge.
func (e *edgeSize) place(piece drawing.Rect, taken []drawing.Rect) bool {
	w, h := drawing.Width(e.text, drawing.Bold, e.size), drawing.HeightOf(e.text, drawing.Bold, e.size)
	for _, away := range []float64{edgePad, edgePad + 2.5, edgePad + 5} {
		for _, share := range spots {
			e.box = drawing.Rect{X: piece.X + edgeEnds + share*(piece.W-w-2*edgeEnds), Y: piece.Bottom() - away - h, W: w, H: h}
			apart := e.box
			if e.turned {
				e.box = drawing.Rect{X: piece.X + away, Y: piece.Y + edgeEnds + share*(piece.H-w-2*edgeEnds), W: h, H: w}
				apart = drawing.Rect{X: e.box.X, Y: e.box.Y - wordGap, W: h, H: w + 2*wordGap} // another may be read on with it
			}
			if piece.Inset(0.4).Contains(e.box) && free(apart, taken) {
				return true
			}
		}
	}
	return false
}

// write puts the figure in its place, on a ground if leaders pass below.
func (e edgeSize) write(d *drawing.Drawing, ground bool) {
	t := drawing.Text{String: e.text, Size: e.size, Face: drawing.Bold, Turned: e.turned, Ground: ground,
		At: drawing.Point{X: e.box.X, Y: e.box.Y + drawing.RiseOf(e.text, drawing.Bold, e.size)}}
	if e.turned {
		t.At = drawing.Point{X: e.box.X + drawing.RiseOf(e.text, drawing.Bold, e.size), Y: e.box.Bottom()}
	}
	d.Text(t)
}
