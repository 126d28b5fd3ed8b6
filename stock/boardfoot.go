package stock

import (
	"fmt"
	"math/big"
)

// BoardFeet is a whole count of hundredths of a board foot, which is 144 cubic
// inches: a square foot, one inch thick.
type BoardFeet int64

// String writes two decimals, "5.33".
func (b BoardFeet) String() string { return fmt.Sprintf("%d.%02d", b/100, b%100) }

// BoardMeasure is thickness in inches x width in inches x length in feet / 12,
// to the nearest hundredth, a half upwards. Sizes are nominal or rough; stock
// thinner than an inch counts as an inch (PS 20, from memory).
func BoardMeasure(thickness, width, length Length) BoardFeet {
	cubes := plus(nil, int64(max(thickness, Inch)), int64(width), int64(length), 100)
	return BoardFeet(roundHalfUp(new(big.Rat).SetFrac(cubes, plus(nil, 144, int64(Inch), int64(Inch), int64(Inch)))))
}

// BoardFeet is the board measure of one piece by its nominal size, as softwood
// is sold: kept to hundredths, with no rounding to whole feet.
func (n Nominal) BoardFeet(length Length) BoardFeet {
	return BoardMeasure(n.thickness.nominal, n.width.nominal, length)
}

// Tally measures hardwood boards one after the other, by the rules of the
// National Hardwood Lumber Association: in whole numbers, of which an exact
// half goes up for one board and down for the next. The zero Tally is ready.
type Tally struct{ halfGoesDown bool }

// SurfaceMeasure is width in inches x length in feet / 12, to the nearest
// whole square foot. A fraction of a foot in the length is dropped.
func (t *Tally) SurfaceMeasure(width, length Length) int {
	return t.nearest(width*Length(WholeFeet(length)), Foot)
}

// BoardFeet is the surface measure times the rough thickness, which counts as
// an inch where it is less (NHLA rules, from memory).
func (t *Tally) BoardFeet(thickness, width, length Length) BoardFeet {
	surface := t.SurfaceMeasure(width, length)
	return BoardMeasure(thickness, Length(surface)*Foot, Foot)
}

// Width is the width to write down: the nearest whole inch.
func (t *Tally) Width(width Length) int { return t.nearest(width, Inch) }

// WholeFeet is the length to write down: the fraction of a foot is dropped.
func WholeFeet(length Length) int { return int(length / Foot) }

// nearest divides amount by unit, to the nearest whole number.
func (t *Tally) nearest(amount, unit Length) int {
	whole, rest := int(amount/unit), amount%unit
	switch {
	case 2*rest > unit:
		whole++
	case 2*rest == unit:
		if !t.halfGoesDown {
			whole++
		}
		t.halfGoesDown = !t.halfGoesDown
	}
	return whole
}
