// Package label draws the labels of pieces: a grid of them on a page, to be cut
// apart or printed on sticky paper. It knows no plans.
package label

import (
	"sawbill/report/internal/drawing"
)

// Label is what one label says. What is empty takes no room.
type Label struct {
	Mark string // in the largest type
	Name string
	Of   string // which of how many alike: "1 of 3"
	// Cut and Finished are the sizes before and after milling.
	Cut, Finished string
	Next          string // what is done next, with its setting: "plane to 21"
	Where         string // where the piece comes from: "layout 2, cut 7"
	// Lines are remarks, the weightiest first: what finds no room is left out
	// from the end, with an ellipsis.
	Lines []string
	Fill  string // a word before a rule to write on: "date"
	Piece Piece
	// Job and Plan, at the foot, tell from which print the label is. A long Job
	// is shortened, Plan is not.
	Job, Plan string
}

// Margins and type, in mm and points.
const (
	pad      = 1.9 // between the cut line and what is written
	headHigh = 9.5
	sizeHigh = 6.2 // a size in two lines at the most
	nextHigh = 8.2 // what is next, likewise
	column   = 2.0 // between what stands side by side
	ofSize   = 9.0
	footSize = drawing.SmallestSize
)

var (
	markSizes   = []float64{30, 26, 22, 18, 14, 11, 9, 7}
	nameSizes   = []float64{11, 10, 9, 8, 7}
	nextSizes   = []float64{14, 13, 12, 11, 10, 9}
	cutSizes    = []float64{11, 10, 9, 8, 7}
	finishSizes = []float64{9, 8, 7}
	lineSizes   = []float64{9, 8.5, 8, 7.5, 7}
)

// draw writes the label into the room within the cut lines.
func (l Label) draw(d *drawing.Drawing, cell drawing.Rect) {
	room := cell.Inset(pad)
	l.head(d, drawing.Rect{X: room.X, Y: room.Y, W: room.W, H: headHigh})
	bottom := room.Bottom() - l.foot(d, room)
	y := room.Y + headHigh + 0.6
	y += one(d, l.Cut, drawing.Bold, cutSizes, drawing.Rect{X: room.X, Y: y, W: room.W, H: sizeHigh})
	rest := drawing.Rect{X: room.X, Y: y, W: room.W, H: bottom - y}
	if w := l.Piece.draw(d, rest); w > 0 {
		rest.W -= w + column
	}
	if l.Fill != "" {
		base := rest.Bottom() - 0.8
		d.Text(drawing.Text{At: drawing.Point{X: rest.X, Y: base}, String: l.Fill, Size: lineSizes[0]})
		from := rest.X + drawing.Width(l.Fill, drawing.Regular, lineSizes[0]) + column
		d.Line(drawing.Point{X: from, Y: base}, drawing.Point{X: rest.Right(), Y: base}, drawing.Narrow)
		rest.H -= 6
	}
	for _, said := range []struct {
		text  string
		face  drawing.Face
		sizes []float64
	}{{l.Finished, drawing.Regular, finishSizes}, {l.Next, drawing.Bold, nextSizes}} {
		high := one(d, said.text, said.face, said.sizes, drawing.Rect{X: rest.X, Y: rest.Y, W: rest.W, H: min(nextHigh, rest.H)})
		rest.Y, rest.H = rest.Y+high, rest.H-high
	}
	rest.Y, rest.H = rest.Y+0.4, rest.H-0.4
	l.remarks(d, rest)
}

// head is the mark, the name beside it, and which of how many.
func (l Label) head(d *drawing.Drawing, room drawing.Rect) {
	of := drawing.Width(l.Of, drawing.Bold, ofSize)
	if l.Of != "" {
		d.Text(drawing.Text{At: drawing.Point{X: room.Right(), Y: room.Y + drawing.Rise(ofSize)}, String: l.Of,
			Size: ofSize, Face: drawing.Bold, Align: drawing.Right})
		of += column
	}
	size := fitting(l.Mark, drawing.Bold, markSizes, room.W*0.4, room.H)
	mark := drawing.Shorten(l.Mark, drawing.Bold, size, room.W*0.4)
	d.Text(drawing.Text{At: drawing.Point{X: room.X, Y: room.Y + drawing.RiseOf(mark, drawing.Bold, size)},
		String: mark, Size: size, Face: drawing.Bold})
	left := drawing.Width(mark, drawing.Bold, size) + column
	room.X, room.W = room.X+left, room.W-left-of
	write(d, []string{l.Name}, drawing.Bold, nameSizes, room)
}

// foot tells the print, and how high that is.
func (l Label) foot(d *drawing.Drawing, room drawing.Rect) float64 {
	if l.Job == "" && l.Plan == "" {
		return 0
	}
	w := drawing.Width(l.Plan, drawing.Regular, footSize)
	if l.Plan != "" {
		w += column
	}
	job := drawing.Shorten(l.Job, drawing.Regular, footSize, room.W-w)
	fall := max(drawing.FallOf(job+l.Plan, drawing.Regular, footSize), drawing.Descent*footSize*0.3528)
	base := room.Bottom() - fall
	d.Text(drawing.Text{At: drawing.Point{X: room.X, Y: base}, String: job, Size: footSize})
	d.Text(drawing.Text{At: drawing.Point{X: room.Right(), Y: base}, String: l.Plan, Size: footSize, Align: drawing.Right})
	return drawing.RiseOf(job+l.Plan, drawing.Regular, footSize) + fall + 0.6
}

// remarks writes where the piece comes from, in bold, and the remarks below.
func (l Label) remarks(d *drawing.Drawing, room drawing.Rect) {
	if l.Where != "" {
		h := one(d, l.Where, drawing.Bold, lineSizes, room)
		room.Y, room.H = room.Y+h, room.H-h
	}
	write(d, l.Lines, drawing.Regular, lineSizes, room)
}
