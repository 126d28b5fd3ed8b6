package drawing

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"unicode"
)

// CheckLegible reports what makes writing hard to read: all that [CheckWriting]
// reports, lines and areas that strike through a text, and figures so close to one
// another that they read as one. Tests call it on pages and pictures.
//
// A text may lie on what is drawn before it if its ground, or a filled shape
// between the two, hides that. What is drawn after a text strikes it in any case.
func CheckLegible(d Drawing) error {
	if err := CheckWriting(d); err != nil {
		return err
	}
	var all []error
	for i, m := range d.Marks {
		if t, ok := m.(Text); ok {
			all = append(all, struck(d.Marks, i, t)...)
		}
	}
	return errors.Join(append(all, merged(d.Texts())...)...)
}

// legibleHair is how far a line may reach into the box of a text, mm: the box is a
// little larger than the ink.
const legibleHair = 0.05

// struck lists what strikes through text i.
func struck(marks []Mark, i int, t Text) []error {
	ink := t.Box().Inset(legibleHair)
	var all []error
	for j, m := range marks {
		if j == i || t.Ground && j < i && !t.Reversed {
			continue
		}
		for _, at := range touching(m, ink, j > i, t.Reversed) {
			if j < i && hidden(at, marks[j+1:i]) {
				continue
			}
			all = append(all, fmt.Errorf("%q at %.1f is struck by %s at %.1f", t.String, t.Box(), kindOf(m), at))
			break
		}
	}
	return all
}

func kindOf(m Mark) string {
	switch m.(type) {
	case Line:
		return "a line"
	case Hatch:
		return "hatching"
	}
	return "a shape"
}

// touching samples the points of a mark that lie within a box: of its strokes, of its
// black area unless letters are white, and of any area that is drawn over them.
func touching(m Mark, box Rect, over, white bool) []Point {
	harms := func(f Fill) bool { return f == Black && !white || f != NoFill && over }
	switch m := m.(type) {
	case Line:
		return sampled(m.From, m.To, m.Pen, box)
	case Hatch:
		return common(m.Area, box)
	case Polygon:
		if !around(m.Points).Inset(-m.Pen.Width()).Overlaps(box) {
			return nil
		}
		var all []Point
		if m.Pen != NoPen {
			for k, p := range m.Points {
				all = append(all, sampled(p, m.Points[(k+1)%len(m.Points)], m.Pen, box)...)
			}
		}
		if harms(m.Fill) {
			all = append(all, inside(box, func(p Point) bool { return holds(m.Points, p) })...)
		}
		return all
	case Disc:
		if r := m.Radius; !(Rect{m.Center.X - r, m.Center.Y - r, 2 * r, 2 * r}).Overlaps(box) {
			return nil
		}
		return inside(box, func(p Point) bool {
			r := math.Hypot(p.X-m.Center.X, p.Y-m.Center.Y)
			return r <= m.Radius && (harms(m.Fill) || m.Pen != NoPen && r >= m.Radius-m.Pen.Width())
		})
	}
	return nil
}

// sampled are points of a stroke within a box, which the stroke's width makes larger.
func sampled(from, to Point, pen Pen, box Rect) []Point {
	box = box.Inset(-pen.Width() / 2)
	if from, to, ok := clipped(from, to, box); ok {
		var all []Point
		const steps = 16
		for k := range steps + 1 {
			share := float64(k) / steps
			all = append(all, Point{from.X + share*(to.X-from.X), from.Y + share*(to.Y-from.Y)})
		}
		return all
	}
	return nil
}

// clipped is the part of a line within a box (Liang, Barsky 1984, from memory).
func clipped(from, to Point, box Rect) (a, b Point, ok bool) {
	begin, end := 0.0, 1.0
	dx, dy := to.X-from.X, to.Y-from.Y
	for _, side := range [][2]float64{{-dx, from.X - box.X}, {dx, box.Right() - from.X}, {-dy, from.Y - box.Y}, {dy, box.Bottom() - from.Y}} {
		p, q := side[0], side[1]
		switch {
		case p == 0 && q <= 0:
			return a, b, false
		case p < 0:
			begin = max(begin, q/p)
		case p > 0:
			end = min(end, q/p)
		}
	}
	if begin >= end {
		return a, b, false
	}
	return Point{from.X + begin*dx, from.Y + begin*dy}, Point{from.X + end*dx, from.Y + end*dy}, true
}

// common are points of the area that two boxes share.
func common(a, b Rect) []Point {
	x, y := max(a.X, b.X), max(a.Y, b.Y)
	both := Rect{x, y, min(a.Right(), b.Right()) - x, min(a.Bottom(), b.Bottom()) - y}
	if both.W <= 0 || both.H <= 0 {
		return nil
	}
	return inside(both, func(Point) bool { return true })
}

// inside are points of a box for which a condition holds, 0.2 mm apart at most.
func inside(box Rect, holds func(Point) bool) []Point {
	var all []Point
	nx, ny := math.Ceil(box.W/0.2), math.Ceil(box.H/0.2)
	for i := range int(nx) + 1 {
		for j := range int(ny) + 1 {
			if p := (Point{box.X + box.W*float64(i)/nx, box.Y + box.H*float64(j)/ny}); holds(p) {
				all = append(all, p)
			}
		}
	}
	return all
}

// around is the upright rectangle that points take.
func around(points []Point) Rect {
	low, high := points[0], points[0]
	for _, p := range points[1:] {
		low = Point{min(low.X, p.X), min(low.Y, p.Y)}
		high = Point{max(high.X, p.X), max(high.Y, p.Y)}
	}
	return Rect{low.X, low.Y, high.X - low.X, high.Y - low.Y}
}

// hidden reports whether a filled shape or the ground of a text covers a point.
func hidden(p Point, later []Mark) bool {
	for _, m := range later {
		covers := false
		switch m := m.(type) {
		case Polygon:
			covers = m.Fill != NoFill && holds(m.Points, p)
		case Disc:
			covers = m.Fill != NoFill && math.Hypot(p.X-m.Center.X, p.Y-m.Center.Y) <= m.Radius
		case Text:
			covers = m.Ground && m.near(p) && m.Box().Inset(-legibleHair).Contains(Rect{X: p.X, Y: p.Y})
		}
		if covers {
			return true
		}
	}
	return false
}

// near reports whether a point may lie on a text, by its base line alone: no letter reaches
// as far as its size in points is in mm.
func (t Text) near(p Point) bool {
	if t.Turned {
		return math.Abs(p.X-t.At.X) < t.Size
	}
	return math.Abs(p.Y-t.At.Y) < t.Size
}

// holds reports whether a point lies in a polygon, by counting the edges to its right.
func holds(points []Point, p Point) bool {
	in := false
	for i, a := range points {
		b := points[(i+1)%len(points)]
		if (a.Y > p.Y) != (b.Y > p.Y) && p.X < a.X+(b.X-a.X)*(p.Y-a.Y)/(b.Y-a.Y) {
			in = !in
		}
	}
	return in
}

// figureSpace is the least paper between two figures on one line, as a share of
// their size: a word space of the fonts is 0.28, and is not enough.
const figureSpace = 0.4

// merged lists figures that stand so close on one line that they read as one: "11"
// and "3" as "113".
func merged(texts []Text) []error {
	type figure struct {
		Text
		line         Rect
		begins, ends bool
	}
	var figures []figure
	for _, t := range texts {
		if f := (figure{Text: t, begins: figureEnd(t.String, false), ends: figureEnd(t.String, true)}); f.begins || f.ends {
			f.line = t.line()
			figures = append(figures, f)
		}
	}
	var all []error
	for i, a := range figures {
		for j, b := range figures {
			if i == j || a.Turned != b.Turned || !a.ends || !b.begins {
				continue
			}
			p, q := a.line, b.line
			shared := min(p.Bottom(), q.Bottom()) - max(p.Y, q.Y)
			space := figureSpace * max(a.Size, b.Size) * mmPerPoint
			if p.X < q.X && shared > min(p.H, q.H)/2 && q.X-p.Right() < space-1e-9 {
				all = append(all, fmt.Errorf("%q at %.1f and %q at %.1f read as one figure", a.String, a.Box(), b.String, b.Box()))
			}
		}
	}
	return all
}

// line is the box of a text with its reading direction to the right.
func (t Text) line() Rect {
	b := t.Box()
	if t.Turned {
		return Rect{-b.Bottom(), b.X, b.H, b.W}
	}
	return b
}

// figureEnd reports whether a text begins, or ends, with a figure.
func figureEnd(s string, last bool) bool {
	runes := []rune(strings.TrimPrefix(s, "≈"))
	if len(runes) == 0 {
		return false
	}
	if last {
		return unicode.IsNumber(runes[len(runes)-1])
	}
	return unicode.IsNumber(runes[0])
}
