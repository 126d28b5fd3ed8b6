// Package master solves the linear program of column generation: how often to cut each pattern,
// in fractions, so that every demand is met at least cost.
//
//	minimize    c x
//	subject to  A x >= demand   (one row per kind)
//	            B x <= limit    (one row per limited stock)
//	            x >= 0
//
// The method is the revised simplex method with an explicit inverse: Dantzig 1953; Chvatal,
// Linear Programming, 1983, chapter 7.
package master

import (
	"math"

	"gonum.org/v1/gonum/mat"

	"sawbill/nest/internal/halt"
)

// Column is one pattern: its cost and its coefficients.
type Column struct {
	Cost    float64
	Entries []Entry
}

// Entry is one coefficient of a column.
type Entry struct {
	Row   int
	Value float64
}

// LP is a linear program. Columns can be added at any time; the next Solve continues from the
// last basis.
//
// Numbers are floating point. The caller recomputes from the duals what must be exact. Results
// are the same on every machine: conversions keep processors from fusing product and sum, which
// would round differently.
type LP struct {
	// Halt makes Solve stop between two pivots. The duals serve as well.
	Halt halt.Signal

	rows    int
	columns columns
	// basis holds a column index for each row. Slacks and artificials are the first columns.
	basis []int
	basic []bool
	// candidates had the best reduced costs when all columns were last priced.
	candidates    []candidate
	inverse       *mat.Dense
	x             []float64 // of the basic columns
	rhs           []float64
	duals         []float64
	work          int64 // so far, in products
	nextAsked     int64 // work at which Halt is asked next
	sinceRefactor int   // pivots since the inverse was recomputed
	scratch       []float64
}

// Tolerances of the simplex method.
const (
	reducedCostTolerance = 1e-9 // a column must improve by more, relative to its cost
	pivotTolerance       = 1e-9 // smaller pivots are rejected
	// The inverse is recomputed after refactorAfter pivots, or as many as there are rows if
	// that is more. This limits rounding errors, and takes about as long as so many pivots.
	refactorAfter = 60
	perturbation  = 1e-6 // relative, of a demand
)

// New makes a program without patterns, with the rows of demand first. penalty is the cost of
// one unit of demand unmet.
func New(demand, limit, penalty []float64) *LP {
	m := len(demand) + len(limit)
	lp := &LP{
		rows:    m,
		basis:   make([]int, m),
		inverse: mat.NewDense(m, m, nil),
		x:       make([]float64, m),
		rhs:     append(perturbed(demand), limit...),
		duals:   make([]float64, m),
		scratch: make([]float64, m),
	}
	lp.columns.grow(8 * m)
	for r := range m {
		lp.inverse.Set(r, r, 1)
		lp.basis[r] = r
		if r < len(demand) {
			lp.Add(Column{penalty[r], []Entry{{r, 1}}})
		} else {
			lp.Add(Column{0, []Entry{{r, 1}}})
		}
		lp.basic[r] = true
	}
	for r := range demand {
		lp.Add(Column{0, []Entry{{r, -1}}}) // surplus
	}
	copy(lp.x, lp.rhs)
	return lp
}

// perturbed lowers every demand slightly, each by another amount. Otherwise the simplex method
// may pivot without progress thousands of times, since such programs are degenerate. Charnes,
// Econometrica 20, 1952; from memory.
func perturbed(demand []float64) []float64 {
	right := make([]float64, len(demand))
	for r, d := range demand {
		turns := float64(float64(r+1) * math.Phi)
		spread := turns - math.Floor(turns)
		right[r] = d * (1 - float64(perturbation*(1+spread)))
	}
	return right
}

// Add appends a copy of a column and returns its index.
func (lp *LP) Add(c Column) int {
	lp.basic = append(lp.basic, false)
	return lp.columns.add(c)
}

// Solve finds the optimum over the present columns, for perturbed demands, or stops after most
// pivots or at Halt. It reports whether it reached the optimum.
func (lp *LP) Solve(most int) bool {
	lp.computeDuals()
	for range most {
		if lp.halted() {
			return false
		}
		enter := lp.chooseEntering()
		if enter < 0 {
			return true
		}
		lp.pivotIn(enter)
	}
	return false
}

// halted asks Halt after each portion of work.
func (lp *LP) halted() bool {
	if lp.work < lp.nextAsked {
		return false
	}
	lp.nextAsked = lp.work + halt.Portion
	return lp.Halt.On()
}

func (lp *LP) square() int64 { return int64(lp.rows) * int64(lp.rows) }

// computeDuals computes the duals: cost of the basis times its inverse.
func (lp *LP) computeDuals() {
	clear(lp.duals)
	lp.work += lp.square()
	for r, j := range lp.basis {
		if c := lp.columns.cost[j]; c != 0 {
			addScaled(lp.duals, c, lp.inverse.RawRowView(r))
		}
	}
}

// pivotIn brings column j into the basis and updates the duals.
func (lp *LP) pivotIn(j int) {
	d := lp.ftran(j, lp.inverse)
	leave, step := -1, math.Inf(1)
	for r, v := range d {
		if v <= pivotTolerance {
			continue
		}
		ratio := max(0, lp.x[r]) / v
		if ratio < step-1e-12 || ratio <= step+1e-12 && leave >= 0 && v > d[leave] {
			leave, step = r, min(step, ratio)
		}
	}
	if leave < 0 {
		// Costs are not negative, so the program is bounded. Rounding has spoiled the column.
		lp.basic[j] = true
		return
	}
	step = max(0, lp.x[leave]) / d[leave]
	for r := range lp.x {
		lp.x[r] -= float64(step * d[r])
	}
	lp.x[leave] = step
	gain := lp.ReducedCost(j)
	pivot(lp.inverse, leave, d)
	addScaled(lp.duals, gain, lp.inverse.RawRowView(leave))
	lp.basic[lp.basis[leave]] = false
	lp.basic[j] = true
	lp.basis[leave] = j
	lp.work += 2 * lp.square() // with its share of recomputing the inverse
	if lp.sinceRefactor++; lp.sinceRefactor >= max(refactorAfter, lp.rows) {
		lp.refactor()
	}
}

// Duals of the rows. That of a demand, at least 0, is the cost of one more unit. That of a
// limited stock, at most 0, is the saving by one more piece.
func (lp *LP) Duals() []float64 { return lp.duals }

// Value returns the cost of the present solution.
func (lp *LP) Value() float64 {
	var v float64
	for r, j := range lp.basis {
		v += float64(lp.columns.cost[j] * lp.x[r])
	}
	return v
}

// Support calls f with every column of the solution and its value.
func (lp *LP) Support(f func(column int, times float64)) {
	for r, j := range lp.basis {
		if lp.x[r] > pivotTolerance {
			f(j, lp.x[r])
		}
	}
}

// Columns returns how many there are, slacks included. Patterns come last.
func (lp *LP) Columns() int { return len(lp.columns.cost) }

// Work returns the work so far, in products of two numbers.
func (lp *LP) Work() int64 { return lp.work }
