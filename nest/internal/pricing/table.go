package pricing

// lanes are the values of pieces that differ in one dimension only. They are computed together,
// so that a cut's sums for all of them stay in registers.
type lanes [width]int64

const width = 8

// table holds the value of the best pattern of every piece of a grid, twice. By column,
// crosscuts of pieces of neighboring widths are compared together; by row, rips are. A cache
// holds the values that one such group looks up.
type table struct {
	rows, cols   int
	byCol, byRow []lanes
}

func newTable(rows, cols int) table {
	return table{
		rows: rows, cols: cols,
		byCol: make([]lanes, rows*groups(cols)),
		byRow: make([]lanes, cols*groups(rows)),
	}
}

// groups returns the number of lanes for n values.
func groups(n int) int { return (n + width - 1) / width }

func (t *table) at(i, j int) int64 { return t.byCol[j/width*t.rows+i][j%width] }

func (t *table) clear() {
	clear(t.byCol)
	clear(t.byRow)
}

// column returns column group J: the values by row.
func (t *table) column(J int) []lanes { return t.byCol[J*t.rows:][:t.rows] }

// row returns row group I: the values by column.
func (t *table) row(I int) []lanes { return t.byRow[I*t.cols:][:t.cols] }

// raise raises the value of piece i, j to v.
func (t *table) raise(i, j int, v int64) {
	r := &t.byRow[i/width*t.cols+j][i%width]
	*r = max(*r, v)
}

// block computes the values of row group I and column group J from those of shorter or narrower
// pieces. Before, byRow holds the values of uncut pieces.
func (t *table) block(I, J int, xCuts, yCuts [][]pair) {
	row, col := t.row(I), t.column(J)
	i0, j0 := I*width, J*width
	rows, cols := min(width, t.rows-i0), min(width, t.cols-j0)
	// Rips into pieces left of the block, for all its rows at once.
	var inner [width]int
	for n := range cols {
		j := j0 + n
		cuts := yCuts[j]
		k := 0
		for k < len(cuts) && int(cuts[k].more) >= j0 {
			k++
		}
		inner[n] = k
		best := &row[j]
		if n == 0 && j > 0 {
			best.atLeast(&row[j-1])
		}
		best.sums(row, cuts[k:])
	}
	for m := range rows {
		i := i0 + m
		best := &col[i]
		for n := range cols {
			best[n] = row[j0+n][m]
		}
		if i > 0 {
			best.atLeast(&col[i-1])
		}
		best.sums(col, xCuts[i])
		// Rips into pieces of the block itself.
		for n := range cols {
			j := j0 + n
			v := best[n]
			if n > 0 {
				v = max(v, best[n-1])
			}
			for _, c := range yCuts[j][:inner[n]] {
				v = max(v, row[c.less][m]+row[c.more][m])
			}
			best[n] = v
			row[j][m] = v
		}
	}
}

func (l *lanes) atLeast(o *lanes) {
	for n := range l {
		l[n] = max(l[n], o[n])
	}
}

// sums raises l to the sums of two pieces by each cut. Registers hold four sums at a time.
func (l *lanes) sums(pieces []lanes, cuts []pair) {
	v0, v1, v2, v3 := l[0], l[1], l[2], l[3]
	for _, c := range cuts {
		a, b := &pieces[c.less], &pieces[c.more]
		v0 = max(v0, a[0]+b[0])
		v1 = max(v1, a[1]+b[1])
		v2 = max(v2, a[2]+b[2])
		v3 = max(v3, a[3]+b[3])
	}
	l[0], l[1], l[2], l[3] = v0, v1, v2, v3
	v0, v1, v2, v3 = l[4], l[5], l[6], l[7]
	for _, c := range cuts {
		a, b := &pieces[c.less], &pieces[c.more]
		v0 = max(v0, a[4]+b[4])
		v1 = max(v1, a[5]+b[5])
		v2 = max(v2, a[6]+b[6])
		v3 = max(v3, a[7]+b[7])
	}
	l[4], l[5], l[6], l[7] = v0, v1, v2, v3
}
