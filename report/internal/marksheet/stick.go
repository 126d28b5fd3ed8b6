package marksheet

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strconv"

	"sawbill/report/internal/drawing"
	"sawbill/stock"
	"sawbill/stock/casework"
)

// A story stick has the heights of slides and pin rows at full size, so that they are carried
// to the piece without measuring. It is printed in strips that are joined on their lines:
//
//	|  - join 2 -   |  joining line, the same as the first of the next strip
//	|------- 702 slide
//	|    A: side    |
//	|------- 570.6 slide
//	|  - join 1 -   |
//	 tab
//
// No two joining lines of a page of sticks have one number, so strips of several sticks that
// were cut apart cannot be mixed up.
const (
	stickWide  = 29.0 // mm of a strip
	stickGap   = 2.0  // between two strips
	stickTick  = 8.0  // length of the line at a position
	stickTab   = 7.0  // paper beyond a joining line
	stickPast  = 15.0 // of the stick beyond its last position
	leastPast  = 3.0  // the same, where more would take a strip
	stickSize  = 9.0  // pt
	stickLines = 5    // of the name, at most
)

// stick is one face's positions, from the end that they are measured from.
type stick struct {
	title, from string
	ticks       []stickMark
}

type stickMark struct {
	at   stock.Length
	text string
}

// sticks lists the faces with slide lines or rows of pins; those with the same positions are
// one stick.
func (s Subject) sticks() []stick {
	faces, _, _ := s.figures()
	var all []stick
	for _, f := range faces {
		st := stick{title: s.parts(f)}
		if names := s.pieceNames(f); names != "" {
			st.title += ", " + names
		}
		st.title += ", " + f.face.String()
		for _, k := range f.marks {
			if k.What != casework.ShelfPins && k.What != casework.SlideLine || f.face.Side == casework.Outer {
				continue
			}
			st.from = k.From.String()
			for _, at := range k.At {
				st.ticks = append(st.ticks, stickMark{at, s.Ruler.Print(at) + " " + k.Kind()})
			}
		}
		if st.ticks == nil {
			continue
		}
		slices.SortStableFunc(st.ticks, func(a, b stickMark) int { return cmp.Compare(a.at, b.at) })
		st.ticks = slices.Compact(st.ticks)
		if same := slices.IndexFunc(all, func(o stick) bool { return o.from == st.from && slices.Equal(o.ticks, st.ticks) }); same >= 0 {
			all[same].title += "; " + st.title
			continue
		}
		all = append(all, st)
	}
	return all
}

// strip is a piece of a stick, in mm from its end.
type strip struct {
	stick
	from, to    float64
	foot        int // number of the joining line at its foot; that at its top follows
	first, last bool
}

// Sticks are pages of strips at full size, with a line to measure, which tells whether the
// printer kept the scale.
type Sticks struct {
	Pages []drawing.Drawing
	Scale drawing.Drawing
}

// Sticks draws the story sticks of a case on pages no larger than a room in mm.
func (s Subject) Sticks(width, height float64) Sticks {
	step := s.stickStep(height)
	var strips []strip
	joint := 0
	for _, st := range s.sticks() {
		last := lengthOf(st.ticks[len(st.ticks)-1].at, 1)
		n := int(math.Ceil((last + leastPast) / step))
		end := min(last+stickPast, float64(n)*step)
		for k := range n {
			strips = append(strips, strip{st, float64(k) * step, min(end, float64(k+1)*step), joint + k, k == 0, k == n-1})
		}
		joint += n - 1
	}
	columns := max(1, int((width+stickGap)/(stickWide+stickGap)))
	all := Sticks{Scale: s.scale(step)}
	for page := range slices.Chunk(strips, columns) {
		d := drawing.Drawing{Width: width, Height: height}
		for i, p := range page {
			p.draw(&d, float64(i)*(stickWide+stickGap))
		}
		all.Pages = append(all.Pages, d)
	}
	return all
}

// stickStep is how far the joining lines of a strip lie apart in mm: a length that is easily
// measured, a multiple of 10 mm or half an inch.
func (s Subject) stickStep(height float64) float64 {
	unit := 10.0
	if s.Ruler.Units == stock.Inches {
		unit = 12.7
	}
	return unit * math.Floor((height-2*stickTab)/unit+1e-9)
}

// draw draws a strip, its lower end at the foot of the page.
func (p strip) draw(d *drawing.Drawing, x float64) {
	foot := d.Height - stickTab
	y := func(at float64) float64 { return foot - (at - p.from) }
	top, low := y(p.to), d.Height
	if p.first {
		low = foot
	}
	for _, side := range []float64{x, x + stickWide} {
		d.Line(drawing.Point{X: side, Y: top - stickTab}, drawing.Point{X: side, Y: low}, drawing.Fine)
	}
	if p.first {
		d.Line(drawing.Point{X: x, Y: foot}, drawing.Point{X: x + stickWide, Y: foot}, drawing.Outline)
		d.Text(drawing.Text{At: drawing.Point{X: x + stickWide/2, Y: foot + 1 + drawing.Rise(stickSize)}, String: p.stick.from, Size: stickSize, Align: drawing.Center})
	} else {
		joint(d, x, foot, foot+1+drawing.Rise(stickSize), p.foot)
	}
	if !p.last {
		joint(d, x, top, top-1.6, p.foot+1)
	}
	var wanted, extents []float64
	var ticks []stickMark
	for _, t := range slices.Backward(p.ticks) { // from above
		if at := lengthOf(t.at, 1); at >= p.from && (at < p.to || p.last) {
			ticks = append(ticks, t)
			wanted, extents = append(wanted, y(at)), append(extents, drawing.Height(stickSize)+lineHair)
		}
	}
	places := drawing.Spread(wanted, extents, top+0.6, foot-0.6)
	begin, free := top, drawing.Rect{X: x, Y: top, W: stickWide} // the largest free stretch
	for i, t := range ticks {
		d.Line(drawing.Point{X: x, Y: wanted[i]}, drawing.Point{X: x + stickTick, Y: wanted[i]}, drawing.FineCut)
		d.Line(drawing.Point{X: x + stickTick, Y: wanted[i]}, drawing.Point{X: x + stickTick + 1.6, Y: places[i]}, drawing.Fine)
		base := places[i] + (drawing.Rise(stickSize)-drawing.Descent*stickSize*25.4/72)/2
		d.Text(drawing.Text{At: drawing.Point{X: x + stickTick + 2, Y: base},
			String: drawing.Shorten(t.text, drawing.Regular, stickSize, stickWide-stickTick-2.2), Size: stickSize})
		half := extents[i] / 2
		if end := min(wanted[i], places[i]-half); end-begin > free.H {
			free.Y, free.H = begin, end-begin
		}
		begin = max(wanted[i], places[i]+half)
	}
	if foot-begin > free.H {
		free.Y, free.H = begin, foot-begin
	}
	p.name(d, free)
}

// name writes whose stick it is in the middle of a free stretch, if there is room.
func (p strip) name(d *drawing.Drawing, free drawing.Rect) {
	const side = 1.0 // mm beside it
	lines := drawing.Wrap(p.title, drawing.Bold, stickSize, free.W-2*side)
	if len(lines) > stickLines {
		lines = lines[:stickLines]
		lines[stickLines-1] = drawing.Shorten(lines[stickLines-1]+" …", drawing.Bold, stickSize, free.W-2*side)
	}
	high := 0.0
	for _, l := range lines {
		high += max(drawing.LineHeight(stickSize), drawing.HeightOf(l, drawing.Bold, stickSize)+lineHair)
	}
	if high+4*side > free.H {
		return
	}
	at := free.Center().Y - high/2
	for _, l := range lines {
		d.Text(drawing.Text{At: drawing.Point{X: free.Center().X, Y: at + drawing.RiseOf(l, drawing.Bold, stickSize)}, String: l, Size: stickSize, Face: drawing.Bold, Align: drawing.Center})
		at += max(drawing.LineHeight(stickSize), drawing.HeightOf(l, drawing.Bold, stickSize)+lineHair)
	}
}

// joint is the line on which a strip is joined to the next one, with its number on the tab.
func joint(d *drawing.Drawing, x, y, base float64, number int) {
	d.Line(drawing.Point{X: x, Y: y}, drawing.Point{X: x + stickWide, Y: y}, drawing.Dashed)
	d.Text(drawing.Text{At: drawing.Point{X: x + stickWide/2, Y: base}, String: "join " + strconv.Itoa(number), Size: stickSize, Align: drawing.Center})
}

// scale is a line to measure, 100 mm or 4 in long. Paper may be fed otherwise than it is
// printed across, so it also tells how far the joining lines lie apart.
func (s Subject) scale(step float64) drawing.Drawing {
	long, said := 100.0, fmt.Sprintf("100 mm, joining lines %.0f mm", step)
	if s.Ruler.Units == stock.Inches {
		long, said = 4*25.4, fmt.Sprintf("4 in, joining lines %s in", s.Ruler.Print(stock.Length(math.Round(2*step/25.4))*stock.Inch/2))
	}
	d := drawing.Drawing{Width: 186, Height: 6}
	d.Line(drawing.Point{X: 0.2, Y: 3}, drawing.Point{X: 0.2 + long, Y: 3}, drawing.Narrow)
	for _, x := range []float64{0.2, 0.2 + long} {
		d.Line(drawing.Point{X: x, Y: 0.5}, drawing.Point{X: x, Y: 5.5}, drawing.Narrow)
	}
	d.Text(drawing.Text{At: drawing.Point{X: long + 4, Y: 3 + drawing.Rise(9)/2}, String: "Measure: this line " + said + " apart.", Size: 9})
	return d
}
