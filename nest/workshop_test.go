package nest

import (
	"fmt"
	"math/rand/v2"
	"testing"
)

// workshopSorts are the sorts of furniture that workshopJob makes.
var workshopSorts = []string{"cabinets", "bookcases", "drawers", "chest"}

func workshopName(n int) string {
	return fmt.Sprintf("%s-%03d", workshopSorts[n%len(workshopSorts)], n)
}

// workshopJob is furniture job number n: as many pieces of one sort as make 20
// to 80 parts, from 18 mm panels of one material. The sorts alternate with n.
// Lengths are tenths of a millimeter, prices cents.
//
// Outer sizes are drawn as they are ordered, in whole centimeters or half
// ones; the parts follow from them, so they repeat as they do in furniture.
// What is seen runs with the grain, what is hidden may lie either way. The
// kerf is 3.2 mm. There are full sheets, square ones that are cheaper or dearer
// by area, and half sheets that cost more than half. A third of the jobs trims
// the factory edges, a quarter rips nothing narrower than 30 mm, a fifth allows
// three levels of cuts.
func workshopJob(n int) Problem {
	w := workshop{Rand: rand.New(rand.NewPCG(uint64(n), 0x776f726b))}
	w.Kerf = 32
	w.Keep = Size{Length: 3000, Width: 800}
	full := 5500 + 50*w.Int64N(80)
	half := Stock{Length: 12200, Width: 12200, Price: full * (52 + w.Int64N(11)) / 100}
	if w.IntN(2) == 0 {
		half.Length, half.Width = 24400, 6100
	}
	const square = 100 * 15250 * 15250 / (24400 * 12200) // percent of a full sheet's area
	w.Stock = []Stock{
		{Length: 24400, Width: 12200, Price: full},
		{Length: 15250, Width: 15250, Price: full * square * (88 + w.Int64N(25)) / 10_000},
		half,
	}
	if w.IntN(3) == 0 {
		trim := 50 * (1 + w.Int64N(2))
		for i := range w.Stock {
			w.Stock[i].TrimLength, w.Stock[i].TrimWidth = trim, trim
		}
	}
	if w.IntN(4) == 0 {
		for i := range w.Stock {
			w.Stock[i].NarrowestRip = 300
		}
	}
	if w.IntN(5) == 0 {
		w.Stages = 3
	}
	pieces := []func(){w.cabinet, w.bookcase, w.drawers, w.chest}
	for parts := 20 + w.IntN(41); w.parts < parts; {
		blanks, before := len(w.Blanks), w.parts
		pieces[n%len(pieces)]()
		if w.parts > 80 {
			w.Blanks, w.parts = w.Blanks[:blanks], before
			break
		}
	}
	return w.Problem
}

// workshop gathers the parts of a job.
type workshop struct {
	*rand.Rand
	Problem
	parts int
}

// thick is the thickness of all panels.
const thick = 180

// steps draws from lo to hi in steps.
func (w *workshop) steps(lo, hi, step int64) int64 {
	return lo + step*w.Int64N((hi-lo)/step+1)
}

// seen adds a part whose grain runs along its length, hidden one that may lie
// either way.
func (w *workshop) seen(count int, length, width int64)   { w.add(count, length, width, false) }
func (w *workshop) hidden(count int, length, width int64) { w.add(count, length, width, true) }

func (w *workshop) add(count int, length, width int64, turned bool) {
	b := Blank{Length: length, Width: width, Count: count}
	for s := range w.Stock {
		b.From = append(b.From, Source{Stock: s, Upright: true, Turned: turned})
	}
	w.Blanks = append(w.Blanks, b)
	w.parts += count
}

// cabinet is a row of one to three base cabinets of one kitchen size.
func (w *workshop) cabinet() {
	outer := []int64{3000, 4000, 4500, 5000, 6000, 8000, 9000}[w.IntN(7)]
	row := 1 + w.IntN(3)
	high, deep := w.steps(7000, 7400, 100), w.steps(5200, 5800, 100)
	inner := outer - 2*thick
	w.seen(2*row, high, deep)
	w.seen(row, inner, deep)
	w.hidden(2*row, inner, 1000)
	w.hidden(row*(1+w.IntN(2)), inner-10, deep-200)
	subproblems := int64(1)
	if outer > 5000 {
		subproblems = 2
	}
	w.seen(row*int(subproblems), high-40, (outer-40-30*(subproblems-1))/subproblems)
}

// bookcase is one or two equal ones, with a kickboard each.
func (w *workshop) bookcase() {
	outer, high, deep := w.steps(6000, 10000, 500), w.steps(12000, 22000, 500), w.steps(2500, 3500, 100)
	both := 1 + w.IntN(2)
	inner := outer - 2*thick
	w.seen(2*both, high, deep)
	w.seen(2*both, inner, deep)
	w.seen(both*int(high/3500), inner-20, deep-100)
	w.hidden(both, inner, 800)
}

// drawers is a run of three to six drawers of one width in two heights, with
// fronts that cover the gaps.
func (w *workshop) drawers() {
	outer, deep := w.steps(4000, 9000, 500), w.steps(4000, 5500, 500)
	high, low := w.steps(1800, 2600, 100), w.steps(1000, 1500, 100)
	few := 1 + w.IntN(2)
	for _, d := range []struct {
		count int
		high  int64
	}{{few, high}, {2 + w.IntN(3), low}} {
		w.hidden(2*d.count, deep, d.high-400)
		w.hidden(2*d.count, outer-260-2*thick, d.high-400)
		w.hidden(d.count, deep, outer-260)
		w.seen(d.count, outer-40, d.high-30)
	}
}

// chest is a carcass with two bays of drawers.
func (w *workshop) chest() {
	outer, high, deep := w.steps(8000, 14000, 500), w.steps(7000, 11000, 500), w.steps(4500, 6000, 100)
	w.seen(2, high, deep)
	w.seen(1, outer+200, deep+200)
	w.hidden(1, outer-2*thick, deep)
	w.hidden(1, high-thick, deep-200)
	w.hidden(2, outer-2*thick, 900)
	rows := int64(3 + w.IntN(2))
	bay := (outer - 3*thick) / 2
	front := (high - 2*thick - 1000) / rows
	count := 2 * int(rows)
	w.seen(count, bay-40, front-30)
	w.hidden(2*count, deep-500, front-500)
	w.hidden(2*count, bay-260-2*thick, front-500)
	w.hidden(count, deep-500, bay-260)
}

// workshopJobs is how many numbers make the series that is measured.
const workshopJobs = 80

func TestWorkshopJobsAreAsDescribed(t *testing.T) {
	for n := range workshopJobs {
		p := workshopJob(n)
		name := workshopName(n)
		checkGenerated(t, name, p, workshopJob(n))
		parts := 0
		for _, b := range p.Blanks {
			parts += b.Count
		}
		if parts < 20 || parts > 80 {
			t.Errorf("%s: %d parts", name, parts)
		}
	}
}
