package marksheet

import (
	"fmt"

	"sawbill/report/internal/drawing"
	"sawbill/stock"
	"sawbill/stock/casework"
)

// Sizes of figures, in mm.
const (
	usualWidth  = 90.0 // longer pieces are broken
	usualHeight = 80.0
	least       = 32.0 // the longer side takes this at least, but a small piece half its size
	leastHigh   = 60.0 // likewise, where it stands upright
	thin        = 3.4  // the shorter side likewise
	broad       = 6.2  // of a broken piece
	narrowest   = 52.0 // of the words above and below
	strained    = 5.0  // figures beside a piece so far from their places ask for a larger scale
	headRoom    = 40.0 // for words, at least
	sideRoom    = 60.0 // for figures beside a piece
	captionSize = 10.0 // pt
	hair        = 0.1  // paper around all writing, for rounding
	zigzag      = 1.6  // how far a break's line swings
)

// textSizes are those of figures and words, in pt: the largest at which none is left out.
var textSizes = []float64{9, 8, drawing.SmallestSize}

// draw makes a figure, its writing as large as it has room for.
func (s Subject) draw(f figure, width, height float64) (at drawn) {
	for _, size := range textSizes {
		if at = s.drawAt(f, size, width, height); len(at.short) == 0 {
			break
		}
	}
	return at
}

// drawAt makes a figure at the smallest scale at which it can be read, with its
// words.
func (s Subject) drawAt(f figure, size, width, height float64) drawn {
	words := s.caption(f)
	notes := s.notes(f)
	textWidth := min(width, narrowest)
	headed := textHeight(words, size, textWidth+20) + textHeight(notes, size, textWidth+20)
	most := drawing.Point{X: width - sideRoom, Y: height - headed - headRoom}
	var best *sketch
	var at drawn
	for _, ratio := range ratios {
		sk := s.sketch(f, size, ratio)
		if best != nil && (sk.box().W > most.X || sk.box().H > most.Y) {
			break
		}
		short, near := sk.finish(height - headed)
		if best != nil && (sk.d.Width > width || sk.d.Height+headed > height) {
			break
		}
		best = sk
		box := sk.box()
		at = drawn{box: drawing.Rect{X: sk.origin.X, Y: sk.origin.Y, W: box.W, H: box.H}, x: sk.x, y: sk.y, ratio: ratio}
		for _, i := range short {
			at.short = append(at.short, f.marks[i])
		}
		if sk.large() && near && len(short) == 0 {
			break
		}
	}
	words[len(words)-1].text += fmt.Sprintf("; 1:%d", at.ratio)
	if len(best.x.breaks)+len(best.y.breaks) > 0 {
		words[len(words)-1].text += ", broken"
	}
	return s.captioned(at, best.d, words, notes, size, width)
}

// sketch draws the shapes of a figure.
func (s Subject) sketch(f figure, size float64, ratio int) *sketch {
	lay := func(a casework.Axis, most float64) fold {
		breakAt := unbroken
		if f.varied[a] {
			breakAt, _ = f.open(a, f.solid.Size[a])
		}
		keep := f.places(a)
		if breakAt > 0 {
			keep = append(keep, breakAt)
		}
		return folded(f.solid.Size[a], keep, ratio, most, breakAt)
	}
	sk := &sketch{ruler: s.Ruler, size: size, placing: placing{f, lay(f.level, usualWidth), lay(f.upright, usualHeight)}}
	sk.shapes()
	return sk
}

// large reports whether a piece can be made out: whole, or by its width where it
// is broken.
func (s *sketch) large() bool {
	box := s.box()
	long, short := s.level, s.upright
	enough := least
	if box.H > box.W {
		long, short = short, long
		enough = leastHigh
	}
	broken := len(s.x.breaks)+len(s.y.breaks) > 0
	if broken && !s.varied[long] && !s.varied[short] {
		return min(box.W, box.H) >= min(broad, lengthOf(s.solid.Size[short], 1))
	}
	slim := thin
	if s.varied[short] {
		slim = broad
	}
	return max(box.W, box.H) >= min(enough, lengthOf(s.solid.Size[long], 2)) && min(box.W, box.H) >= min(slim, lengthOf(s.solid.Size[short], 1))
}

// finish draws the outline, the breaks and the lanes, and moves all of it to the
// upper left corner. It tells the marks that are cut short, and whether the figures
// beside the piece stand near their places.
func (s *sketch) finish(height float64) (short []int, near bool) {
	box := s.box()
	s.outline()
	half := drawing.Height(s.size) / 2
	beside := room{-half, box.H + half} // of the figures beside the piece
	near = true
	for _, l := range s.lanes {
		if !l.level {
			r := room{-half, box.H + half}
			if need := l.sum(false); need > r.to-r.from {
				r.from = r.to - min(need, max(r.to-r.from, height-headRoom))
			}
			w, cut := l.write(r)
			near = near && l.strain(w) <= strained
			short = append(short, cut...)
			beside.from = min(beside.from, r.from)
			l.draw(&s.d, w)
		}
	}
	for _, l := range s.lanes {
		if l.level {
			reach := reachOut
			if l.far && beside.from < -half {
				reach = overhang
			}
			w, cut := l.write(room{-reach, box.W + reach})
			short = append(short, cut...)
			l.draw(&s.d, w)
		}
	}
	all := bounds(s.d)
	var moved drawing.Drawing
	moved.Place(s.d, drawing.Point{X: hair - all.X, Y: hair - all.Y})
	moved.Width, moved.Height = all.W+2*hair, all.H+2*hair
	s.d = moved
	s.origin = drawing.Point{X: hair - all.X, Y: hair - all.Y}
	return short, near
}

// outline draws the piece, broken where it is.
func (s *sketch) outline() {
	box := s.box()
	s.d.Box(box, drawing.Sectioned, drawing.NoFill)
	s.edging(box)
	for _, gap := range s.x.breaks {
		from, to := gap.from, gap.to
		if s.levelTurned {
			from, to = box.W-gap.to, box.W-gap.from
		}
		breakAcross(&s.d, false, stretch{from, to}, box.Y, box.Bottom())
	}
	for _, gap := range s.y.breaks {
		from, to := gap.from, gap.to
		if !s.uprightTurned {
			from, to = box.H-gap.to, box.H-gap.from
		}
		breakAcross(&s.d, true, stretch{from, to}, box.X, box.Right())
	}
}

// breakAcross leaves a gap in a piece between two zigzag lines, which run from
// one place to another, level or upright.
func breakAcross(d *drawing.Drawing, level bool, gap stretch, from, to float64) {
	const beyond = 1.2
	point := func(along, across float64) drawing.Point {
		if level {
			return drawing.Point{X: along, Y: across}
		}
		return drawing.Point{X: across, Y: along}
	}
	a, b := point(from-0.5, gap.from), point(to+0.5, gap.to)
	d.Box(drawing.Rect{X: a.X, Y: a.Y, W: b.X - a.X, H: b.Y - a.Y}, drawing.NoPen, drawing.White)
	for _, at := range []float64{gap.from, gap.to} {
		breakLine(d, point, from-beyond, to+beyond, at)
	}
}

// breakLine is straight with a zigzag in the middle.
func breakLine(d *drawing.Drawing, point func(along, across float64) drawing.Point, from, to, at float64) {
	mid := (from + to) / 2
	path := []drawing.Point{point(from, at), point(mid-zigzag/2, at), point(mid-zigzag/4, at-zigzag/2),
		point(mid+zigzag/4, at+zigzag/2), point(mid+zigzag/2, at), point(to, at)}
	for i := range path[1:] {
		d.Line(path[i], path[i+1], drawing.Narrow)
	}
}

// bounds is the paper that marks cover.
func bounds(d drawing.Drawing) drawing.Rect {
	var all drawing.Rect
	first := true
	add := func(r drawing.Rect) {
		if first {
			all, first = r, false
		}
		x, y := min(all.X, r.X), min(all.Y, r.Y)
		all = drawing.Rect{X: x, Y: y, W: max(all.Right(), r.Right()) - x, H: max(all.Bottom(), r.Bottom()) - y}
	}
	for _, m := range d.Marks {
		switch m := m.(type) {
		case drawing.Line:
			add(drawing.Rect{X: m.From.X, Y: m.From.Y})
			add(drawing.Rect{X: m.To.X, Y: m.To.Y})
		case drawing.Polygon:
			for _, p := range m.Points {
				add(drawing.Rect{X: p.X, Y: p.Y})
			}
		case drawing.Disc:
			add(drawing.Rect{X: m.Center.X - m.Radius, Y: m.Center.Y - m.Radius, W: 2 * m.Radius, H: 2 * m.Radius})
		case drawing.Hatch:
			add(m.Area)
		case drawing.Text:
			add(m.Box())
		}
	}
	return all
}

// line is one of the words above or below a figure.
type line struct {
	text string
	bold bool
}

func (l line) style(size float64) (drawing.Face, float64) {
	if l.bold {
		return drawing.Bold, captionSize
	}
	return drawing.Regular, size
}

func textHeight(lines []line, size, width float64) float64 {
	h := 0.0
	for _, l := range lines {
		face, size := l.style(size)
		h += float64(len(drawing.Wrap(l.text, face, size, width))) * drawing.LineHeight(size)
	}
	return h
}

// captioned puts words above and below a picture.
func (s Subject) captioned(at drawn, picture drawing.Drawing, above, below []line, size, width float64) drawn {
	wide := min(width, max(picture.Width, narrowest))
	var d drawing.Drawing
	d.Width = max(wide, picture.Width)
	y := 0.0
	write := func(lines []line) {
		for _, l := range lines {
			face, size := l.style(size)
			for _, text := range drawing.Wrap(l.text, face, size, wide-2*hair) {
				rise := max(drawing.Rise(size), drawing.RiseOf(text, face, size))
				d.Text(drawing.Text{At: drawing.Point{X: hair, Y: y + hair + rise}, String: text, Size: size, Face: face})
				y += max(drawing.LineHeight(size), drawing.HeightOf(text, face, size)+2*hair)
			}
		}
	}
	write(above)
	y += 1
	d.Place(picture, drawing.Point{Y: y})
	at.box.Y += y
	y += picture.Height
	if len(below) > 0 {
		y += 1
		write(below)
	}
	d.Height = y + hair
	at.Drawing = d
	return at
}

// lengthOf is a length on the paper at 1:ratio, in mm.
func lengthOf(l stock.Length, ratio int) float64 {
	return float64(l) / float64(stock.Millimeter) / float64(ratio)
}
