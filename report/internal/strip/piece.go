package strip

import (
	"sawbill/nest/cutplan"
	"sawbill/report/internal/diagram"
	"sawbill/report/internal/drawing"
)

// Pieces are not to scale: a narrow one is drawn wider, so that its cuts can be told apart.
const (
	mostSlender = 4.5 // a piece is drawn at most so many times as long as wide
	leastWide   = 0.9 // of its room
	beyond      = 0.9 // mm that a cut reaches beyond the piece
	arrowInset  = 2.6 // mm between an arrow and the side it runs along
	arrowRoom   = 3.4 // mm of an arrow at least
)

// frame maps a piece onto the paper.
type frame struct {
	box            drawing.Rect
	level, upright axis
}

func newFrame(p Piece, room drawing.Rect) frame {
	room = room.Inset(beyond)
	wide, high := room.W, room.W*p.Width/p.Length
	if high > room.H {
		wide, high = room.H*p.Length/p.Width, room.H
	}
	wide = max(wide, leastWide*room.W*min(1, p.Length/p.Width*1.6))
	high = max(high, min(room.H, wide/mostSlender))
	var across, along []float64 // places of the cuts
	for _, c := range p.Cuts {
		if c.Along == cutplan.Rip {
			across = append(across, c.At)
		} else {
			along = append(along, c.At)
		}
	}
	box := drawing.Rect{X: room.X, Y: room.Y + (room.H-high)/2, W: wide, H: high}
	return frame{box, newAxis(along, p.Length, wide), newAxis(across, p.Width, high)}
}

func (f frame) x(of float64) float64 { return f.box.X + f.level.on(of) }
func (f frame) y(of float64) float64 { return f.box.Bottom() - f.upright.on(of) }

func (f frame) rect(r drawing.Rect) drawing.Rect {
	x, y := f.x(r.X), f.y(r.Bottom())
	return drawing.Rect{X: x, Y: y, W: f.x(r.Right()) - x, H: f.y(r.Y) - y}
}

// draw draws the piece with its cuts in a room.
func (p Piece) draw(d *drawing.Drawing, room drawing.Rect, size float64) {
	f := newFrame(p, room)
	d.Box(f.box, drawing.NoPen, drawing.Gray)
	for _, z := range p.Zones {
		if z.Waste {
			d.Box(f.rect(z.Area), drawing.NoPen, drawing.White)
			d.HatchAs(drawing.Hatch{Area: f.rect(z.Area), Pitch: 1.5})
		}
	}
	d.Box(f.box, drawing.Narrow, drawing.NoFill)
	var taken []drawing.Rect
	for _, c := range p.Cuts {
		taken = append(taken, f.cut(d, c)...)
	}
	for _, z := range p.Zones {
		if z.Label != "" {
			f.label(d, z, size, &taken)
		}
	}
}

// cut draws the line of a cut and what guides it, and returns the paper of both.
func (f frame) cut(d *drawing.Drawing, c Cut) []drawing.Rect {
	if c.Along == cutplan.Rip {
		y := f.y(c.At)
		d.Line(drawing.Point{X: f.box.X - beyond, Y: y}, drawing.Point{X: f.box.Right() + beyond, Y: y}, drawing.Outline)
		taken := []drawing.Rect{{X: f.box.X, Y: y - 0.5, W: f.box.W, H: 1}}
		guide := f.box.Bottom()
		if c.Waste == cutplan.Near {
			guide = f.box.Y
		}
		x := f.box.X + min(arrowInset, f.box.W/2)
		return append(taken, f.arrow(d, c, drawing.Point{X: x, Y: guide}, drawing.Point{X: x, Y: y})...)
	}
	x := f.x(c.At)
	d.Line(drawing.Point{X: x, Y: f.box.Y - beyond}, drawing.Point{X: x, Y: f.box.Bottom() + beyond}, drawing.Outline)
	taken := []drawing.Rect{{X: x - 0.5, Y: f.box.Y, W: 1, H: f.box.H}}
	guide := f.box.X
	if c.Waste == cutplan.Near {
		guide = f.box.Right()
	}
	y := f.box.Bottom() - min(arrowInset, f.box.H/2)
	return append(taken, f.arrow(d, c, drawing.Point{X: guide, Y: y}, drawing.Point{X: x, Y: y})...)
}

// arrow runs from the guiding edge to the cut.
func (f frame) arrow(d *drawing.Drawing, c Cut, from, to drawing.Point) []drawing.Rect {
	if !c.Guided {
		return nil
	}
	taken := diagram.Sign(d, from, drawing.Point{X: to.X - from.X, Y: to.Y - from.Y}, c.Guide)
	d.Line(from, to, drawing.Narrow)
	if long := max(to.X-from.X, from.X-to.X) + max(to.Y-from.Y, from.Y-to.Y); long > arrowRoom {
		d.Arrow(to, from)
	}
	return []drawing.Rect{taken, around(from, to)}
}

func around(a, b drawing.Point) drawing.Rect {
	const half = 0.6
	x, y := min(a.X, b.X), min(a.Y, b.Y)
	return drawing.Rect{X: x - half, Y: y - half, W: max(a.X, b.X) - x + 2*half, H: max(a.Y, b.Y) - y + 2*half}
}

// label writes what a zone becomes, as large as it has room, clear of what is drawn.
func (f frame) label(d *drawing.Drawing, z Zone, most float64, taken *[]drawing.Rect) {
	area := f.rect(z.Area).Inset(0.5)
	for _, size := range []float64{most + 3, most + 1, most, drawing.SmallestSize} {
		w, h := drawing.Width(z.Label, drawing.Bold, size), drawing.HeightOf(z.Label, drawing.Bold, size)
		for _, sx := range []float64{0.5, 0.8, 1, 0.2, 0} {
			for _, sy := range []float64{0.5, 0.2, 0, 0.8, 1} {
				at := drawing.Rect{X: area.X + sx*(area.W-w), Y: area.Y + sy*(area.H-h), W: w, H: h}
				if w > area.W || h > area.H || meets(at, *taken) {
					continue
				}
				d.Text(drawing.Text{At: drawing.Point{X: at.X, Y: at.Y + drawing.RiseOf(z.Label, drawing.Bold, size)}, String: z.Label, Size: size, Face: drawing.Bold})
				*taken = append(*taken, at)
				return
			}
		}
	}
}

func meets(r drawing.Rect, all []drawing.Rect) bool {
	for _, t := range all {
		if r.Overlaps(t) {
			return true
		}
	}
	return false
}
