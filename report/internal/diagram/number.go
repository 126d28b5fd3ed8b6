package diagram

import (
	"cmp"
	"slices"

	"sawbill/nest/cutplan"
	"sawbill/report/internal/drawing"
)

// number is the number of a cut, or of several that share one, mostly with their
// setting, and where it stands.
type number struct {
	tag tag
	box drawing.Rect
	// A narrow line leads from one point to the other, the start of the cut, if they are
	// not equal.
	foot, start drawing.Point
	// string is where a line that joins several cuts meets each of them.
	string []drawing.Point
	// from and to are the ends of an arrow beside the stock, from the edge that guides
	// the cut; equal where there is none.
	from, to drawing.Point
	guide    cutplan.Guide
}

// numbers finds a place for the number and the setting of every step. Rips that start
// at the stock's edge are told on its left. The others are told by arrows within the
// piece that comes off, or else below the stock, or by their number alone on their own
// line. Cuts for which none has room are returned as crowded.
func numbers(v View, f frame, r *room) (placed []number, arrows []arrow, crowded []cut) {
	var left, below, inside []cut
	for _, c := range f.cuts(v) {
		if c.zone == onLeft {
			left = append(left, c)
			continue
		}
		if a, ok := f.arrowOf(c, v, r); ok {
			arrows = append(arrows, a)
			r.take(a.box)
			r.take(a.guide().Inset(0.3))
			r.arrows = append(r.arrows, a.line())
			continue
		}
		if c.zone == underneath {
			below = append(below, c)
		} else {
			inside = append(inside, c)
		}
	}
	left, over := roomFor(left, f.stock.Bottom(), v, tag.height)
	crowded = append(crowded, over...)
	below, over = roomFor(below, f.picture.Right()-f.stock.X, v, tag.width)
	crowded = append(crowded, over...)
	placed = append(f.beside(left, v), f.beneath(below, v)...)
	for _, c := range inside {
		n, ok := c.along(v, r, true, f.stock)
		if !ok {
			n, ok = c.along(v, r, false, f.stock)
		}
		if !ok {
			crammed := &room{writing: r.writing, lines: r.lines, arrows: r.arrows, frames: r.frames}
			n, ok = c.along(v, crammed, false, f.stock)
		}
		if !ok {
			crowded = append(crowded, c)
			continue
		}
		placed = append(placed, n)
		if n.tag.text == "" {
			r.writing = append(r.writing, kept(n.box, discGap))
		} else {
			r.take(n.box)
		}
	}
	return placed, arrows, crowded
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

// roomFor splits cuts into those whose tags fit in a row, and the others. Where not
// all fit, they go without their settings.
func roomFor(cuts []cut, row float64, v View, extent func(tag) float64) (fit, over []cut) {
	whole := 0.0
	for _, c := range cuts {
		whole += extent(c.tag(v)) + tagGap
	}
	for i := range cuts {
		if whole > row || v.Brief {
			cuts[i].bare = true
		}
	}
	for i, c := range cuts {
		row -= extent(c.tag(v)) + tagGap
		if row < 0 {
			return cuts[:i], cuts[i:]
		}
	}
	return cuts, nil
}

// tag is the number of a cut with its setting.
func (c cut) tag(v View) tag {
	t := v.settingTag(c.text, c.steps[0], settingSize)
	if c.bare {
		t.text = ""
	}
	return t
}

// beside tells rips on the left of the stock. Tags that would touch are spread along the
// edge and led to their cuts.
func (f frame) beside(cuts []cut, v View) []number {
	slices.SortStableFunc(cuts, func(a, b cut) int { return cmp.Compare(a.middle().Y, b.middle().Y) })
	wanted, extents := make([]float64, len(cuts)), make([]float64, len(cuts))
	for i, c := range cuts {
		wanted[i] = c.middle().Y
		extents[i] = c.tag(v).height() + numberGap
	}
	at := drawing.Spread(wanted, extents, 0, f.stock.Bottom())
	placed := make([]number, len(cuts))
	for i, c := range cuts {
		t := c.tag(v)
		n := number{tag: t, guide: c.steps[0].Guide}
		n.box = drawing.Rect{X: f.stock.X - laneGap - t.width(), Y: at[i] - t.height()/2, W: t.width(), H: t.height()}
		n.foot, n.start = drawing.Point{X: n.box.Right() + 0.4, Y: at[i]}, drawing.Point{X: f.stock.X - 0.2, Y: c.middle().Y}
		for _, start := range c.starts {
			n.string = append(n.string, drawing.Point{X: f.stock.X - barGap, Y: start.Y})
		}
		if n.string != nil {
			n.start.X = f.stock.X - barGap
		} else if s := c.steps[0]; !v.row(s.Number).SawOff {
			x := f.stock.X - chainGap
			if s.Trim {
				x -= trimGap
			}
			n.from, n.to = drawing.Point{X: x, Y: f.y(s.Y - s.Setting)}, drawing.Point{X: x, Y: f.y(s.Y)}
		}
		placed[i] = n
	}
	return placed
}

// Paper between the stock and what stands outside it, mm.
const (
	laneGap  = 5.0 // tags
	chainGap = 1.8 // arrows from the guiding edge
	trimGap  = 2.0 // more, for the arrows of trim
)

// beneath tells crosscuts below the stock.
func (f frame) beneath(cuts []cut, v View) []number {
	slices.SortStableFunc(cuts, func(a, b cut) int { return cmp.Compare(a.middle().X, b.middle().X) })
	wanted, extents := make([]float64, len(cuts)), make([]float64, len(cuts))
	for i, c := range cuts {
		wanted[i] = c.middle().X
		extents[i] = c.tag(v).width() + tagGap
	}
	at := drawing.Spread(wanted, extents, f.stock.X, f.picture.Right())
	placed := make([]number, len(cuts))
	for i, c := range cuts {
		t := c.tag(v)
		n := number{tag: t, guide: c.steps[0].Guide}
		n.box = drawing.Rect{X: at[i] - t.width()/2, Y: f.stock.Bottom() + laneGap, W: t.width(), H: t.height()}
		n.foot, n.start = drawing.Point{X: at[i], Y: n.box.Y - 0.3}, drawing.Point{X: c.middle().X, Y: f.stock.Bottom() + 0.2}
		for _, start := range c.starts {
			n.string = append(n.string, drawing.Point{X: start.X, Y: f.stock.Bottom() + barGap})
		}
		if n.string != nil {
			n.start.Y = f.stock.Bottom() + barGap
		} else if s := c.steps[0]; !v.row(s.Number).SawOff {
			y := f.stock.Bottom() + chainGap
			if s.Trim {
				y += trimGap
			}
			n.from, n.to = drawing.Point{X: f.x(s.X - s.Setting), Y: y}, drawing.Point{X: f.x(s.X), Y: y}
		}
		placed[i] = n
	}
	return placed
}

// along looks for room on the cut's line: just behind its start, further on, or
// on the start itself where the cut is short. With the setting there is room only where
// that touches no other cut.
func (c cut) along(v View, r *room, set bool, outline drawing.Rect) (number, bool) {
	t := c.tag(v)
	t.behind = !c.rip
	if !set {
		t.text = ""
	}
	disc := drawing.NumberBox(drawing.Point{}, c.text)
	half, run := disc.H/2, c.from.Y-c.to.Y
	if c.rip {
		half, run = disc.W/2, c.to.X-c.from.X
	}
	const step = 1.0 // mm
	var offsets []float64
	for off := half + 0.3; off <= max(run-half, half+0.3); off += step {
		offsets = append(offsets, off)
	}
	if !set {
		offsets = append(offsets, run/2, 0, -half-0.3)
	}
	if n, ok := c.behind(t, r, outline.Inset(0.5)); ok {
		return n, true
	}
	// Within the outline if that can be; on a narrow sheet a number stands over it.
	for _, within := range []drawing.Rect{outline.Inset(0.5), outline.Inset(-2)} {
		for _, off := range offsets {
			if n, ok := c.numberAt(t, off, r, within); ok {
				return n, true
			}
		}
	}
	return number{}, false
}

// behind puts the tag of several cuts side by side behind the last of them,
// where it covers none of the pieces between.
func (c cut) behind(t tag, r *room, within drawing.Rect) (number, bool) {
	if c.starts == nil {
		return number{}, false
	}
	disc := drawing.NumberBox(drawing.Point{}, c.text)
	run := c.from.Y - c.to.Y
	if c.rip {
		run = c.to.X - c.from.X
	}
	t.behind = false
	last := c.starts[len(c.starts)-1]
	for _, share := range []float64{0.5, 0.25, 0.75} {
		n := number{tag: t}
		for _, start := range c.starts {
			if c.rip {
				start.X += share * run
			} else {
				start.Y -= share * run
			}
			n.string = append(n.string, start)
		}
		n.start = n.string[len(n.string)-1]
		n.foot = n.start
		if c.rip {
			n.foot.Y = last.Y - disc.H/2 - stringEnd
		} else {
			n.foot.X = last.X + disc.W/2 + stringEnd
		}
		n.box = c.boxAt(t, n.foot)
		if within.Contains(n.box) && r.passes(n.box, c.own(n)) && free(n.box.Inset(-0.2), r.lines) {
			return n, true
		}
	}
	return number{}, false
}

// stringEnd is the paper between the last cut on a string and its number, mm.
const stringEnd = 0.9

// boxAt is what a tag covers whose disc is around a point.
func (c cut) boxAt(t tag, at drawing.Point) drawing.Rect {
	disc := drawing.NumberBox(at, c.text)
	b := drawing.Rect{X: disc.X, Y: at.Y - t.height()/2, W: t.width(), H: t.height()}
	if t.behind {
		b.X = disc.Right() - b.W
	}
	return b
}

// own is the paper of the line that joins the cuts of a number.
func (c cut) own(n number) []drawing.Rect {
	if n.string == nil {
		return nil
	}
	a, b := n.string[0], n.string[len(n.string)-1]
	return []drawing.Rect{{X: min(a.X, b.X) - 0.4, Y: min(a.Y, b.Y) - 0.4, W: abs(a.X-b.X) + 0.8, H: abs(a.Y-b.Y) + 0.8}}
}

// passes reports whether a tag and lines that belong to it have room among the writing.
func (r *room) passes(box drawing.Rect, lines []drawing.Rect) bool {
	box = kept(box, discGap)
	return free(box, r.arrows) && free(box, r.frames) && !slices.ContainsFunc(append(lines, box), func(b drawing.Rect) bool { return !r.open(b) })
}

func (c cut) numberAt(t tag, off float64, r *room, within drawing.Rect) (number, bool) {
	at := drawing.Point{X: c.from.X, Y: c.from.Y - off}
	if c.rip {
		at = drawing.Point{X: c.from.X + off, Y: c.from.Y}
	}
	n := number{tag: t, foot: at, start: at, box: c.boxAt(t, at)}
	for _, start := range c.starts {
		switch {
		case off < 0: // it stands before them, and a line leads there
			n.start = c.from
		case c.rip:
			start.X = at.X
		default:
			start.Y = at.Y
		}
		n.string = append(n.string, start)
	}
	if !within.Contains(n.box) || !r.passes(n.box, c.own(n)) {
		return n, false
	}
	if t.text == "" {
		return n, true
	}
	// The setting lies on the cut's own line, or beside it; it touches no other.
	figure := n.box
	disc := drawing.NumberBox(at, c.text)
	if figure.W -= disc.W; !t.behind {
		figure.X += disc.W
	}
	figure = figure.Inset(-0.1)
	for _, line := range r.lines {
		mine := c.rip && line.H < 2 && abs(line.Y+line.H/2-at.Y) < 0.1 && line.X <= at.X && line.Right() >= figure.Right()
		if !mine && figure.Overlaps(line) {
			return n, false
		}
	}
	return n, true
}

// lead draws what joins n to its cut or cuts: a bar across cuts that share the
// number, with a dot on each, and the arrow from the guiding edge.
func (n number) lead(d *drawing.Drawing) {
	if n.from != n.to {
		d.Line(n.from, n.to, drawing.Narrow)
		if abs(n.from.X-n.to.X)+abs(n.from.Y-n.to.Y) > arrowRoom {
			d.Arrow(n.to, n.from)
		}
		drawGuide(d, n.from, n.from.X == n.to.X, n.guide)
	}
	if n.foot != n.start {
		d.Line(n.foot, n.start, drawing.Narrow)
	}
	if n.string == nil {
		return
	}
	d.Line(n.string[0], n.string[len(n.string)-1], drawing.Narrow)
	for _, at := range n.string {
		d.Disc(at, 0.4, drawing.NoPen, drawing.Black)
	}
}

func (n number) write(d *drawing.Drawing) { n.tag.write(d, n.box.X, n.box.Y+n.box.H/2) }

func abs(v float64) float64 { return max(v, -v) }
