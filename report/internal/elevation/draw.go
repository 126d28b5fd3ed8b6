package elevation

import (
	"sawbill/report/internal/drawing"
	"sawbill/stock"
)

// planeRoom is the paper around the case for the ends of section planes, mm.
const planeRoom = 5.0

// thin is how wide a cut solid must be on the paper to be hatched; a thinner one
// is black (ISO 128-50, from memory), mm.
const thin = 0.8

// hatches tell neighbors apart: by direction, then by pitch.
var hatches = []drawing.Hatch{{Pitch: 2}, {Falls: true, Pitch: 2}, {Pitch: 1.2}, {Falls: true, Pitch: 1.2}}

// drawCuts hatches what the section goes through.
func (f *frame) drawCuts(p picture) {
	for i, kind := range p.hatchings() {
		if kind < 0 {
			continue
		}
		whole := f.rect(p.shapes[i].area)
		for _, a := range p.seen(i) {
			if min(whole.W, whole.H) < thin {
				f.d.Box(f.rect(a), drawing.NoPen, drawing.Black)
				continue
			}
			h := hatches[kind]
			h.Area = f.rect(a)
			f.d.HatchAs(h)
		}
	}
}

// hatchings are the indices into hatches of all shapes, -1 for one that is not
// hatched: it is not cut, or it is a drawer that was measured, and what that is
// inside is not known.
func (p picture) hatchings() []int {
	kinds := make([]int, len(p.shapes))
	for i, s := range p.shapes {
		kinds[i] = -1
		if s.cut && s.Part >= 0 {
			kinds[i] = freeKind(p, kinds[:i], i)
		}
	}
	return kinds
}

// freeKind is the first hatching that no earlier neighbor of shape i has.
func freeKind(p picture, kinds []int, i int) int {
	taken := make([]bool, len(hatches))
	for j, kind := range kinds {
		if kind >= 0 && p.shapes[i].touches(p.shapes[j].area) {
			taken[kind] = true
		}
	}
	for kind, is := range taken {
		if !is {
			return kind
		}
	}
	return i % len(hatches)
}

// touches reports whether two areas share an edge, a corner or more.
func (a area) touches(b area) bool {
	return a.x1 <= b.x2 && b.x1 <= a.x2 && a.y1 <= b.y2 && b.y1 <= a.y2
}

// drawEdges draws hidden edges first, since a visible one may cross them.
func (f *frame) drawEdges(p picture) {
	seen, hidden := p.edges()
	for _, e := range hidden {
		f.drawEdge(e, drawing.Hidden)
	}
	for _, e := range seen {
		f.drawEdge(e, drawing.Visible)
	}
	for i, s := range p.shapes {
		if !s.cut {
			continue
		}
		for _, e := range s.edges() {
			open, _ := p.split(i, e)
			for _, e := range open {
				f.drawEdge(e, drawing.Sectioned)
			}
		}
	}
}

func (f *frame) drawEdge(e edge, pen drawing.Pen) {
	if e.upright {
		x := f.x(e.at)
		f.d.Line(drawing.Point{X: x, Y: f.y(e.from)}, drawing.Point{X: x, Y: f.y(e.to)}, pen)
		return
	}
	y := f.y(e.at)
	f.d.Line(drawing.Point{X: f.x(e.from), Y: y}, drawing.Point{X: f.x(e.to), Y: y}, pen)
}

// drawPlane shows where a section cuts: a short wide line at either end with its
// name, and an arrow the way it is seen.
func (f *frame) drawPlane(p picture, at stock.Length, name string, upright bool) {
	const near, far, reach = 0.8, 4.2, 3.4
	base := drawing.Rise(planeSize) / 2
	for _, end := range []float64{-1, 1} {
		var inner, outer, tip, label drawing.Point
		if upright {
			x, y := f.x(at), f.outline.Y
			if end > 0 {
				y = f.outline.Bottom()
			}
			inner, outer = drawing.Point{X: x, Y: y + end*near}, drawing.Point{X: x, Y: y + end*far}
			tip = drawing.Point{X: x - reach, Y: outer.Y - end*0.8}
			label = drawing.Point{X: x + 1.6, Y: y + end*far/2 + base}
		} else {
			x, y := f.outline.X, f.y(at)
			if end > 0 {
				x = f.outline.Right()
			}
			inner, outer = drawing.Point{X: x + end*near, Y: y}, drawing.Point{X: x + end*far, Y: y}
			tip = drawing.Point{X: outer.X - end*0.8, Y: y + reach}
			label = drawing.Point{X: x + end*far/2, Y: y - 0.8}
		}
		f.d.Line(inner, outer, drawing.Cut)
		root := drawing.Point{X: tip.X, Y: outer.Y}
		if upright {
			root = drawing.Point{X: outer.X, Y: tip.Y}
		}
		f.d.Line(root, tip, drawing.Fine)
		f.d.Arrow(tip, root)
		f.d.Text(drawing.Text{At: label, String: name, Size: planeSize, Face: drawing.Bold, Align: drawing.Center, Ground: true})
	}
}
