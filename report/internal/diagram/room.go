package diagram

import (
	"slices"

	"sawbill/nest/cutplan"
	"sawbill/report/internal/drawing"
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
		if leaf.Use == cutplan.Part {
			sides, off := v.edging(leaf, f.rect(leaf))
			r.lines = append(r.lines, sides.Boxes(f.rect(leaf), off)...)
		}
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
func (r *room) take(box drawing.Rect) { r.writing = append(r.writing, kept(box, wordGap)) }

// kept is a box with the paper around it that keeps its writing from being read
// together with other writing.
func kept(box drawing.Rect, gap float64) drawing.Rect {
	return drawing.Rect{X: box.X - gap, Y: box.Y - labelGap, W: box.W + 2*gap, H: box.H + 2*labelGap}
}

// Paper between two texts, mm.
const (
	labelGap = 0.35 // above one another
	wordGap  = 1.9  // on one line
	discGap  = 0.7  // on one line, beside the number of a cut
)

// row is the one that has a cut.
func (v View) row(number int) cutplan.Row {
	for _, row := range v.Rows {
		for _, held := range row.Pieces {
			if slices.ContainsFunc(held.Cuts, func(c cutplan.RowCut) bool { return c.Number == number }) {
				return row
			}
		}
	}
	return cutplan.Row{Waste: cutplan.Far}
}
