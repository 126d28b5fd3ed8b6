package label

import "sawbill/report/internal/drawing"

// Grain is how the grain runs along a piece.
type Grain int

const (
	NoGrain Grain = iota
	Along         // the length
	Across        // the width
)

// Piece is a small picture of the piece below the label, its length across the
// label: the way of the grain, and what the edge and the end are that lie at the
// label's lower edge and at its right end.
type Piece struct {
	Grain     Grain
	Edge, End string // "front", "top"; one word each
}

const (
	pieceWide, pieceHigh = 15.0, 7.6
	pieceGap             = 0.7 // mm between the outline and a word
	pieceSize            = drawing.SmallestSize
)

// draw puts the picture into the upper right corner of room, and returns its
// width; 0 where there is nothing to tell or no room to tell it in.
func (p Piece) draw(d *drawing.Drawing, room drawing.Rect) float64 {
	if p == (Piece{}) {
		return 0
	}
	word := drawing.Height(pieceSize)
	high, wide := pieceHigh, pieceWide
	if p.Edge != "" {
		high += pieceGap + word
	}
	if p.End != "" {
		wide += pieceGap + word
	}
	if high > room.H || wide > room.W/2 {
		return 0
	}
	box := drawing.Rect{X: room.Right() - wide, Y: room.Y + 0.4, W: pieceWide, H: pieceHigh - 0.4}
	d.Box(box, drawing.Visible, drawing.NoFill)
	if p.Edge != "" { // a bold line is the edge that is named, in the manner of a face edge mark
		d.Line(drawing.Point{X: box.X, Y: box.Bottom()}, drawing.Point{X: box.Right(), Y: box.Bottom()}, drawing.Outline)
		at := drawing.Point{X: box.Center().X, Y: box.Bottom() + pieceGap + drawing.Rise(pieceSize)}
		d.Text(drawing.Text{At: at, String: p.Edge, Size: pieceSize, Align: drawing.Center})
	}
	if p.End != "" {
		at := drawing.Point{X: box.Right() + pieceGap + drawing.Rise(pieceSize), Y: box.Center().Y}
		d.Text(drawing.Text{At: at, String: p.End, Size: pieceSize, Align: drawing.Center, Turned: true})
	}
	p.grain(d, box.Inset(0.9))
	return wide
}

// grain draws the word and an arrow with two heads.
func (p Piece) grain(d *drawing.Drawing, box drawing.Rect) {
	var from, to drawing.Point
	text := drawing.Text{String: "grain", Size: pieceSize, At: drawing.Point{X: box.Center().X, Y: box.Y + drawing.Rise(pieceSize)}, Align: drawing.Center}
	switch p.Grain {
	case NoGrain:
		return
	case Along:
		y := box.Bottom() - 0.6
		from, to = drawing.Point{X: box.X, Y: y}, drawing.Point{X: box.Right(), Y: y}
	case Across:
		x := box.X + 1.5
		from, to = drawing.Point{X: x, Y: box.Y}, drawing.Point{X: x, Y: box.Bottom()}
		text.At = drawing.Point{X: x + 2, Y: box.Center().Y + drawing.Rise(pieceSize)/2}
		text.Align = drawing.Left
	}
	d.Line(from, to, drawing.Narrow)
	d.Arrow(from, to)
	d.Arrow(to, from)
	d.Text(text)
}
