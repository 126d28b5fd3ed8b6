package diagram

import (
	"slices"

	"sawbill/nest/cutplan"
	"sawbill/report/internal/drawing"
	"sawbill/stock"
)

// room is what is taken of the paper: by writing, by lines that writing must not
// touch, and, if that can be, by what is still to be written.
type room struct {
	writing, lines, wanted []drawing.Rect
	arrows                 []drawing.Rect // which other arrows may cross
	frames                 []drawing.Rect // of offcuts: all but these may lie below a number
}

// newRoom holds the outline and the cuts of a sheet.
func newRoom(v View, f frame) *room {
	const half = 0.3 // mm on each side of a line
	r := &room{}
	for _, s := range v.Steps {
		from, to := f.cutLine(s, v.Kerf)
		r.lines = append(r.lines, drawing.Rect{X: from.X - half, Y: to.Y - half, W: to.X - from.X + 2*half, H: from.Y - to.Y + 2*half})
	}
	for _, edge := range sides(f.stock) {
		r.lines = append(r.lines, edge.Inset(-half))
	}
	root := v.Layout.Root
	leaves(&root, nil, func(leaf, _ *cutplan.Node) {
		if leaf.Use != cutplan.Offcut {
			return
		}
		for _, edge := range sides(f.rect(leaf).Inset(keepFrame)) {
			r.lines, r.frames = append(r.lines, edge.Inset(-half)), append(r.frames, edge.Inset(-half))
		}
	})
	r.wanted = marksOf(v, f)
	return r
}

// sides are the edges of a rectangle.
func sides(r drawing.Rect) []drawing.Rect {
	return []drawing.Rect{{X: r.X, Y: r.Y, W: r.W}, {X: r.X, Y: r.Bottom(), W: r.W}, {X: r.X, Y: r.Y, H: r.H}, {X: r.Right(), Y: r.Y, H: r.H}}
}

// clear reports whether writing has room in a box.
func (r *room) clear(box drawing.Rect) bool {
	box = box.Inset(-0.2)
	return free(box, r.writing) && free(box, r.arrows) && free(box, r.lines) && free(box, r.wanted)
}

// taken is all that a label must keep clear of.
func (r *room) taken() []drawing.Rect { return slices.Concat(r.writing, r.arrows) }

// open reports whether a line may pass.
func (r *room) open(line drawing.Rect) bool { return free(line, r.writing) && free(line, r.wanted) }

// take keeps a box for writing.
func (r *room) take(box drawing.Rect) { r.writing = append(r.writing, kept(box)) }

// kept is a box with the paper around it that keeps its writing from being read
// together with other writing.
func kept(box drawing.Rect) drawing.Rect {
	return drawing.Rect{X: box.X - wordGap, Y: box.Y - labelGap, W: box.W + 2*wordGap, H: box.H + 2*labelGap}
}

// Paper between two texts, mm: above one another, and on one line.
const (
	labelGap = 0.35
	wordGap  = 0.7
)

// trimmed is what trim cut s saws off, its kerf included.
func trimmed(v View, s cutplan.Step) stock.Length {
	if s.Cut == cutplan.Rip {
		return s.Piece.Width - s.Off.Width
	}
	return s.Piece.Length - s.Off.Length
}

// backward reports whether the kerf of s, and what is waste behind it, lie towards the
// reference edge or end.
func backward(v View, s cutplan.Step) bool {
	t := v.Layout.Stock.Trims()
	if !s.Trim {
		return false
	}
	if s.Cut == cutplan.Rip {
		return s.Y < t.NearEdge
	}
	return s.X < t.NearEnd
}
