// Package strip draws the order of work as a strip of small pictures, one a step, from
// left to right and from the top down. A picture shows the piece in hand in gray, the cut
// thick, and the edge that guides it. It stands in place of words: which way to cut, which
// side is waste, what is left. The package knows no plans.
package strip

import (
	"sawbill/nest/cutplan"
	"sawbill/report/internal/drawing"
)

// Card is one step.
type Card struct {
	Number string // of its cuts
	// Guide says what Setting is: "fence", "stop", "mark", "saw off".
	Guide, Setting string
	// Note stands behind the setting, and Warning, which must not be missed; may be empty.
	Note, Warning string
	Lines         []Line
	Piece         Piece
}

// Line is words below the setting.
type Line struct {
	// Ways are ways to say it, the fullest first. The fullest is taken that asks for no more
	// lines than the last one.
	Ways []string
	Bold bool
}

func (l Line) face() drawing.Face {
	if l.Bold {
		return drawing.Bold
	}
	return drawing.Regular
}

// wrapped is the way that is taken in a width.
func (l Line) wrapped(size, width float64) []string {
	last := drawing.Wrap(l.Ways[len(l.Ways)-1], l.face(), size, width)
	for _, way := range l.Ways {
		if lines := drawing.Wrap(way, l.face(), size, width); len(lines) <= len(last) {
			return lines
		}
	}
	return last
}

// Piece is the piece in hand. Its measures are of the wood, in any unit, from its reference
// corner, Y upwards.
type Piece struct {
	Length, Width float64
	Zones         []Zone
	Cuts          []Cut
}

// Zone is what a part of the piece becomes.
type Zone struct {
	Area  drawing.Rect
	Waste bool
	Label string // a mark, or what is written on an offcut; may be empty
}

// Cut is a line of the saw.
type Cut struct {
	Along cutplan.Cut
	// At is where the line is from the reference edge of a rip, or end of a crosscut.
	At    float64
	Waste cutplan.Side // where the blade lies
	Guide cutplan.Guide
	// Guided: an arrow runs from the side away from Waste to the line, with the sign of
	// the guide at its foot.
	Guided bool
}

// Measures in mm; those of type are for words of 1 pt.
const (
	columnGap  = 4.0
	cardPad    = 1.1 // above and below a card
	pictureGap = 2.0 // between picture and words
	wordGap    = 1.3
	larger     = 2.5  // pt that the setting is larger than the words
	pictureTo  = 2.1  // width of a picture
	pictureHi  = 1.05 // height of it, at least
)

// set is a card with its words wrapped.
type set struct {
	Card
	size  float64
	lines []drawing.Text // from the upper left corner of the words
	high  float64        // of the words
}

// pictureWide is the room of a picture beside words of a size.
func pictureWide(size float64) float64 { return pictureTo * size }

// height is what the card takes.
func (s set) height() float64 { return max(s.high, pictureHi*s.size) + 2*cardPad }

// setCard wraps the words of a card to a width.
func setCard(c Card, size, width float64) set {
	s := set{Card: c, size: size}
	disc := drawing.NumberBox(drawing.Point{}, c.Number)
	x, y := disc.W+wordGap, drawing.Rise(size+larger)
	line := drawing.LineHeight(size + larger)
	add := func(text string, face drawing.Face, of float64) {
		if text == "" {
			return
		}
		for _, text := range drawing.Wrap(text, face, of, width) {
			wide := drawing.Width(text, face, of)
			if x+wide > width && x > 0 {
				x, y = 0, y+line
			}
			s.lines = append(s.lines, drawing.Text{At: drawing.Point{X: x, Y: y}, String: text, Face: face, Size: of})
			x += wide + wordGap
		}
	}
	add(c.Guide, drawing.Regular, size)
	add(c.Setting, drawing.Bold, size+larger)
	add(c.Note, drawing.Regular, size)
	add(c.Warning, drawing.Bold, size)
	s.high = y - drawing.Rise(size+larger) + max(line, disc.H)
	for _, l := range c.Lines {
		face := l.face()
		for _, text := range l.wrapped(size, width) {
			s.lines = append(s.lines, drawing.Text{At: drawing.Point{Y: s.high + drawing.RiseOf(text, face, size)}, String: text, Face: face, Size: size})
			s.high += max(drawing.LineHeight(size), drawing.HeightOf(text, face, size)+0.1)
		}
	}
	return s
}

// draw puts the card on d, its upper left corner at a point, in so much height.
func (s set) draw(d *drawing.Drawing, at drawing.Point, height float64) {
	room := drawing.Rect{X: at.X, Y: at.Y + cardPad, W: pictureWide(s.size), H: height - 2*cardPad}
	s.Piece.draw(d, room, s.size)
	x := at.X + room.W + pictureGap
	disc := drawing.NumberBox(drawing.Point{}, s.Number)
	middle := room.Y + max(disc.H/2, drawing.Rise(s.size+larger)-drawing.Rise(drawing.NumberSize)/2)
	d.Number(drawing.Point{X: x + disc.W/2, Y: middle}, s.Number)
	for _, t := range s.lines {
		t.At.X += x
		t.At.Y += room.Y
		d.Text(t)
	}
}
