package marksheet

import (
	"fmt"
	"slices"

	"sawbill/report/internal/drawing"
	"sawbill/stock"
	"sawbill/stock/casework"
)

const (
	bodyWidth   = 9.0 // mm of a mate beyond its fingers
	leastFinger = 4.0 // mm of paper along a finger
	mostFinger  = 25.0
	clearFinger = 4.0 // across a finger, where there is room
)

// pairRatios are finer, so that the figures of many fingers find room.
var pairRatios = []int{500, 200, 100, 50, 20, 10, 5, 4, 3, 2, 1}

// drawPair draws the mates of a box joint side by side, as they come together: the
// one that starts with a finger on the left, the figures that are good for both in
// between.
func (s Subject) drawPair(p pair, width, height float64) (at drawn) {
	for _, size := range textSizes {
		if at = s.drawPairAt(p, size, width, height); len(at.short) == 0 {
			break
		}
	}
	return at
}

func (s Subject) drawPairAt(p pair, textSize, width, height float64) drawn {
	k := p[0].marks[0]
	axis, _ := measured(k.Measure)
	size := p[0].solid.Size[axis]
	edges := []stock.Length{0}
	for _, at := range k.At {
		edges = append(edges, fromZero(k.Measure, at, size))
	}
	edges = append(edges, size)
	slices.Sort(edges)
	above, below := s.pairWords(p)
	most := height - textHeight(above, textSize, narrowest) - textHeight(below, textSize, narrowest) - headRoom/2
	ratio := pairRatios[0]
	for _, r := range pairRatios {
		if lengthOf(size, r) > most && r != pairRatios[0] {
			break
		}
		ratio = r
		closest := size
		for i := range edges[1:] {
			closest = min(closest, edges[i+1]-edges[i])
		}
		if lengthOf(closest, r) >= clearFinger && lengthOf(size, r) >= least/2 {
			break
		}
	}
	at := drawn{ratio: ratio, y: folded(size, nil, ratio, lengthOf(size, ratio)+1, unbroken)}
	high := at.y.length()
	l := &lane{size: textSize, from: k.From, origin: high}
	for i, edge := range edges[1 : len(edges)-1] {
		l.ticks = append(l.ticks, tick{at: high - at.y.at(edge), text: s.Ruler.Print(k.At[i]), between: i > 0 && i < len(edges)-3})
	}
	half := drawing.Height(textSize) / 2
	w, short := l.write(room{-half, high + half})
	if len(short) > 0 {
		at.short = []casework.Mark{k, p[1].marks[0]}
	}
	between := w.depth + laneAt + leader - 1
	var d drawing.Drawing
	left := s.mate(&d, p[0], edges, at.y, 0, true)
	right := left + between
	s.mate(&d, p[1], edges, at.y, right, false)
	l.edge = left
	for i := range l.ticks {
		l.ticks[i].start = left
	}
	l.draw(&d, w)
	for i, t := range l.ticks {
		d.Line(drawing.Point{X: right - laneAt, Y: t.at}, drawing.Point{X: right - 0.6, Y: t.at}, drawing.Fine)
		d.Line(drawing.Point{X: right - laneAt - 1.4, Y: w.at[i]}, drawing.Point{X: right - laneAt, Y: t.at}, drawing.Fine)
	}
	all := bounds(d)
	var moved drawing.Drawing
	moved.Place(d, drawing.Point{X: hair - all.X, Y: hair - all.Y})
	moved.Width, moved.Height = all.W+2*hair, all.H+2*hair
	above[0].text += fmt.Sprintf(", 1:%d", ratio)
	at.box = drawing.Rect{X: hair - all.X, Y: hair - all.Y, W: left, H: high}
	return s.captioned(at, moved, above, below, textSize, width)
}

// mate draws one end of a piece from x on, its fingers on the right or on the
// left, and returns where it ends.
func (s Subject) mate(d *drawing.Drawing, f figure, edges []stock.Length, up fold, x float64, onRight bool) float64 {
	k := f.marks[0]
	deep := max(leastFinger, min(mostFinger, up.mm(k.Depth)))
	end := x + bodyWidth + deep
	across := func(from float64) float64 { // from the tips of the fingers
		if onRight {
			return end - from
		}
		return x + from
	}
	high := up.length()
	contour := []drawing.Point{{X: across(deep + bodyWidth), Y: high}}
	for i := range edges[1:] {
		gap := (i%2 == 1) != k.GapFirst
		from, to := high-up.at(edges[i]), high-up.at(edges[i+1])
		depth := 0.0
		if gap {
			depth = deep
			r := drawing.Rect{X: min(across(0), across(deep)), Y: to, W: deep, H: from - to}
			d.Hatch(r)
			d.Box(r, drawing.Fine, drawing.NoFill)
		}
		contour = append(contour, drawing.Point{X: across(depth), Y: from}, drawing.Point{X: across(depth), Y: to})
	}
	contour = append(contour, drawing.Point{X: across(deep + bodyWidth), Y: 0})
	for i := range contour[1:] {
		d.Line(contour[i], contour[i+1], drawing.Sectioned)
	}
	upright := func(along, over float64) drawing.Point { return drawing.Point{X: over, Y: along} }
	breakLine(d, upright, -1.2, high+1.2, across(deep+bodyWidth))
	return end
}

// pairWords are those above and below a box joint.
func (s Subject) pairWords(p pair) (above, below []line) {
	k := p[0].marks[0]
	above = append(above, line{text: "Box joint", bold: true})
	for i, f := range p {
		side := [2]string{"left", "right"}[i]
		above = append(above, line{text: side + ", " + s.parts(f) + ": " + f.marks[0].Note})
	}
	deep := s.Ruler.Print(k.Depth) + " deep"
	if other := p[1].marks[0].Depth; other != k.Depth {
		deep = fmt.Sprintf("%s deep on the left, %s on the right", s.Ruler.Print(k.Depth), s.Ruler.Print(other))
	}
	return above, []line{{text: "from the " + k.From.String() + ", at " + p[0].face.String() + "; hatched is cut away, " + deep}}
}
