package label

import (
	"sawbill/report/internal/drawing"
	"sawbill/report/internal/edging"
)

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
	Edge, End string       // "front", "top"; one word each
	Inside    bool         // the label is on the inside of the piece
	Edged     edging.Sides // edges and ends that get edging
}

// insideWord marks the face of a piece that looks into the case.
const insideWord = "INSIDE"

const (
	pieceWide, pieceHigh = 15.0, 7.6
	pieceGap             = 0.7 // mm between the outline and a word
	edgingOff            = 1.0 // mm between the outline and the line of edging
	edgingRoom           = 1.5 // mm that such a line takes
	pieceSize            = drawing.SmallestSize
	wordSize             = 8.0 // pt, of what names an edge or an end
	insideSize           = 9.0 // pt: whoever fixes the label must not miss it
)

// draw puts the picture into the upper right corner of room, and returns the paper
// that it takes; none where there is nothing to tell or no room to tell it in.
func (p Piece) draw(d *drawing.Drawing, room drawing.Rect) drawing.Rect {
	if p == (Piece{}) {
		return drawing.Rect{}
	}
	word, inside := drawing.Height(wordSize), drawing.Height(insideSize)
	body := pieceHigh
	if p.Inside {
		body += inside
	}
	high, wide := body, pieceWide
	lower, right := 0.0, 0.0
	if p.Edged.Upper {
		high += edgingRoom
	}
	if p.Edged.Lower {
		lower = edgingRoom
	}
	if p.Edged.Left {
		wide += edgingRoom
	}
	if p.Edged.Right {
		right = edgingRoom
	}
	high, wide = high+lower, wide+right
	if p.Edge != "" {
		high += pieceGap + word
	}
	if p.End != "" {
		wide += pieceGap + word
	}
	if high > room.H || wide > room.W/2 {
		return drawing.Rect{}
	}
	box := drawing.Rect{X: room.Right() - wide, Y: room.Y + 0.4, W: pieceWide, H: body - 0.4}
	if p.Edged.Left {
		box.X += edgingRoom
	}
	if p.Edged.Upper {
		box.Y += edgingRoom
	}
	d.Box(box, drawing.Visible, drawing.NoFill)
	p.Edged.Draw(d, box, edgingOff)
	if p.Edge != "" { // a bold line is the edge that is named, in the manner of a face edge mark
		d.Line(drawing.Point{X: box.X, Y: box.Bottom()}, drawing.Point{X: box.Right(), Y: box.Bottom()}, drawing.Outline)
		at := drawing.Point{X: box.Center().X, Y: box.Bottom() + lower + pieceGap + drawing.Rise(wordSize)}
		d.Text(drawing.Text{At: at, String: p.Edge, Size: wordSize, Align: drawing.Center})
	}
	if p.End != "" {
		at := drawing.Point{X: box.Right() + right + pieceGap + drawing.Rise(wordSize), Y: box.Center().Y}
		d.Text(drawing.Text{At: at, String: p.End, Size: wordSize, Align: drawing.Center, Turned: true})
	}
	if p.Inside {
		base := box.Bottom() - 0.7 - drawing.FallOf(insideWord, drawing.Bold, insideSize)
		d.Text(drawing.Text{At: drawing.Point{X: box.Center().X, Y: base}, String: insideWord, Size: insideSize, Face: drawing.Bold, Align: drawing.Center})
		box.H -= inside
	}
	p.grain(d, box.Inset(0.9))
	return drawing.Rect{X: room.Right() - wide, Y: room.Y, W: wide, H: high}
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
