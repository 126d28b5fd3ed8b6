// Package marksheet draws what is laid out on the parts of a case: every face that
// has marks, to scale, with each position in running dimensions from the edge
// that it is measured from, so that errors do not add up. Mates of box joints are
// drawn side by side.
//
//	case marks -> faces of pieces -> figures, alike ones once -> rows
//
// Where things lie comes from [casework.Mark] alone; nothing is computed again. A figure follows
// drafting practice (ISO 128 and ISO 129-1, from memory): wide outlines, narrow extension and
// dimension lines, circles with center lines for holes, what is cut away hatched, what stands there
// dashed, and two zigzag lines where a long piece is broken. A part of a figure that would be too
// thin to be seen is drawn wider.
package marksheet

import (
	"math"
	"slices"

	"sawbill/report/internal/drawing"
	"sawbill/stock"
	"sawbill/stock/casework"
)

// Subject is a case whose marks are drawn.
type Subject struct {
	*casework.Case
	Letters []string // the parts' marks in the cutting bill, by part; "" or nothing if there is none
	Ruler   stock.Ruler
}

// Sheet is all of the marks.
type Sheet struct {
	Faces, Joints []drawing.Drawing // of pieces, and of two mates each
	// Left are marks that no figure shows, or not with all of their positions for
	// lack of room.
	Left []casework.Mark
}

// Draw makes the figures, each no larger than a room in mm.
func (s Subject) Draw(width, height float64) Sheet {
	figures, pairs, left := s.figures()
	var sheet Sheet
	for _, f := range figures {
		d := s.draw(f, width, height)
		sheet.Faces, left = append(sheet.Faces, d.Drawing), append(left, d.short...)
	}
	for _, p := range pairs {
		d := s.drawPair(p, width, height)
		sheet.Joints, left = append(sheet.Joints, d.Drawing), append(left, d.short...)
	}
	for _, k := range s.Marks {
		if slices.ContainsFunc(left, func(l casework.Mark) bool { return same(k, l) && k.Part == l.Part }) {
			sheet.Left = append(sheet.Left, k)
		}
	}
	return sheet
}

// drawn is a figure on the paper.
type drawn struct {
	drawing.Drawing
	short []casework.Mark // some of whose positions are left out
	// box is where the piece lies in it, x and y how it is folded there.
	box   drawing.Rect
	x, y  fold
	ratio int
}

// ratios are the recommended scales for drawings smaller than the thing (ISO
// 5455, from memory), the smallest first.
var ratios = []int{500, 200, 100, 50, 20, 10, 5, 2, 1}

// RowGap and columnGap part figures, in mm.
const (
	RowGap    = 5.0
	columnGap = 5.0
)

// Paper is the space for rows in mm: its width and height, and the height left on the first page.
type Paper struct{ Width, Height, Left float64 }

// Endless is paper without pages, so wide.
func Endless(width float64) Paper { return Paper{width, math.Inf(1), math.Inf(1)} }

// Rows are all figures, faces first.
func (s Sheet) Rows(p Paper) []Row {
	rows := p.Rows(s.Faces)
	for _, r := range rows {
		p.use(r.Height)
	}
	return append(rows, p.Rows(s.Joints)...)
}

// Row is figures side by side.
type Row struct {
	drawing.Drawing
	Figures []drawing.Drawing
}

// use takes a row, on the next page if it must.
func (p *Paper) use(height float64) {
	if height > p.Left {
		p.Left = p.Height
	}
	p.Left -= height + RowGap
}

// Rows puts figures side by side, and low ones below one another beside high ones.
// Their order is kept as far as no paper is wasted: low ones fill what is left of a
// page.
func (p Paper) Rows(figures []drawing.Drawing) []Row {
	waiting := slices.Clone(figures)
	var rows []Row
	for len(waiting) > 0 {
		high := tallest(waiting, p.Width, p.Left)
		if high == 0 {
			high = tallest(waiting, p.Width, math.Inf(1))
		}
		var row Row
		row, waiting = filled(waiting, p.Width, high)
		rows = append(rows, row)
		p.use(row.Height)
	}
	return rows
}

// tallest is the height of the highest of the first figures that fit side by side,
// and below a height; 0 if none does.
func tallest(figures []drawing.Drawing, width, below float64) float64 {
	x, high := 0.0, 0.0
	for _, f := range figures {
		if f.Height > below {
			continue
		}
		if x += f.Width; high > 0 && x > width {
			break
		}
		x += columnGap
		high = max(high, f.Height)
	}
	return high
}

// filled makes a row so wide and high of the first figures that fit, in columns, and
// returns the others.
func filled(figures []drawing.Drawing, width, height float64) (row Row, later []drawing.Drawing) {
	row.Height = height
	x, y, column := 0.0, 0.0, 0.0 // where the next one goes; how wide the column is
	for _, f := range figures {
		if y == 0 || y+RowGap+f.Height > height || x+max(column, f.Width) > width { // not below the last
			next := 0.0
			if y > 0 {
				next = x + column + columnGap
			}
			if f.Height > height || y > 0 && next+f.Width > width {
				later = append(later, f)
				continue
			}
			x, y, column = next, 0, 0
		}
		if y > 0 {
			y += RowGap
		}
		row.Place(f, drawing.Point{X: x, Y: y})
		row.Figures = append(row.Figures, f)
		y += f.Height
		column = max(column, f.Width)
		row.Width = max(row.Width, x+column)
	}
	return row, later
}

// Column is rows one below the other.
func Column(rows []Row) drawing.Drawing {
	var d drawing.Drawing
	for i, r := range rows {
		if i > 0 {
			d.Height += RowGap
		}
		d.Place(r.Drawing, drawing.Point{Y: d.Height})
		d.Width, d.Height = max(d.Width, r.Width), d.Height+r.Height
	}
	return d
}
