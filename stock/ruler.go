package stock

import (
	"cmp"
	"fmt"
	"math/bits"
)

// Ruler prints lengths by marks of 0.1 mm or 1/32 in, and by halves of these where a length lies on
// one: 8.85, 11 35/64. The zero Ruler prints millimeters.
//
// Any other length prints as the half mark below it, behind "≈": a reader must know that the figure
// was rounded. So neither what fits into something is printed larger than it is, nor what receives
// it. One that lies a hair below the next half mark, less than three tenths of the way, prints as that:
// 19 mm is ≈3/4 in. No figure is off by half a mark.
// Never add up printed figures; add lengths and print the sum.
type Ruler struct {
	Units Units
	// Denominator divides an inch into marks, a power of two as on a tape; 0 means 32. No
	// halves are printed of 64ths or finer ones.
	Denominator int64
}

// Print writes the bare number, "698.5" or "27 1/2", behind "≈" where it was
// rounded.
func (r Ruler) Print(l Length) string {
	sign, size := split(l)
	marks, exact := r.halves(size)
	text := r.figures(marks)
	if marks > 0 {
		text = sign + text
	}
	if !exact {
		text = "≈" + text
	}
	return text
}

// PrintUnit writes the number with its unit, "698.5 mm" or "27 1/2 in".
// ParseLength reads it back, and exactly so where l is [Ruler.Exact], not
// negative and not beyond [Longest].
func (r Ruler) PrintUnit(l Length) string { return r.Print(l) + " " + r.Units.String() }

// Size writes two lengths of one piece, "698.5 x 300".
func (r Ruler) Size(length, width Length) string { return r.Print(length) + " x " + r.Print(width) }

// Exact reports whether l prints without rounding.
func (r Ruler) Exact(l Length) bool {
	_, size := split(l)
	_, exact := r.halves(size)
	return exact
}

// scale is the number of marks on one whole: tenths of a millimeter, or the
// fractions of an inch.
func (r Ruler) scale() (whole Length, marks uint64) {
	if r.Units == Inches {
		return Inch, uint64(cmp.Or(r.Denominator, 32))
	}
	return Millimeter, 10
}

// printed is the number of half marks on one whole, or of marks where these have none.
func (r Ruler) printed() (whole Length, halves uint64) {
	whole, marks := r.scale()
	if r.Units == Inches {
		return whole, max(marks, min(2*marks, 64))
	}
	return whole, 2 * marks
}

// aHair is how many tenths of a half mark a length may lie below one and print as it: of 1/64 in
// 0.12 mm, where 0.2 mm shows in the faces of a joint (confirmed: a maker's page). Thirds of a whole
// print as the mark below.
const aHair = 3

// halves counts the half marks up to size, and reports whether size lies on one.
func (r Ruler) halves(size uint64) (n uint64, exact bool) {
	whole, halves := r.printed()
	hi, lo := bits.Mul64(size, halves)
	n, rest := bits.Div64(hi, lo, uint64(whole))
	if 10*(uint64(whole)-rest) < aHair*uint64(whole) {
		n++
	}
	return n, rest == 0
}

// figures writes n half marks: "698.5", "27 1/2".
func (r Ruler) figures(n uint64) string {
	_, marks := r.printed()
	whole, part := n/marks, n%marks
	switch {
	case part == 0:
		return fmt.Sprint(whole)
	case r.Units != Inches && part%2 == 0:
		return fmt.Sprintf("%d.%d", whole, part/2)
	case r.Units != Inches:
		return fmt.Sprintf("%d.%02d", whole, 5*part)
	}
	for part%2 == 0 && marks%2 == 0 {
		part, marks = part/2, marks/2
	}
	if whole == 0 {
		return fmt.Sprintf("%d/%d", part, marks)
	}
	return fmt.Sprintf("%d %d/%d", whole, part, marks)
}
