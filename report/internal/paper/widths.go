package paper

import (
	"cmp"
	"math"

	"sawbill/report/internal/drawing"
)

// widths gives each column what its widest cell asks for, and takes what is too
// much from those that wrap, so that few lines are added. What is left over stays empty on the
// right: figures far apart are hard to read across.
func (t Table) widths(room float64) []float64 {
	natural := make([]float64, len(t.Columns))
	fixed, elastic := 0.0, 0.0
	for i, c := range t.Columns {
		natural[i] = drawing.Width(c.Head, drawing.Bold, tableHeadSize)
		for r, row := range t.Rows {
			w := drawing.Width(row[i], t.face(r, c), t.cellSize(c))
			if c.Number {
				w = drawing.NumberBox(drawing.Point{}, row[i]).W
			} else if c.Tick {
				w = tickSide
			}
			natural[i] = max(natural[i], w)
		}
		natural[i] += 2 * cellPad
		if c.Wrap {
			elastic += natural[i]
		} else {
			fixed += natural[i]
		}
	}
	if fixed+elastic <= room {
		return natural
	}
	wraps := 0
	for _, c := range t.Columns {
		if c.Wrap {
			wraps++
		}
	}
	// Where even the fixed columns ask for too much, all give way.
	if left := room - fixed; wraps == 0 || left < narrowestWrap*float64(wraps) {
		for i := range natural {
			natural[i] *= room / (fixed + elastic)
		}
		return natural
	}
	return t.shrink(natural, fixed+elastic-room)
}

// shrinkStep is what a column gives up at a time, mm.
const shrinkStep = 1.0

// shrink takes excess from the columns that wrap, in small steps. Each step comes from the
// column that makes the table the least higher; among equals, from the widest. The number of
// lines is computed as if words could be parted anywhere, with a little added since they cannot.
func (t Table) shrink(widths []float64, excess float64) []float64 {
	const ragged = 1.12 // what a paragraph takes beyond its length
	lengths := make([][]float64, len(t.Columns))
	floors := t.floors(widths, excess)
	for i, c := range t.Columns {
		lengths[i] = make([]float64, len(t.Rows))
		for r, row := range t.Rows {
			if c.Wrap {
				lengths[i][r] = drawing.Width(row[i], t.face(r, c), t.cellSize(c))
			}
		}
	}
	lines := func(i, r int, width float64) float64 {
		room := width - 2*cellPad
		if lengths[i][r] <= room+0.01 {
			return 1
		}
		return math.Ceil(ragged * lengths[i][r] / room)
	}
	high := make([]float64, len(t.Rows)) // lines of each row, in all columns
	for r := range t.Rows {
		for i := range t.Columns {
			high[r] = max(high[r], lines(i, r, widths[i]))
		}
	}
	for excess > 0.001 {
		step := min(shrinkStep, excess)
		best, least, fewest := -1, 0.0, 0.0
		for i, c := range t.Columns {
			width := widths[i] - step
			if !c.Wrap || width < floors[i] {
				continue
			}
			added, wrapped := 0.0, 0.0
			for r := range t.Rows {
				n := lines(i, r, width)
				added += max(0, n*n-high[r]*high[r]) // two rows of two lines rather than one of three
				wrapped += n - lines(i, r, widths[i])
			}
			if best < 0 || cmp.Or(cmp.Compare(added, least), cmp.Compare(wrapped, fewest), cmp.Compare(widths[best], widths[i])) < 0 {
				best, least, fewest = i, added, wrapped
			}
		}
		if best < 0 {
			break // all are as narrow as can be, by less than a step
		}
		widths[best] -= step
		excess -= step
		for r := range t.Rows {
			high[r] = max(high[r], lines(best, r, widths[best]))
		}
	}
	return t.evened(widths, excess)
}

// floors are the least widths of the columns that wrap: no word is parted, or
// where that takes too much, only as narrow as can be read.
func (t Table) floors(widths []float64, excess float64) []float64 {
	floors := make([]float64, len(t.Columns))
	for i, c := range t.Columns {
		if !c.Wrap {
			continue
		}
		floors[i] = max(min(narrowestWrap, widths[i]), t.narrowestHead(c))
		for r, row := range t.Rows {
			floors[i] = max(floors[i], drawing.LongestWord(row[i], t.face(r, c), t.cellSize(c))+2*cellPad)
		}
		excess -= widths[i] - floors[i]
	}
	if excess <= 0 {
		return floors
	}
	for i, c := range t.Columns {
		if c.Wrap {
			floors[i] = max(narrowestWrap, t.narrowestHead(c))
		}
	}
	return floors
}

// narrowestHead is the width of a column that parts no word of its head.
func (t Table) narrowestHead(c Column) float64 {
	return drawing.LongestWord(c.Head, drawing.Bold, tableHeadSize) + 2*cellPad
}

// evened takes the rest of what is too much from the columns that wrap, alike.
func (t Table) evened(widths []float64, excess float64) []float64 {
	wraps := 0
	for _, c := range t.Columns {
		if c.Wrap {
			wraps++
		}
	}
	for i, c := range t.Columns {
		if c.Wrap {
			widths[i] -= max(0, excess) / float64(wraps)
		}
	}
	return widths
}
