package diagram

import (
	"cmp"
	"slices"
	"strconv"

	"sawbill/nest/cutplan"
	"sawbill/report/internal/drawing"
)

// number is the number of a cut, and where it stands.
type number struct {
	text  string
	at    drawing.Point // middle of its ground
	start drawing.Point // of the cut; a narrow line leads there if it is far
	led   bool
}

func (n number) box() drawing.Rect { return drawing.NumberBox(n.at, n.text) }

// cut is a step as it is drawn: a line from where it starts.
type cut struct {
	text     string
	from, to drawing.Point
	rip      bool
}

// numbers finds a place for the number of every step. Cuts that start at the
// stock's edge are numbered outside it, the others on their own line near its
// start. Cuts for which neither has room are returned as crowded.
func numbers(v View, f frame) (placed []number, crowded []cut) {
	var left, below, inside []cut
	trimX, trimY := v.Layout.Stock.Trim, v.Layout.Stock.TrimWidth()
	for _, s := range v.Steps {
		from, to := f.cutLine(s, v.Kerf)
		c := cut{strconv.Itoa(s.Number), from, to, s.Cut == cutplan.Rip}
		switch {
		case c.rip && s.X <= trimX:
			left = append(left, c)
		case !c.rip && s.Y <= trimY:
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
		at := piece.Centre()
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
	slices.SortStableFunc(cuts, func(a, b cut) int { return cmp.Compare(a.from.Y, b.from.Y) })
	wanted, extents := make([]float64, len(cuts)), make([]float64, len(cuts))
	for i, c := range cuts {
		wanted[i] = c.from.Y
		extents[i] = drawing.NumberBox(drawing.Point{}, c.text).H + numberGap
	}
	at := spread(wanted, extents, 0, f.stock.Bottom())
	placed := make([]number, len(cuts))
	for i, c := range cuts {
		n := number{text: c.text, start: c.from, led: abs(at[i]-c.from.Y) > 0.5}
		n.at = drawing.Point{X: f.stock.X - edgeGap - drawing.NumberBox(drawing.Point{}, c.text).W/2, Y: at[i]}
		if n.led {
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
	slices.SortStableFunc(cuts, func(a, b cut) int { return cmp.Compare(a.from.X, b.from.X) })
	wanted, extents := make([]float64, len(cuts)), make([]float64, len(cuts))
	for i, c := range cuts {
		wanted[i] = c.from.X
		extents[i] = drawing.NumberBox(drawing.Point{}, c.text).W + numberGap
	}
	at := spread(wanted, extents, f.stock.X, f.picture.Right())
	placed := make([]number, len(cuts))
	for i, c := range cuts {
		n := number{text: c.text, start: c.from, led: abs(at[i]-c.from.X) > 0.5}
		n.at = drawing.Point{X: at[i], Y: f.stock.Bottom() + edgeGap + drawing.NumberBox(drawing.Point{}, c.text).H/2}
		if n.led {
			n.at.Y += 0.8
		}
		placed[i] = n
	}
	return placed
}

// along looks for room on the cut's line: just behind its start, further on, or
// on the start itself where the cut is short.
func (c cut) along(taken []drawing.Rect, within drawing.Rect) (number, bool) {
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
	// Within the outline if that can be; on a narrow sheet a number stands over it.
	for _, room := range []drawing.Rect{within.Inset(0.5), within.Inset(-2)} {
		for _, off := range offsets {
			if n, ok := c.numberAt(off, taken, room); ok {
				return n, true
			}
		}
	}
	return number{}, false
}

func (c cut) numberAt(off float64, taken []drawing.Rect, within drawing.Rect) (number, bool) {
	n := number{text: c.text, start: c.from, at: drawing.Point{X: c.from.X, Y: c.from.Y - off}}
	if c.rip {
		n.at = drawing.Point{X: c.from.X + off, Y: c.from.Y}
	}
	box := n.box()
	return n, within.Contains(box) && free(box.Inset(-numberGap/2), taken)
}

func abs(v float64) float64 { return max(v, -v) }
