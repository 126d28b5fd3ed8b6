package marksheet

import (
	"cmp"
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
//	|   - - B - -   |  joining line, the same as the first of the next strip
//	|------- 702 slide
//	|------- 570.6 slide
//	|   - - A - -   |
//	 tab
const (
	stickWide = 29.0 // mm of a strip
	stickGap  = 2.0  // between two strips
	stickTick = 8.0  // length of the line at a position
	stickTab  = 7.0  // paper beyond a joining line
	stickPast = 15.0 // of the stick beyond its last position
	stickHead = 14.0 // for the words above a strip
	stickSize = 9.0  // pt
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
	of          int
	number      int // of this stick, from 1
	from, to    float64
	first, last bool
}

// Sticks are pages of strips at full size, each no larger than a room in mm.
func (s Subject) Sticks(width, height float64) []drawing.Drawing {
	all := s.sticks()
	step := height - stickHead - 2*stickTab
	var strips []strip
	for i, st := range all {
		end := lengthOf(st.ticks[len(st.ticks)-1].at, 1) + stickPast
		n := int(math.Ceil(end / step))
		for k := range n {
			strips = append(strips, strip{i, k + 1, float64(k) * step, min(end, float64(k+1)*step), k == 0, k == n-1})
		}
	}
	columns := max(1, int((width+stickGap)/(stickWide+stickGap)))
	var pages []drawing.Drawing
	for page := range slices.Chunk(strips, columns) {
		d := drawing.Drawing{Width: width, Height: height}
		for i, p := range page {
			s.strip(&d, all[p.of], p, float64(i)*(stickWide+stickGap))
		}
		pages = append(pages, d)
	}
	return pages
}

// strip draws one, its lower end at the foot of the page.
func (s Subject) strip(d *drawing.Drawing, st stick, p strip, x float64) {
	foot := d.Height - stickTab
	y := func(at float64) float64 { return foot - (at - p.from) }
	top := y(p.to)
	words := drawing.Wrap(st.title, drawing.Bold, drawing.SmallestSize, stickWide-1)
	lines := int((stickHead - 1) / drawing.LineHeight(drawing.SmallestSize))
	if len(words) > lines {
		words = words[:lines]
		words[lines-1] = drawing.Shorten(words[lines-1]+" …", drawing.Bold, drawing.SmallestSize, stickWide-1)
	}
	head := top - stickTab - stickHead
	for i, line := range words {
		d.Text(drawing.Text{At: drawing.Point{X: x + 0.5, Y: head + 0.5 + drawing.RiseOf(line, drawing.Bold, drawing.SmallestSize) + float64(i)*drawing.LineHeight(drawing.SmallestSize)},
			String: line, Size: drawing.SmallestSize, Face: drawing.Bold})
	}
	low := d.Height
	if p.first {
		low = foot
	}
	for _, side := range []float64{x, x + stickWide} {
		d.Line(drawing.Point{X: side, Y: top - stickTab}, drawing.Point{X: side, Y: low}, drawing.Fine)
	}
	s.joint(d, x, foot, p.number-1, p.first, st.from, true)
	if !p.last {
		s.joint(d, x, top, p.number, false, "", false)
	}
	var wanted, extents []float64
	var ticks []stickMark
	for _, t := range st.ticks {
		if at := lengthOf(t.at, 1); at >= p.from && (at < p.to || p.last) {
			ticks = append(ticks, t)
			wanted, extents = append(wanted, y(at)), append(extents, drawing.Height(stickSize)+lineHair)
		}
	}
	slices.Reverse(ticks) // from above
	slices.Reverse(wanted)
	places := drawing.Spread(wanted, extents, top+0.6, foot-0.6)
	for i, t := range ticks {
		d.Line(drawing.Point{X: x, Y: wanted[i]}, drawing.Point{X: x + stickTick, Y: wanted[i]}, drawing.FineCut)
		d.Line(drawing.Point{X: x + stickTick, Y: wanted[i]}, drawing.Point{X: x + stickTick + 1.6, Y: places[i]}, drawing.Fine)
		base := places[i] + (drawing.Rise(stickSize)-drawing.Descent*stickSize*25.4/72)/2
		d.Text(drawing.Text{At: drawing.Point{X: x + stickTick + 2, Y: base},
			String: drawing.Shorten(t.text, drawing.Regular, stickSize, stickWide-stickTick-2.2), Size: stickSize})
	}
}

// joint is the line at an end of a strip: the end of the piece itself, or where it is joined to
// the next strip, with the number of the joint on the tab.
func (s Subject) joint(d *drawing.Drawing, x, y float64, number int, end bool, from string, below bool) {
	if end {
		d.Line(drawing.Point{X: x, Y: y}, drawing.Point{X: x + stickWide, Y: y}, drawing.Outline)
		d.Text(drawing.Text{At: drawing.Point{X: x + stickWide/2, Y: y + 1 + drawing.Rise(stickSize)}, String: from, Size: stickSize, Align: drawing.Center})
		return
	}
	d.Line(drawing.Point{X: x, Y: y}, drawing.Point{X: x + stickWide, Y: y}, drawing.Dashed)
	base := y - 1.6
	if below {
		base = y + 1 + drawing.Rise(stickSize)
	}
	d.Text(drawing.Text{At: drawing.Point{X: x + stickWide/2, Y: base}, String: "join " + strconv.Itoa(number), Size: stickSize, Align: drawing.Center})
}

// Scale is a line to measure, which tells whether the printer kept the scale: 100 mm or 4 in
// long.
func (s Subject) Scale() drawing.Drawing {
	long, name := 100.0, "100 mm"
	if s.Ruler.Units == stock.Inches {
		long, name = 4*25.4, "4 in"
	}
	d := drawing.Drawing{Width: 190, Height: 6}
	d.Line(drawing.Point{X: 0.2, Y: 3}, drawing.Point{X: 0.2 + long, Y: 3}, drawing.Narrow)
	for _, x := range []float64{0.2, 0.2 + long} {
		d.Line(drawing.Point{X: x, Y: 0.5}, drawing.Point{X: x, Y: 5.5}, drawing.Narrow)
	}
	d.Text(drawing.Text{At: drawing.Point{X: long + 4, Y: 3 + drawing.Rise(9)/2}, String: "This line is " + name + " long: measure it.", Size: 9})
	return d
}
