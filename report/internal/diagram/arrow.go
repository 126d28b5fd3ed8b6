package diagram

import (
	"strconv"

	"sawbill/nest/cutplan"
	"sawbill/report/internal/drawing"
)

// arrow tells the setting of one cut within the piece that comes off: it runs from the
// edge that guides the piece to the near side of the cut, with the cut's number and
// its setting on it or beside it. So it is a dimension of that piece as well.
type arrow struct {
	step     cutplan.Step
	from, to drawing.Point // from the guiding edge to the cut
	tag      tag
	box      drawing.Rect // of the tag
	turned   bool         // the tag reads upwards
}

const (
	settingSize = 10.0 // pt, of the setting beside a number
	barLong     = 3.6  // mm of the bar that stands for the fence
	barThick    = 0.8
	stopSide    = 1.7 // mm of the square that stands for a stop
	tagRoom     = 0.5 // mm around a tag
	headRoom    = 2.8 // mm of the arrow that the tag leaves free at its head
	footRoom    = 1.6 // and at the guiding edge
	farthest    = 80.0
)

// settingSizes are those to try, pt.
var settingSizes = []float64{settingSize, 9, 8}

// settingTag is the number of a cut with its setting.
func (v View) settingTag(number string, s cutplan.Step, size float64) tag {
	figure := v.Ruler.Print(s.Setting)
	if row := v.row(s.Number); row.SawOff {
		figure = "off " + v.Ruler.Print(row.Setting)
	}
	return tag{number: number, text: figure, face: drawing.Bold, size: size}
}

// arrowOf finds room for the arrow of c; false where there is none.
func (f frame) arrowOf(c cut, v View, r *room) (arrow, bool) {
	s := c.steps[0]
	if s.Trim || len(c.steps) > 1 || v.Brief {
		return arrow{}, false
	}
	for _, size := range settingSizes {
		t := v.settingTag(strconv.Itoa(s.Number), s, size)
		for _, on := range []bool{true, false} {
			if a, ok := f.arrowAt(s, t, on, r); ok {
				return a, true
			}
		}
	}
	return arrow{}, false
}

// arrowAt tries places for the arrow of s along its cut; the tag stands on the arrow or
// beside it.
func (f frame) arrowAt(s cutplan.Step, t tag, on bool, r *room) (arrow, bool) {
	rip := s.Cut == cutplan.Rip
	a := arrow{step: s, tag: t, turned: rip == on}
	wide, high := t.width(), t.height()
	if a.turned {
		wide, high = t.turnedWidth(), t.long()
	}
	// along is what the tag takes of the arrow, across what it takes of the cut.
	along, across := wide, high
	if rip {
		along, across = high, wide
	}
	from, to, start, run := f.x(s.X-s.Setting), f.x(s.X), f.y(s.Y), mm(s.Run)/float64(f.scale)
	if rip {
		from, to, start = f.y(s.Y-s.Setting), f.y(s.Y), f.x(s.X)
	}
	length := abs(to - from)
	foot, head := footRoom, headRoom
	if !on {
		foot, head = 0.3, 0.3
	}
	play := length - along - foot - head
	if play < 0 {
		return arrow{}, false
	}
	lead := tagRoom + max(across, barLong)/2
	if !on {
		lead = tagRoom + barLong/2
	}
	for off := lead; off+across/2+tagRoom <= min(run, farthest); off += 1.5 {
		if !on && off+1+across+tagRoom > run {
			break
		}
		for _, share := range []float64{0.5, 0.3, 0.7, 0, 1} {
			// Distances from the guiding edge, and from the start of the cut.
			middle, beside := foot+share*play+along/2, off
			if !on {
				beside = off + 1 + across/2
			}
			if rip {
				a.from, a.to = drawing.Point{X: start + off, Y: from}, drawing.Point{X: start + off, Y: to}
				a.box = drawing.Rect{X: start + beside - wide/2, Y: from - middle - high/2, W: wide, H: high}
			} else {
				a.from, a.to = drawing.Point{X: from, Y: start - off}, drawing.Point{X: to, Y: start - off}
				a.box = drawing.Rect{X: from + middle - wide/2, Y: start - beside - high/2, W: wide, H: high}
			}
			if r.clear(a.box) && r.open(a.line()) && free(a.guide().Inset(0.3), r.taken()) {
				return a, true
			}
		}
	}
	return arrow{}, false
}

// line is the paper that the arrow itself takes.
func (a arrow) line() drawing.Rect {
	const half = 0.5
	x, y := min(a.from.X, a.to.X), min(a.from.Y, a.to.Y)
	if a.from.X == a.to.X {
		return drawing.Rect{X: x - half, Y: y, W: 2 * half, H: abs(a.to.Y - a.from.Y)}
	}
	return drawing.Rect{X: x, Y: y - half, W: abs(a.to.X - a.from.X), H: 2 * half}
}

// guide is the paper of the sign for fence or stop.
func (a arrow) guide() drawing.Rect { return guideSign(a.from, a.from.X == a.to.X, a.step.Guide) }

// guideSign is where the sign lies within the piece, at a point of the edge that guides
// it. Upright arrows have it lying.
func guideSign(at drawing.Point, upright bool, guide cutplan.Guide) drawing.Rect {
	long, thick := barLong, barThick
	switch guide {
	case cutplan.Stop:
		long, thick = stopSide, stopSide
	case cutplan.Marked:
		long, thick = 2*originRadius, originRadius
	}
	if upright {
		return drawing.Rect{X: at.X - long/2, Y: at.Y - thick, W: long, H: thick}
	}
	return drawing.Rect{X: at.X, Y: at.Y - long/2, W: thick, H: long}
}

// drawGuide draws the sign for what guides a cut: a bar for the fence, a square for a
// stop, a ring where the cut is measured and marked.
func drawGuide(d *drawing.Drawing, at drawing.Point, upright bool, guide cutplan.Guide) {
	if guide == cutplan.Marked {
		d.Disc(at, originRadius, drawing.Narrow, drawing.White)
		return
	}
	d.Box(guideSign(at, upright, guide), drawing.NoPen, drawing.Black)
}

// draw draws the arrow without its tag.
func (a arrow) draw(d *drawing.Drawing) {
	d.Line(a.from, a.to, drawing.Narrow)
	d.Arrow(a.to, a.from)
	drawGuide(d, a.from, a.from.X == a.to.X, a.step.Guide)
}

// write puts the tag on or beside the arrow.
func (a arrow) write(d *drawing.Drawing) {
	if !a.turned {
		a.tag.write(d, a.box.X, a.box.Y+a.box.H/2)
		return
	}
	// The number comes first, at the lower end.
	number := drawing.NumberBox(drawing.Point{}, a.tag.number)
	a.tag.writeTurned(d, a.box.X+a.box.W/2, a.box.Bottom()-number.H, a.box.Bottom())
}

// measures reports whether the arrow runs through a piece from edge to edge, and so tells
// its size.
func (a arrow) measures(n *cutplan.Node, f frame) bool {
	const near = 0.05 // mm
	piece := f.rect(n)
	if a.step.Cut == cutplan.Rip {
		return a.step.Setting == n.Width && abs(a.from.Y-piece.Bottom()) < near && a.from.X > piece.X && a.from.X < piece.Right()
	}
	return a.step.Setting == n.Length && abs(a.from.X-piece.X) < near && a.from.Y > piece.Y && a.from.Y < piece.Bottom()
}

// Sign draws the sign for what guides a cut at a point of the edge that guides it, within
// the piece, which lies in a direction from there. It returns the paper that it takes.
func Sign(d *drawing.Drawing, at, into drawing.Point, guide cutplan.Guide) drawing.Rect {
	upright := into.X == 0
	sign := guideSign(at, upright, guide)
	switch {
	case upright && into.Y > 0:
		at.Y += sign.H
	case !upright && into.X < 0:
		at.X -= sign.W
	}
	drawGuide(d, at, upright, guide)
	return guideSign(at, upright, guide)
}
