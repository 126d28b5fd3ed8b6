package marksheet

import (
	"cmp"
	"slices"

	"sawbill/report/internal/drawing"
	"sawbill/stock"
	"sawbill/stock/casework"
)

const (
	laneAt     = 3.0 // mm from the outline to the line of running dimensions
	leader     = 3.0 // from there to its figures
	lineHair   = 0.25
	figureGap  = 2.0  // between two figures side by side
	reachOut   = 26.0 // that level figures may reach beyond the outline
	overhang   = 5.0  // likewise, where others stand beside them
	originSize = 0.8  // radius of the circle at the edge that is measured from
	dotSize    = 0.35
)

// lane is the running dimensions from one edge: a line along the piece with a
// circle at the edge, a dot for each position, and its figure beyond.
type lane struct {
	from  casework.Face
	level bool // the line lies level, below or above the piece
	far   bool // above it, or to the left, not below or to the right
	// origin is where the edge lies along the line, on the paper; edge is the
	// outline's side next to the line.
	origin, edge float64
	size         float64 // of the figures, pt
	ticks        []tick
}

// tick is one position of a lane.
type tick struct {
	at      float64 // along the line, on the paper
	start   float64 // across it: where its extension line begins
	text    string
	between bool // neither the first nor the last of its mark
	mark    int  // of the figure; -1 for the edge itself
}

// add takes a tick; one at the same place and of the same words is kept once.
func (l *lane) add(t tick) {
	for i := range l.ticks {
		if on := &l.ticks[i]; on.text == t.text && on.at-t.at < lineHair && t.at-on.at < lineHair {
			on.between = on.between && t.between
			if (l.sign() > 0) == (t.start > on.start) {
				on.start = t.start
			}
			return
		}
	}
	l.ticks = append(l.ticks, t)
}

// sign is the direction from the piece to the line: up and left are negative.
func (l *lane) sign() float64 {
	if l.far {
		return -1
	}
	return 1
}

// writing is how the figures of a lane stand.
type writing struct {
	at     []float64 // their middles along the line
	turned bool      // reading upwards, at a level line
	depth  float64   // paper from the piece to the end of the longest, mm
}

// room is the paper along a lane's line that its figures may take.
type room struct{ from, to float64 }

// extent is how much of the line a figure takes.
func (l *lane) extent(t tick, turned bool) float64 {
	if l.level && !turned {
		return drawing.Width(t.text, drawing.Regular, l.size) + figureGap
	}
	return drawing.Height(l.size) + lineHair
}

func (l *lane) sum(turned bool) float64 {
	sum := 0.0
	for _, t := range l.ticks {
		sum += l.extent(t, turned)
	}
	return sum
}

// write finds places for the figures, in order and none over another. Those
// between the first and the last of their mark give way where there is no room,
// then all but the first ones; it returns the marks that are cut short.
func (l *lane) write(r room) (w writing, short []int) {
	slices.SortStableFunc(l.ticks, func(a, b tick) int { return cmp.Compare(a.at, b.at) })
	w.turned = l.level && l.sum(false) > r.to-r.from
	drop := func(needless func(tick) bool) {
		l.ticks = slices.DeleteFunc(l.ticks, func(t tick) bool {
			if needless(t) {
				short = append(short, t.mark)
				return true
			}
			return false
		})
	}
	if l.sum(w.turned) > r.to-r.from {
		drop(func(t tick) bool { return t.between })
	}
	for l.sum(w.turned) > r.to-r.from && len(l.ticks) > 1 {
		last := l.ticks[len(l.ticks)-1]
		if last.mark < 0 { // the edge is told in any case
			last = l.ticks[len(l.ticks)-2]
		}
		drop(func(t tick) bool { return t == last })
	}
	wanted, extents := make([]float64, len(l.ticks)), make([]float64, len(l.ticks))
	for i, t := range l.ticks {
		wanted[i], extents[i] = t.at, l.extent(t, w.turned)
		far := drawing.Width(t.text, drawing.Regular, l.size)
		if l.level && !w.turned {
			far = drawing.Height(l.size)
		}
		w.depth = max(w.depth, laneAt+leader+far)
	}
	w.at = drawing.Spread(wanted, extents, r.from, r.to)
	return w, short
}

// strain is how far, at most, a position's figure stands from its place.
func (l *lane) strain(w writing) float64 {
	most := 0.0
	for i, t := range l.ticks {
		if t.mark < 0 {
			continue
		}
		most = max(most, w.at[i]-t.at, t.at-w.at[i])
	}
	return most
}

// draw draws the line, the extension lines and the figures.
func (l *lane) draw(d *drawing.Drawing, w writing) {
	point := func(along, across float64) drawing.Point {
		if l.level {
			return drawing.Point{X: along, Y: across}
		}
		return drawing.Point{X: across, Y: along}
	}
	sign := l.sign()
	line, end := l.edge+sign*laneAt, l.edge+sign*(laneAt+leader)
	last := l.origin
	for i, t := range l.ticks {
		if t.at-l.origin > last-l.origin && t.at > l.origin || l.origin-t.at > l.origin-last && t.at < l.origin {
			last = t.at
		}
		begin := t.start + sign*0.6
		d.Line(point(t.at, begin), point(t.at, line), drawing.Fine)
		d.Line(point(t.at, line), point(w.at[i], end-sign*0.6), drawing.Fine)
		if t.mark >= 0 {
			d.Disc(point(t.at, line), dotSize, drawing.NoPen, drawing.Black)
		}
	}
	d.Line(point(l.origin, line), point(last, line), drawing.Fine)
	d.Disc(point(l.origin, line), originSize, drawing.Narrow, drawing.White)
	for i, t := range l.ticks {
		l.figure(d, t, w.at[i], end, w.turned)
	}
}

// figure writes one beside its place.
func (l *lane) figure(d *drawing.Drawing, t tick, at, end float64, turned bool) {
	text := drawing.Text{String: t.text, Size: l.size}
	middle := (drawing.Rise(l.size) - drawing.Descent*l.size*25.4/72) / 2 // from the middle of a line down to its base
	switch {
	case l.level && turned:
		text.Turned, text.At = true, drawing.Point{X: at + middle, Y: end}
		if !l.far { // it reads upwards, to its place
			text.Align = drawing.Right
		}
	case l.level:
		text.Align, text.At = drawing.Center, drawing.Point{X: at, Y: end - drawing.Descent*l.size*25.4/72}
		if !l.far {
			text.At.Y = end + drawing.Rise(l.size)
		}
	default:
		text.At = drawing.Point{X: end, Y: at + middle}
		if l.far {
			text.Align = drawing.Right
		}
	}
	d.Text(text)
}

// laneOf finds the lane of an edge, or opens it.
func laneOf(lanes []*lane, from casework.Face, size float64, p placing) ([]*lane, *lane) {
	for _, l := range lanes {
		if l.from == from {
			return lanes, l
		}
	}
	axis, far, _ := from.Side.Axis()
	l := &lane{size: size, from: from, level: axis == p.level, far: far}
	edge := stock.Length(0)
	if far {
		edge = p.solid.Size[axis]
	}
	l.origin = p.along(axis, edge)
	switch box := p.box(); {
	case l.level && !far:
		l.edge = box.H
	case !far:
		l.edge = box.W
	}
	l.ticks = append(l.ticks, tick{at: l.origin, start: l.edge, text: from.String(), mark: -1})
	return append(lanes, l), l
}
