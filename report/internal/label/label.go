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
	pad       = 1.9 // between the cut line and what is written
	headHigh  = 9.5
	headShare = 0.27 // of a low label, at most
	fillHigh  = 6.0  // of the rule to write on
	sizeHigh  = 6.2  // a size in two lines at the most
	nextHigh  = 8.2  // what is next, likewise
	column    = 2.0  // between what stands side by side
	ofSize    = 9.0
	footSize  = drawing.SmallestSize
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
	head := drawing.Rect{X: room.X, Y: room.Y, W: room.W, H: min(headHigh, headShare*cell.H)}
	var size, picture drawing.Drawing
	y := head.Bottom() + 0.6
	y += one(&size, l.Cut, drawing.Bold, cutSizes, drawing.Rect{X: room.X, Y: y, W: room.W, H: sizeHigh})
	rest := drawing.Rect{X: room.X, Y: y, W: room.W, H: room.Bottom() - l.foot(d, room) - y}
	taken := l.Piece.draw(&picture, rest)
	l.head(d, head, l.Piece.Inside && taken.W == 0)
	d.Place(size, drawing.Point{})
	d.Place(picture, drawing.Point{})
	if l.Fill != "" {
		base := rest.Bottom() - 0.8
		d.Text(drawing.Text{At: drawing.Point{X: rest.X, Y: base}, String: l.Fill, Size: lineSizes[0]})
		from := rest.X + drawing.Width(l.Fill, drawing.Regular, lineSizes[0]) + column
		d.Line(drawing.Point{X: from, Y: base}, drawing.Point{X: rest.X + beside(rest, taken, base-fillHigh), Y: base}, drawing.Narrow)
		rest.H -= fillHigh
	}
	for _, said := range []struct {
		text  string
		face  drawing.Face
		sizes []float64
	}{{l.Finished, drawing.Regular, finishSizes}, {l.Next, drawing.Bold, nextSizes}} {
		high := one(d, said.text, said.face, said.sizes, drawing.Rect{X: rest.X, Y: rest.Y, W: beside(rest, taken, rest.Y), H: min(nextHigh, rest.H)})
		rest.Y, rest.H = rest.Y+high, rest.H-high
	}
	rest.Y, rest.H = rest.Y+0.4, rest.H-0.4
	l.remarks(d, rest, taken)
}

// head is the mark, the name beside it, and which of how many. The inside is told below
// that where the label has no room for the picture.
func (l Label) head(d *drawing.Drawing, room drawing.Rect, inside bool) {
	of, y := 0.0, room.Y
	right := func(s string) {
		if s == "" {
			return
		}
		d.Text(drawing.Text{At: drawing.Point{X: room.Right(), Y: y + drawing.Rise(ofSize)}, String: s, Size: ofSize, Face: drawing.Bold, Align: drawing.Right})
		y += drawing.LineHeight(ofSize)
		of = max(of, drawing.Width(s, drawing.Bold, ofSize)+column)
	}
	right(l.Of)
	if inside {
		right(insideWord)
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

// remarks writes where the piece comes from, in bold, and the remarks below, around the
// picture.
func (l Label) remarks(d *drawing.Drawing, room, picture drawing.Rect) {
	if l.Where != "" {
		where := room
		where.W = beside(room, picture, room.Y)
		h := one(d, l.Where, drawing.Bold, lineSizes, where)
		room.Y, room.H = room.Y+h, room.H-h
	}
	flow(d, l.Lines, drawing.Regular, lineSizes, room, picture)
}
