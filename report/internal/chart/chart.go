// Package chart draws bars: one below the other, black on white, each with its
// name above it and its amount at its end.
package chart

import (
	"sawbill/report/internal/drawing"
)

// Bar is one amount, not below 0. What lies up to Proven is hatched closely, the
// rest of it is left white: nobody knows whether it is needed.
type Bar struct {
	Name   string
	Amount float64
	Proven float64
	Text   string // stands at the end
	Best   bool   // its name is bold
}

// Group is bars of one scale below a heading.
type Group struct {
	Heading string
	Full    float64 // the amount of the longest possible bar; 0 is the largest of the group
	Bars    []Bar
}

const (
	size     = 8.5 // of the writing, pt
	headSize = 10.0
	thick    = 5.0 // of a bar, mm
	gap      = 2.0 // between bars, mm
	margin   = 2.0
	pitch    = 1.5 // of the hatching, mm
)

// Draw draws the groups one below the other, so wide in mm. Names are shortened
// to the width.
func Draw(groups []Group, width float64) drawing.Drawing {
	d := drawing.Drawing{Width: width}
	y := margin
	for _, g := range groups {
		y += drawing.Height(headSize)
		d.Text(drawing.Text{At: drawing.Point{X: margin, Y: y}, String: g.Heading, Face: drawing.Bold, Size: headSize})
		y += gap
		y = g.draw(&d, y)
		y += 2 * gap
	}
	d.Height = y
	return d
}

// draw draws the bars from y down and returns where they end.
func (g Group) draw(d *drawing.Drawing, y float64) float64 {
	full, ends := g.Full, 0.0
	for _, b := range g.Bars {
		if g.Full == 0 {
			full = max(full, b.Amount)
		}
		ends = max(ends, drawing.Width(b.Text, drawing.Regular, size))
	}
	room := d.Width - 2*margin - ends - gap
	from := y
	for _, b := range g.Bars {
		face := drawing.Regular
		if b.Best {
			face = drawing.Bold
		}
		y += drawing.Height(size)
		d.Text(drawing.Text{At: drawing.Point{X: margin + 1, Y: y - 0.8}, Face: face, Size: size,
			String: drawing.Shorten(b.Name, face, size, d.Width-2*margin-1)})
		long := 0.0
		if full > 0 {
			long = room * b.Amount / full
		}
		bar := drawing.Rect{X: margin, Y: y, W: long, H: thick}
		if b.Amount > 0 {
			proven := bar
			proven.W = long * b.Proven / b.Amount
			d.HatchAs(drawing.Hatch{Area: proven, Pitch: pitch})
			if b.Proven < b.Amount {
				d.Line(drawing.Point{X: proven.Right(), Y: bar.Y}, drawing.Point{X: proven.Right(), Y: bar.Bottom()}, drawing.Cut)
			}
			d.Box(bar, drawing.Visible, drawing.NoFill)
		}
		d.Text(drawing.Text{At: drawing.Point{X: bar.Right() + gap, Y: y + thick/2 + drawing.Rise(size)/2 - 0.3},
			String: b.Text, Face: drawing.Regular, Size: size})
		y += thick + gap
	}
	d.Line(drawing.Point{X: margin, Y: from}, drawing.Point{X: margin, Y: y}, drawing.Narrow)
	return y
}
