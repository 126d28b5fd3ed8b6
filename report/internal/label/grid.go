package label

import "sawbill/report/internal/drawing"

// Grid divides the body of a page evenly.
type Grid struct {
	Columns, Rows int
	Width, Height float64 // of the whole, mm
	// Sides and Top are margins, ColumnGap and RowGap the paper between labels, mm. Sheet:
	// they are labels already, and no lines to cut along are drawn.
	Sides, Top, ColumnGap, RowGap float64
	Sheet                         bool
}

// New is a grid for a page's body. Three columns by six rows leave a label some
// 62 x 40 mm on either format of paper: enough for a mark that is read at arm's
// length and for all that is to be known of a piece.
func New(width, height float64) Grid { return Grid{Columns: 3, Rows: 6, Width: width, Height: height} }

// Pages draws labels row by row, on as many pages as they take, with the lines
// to cut along. A page that is not full is only as high as it needs.
func (g Grid) Pages(labels []Label) []drawing.Drawing {
	var pages []drawing.Drawing
	for each := g.Columns * g.Rows; len(labels) > 0; {
		n := min(each, len(labels))
		pages = append(pages, g.page(labels[:n]))
		labels = labels[n:]
	}
	return pages
}

// Cell is where label i of a page lies.
func (g Grid) Cell(i int) drawing.Rect {
	w := (g.Width - 2*g.Sides - float64(g.Columns-1)*g.ColumnGap) / float64(g.Columns)
	h := (g.Height - 2*g.Top - float64(g.Rows-1)*g.RowGap) / float64(g.Rows)
	return drawing.Rect{X: g.Sides + float64(i%g.Columns)*(w+g.ColumnGap), Y: g.Top + float64(i/g.Columns)*(h+g.RowGap), W: w, H: h}
}

func (g Grid) page(labels []Label) drawing.Drawing {
	last := g.Cell(len(labels) - 1)
	d := drawing.Drawing{Width: g.Width, Height: last.Bottom()}
	for i, l := range labels {
		l.draw(&d, g.Cell(i))
	}
	if g.Sheet {
		d.Height = g.Height
		return d
	}
	for c := range g.Columns + 1 {
		x := g.Width * float64(c) / float64(g.Columns)
		d.Line(drawing.Point{X: x}, drawing.Point{X: x, Y: d.Height}, drawing.Fine)
	}
	for i := 0; i < len(labels); i += g.Columns {
		y := g.Cell(i).Y
		d.Line(drawing.Point{Y: y}, drawing.Point{X: g.Width, Y: y}, drawing.Fine)
	}
	d.Line(drawing.Point{Y: d.Height}, drawing.Point{X: g.Width, Y: d.Height}, drawing.Fine)
	return d
}
