package master

import (
	"math"

	"gonum.org/v1/gonum/mat"
)

// ftran returns the inverse times column j (forward transformation). The result is valid until
// the next call.
func (lp *LP) ftran(j int, inverse *mat.Dense) []float64 {
	d := lp.scratch
	clear(d)
	data := inverse.RawMatrix().Data
	rows, values := lp.columns.entries(j)
	for i, row := range rows {
		for r := range d {
			d[r] += float64(data[r*lp.rows+int(row)] * values[i])
		}
	}
	return d
}

// pivot brings a column, transformed to d, into the basis in place of row leave.
func pivot(inverse *mat.Dense, leave int, d []float64) {
	row := inverse.RawRowView(leave)
	times := 1 / d[leave]
	for i := range row {
		row[i] *= times
	}
	for r := range d {
		if r != leave && d[r] != 0 {
			addScaled(inverse.RawRowView(r), -d[r], row)
		}
	}
}

// refactorAsks is how many columns refactor takes in before it asks Halt again.
const refactorAsks = 4

// refactor recomputes the inverse and the solution from the basis. Columns of one entry come
// first, since they cause no fill-in.
func (lp *LP) refactor() {
	lp.sinceRefactor = 0
	inverse := mat.NewDense(lp.rows, lp.rows, nil)
	for r := range lp.rows {
		inverse.Set(r, r, 1)
	}
	rows := make([]int, lp.rows) // per place in the basis: its row of the inverse
	taken := make([]bool, lp.rows)
	for _, single := range []bool{true, false} {
		for place, j := range lp.basis {
			if (lp.columns.count(j) == 1) != single {
				continue
			}
			if place%refactorAsks == 0 && lp.Halt.On() {
				return // the updated inverse stays in use
			}
			d := lp.ftran(j, inverse)
			best := -1
			for r, v := range d {
				if !taken[r] && (best < 0 || math.Abs(v) > math.Abs(d[best])) {
					best = r
				}
			}
			if !(math.Abs(d[best]) > pivotTolerance) {
				return // nearly singular: the updated inverse stays in use
			}
			pivot(inverse, best, d)
			rows[place], taken[best] = best, true
		}
	}
	for place, r := range rows {
		row := inverse.RawRowView(r)
		copy(lp.inverse.RawRowView(place), row)
		lp.x[place] = dot(row, lp.rhs)
	}
	lp.computeDuals()
}

func dot(a, b []float64) (sum float64) {
	for i := range a {
		sum += float64(a[i] * b[i])
	}
	return sum
}
