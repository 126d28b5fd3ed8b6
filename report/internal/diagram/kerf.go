package diagram

import (
	"sawbill/nest/cutplan"
	"sawbill/report/internal/drawing"
)

// A tick on the line of each cut shows on which side the blade takes its kerf.

const (
	tickLong  = 1.7 // mm
	tickInset = 2.2 // from the end of the cut
)

// tick draws the tick of the cut from one point to another: near its far end, if that
// is free of writing, else somewhere along it.
func tick(d *drawing.Drawing, s cutplan.Step, from, to drawing.Point, back bool, writing []drawing.Rect) {
	run := abs(to.X-from.X) + abs(to.Y-from.Y)
	for _, at := range []float64{run - tickInset, tickInset, run / 2, run / 3, run * 2 / 3, run / 4, run * 3 / 4, run - 0.8} {
		if at <= 0 || at >= run {
			continue
		}
		a := drawing.Point{X: from.X, Y: from.Y - at}
		b := drawing.Point{X: from.X + tickLong, Y: from.Y - at}
		if s.Cut == cutplan.Rip {
			a = drawing.Point{X: from.X + at, Y: from.Y}
			b = drawing.Point{X: from.X + at, Y: from.Y - tickLong}
		}
		if back {
			b = drawing.Point{X: 2*a.X - b.X, Y: 2*a.Y - b.Y}
		}
		const half = 0.4
		box := drawing.Rect{X: min(a.X, b.X) - half, Y: min(a.Y, b.Y) - half, W: abs(a.X-b.X) + 2*half, H: abs(a.Y-b.Y) + 2*half}
		if free(box, writing) {
			d.Line(a, b, drawing.Cut)
			return
		}
	}
}
