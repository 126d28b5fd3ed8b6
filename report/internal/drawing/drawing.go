// Package drawing is the one model behind every page and picture: lines,
// polygons, hatching and texts in millimeters on paper, as plain values.
//
// A [Drawing] is built by its methods, compared and measured in tests, and
// written by [PDF] or [SVG], which only translate. Dimension lines, leaders and
// numbered discs are put together from the same few marks (dimension.go), so a
// renderer knows nothing of them.
//
// Everything is black on white, but for areas of a light gray. X runs to the right and Y down from the upper
// left corner of the paper.
package drawing

import "slices"

// Point is a place on the paper, in millimeters.
type Point struct{ X, Y float64 }

// Rect is an upright rectangle, in millimeters.
type Rect struct{ X, Y, W, H float64 }

// Right is the x of the right edge.
func (r Rect) Right() float64 { return r.X + r.W }

// Bottom is the y of the lower edge.
func (r Rect) Bottom() float64 { return r.Y + r.H }

// Center is the middle of r.
func (r Rect) Center() Point { return Point{r.X + r.W/2, r.Y + r.H/2} }

// Inset returns r made smaller by d on every side.
func (r Rect) Inset(d float64) Rect { return Rect{r.X + d, r.Y + d, r.W - 2*d, r.H - 2*d} }

// Overlaps reports whether r and s share any area.
func (r Rect) Overlaps(s Rect) bool {
	return r.X < s.Right() && s.X < r.Right() && r.Y < s.Bottom() && s.Y < r.Bottom()
}

// Contains reports whether s lies within r.
func (r Rect) Contains(s Rect) bool {
	return s.X >= r.X && s.Y >= r.Y && s.Right() <= r.Right() && s.Bottom() <= r.Bottom()
}

func (r Rect) corners() []Point {
	return []Point{{r.X, r.Y}, {r.Right(), r.Y}, {r.Right(), r.Bottom()}, {r.X, r.Bottom()}}
}

// Drawing is one sheet of paper, or a picture of its own.
type Drawing struct {
	Width, Height float64 // of the paper, mm
	Marks         []Mark  // later marks lie over earlier ones
	// Missing are the characters that the fonts lack, each once and sorted;
	// [Replacement] is drawn in their stead.
	Missing []rune
}

// Mark is one of Line, Polygon, Disc, Hatch and Text.
type Mark interface{ mark() }

// Line is straight, from one point to another.
type Line struct {
	From, To Point
	Pen      Pen
}

// Fill says what an area is filled with.
type Fill int

const (
	NoFill Fill = iota
	White       // hides what lies below
	Gray        // light enough for writing to be read on it
	Black
)

// Polygon is a closed area, with or without an outline.
type Polygon struct {
	Points []Point
	Pen    Pen // NoPen: no outline
	Fill   Fill
}

// Disc is a filled circle.
type Disc struct {
	Center Point
	Radius float64 // mm
	Pen    Pen
	Fill   Fill
}

func (Line) mark()    {}
func (Polygon) mark() {}
func (Disc) mark()    {}
func (Hatch) mark()   {}
func (Text) mark()    {}

// Line draws from one point to another.
func (d *Drawing) Line(from, to Point, pen Pen) {
	d.Marks = append(d.Marks, Line{from, to, pen})
}

// Box draws a rectangle.
func (d *Drawing) Box(r Rect, pen Pen, fill Fill) {
	d.Marks = append(d.Marks, Polygon{r.corners(), pen, fill})
}

// Polygon draws a closed area.
func (d *Drawing) Polygon(pen Pen, fill Fill, points ...Point) {
	d.Marks = append(d.Marks, Polygon{points, pen, fill})
}

// Disc draws a circle.
func (d *Drawing) Disc(center Point, radius float64, pen Pen, fill Fill) {
	d.Marks = append(d.Marks, Disc{center, radius, pen, fill})
}

// Hatch fills a rectangle with slanting lines.
func (d *Drawing) Hatch(r Rect) { d.HatchAs(Hatch{Area: r}) }

// HatchAs fills a rectangle with slanting lines of a kind.
func (d *Drawing) HatchAs(h Hatch) {
	if h.Area.W > 0 && h.Area.H > 0 {
		d.Marks = append(d.Marks, h)
	}
}

// Text writes t. Characters that the fonts lack are replaced and noted in
// Missing; line breaks and tabs become spaces.
func (d *Drawing) Text(t Text) {
	var missing []rune
	t.String, missing = printable(t.String)
	for _, r := range missing {
		d.lacks(r)
	}
	if t.String != "" {
		d.Marks = append(d.Marks, t)
	}
}

// lacks notes a missing character.
func (d *Drawing) lacks(r rune) {
	if at, found := slices.BinarySearch(d.Missing, r); !found {
		d.Missing = slices.Insert(d.Missing, at, r)
	}
}

// Texts returns the texts in drawing order.
func (d *Drawing) Texts() []Text {
	var texts []Text
	for _, m := range d.Marks {
		if t, ok := m.(Text); ok {
			texts = append(texts, t)
		}
	}
	return texts
}

// Place copies the marks of p, with its upper left corner at a point.
func (d *Drawing) Place(p Drawing, at Point) {
	move := func(q Point) Point { return Point{q.X + at.X, q.Y + at.Y} }
	for _, m := range p.Marks {
		switch m := m.(type) {
		case Line:
			m.From, m.To = move(m.From), move(m.To)
			d.Marks = append(d.Marks, m)
		case Polygon:
			points := make([]Point, len(m.Points))
			for i, q := range m.Points {
				points[i] = move(q)
			}
			m.Points = points
			d.Marks = append(d.Marks, m)
		case Disc:
			m.Center = move(m.Center)
			d.Marks = append(d.Marks, m)
		case Hatch:
			corner := move(Point{m.Area.X, m.Area.Y})
			m.Area.X, m.Area.Y = corner.X, corner.Y
			d.Marks = append(d.Marks, m)
		case Text:
			m.At = move(m.At)
			d.Marks = append(d.Marks, m)
		}
	}
	for _, r := range p.Missing {
		d.lacks(r)
	}
}
