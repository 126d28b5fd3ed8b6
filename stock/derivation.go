package stock

import (
	"strconv"
	"strings"
)

// Derivation is the arithmetic behind one dimension of a part. The size is the
// sum itself, so what is printed cannot differ from what is cut.
type Derivation struct {
	Dimension string // "length", "width", "thickness", or a size of the case such as "inside width"
	Sum       Sum
}

// Sum is a length written as a sum of named terms.
type Sum []Term

// Term is Times x Value / Over. Over 0 reads as 1; a division is rounded
// towards zero to the unit of Length, 25 nm.
type Term struct {
	Times int
	Value Length
	Over  int
	Label string // "outside width", "side thickness"; may be empty
}

// Total adds the terms up.
func (s Sum) Total() Length {
	var total Length
	for _, t := range s {
		total += t.amount()
	}
	return total
}

func (t Term) amount() Length {
	amount := Length(t.Times) * t.Value
	if t.Over > 1 {
		amount /= Length(t.Over)
	}
	return amount
}

// Print writes "864 = 900 (outside width) - 2 x 18 (side)" in the measure of r.
func (s Sum) Print(r Ruler) string {
	var b strings.Builder
	b.WriteString(r.Print(s.Total()))
	for i, t := range s {
		sign, times := " + ", t.Times
		if times < 0 {
			sign, times = " - ", -times
		}
		switch {
		case i == 0 && t.Times < 0:
			sign = " = -"
		case i == 0:
			sign = " = "
		}
		b.WriteString(sign)
		if times != 1 {
			b.WriteString(strconv.Itoa(times) + " x ")
		}
		b.WriteString(r.Print(t.Value))
		if t.Over > 1 {
			b.WriteString(" / " + strconv.Itoa(t.Over))
		}
		if t.Label != "" {
			b.WriteString(" (" + t.Label + ")")
		}
	}
	return b.String()
}
