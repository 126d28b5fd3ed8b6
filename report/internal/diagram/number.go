package diagram

import (
	"cmp"
	"slices"

	"sawbill/nest/cutplan"
	"sawbill/report/internal/drawing"
)

// number is the number of a cut, or of several that share one, and where it
// stands.
type number struct {
	text  string
	at    drawing.Point // middle of its ground
	start drawing.Point // of the cut; a narrow line leads there if it is far
	led   bool
	// string is where a line that joins several cuts meets each of them.
	string []drawing.Point
}

func (n number) box() drawing.Rect { return drawing.NumberBox(n.at, n.text) }

// numbers finds a place for the number of every step. Cuts that start at the
// stock's edge are numbered outside it, the others on their own line near its
// start. Cuts for which neither has room are returned as crowded.
func numbers(v View, f frame) (placed []number, crowded []cut) {
	var left, below, inside []cut
	for _, c := range f.cuts(v) {
		switch c.zone {
		case onLeft:
			left = append(left, c)
		case underneath:
			below = append(below, c)
		default:
			inside = append(inside, c)
		}
	}
	left, over := roomFor(left, f.stock.Bottom(), func(box drawing.Rect) float64 { return box.H })
	crowded = append(crowded, over...)
	below, over = roomFor(below, f.picture.Right()-f.stock.X, func(box drawing.Rect) float64 { return box.W })
	crowded = append(crowded, over...)
	placed = append(f.beside(left), f.beneath(below)...)
	var taken []drawing.Rect
	for _, n := range placed {
		taken = append(taken, n.box())
	}
	reserved := marksOf(v, f)
	for _, c := range inside {
		n, ok := c.along(append(slices.Clone(taken), reserved...), f.stock)
		if !ok {
			n, ok = c.along(taken, f.stock)
		}
		if !ok {
			crowded = append(crowded, c)
			continue
		}
		placed = append(placed, n)
		taken = append(taken, n.box())
	}
	return placed, crowded
}

// numberGap is the paper between two numbers, mm.
const numberGap = 0.4

// marksOf is where the marks of small pieces would stand, in their middles:
// numbers keep clear of them if they can.
func marksOf(v View, f frame) []drawing.Rect {
	const small = 14.0 // mm
	last := len(tiers) - 1
	var boxes []drawing.Rect
	root := v.Layout.Root
	leaves(&root, nil, func(leaf, _ *cutplan.Node) {
		piece := f.rect(leaf)
		if leaf.Use != cutplan.Part || min(piece.W, piece.H) > small {
			return
		}
		b := newBlock(label{lines: []line{markLine(v.Bill[leaf.Blank].Mark)}}, last, false)
		at := piece.Center()
		boxes = append(boxes, drawing.Rect{X: at.X - b.w/2, Y: at.Y - b.h/2, W: b.w, H: b.h}.Inset(-labelGap))
	})
	return boxes
}

// roomFor splits cuts into those whose numbers fit in a row, and the others.
func roomFor(cuts []cut, row float64, extent func(drawing.Rect) float64) (fit, over []cut) {
	for i, c := range cuts {
		row -= extent(drawing.NumberBox(drawing.Point{}, c.text)) + numberGap
		if row < 0 {
			return cuts[:i], cuts[i:]
		}
	}
	return cuts, nil
}

// beside numbers rips on the left of the stock. Numbers that would touch are
// spread along the edge and led to their cuts.
func (f frame) beside(cuts []cut) []number {
	slices.SortStableFunc(cuts, func(a, b cut) int { return cmp.Compare(a.middle().Y, b.middle().Y) })
	wanted, extents := make([]float64, len(cuts)), make([]float64, len(cuts))
	for i, c := range cuts {
		wanted[i] = c.middle().Y
		extents[i] = drawing.NumberBox(drawing.Point{}, c.text).H + numberGap
	}
	at := drawing.Spread(wanted, extents, 0, f.stock.Bottom())
	placed := make([]number, len(cuts))
	for i, c := range cuts {
		n := number{text: c.text, start: c.middle(), led: abs(at[i]-c.middle().Y) > 0.5}
		for _, start := range c.starts {
			n.string = append(n.string, drawing.Point{X: start.X - barGap, Y: start.Y})
		}
		if n.string != nil {
			n.start.X -= barGap
			n.led = true
		}
		n.at = drawing.Point{X: f.stock.X - edgeGap - drawing.NumberBox(drawing.Point{}, c.text).W/2, Y: at[i]}
		switch {
		case n.string != nil:
			n.at.X -= barGap + 0.6
		case n.led:
			n.at.X -= ledGap
		}
		placed[i] = n
	}
	return placed
}

// Paper between the stock and the numbers beside it, mm: edgeGap where they
// stand at their cuts, ledGap more where a line leads there.
const (
	edgeGap = 0.8
	ledGap  = 2.6
)

// beneath numbers crosscuts below the stock.
func (f frame) beneath(cuts []cut) []number {
	slices.SortStableFunc(cuts, func(a, b cut) int { return cmp.Compare(a.middle().X, b.middle().X) })
	wanted, extents := make([]float64, len(cuts)), make([]float64, len(cuts))
	for i, c := range cuts {
		wanted[i] = c.middle().X
		extents[i] = drawing.NumberBox(drawing.Point{}, c.text).W + numberGap
	}
	at := drawing.Spread(wanted, extents, f.stock.X, f.picture.Right())
	placed := make([]number, len(cuts))
	for i, c := range cuts {
		n := number{text: c.text, start: c.middle(), led: abs(at[i]-c.middle().X) > 0.5}
		n.at = drawing.Point{X: at[i], Y: f.stock.Bottom() + edgeGap + drawing.NumberBox(drawing.Point{}, c.text).H/2}
		for _, start := range c.starts {
			n.string = append(n.string, drawing.Point{X: start.X, Y: start.Y + 0.6})
		}
		if n.string != nil {
			n.start.Y += 0.6
			n.led = true
		}
		if n.led {
			n.at.Y += 0.8
		}
		placed[i] = n
	}
	return placed
}

// along looks for room on the cut's line: just behind its start, further on, or
// on the start itself where the cut is short.
func (c cut) along(taken []drawing.Rect, outline drawing.Rect) (number, bool) {
	box := drawing.NumberBox(drawing.Point{}, c.text)
	half, run := box.H/2, c.from.Y-c.to.Y
	if c.rip {
		half, run = box.W/2, c.to.X-c.from.X
	}
	const step = 1.0 // mm
	var offsets []float64
	for off := half + 0.3; off <= max(run-half, half+0.3); off += step {
		offsets = append(offsets, off)
	}
	offsets = append(offsets, run/2, 0, -half-0.3)
	if n, ok := c.behind(taken, outline.Inset(0.5)); ok {
		return n, true
	}
	// Within the outline if that can be; on a narrow sheet a number stands over it.
	for _, room := range []drawing.Rect{outline.Inset(0.5), outline.Inset(-2)} {
		for _, off := range offsets {
			if n, ok := c.numberAt(off, taken, room); ok {
				return n, true
			}
		}
	}
	return number{}, false
}

// behind puts the number of several cuts side by side behind the last of them,
// where it covers none of the pieces between.
func (c cut) behind(taken []drawing.Rect, room drawing.Rect) (number, bool) {
	if c.starts == nil {
		return number{}, false
	}
	box := drawing.NumberBox(drawing.Point{}, c.text)
	run := c.from.Y - c.to.Y
	if c.rip {
		run = c.to.X - c.from.X
	}
	last := c.starts[len(c.starts)-1]
	for _, share := range []float64{0.5, 0.25, 0.75} {
		n := number{text: c.text, led: true}
		for _, start := range c.starts {
			if c.rip {
				start.X += share * run
			} else {
				start.Y -= share * run
			}
			n.string = append(n.string, start)
		}
		n.start = n.string[len(n.string)-1]
		n.at = n.start
		if c.rip {
			n.at.Y = last.Y - box.H/2 - stringEnd
		} else {
			n.at.X = last.X + box.W/2 + stringEnd
		}
		if at := n.box(); room.Contains(at) && free(at.Inset(-numberGap/2), taken) {
			return n, true
		}
	}
	return number{}, false
}

// stringEnd is the paper between the last cut on a string and its number, mm.
const stringEnd = 0.9

func (c cut) numberAt(off float64, taken []drawing.Rect, room drawing.Rect) (number, bool) {
	n := number{text: c.text, start: c.from, at: drawing.Point{X: c.from.X, Y: c.from.Y - off}}
	if c.rip {
		n.at = drawing.Point{X: c.from.X + off, Y: c.from.Y}
	}
	for _, start := range c.starts {
		switch {
		case off < 0: // it stands before them, and a line leads there
			n.led = true
		case c.rip:
			start.X = n.at.X
		default:
			start.Y = n.at.Y
		}
		n.string = append(n.string, start)
	}
	box := n.box()
	return n, room.Contains(box) && free(box.Inset(-numberGap/2), taken)
}

// lead draws what joins n to its cut or cuts: a bar across cuts that share the
// number, with a dot on each.
func (n number) lead(d *drawing.Drawing) {
	if n.led {
		d.Line(n.at, n.start, drawing.Narrow)
	}
	if n.string == nil {
		return
	}
	d.Line(n.string[0], n.string[len(n.string)-1], drawing.Narrow)
	for _, at := range n.string {
		d.Disc(at, 0.4, drawing.NoPen, drawing.Black)
	}
}

func abs(v float64) float64 { return max(v, -v) }
