package paper

import (
	"sawbill/report/internal/drawing"
)

// Column is one column of a table.
type Column struct {
	Head  string
	Align drawing.Align // of head and cells
	Size  float64       // of cells, pt; 0 is the table's
	Face  drawing.Face
	// Wrap lets the column give up width when there is too little: its cells
	// break into lines.
	Wrap bool
	// Number draws the cells as cut numbers.
	Number bool
	// Tick draws a box to be ticked instead of a cell.
	Tick bool
}

// drawn reports whether there is no text in the column's cells.
func (c Column) drawn() bool { return c.Number || c.Tick }

// Table is rows below a head that is repeated on every page.
type Table struct {
	Columns []Column
	Rows    [][]string
	// Joined rows belong to the row above: no rule parts them. nil: none.
	Joined []bool
	// Total rows at the end stand below a rule, in bold.
	Total int
	// Size of the cells, pt; 0 is 9.
	Size float64
	// Times a row is to be done, each of which is ticked off where that can be
	// kept; 0: nothing is to be done. Total rows are not.
	Times int
	// Ticks are the boxes of each row on a screen, where more is known of what a row
	// does. nil: as Times says.
	Ticks [][]Tick
}

// Tick is a box to tick off.
type Tick struct {
	Name string // of what is done, unique in the document
	// Keys name each thing that is done, without spaces. Boxes that share keys are ticked
	// together.
	Keys []string
}

const (
	tableSize     = 9.0 // pt
	tableHeadSize = 8.0
	cellPad       = 1.6  // mm on either side of a cell
	rowPad        = 0.75 // mm above and below a row
	narrowestWrap = 16.0
	mostLines     = 24 // of one cell; longer ones end in an ellipsis
	tickSide      = 3.4
)

// Table writes t over as many pages as it takes.
func (b *Book) Table(t Table) {
	if len(t.Rows) == 0 {
		return
	}
	s := t.set(b.Width())
	heights := make([]float64, len(t.Rows))
	for i := range t.Rows {
		heights[i] = s.rowHeight(i, s.lines(i))
	}
	b.Need(s.headHeight() + heights[0])
	s.head(b)
	for i, h := range heights {
		cells := s.lines(i)
		if need := companions(heights, i); b.Room() < h || b.Room() < need && need <= b.whole()-b.again.Height-s.headHeight() {
			b.turn()
			s.head(b)
		}
		s.row(b, i, cells, h)
	}
	b.y += tableGap
}

// fewestRows of a table that runs on stand on its last page.
const fewestRows = 3

// companions is the height of row i with those that it is not parted from.
func companions(heights []float64, i int) float64 {
	last := i
	if i == len(heights)-fewestRows {
		last = len(heights) - 1
	}
	h := 0.0
	for _, of := range heights[i : last+1] {
		h += of
	}
	return h
}

func (t Table) set(room float64) setTable {
	if t.Size == 0 {
		t.Size = tableSize
	}
	return setTable{Table: t, widths: t.widths(room)}
}

// TableHeight is what t takes where it need not be divided, in mm.
func (b *Book) TableHeight(t Table) float64 {
	if len(t.Rows) == 0 {
		return 0
	}
	s := t.set(b.Width())
	h := s.headHeight() + tableGap
	for i := range t.Rows {
		h += s.rowHeight(i, s.lines(i))
	}
	return h
}

// Natural reports whether t fits the width without wrapping a cell.
func (b *Book) Natural(t Table) bool {
	s := t.set(b.Width())
	for i := range t.Rows {
		for _, lines := range s.lines(i) {
			if len(lines) > 1 {
				return false
			}
		}
	}
	return true
}

// Fits reports whether t fits the width without parting a word or a size.
func (b *Book) Fits(t Table) bool {
	s := t.set(b.Width())
	for i, c := range s.Columns {
		room := s.widths[i] - 2*cellPad + 0.01 // as [setTable.lines] has it
		if drawing.LongestWord(c.Head, drawing.Bold, tableHeadSize) > room {
			return false
		}
		for r, row := range s.Rows {
			widest := drawing.Width
			if c.Wrap {
				widest = drawing.LongestWord
			}
			if !c.Number && !c.Tick && widest(row[i], s.face(r, c), s.cellSize(c)) > room {
				return false
			}
		}
	}
	return true
}

// tableGap is the room below a table, mm.
const tableGap = 2.0

// setTable is a table with its columns measured.
type setTable struct {
	Table
	widths []float64
}

func (t Table) cellSize(c Column) float64 {
	if c.Size > 0 {
		return c.Size
	}
	return t.Size
}

func (t Table) face(row int, c Column) drawing.Face {
	if row >= len(t.Rows)-t.Total {
		return drawing.Bold
	}
	return c.Face
}

// lines wraps the cells of a row.
func (s setTable) lines(row int) [][]string {
	cells := make([][]string, len(s.Columns))
	for i, c := range s.Columns {
		if c.drawn() {
			cells[i] = []string{s.Rows[row][i]}
			continue
		}
		face, size, room := s.face(row, c), s.cellSize(c), s.widths[i]-2*cellPad
		// A hair more, so that a cell that set the width does not wrap by rounding.
		lines := drawing.Wrap(s.Rows[row][i], face, size, room+0.01)
		if len(lines) > mostLines {
			lines = append(lines[:mostLines-1], drawing.Shorten(lines[mostLines-1]+" …", face, size, room))
		}
		cells[i] = lines
	}
	return cells
}

func lineStep(size float64, lines []string, face drawing.Face) float64 {
	step := drawing.LineHeight(size)
	for _, l := range lines {
		step = max(step, drawing.HeightOf(l, face, size)+0.1)
	}
	return step
}

// leastBelow is the paper between the lowest letters of a row and the rule below it, mm.
const leastBelow = 0.3

func (s setTable) rowHeight(row int, cells [][]string) float64 {
	h, rise := 0.0, s.rise(row, cells)
	for i, c := range s.Columns {
		switch {
		case c.Number:
			h = max(h, drawing.NumberBox(drawing.Point{}, "0").H)
			continue
		case c.Tick:
			h = max(h, tickSide)
			continue
		}
		size, n := s.cellSize(c), len(cells[i])
		step := lineStep(size, cells[i], drawing.Bold)
		low := 0.0
		for k, l := range cells[i] {
			low = max(low, rise+float64(k)*step+drawing.FallOf(l, s.face(row, c), size))
		}
		h = max(h, float64(n)*step, low-rowPad+leastBelow)
	}
	return h + 2*rowPad
}

// rise is how far the common base line of a row's first lines lies below its top: first
// lines share it, whatever their sizes.
func (s setTable) rise(row int, cells [][]string) float64 {
	rise := 0.0
	for i, c := range s.Columns {
		if c.drawn() {
			continue
		}
		for _, l := range cells[i] {
			rise = max(rise, drawing.RiseOf(l, s.face(row, c), s.cellSize(c)))
		}
	}
	return rise
}

func (s setTable) headHeight() float64 {
	return s.headLines()*drawing.LineHeight(tableHeadSize) + 2*rowPad
}

func (s setTable) headLines() float64 {
	most := 1
	for i, c := range s.Columns {
		most = max(most, len(drawing.Wrap(c.Head, drawing.Bold, tableHeadSize, s.widths[i]-2*cellPad+0.01)))
	}
	return float64(most)
}

func (s setTable) head(b *Book) {
	x, d := sideMargin, b.page()
	for i, c := range s.Columns {
		y := b.y + rowPad + drawing.Rise(tableHeadSize)
		for _, l := range drawing.Wrap(c.Head, drawing.Bold, tableHeadSize, s.widths[i]-2*cellPad+0.01) {
			d.Text(drawing.Text{At: drawing.Point{X: s.edge(x, i), Y: y}, String: l,
				Size: tableHeadSize, Face: drawing.Bold, Align: c.Align})
			y += drawing.LineHeight(tableHeadSize)
		}
		x += s.widths[i]
	}
	b.y += s.headHeight()
	d.Line(drawing.Point{X: sideMargin, Y: b.y}, drawing.Point{X: x, Y: b.y}, drawing.WideRule)
}

// edge is the x at which the texts of column i stand, whose left edge is x.
func (s setTable) edge(x float64, i int) float64 {
	switch s.Columns[i].Align {
	case drawing.Center:
		return x + s.widths[i]/2
	case drawing.Right:
		return x + s.widths[i] - cellPad
	}
	return x + cellPad
}

func (s setTable) row(b *Book, row int, cells [][]string, height float64) {
	x, d := sideMargin, b.page()
	if s.Total > 0 && row == len(s.Rows)-s.Total {
		s.rule(b, drawing.Narrow)
	}
	rise := s.rise(row, cells)
	for i, c := range s.Columns {
		size, face := s.cellSize(c), s.face(row, c)
		y := b.y + rowPad + rise
		if c.Number {
			box := drawing.NumberBox(drawing.Point{}, s.Rows[row][i])
			d.Number(drawing.Point{X: x + cellPad + box.W/2, Y: b.y + rowPad + box.H/2}, s.Rows[row][i])
			x += s.widths[i]
			continue
		}
		if c.Tick {
			if row >= len(s.Rows)-s.Total {
				x += s.widths[i]
				continue // nothing is done at a sum
			}
			d.Box(drawing.Rect{X: x + cellPad, Y: b.y + rowPad + max(0, rise-tickSide), W: tickSide, H: tickSide}, drawing.Narrow, drawing.NoFill)
			x += s.widths[i]
			continue
		}
		step := lineStep(size, cells[i], face)
		for _, l := range cells[i] {
			d.Text(drawing.Text{At: drawing.Point{X: s.edge(x, i), Y: y}, String: l, Size: size, Face: face, Align: c.Align})
			y += step
		}
		x += s.widths[i]
	}
	b.y += height
	joined := row+1 < len(s.Joined) && s.Joined[row+1]
	if row < len(s.Rows)-s.Total-1 && !joined {
		s.rule(b, drawing.Fine)
	}
}

func (s setTable) rule(b *Book, pen drawing.Pen) {
	right := sideMargin
	for _, w := range s.widths {
		right += w
	}
	b.page().Line(drawing.Point{X: sideMargin, Y: b.y}, drawing.Point{X: right, Y: b.y}, pen)
}
