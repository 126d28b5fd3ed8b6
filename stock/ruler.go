package stock

import (
	"cmp"
	"fmt"
	"math/bits"
)

// Ruler prints lengths: millimeters to 0.1, or inches to a fraction. The zero
// Ruler prints millimeters.
//
// A length between two marks prints as the nearer one, the larger when both
// are as near, and always behind "≈": a reader must know that the figure was
// rounded. Thicknesses of sheets come in 1/64 in: less than an inch that lies on one
// prints as it is, though the ruler has no such marks. Never add up printed figures; add
// lengths and print the sum.
type Ruler struct {
	Units Units
	// Denominator is the finest fraction of an inch to print, a power of two
	// as on a tape; 0 means 32.
	Denominator int64
}

// Print writes the bare number, "698.5" or "27 1/2", behind "≈" where it was
// rounded.
func (r Ruler) Print(l Length) string {
	sign, size := split(l)
	r = r.thatPrints(size)
	marks, exact := r.marks(size)
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

// thatPrints is the ruler, with 64ths of an inch for a thickness that lies on one.
func (r Ruler) thatPrints(size uint64) Ruler {
	fine := r
	fine.Denominator = 64
	if _, marks := r.scale(); r.Units != Inches || marks != 32 || size >= uint64(Inch) {
		return r
	}
	if _, exact := fine.marks(size); exact {
		return fine
	}
	return r
}

// Exact reports whether l prints without rounding.
func (r Ruler) Exact(l Length) bool {
	_, size := split(l)
	_, exact := r.thatPrints(size).marks(size)
	return exact
}

// Down is the last mark of the ruler at or below l, for l of 0 or more. It prints without
// rounding where the marks are whole units of Length, as they are to 1/64 of an inch.
func (r Ruler) Down(l Length) Length {
	whole, marks := r.scale()
	return l/whole*whole + l%whole*Length(marks)/whole*whole/Length(marks)
}

// scale is the number of marks on one whole: tenths of a millimeter, or the
// fractions of an inch.
func (r Ruler) scale() (whole Length, marks uint64) {
	if r.Units == Inches {
		return Inch, uint64(cmp.Or(r.Denominator, 32))
	}
	return Millimeter, 10
}

// marks counts the marks of the ruler up to size, to the nearest, and reports
// whether size lies on one.
func (r Ruler) marks(size uint64) (n uint64, exact bool) {
	whole, marks := r.scale()
	hi, lo := bits.Mul64(size, marks)
	n, rest := bits.Div64(hi, lo, uint64(whole))
	if 2*rest >= uint64(whole) {
		n++
	}
	return n, rest == 0
}

// figures writes n marks: "698.5", "27 1/2".
func (r Ruler) figures(n uint64) string {
	_, marks := r.scale()
	whole, part := n/marks, n%marks
	if part == 0 {
		return fmt.Sprint(whole)
	}
	if r.Units != Inches {
		return fmt.Sprintf("%d.%d", whole, part)
	}
	for part%2 == 0 && marks%2 == 0 {
		part, marks = part/2, marks/2
	}
	if whole == 0 {
		return fmt.Sprintf("%d/%d", part, marks)
	}
	return fmt.Sprintf("%d %d/%d", whole, part, marks)
}
