package elevation

import (
	"slices"

	"sawbill/report/internal/drawing"
	"sawbill/stock"
	"sawbill/stock/casework"
)

// measure is one dimension: between two lengths of the picture.
type measure struct{ from, to stock.Length }

// chain is a row of dimensions on one line.
type chain struct {
	side     border
	measures []measure
	labels   []string
	bay      measure // that a chain within the case stands in, from left to right
}

// border is where a chain stands.
type border int

const (
	below border = iota
	left
	right
	within // a bay, next to its left edge
)

// chains are the dimensions of a view, those next to the case first. What two
// measure on one side, as the clear depth of a case without a back is its depth, is
// told once.
func (s Subject) chains(v View) []chain {
	var all []chain
	for _, c := range s.everyChain(v) {
		if !slices.ContainsFunc(all, func(d chain) bool {
			return c.side != within && c.side == d.side && slices.Equal(c.measures, d.measures)
		}) {
			all = append(all, c)
		}
	}
	return all
}

func (s Subject) everyChain(v View) []chain {
	all := s.extent()
	whole := func(side border, axis casework.Axis) chain {
		return s.chain(side, measure{all.from[axis], all.to[axis]})
	}
	bays := s.chain(below, s.bayWidths()...)
	heights := s.chain(left, s.openingHeights(1)...)
	switch v {
	case Front:
		chains := []chain{bays, whole(below, casework.X)}
		drawers := s.baysWithDrawers()
		last := s.bayCount()
		if n := len(drawers); n > 0 {
			chains = append(chains, s.chain(right, s.frontHeights(drawers[n-1], false)...))
			if n > 1 && drawers[0] == 1 {
				chains = append(chains, s.chain(left, s.frontHeights(1, false)...))
			}
		}
		chains = append(chains, heights)
		if other := s.openingHeights(last); last > 1 && !slices.Equal(other, heights.measures) {
			chains = append(chains, s.chain(right, other...))
		}
		return append(append(chains, s.middleBays()...), whole(left, casework.Z))
	case Level:
		return []chain{bays, whole(below, casework.X), s.chain(left, s.clearDepth()...), whole(left, casework.Y)}
	case Upright:
		return []chain{s.chain(below, s.clearDepth()...), whole(below, casework.Y), s.chain(right, s.frontHeights(1, true)...), heights, whole(left, casework.Z)}
	}
	chains := []chain{whole(below, casework.Y), whole(left, casework.Z)}
	if base := s.base(); base != (measure{}) {
		chains = append([]chain{s.chain(left, base)}, chains...)
	}
	if all.from[casework.Y] < 0 { // fronts stand before the case
		chains = append([]chain{s.chain(below, measure{0, all.to[casework.Y]})}, chains...)
	}
	return chains
}

func (s Subject) chain(side border, measures ...measure) chain {
	c := chain{side: side, measures: measures}
	for _, m := range measures {
		c.labels = append(c.labels, s.Ruler.Print(m.to-m.from))
	}
	return c
}

const (
	captionSize = 9.0  // pt
	planeSize   = 9.0  // pt, of the names of sections
	firstLine   = 6.5  // mm from the case to the first line of dimensions
	overrun     = 1.2  // mm of extension line beyond it
	linePitch   = 5.5  // mm between lines, at least
	bayLane     = 5.0  // mm from the left edge of a bay to a line within it
	labelGap    = 0.7  // mm between a figure and its line
	figureGap   = 0.16 // mm to a point of size, between two figures of a chain
	hair        = 0.1  // mm of paper around all writing, for rounding
	arrows      = 6.5  // mm that a line needs for two arrowheads
)

// labelSizes are those of dimensions, in pt: the larger one where it has room.
var labelSizes = []float64{9, 7.5}

// frame holds a picture as it is drawn.
type frame struct {
	d       drawing.Drawing
	scale   int
	from    area         // of the picture, in lengths
	outline drawing.Rect // of the case on the paper
	lanes   []lane
}

// lane is a chain and where its line lies, in mm from the case.
type lane struct {
	chain
	distance float64
}

func newFrame(p picture, chains []chain, v View, scale int) *frame {
	f := &frame{scale: scale, from: p.outline}
	first := firstLine
	if v == Front { // figures stand beyond the ends of the planes
		first = planeRoom + firstLine/2
	}
	var room [4]float64
	for _, c := range chains {
		if len(c.measures) == 0 {
			continue
		}
		distance := room[c.side] + 1 + overrun
		if room[c.side] == 0 {
			distance = first
		}
		need := linePitch - 1 - overrun
		for i := range c.measures {
			if how, size := f.how(c, i); how == level {
				need = max(need, drawing.Width(c.labels[i], drawing.Regular, size)+labelGap)
			}
		}
		if c.side == within {
			distance = bayLane
		}
		if c.side == right { // turned figures stand between the case and the line
			distance += drawing.Height(labelSizes[0])
		}
		f.lanes = append(f.lanes, lane{c, distance})
		room[c.side] = distance + need
	}
	top := drawing.Height(captionSize) + 1 + planeRoom
	f.outline = drawing.Rect{X: max(room[left]+hair, planeRoom), Y: top,
		W: mm(p.outline.x2-p.outline.x1) / float64(scale), H: mm(p.outline.y2-p.outline.y1) / float64(scale)}
	f.d.Width = f.outline.Right() + max(room[right]+hair, planeRoom)
	f.d.Height = f.outline.Bottom() + max(room[below], planeRoom)
	caption := drawing.Text{At: drawing.Point{X: f.outline.X, Y: drawing.Rise(captionSize) + hair}, String: v.caption(), Size: captionSize, Face: drawing.Bold}
	f.d.Width = max(f.d.Width, caption.Box().Right()+hair)
	f.d.Text(caption)
	return f
}

func (f *frame) x(l stock.Length) float64 { return f.outline.X + mm(l-f.from.x1)/float64(f.scale) }
func (f *frame) y(l stock.Length) float64 {
	return f.outline.Bottom() - mm(l-f.from.y1)/float64(f.scale)
}

func (f *frame) rect(a area) drawing.Rect {
	return drawing.Rect{X: f.x(a.x1), Y: f.y(a.y2), W: f.x(a.x2) - f.x(a.x1), H: f.y(a.y1) - f.y(a.y2)}
}

// writing is how a figure stands at its line.
type writing int

const (
	nowhere writing = iota // no room: the tables have it
	along
	level // beside an upright line
)

// how tells how figure i of a chain is written, and how large.
func (f *frame) how(c chain, i int) (how writing, size float64) {
	room, label := f.length(c.measures[i]), c.labels[i]
	if c.side == within && f.length(c.bay) < bayLane+linePitch {
		return nowhere, 0
	}
	for _, size := range labelSizes {
		if drawing.Width(label, drawing.Regular, size)+figureGap*size <= room {
			return along, size
		}
	}
	for _, size := range labelSizes {
		if (c.side == left || c.side == right) && drawing.Height(size)+0.3 <= room {
			return level, size
		}
	}
	return nowhere, 0
}

// length is that of a measure on the paper.
func (f *frame) length(m measure) float64 { return mm(m.to-m.from) / float64(f.scale) }

// drawChains draws all lines first: they break off at a figure.
func (f *frame) drawChains() {
	for _, l := range f.lanes {
		for i, m := range l.measures {
			if how, _ := f.how(l.chain, i); how != nowhere {
				f.drawMeasure(l, m)
			}
		}
	}
	for _, l := range f.lanes {
		for i := range l.measures {
			f.writeMeasure(l, i)
		}
	}
}

// line is where a dimension's line and the case's edge lie: an x, or below the case
// a y.
func (f *frame) line(l lane) (at, edge, sign float64) {
	switch l.side {
	case below:
		return f.outline.Bottom() + l.distance, f.outline.Bottom(), 1
	case left:
		return f.outline.X - l.distance, f.outline.X, -1
	case within:
		return f.x(l.bay.from) + l.distance, f.x(l.bay.from), 1
	}
	return f.outline.Right() + l.distance, f.outline.Right(), 1
}

func (f *frame) drawMeasure(l lane, m measure) {
	at, edge, sign := f.line(l)
	point := func(across, off float64) drawing.Point { return drawing.Point{X: off, Y: across} }
	from, to := f.y(m.from), f.y(m.to)
	if l.side == below {
		point = func(across, off float64) drawing.Point { return drawing.Point{X: across, Y: off} }
		from, to = f.x(m.from), f.x(m.to)
	}
	for _, end := range []float64{from, to} {
		f.d.Line(point(end, edge+sign*0.8), point(end, at+sign*overrun), drawing.Fine)
	}
	a, b := point(from, at), point(to, at)
	f.d.Line(a, b, drawing.Fine)
	if max(from-to, to-from) < arrows { // dots, where arrowheads have no room
		f.d.Disc(a, 0.45, drawing.NoPen, drawing.Black)
		f.d.Disc(b, 0.45, drawing.NoPen, drawing.Black)
		return
	}
	f.d.Arrow(a, b)
	f.d.Arrow(b, a)
}

func (f *frame) writeMeasure(l lane, i int) {
	m, label := l.measures[i], l.labels[i]
	at, _, sign := f.line(l)
	how, size := f.how(l.chain, i)
	fall := drawing.FallOf(label, drawing.Regular, size)
	t := drawing.Text{String: label, Size: size, Align: drawing.Center, Ground: true}
	switch {
	case how == nowhere:
		return
	case l.side == below:
		t.At = drawing.Point{X: (f.x(m.from) + f.x(m.to)) / 2, Y: at - labelGap - fall}
	case how == along:
		t.Turned = true
		t.At = drawing.Point{X: at - labelGap - fall, Y: (f.y(m.from) + f.y(m.to)) / 2}
	default:
		t.Align = drawing.Left
		if l.side == left {
			t.Align = drawing.Right
		}
		t.At = drawing.Point{X: at + sign*labelGap, Y: (f.y(m.from)+f.y(m.to))/2 + drawing.Rise(size)/2}
	}
	f.d.Text(t)
}
