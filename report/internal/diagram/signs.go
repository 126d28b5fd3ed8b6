package diagram

import (
	"slices"

	"sawbill/nest/cutplan"
	"sawbill/report/internal/drawing"
	"sawbill/report/internal/edging"
)

// legend explains signs, one beside another on a line.
type legend struct {
	d     *drawing.Drawing
	at    drawing.Point // middle of the next sign
	right float64       // where the line ends
}

const (
	signsSize = 9.0 // pt
	signWide  = 9.0 // mm of a sign with the room around it
)

// sign explains one sign, if there is room.
func (l *legend) sign(word string, draw func(d *drawing.Drawing, at drawing.Point)) {
	wide := drawing.Width(word, drawing.Regular, signsSize) + signWide
	if l.at.X+wide > l.right {
		return
	}
	draw(l.d, l.at)
	base := l.at.Y + drawing.Rise(signsSize)/2
	l.d.Text(drawing.Text{At: drawing.Point{X: l.at.X + 2.6, Y: base}, String: word, Size: signsSize})
	l.at.X += wide
}

func tickSign(d *drawing.Drawing, at drawing.Point) {
	y := at.Y + 0.8
	d.Line(drawing.Point{X: at.X - 1.4, Y: y}, drawing.Point{X: at.X + 1.4, Y: y}, drawing.FineCut)
	d.Line(drawing.Point{X: at.X, Y: y}, drawing.Point{X: at.X, Y: y - tickLong}, drawing.Cut)
}

func edgingSign(d *drawing.Drawing, at drawing.Point) {
	d.Line(drawing.Point{X: at.X - 1.6, Y: at.Y + 1.2}, drawing.Point{X: at.X + 1.6, Y: at.Y + 1.2}, drawing.FineCut)
	d.Line(drawing.Point{X: at.X - 1.6, Y: at.Y + 1.2 - edgedOff}, drawing.Point{X: at.X + 1.6, Y: at.Y + 1.2 - edgedOff}, drawing.Outline)
}

func guideSignOf(guide cutplan.Guide) func(*drawing.Drawing, drawing.Point) {
	return func(d *drawing.Drawing, at drawing.Point) {
		at.Y += guideSign(at, true, guide).H / 2
		if guide == cutplan.Marked {
			at.Y -= originRadius / 2
		}
		drawGuide(d, at, true, guide)
	}
}

// area is the sign for an area that is hatched.
func area(hatches ...drawing.Hatch) func(*drawing.Drawing, drawing.Point) {
	return func(d *drawing.Drawing, at drawing.Point) {
		box := drawing.Rect{X: at.X - 1.7, Y: at.Y - 1.4, W: 3.4, H: 2.8}
		for _, h := range hatches {
			h.Area = box
			d.HatchAs(h)
		}
		d.Box(box, drawing.Narrow, drawing.NoFill)
	}
}

// guideWords are what the signs at the guiding edges stand for.
var guideWords = [...]string{cutplan.Fence: "fence", cutplan.Stop: "stop", cutplan.Marked: "measured"}

// guides explains the signs of what guides the cuts.
func (l *legend) guides(steps []cutplan.Step) {
	for guide, word := range guideWords {
		if slices.ContainsFunc(steps, func(s cutplan.Step) bool { return int(s.Guide) == guide }) {
			l.sign(word, guideSignOf(cutplan.Guide(guide)))
		}
	}
}

// drawSigns explains the signs of a sheet that its cuts and parts need.
func drawSigns(d *drawing.Drawing, v View, at drawing.Point, right float64) {
	l := legend{d, at, right}
	if len(v.Steps) > 0 {
		l.sign("kerf on this side", tickSign)
	}
	if v.edged() {
		l.sign("edging", edgingSign)
	}
	l.guides(v.Steps)
}

// edged reports whether any part gets edging.
func (v View) edged() bool {
	found := false
	root := v.Layout.Root
	leaves(&root, nil, func(leaf, _ *cutplan.Node) { found = found || v.lie(leaf).Edged != edging.Sides{} })
	return found
}

// BoardSigns explains the signs of boards, once for all of them: a line of the given width
// in mm.
func BoardSigns(boards []View, width float64) drawing.Drawing {
	d := drawing.Drawing{Width: width, Height: drawing.LineHeight(signsSize) + 1}
	l := legend{&d, drawing.Point{X: 2, Y: d.Height / 2}, width}
	var steps []cutplan.Step
	var kept, sections, edged bool
	for _, v := range boards {
		steps = append(steps, v.Steps...)
		sections = sections || v.Layout.Stock.IsSection()
		edged = edged || v.edged()
		root := v.Layout.Root
		leaves(&root, nil, func(leaf, _ *cutplan.Node) { kept = kept || leaf.Use == cutplan.Offcut })
	}
	if len(steps) == 0 {
		return drawing.Drawing{}
	}
	l.sign("kerf on this side", tickSign)
	l.guides(steps)
	l.sign("waste, trim", area(drawing.Hatch{Pitch: 1.5}))
	if sections {
		l.sign("defect", area(drawing.Hatch{Pitch: 1.4}, drawing.Hatch{Pitch: 1.4, Falls: true}))
	}
	if kept {
		l.sign("to keep", func(d *drawing.Drawing, at drawing.Point) {
			d.Box(drawing.Rect{X: at.X - 2, Y: at.Y - 1.4, W: 3.6, H: 2.8}, drawing.TwoDots, drawing.NoFill)
		})
	}
	if edged {
		l.sign("edging", edgingSign)
	}
	return d
}
