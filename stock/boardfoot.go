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

// Measure is the size from which the board feet of lumber are computed. It differs from the
// measured size. Lumber with the zero Measure is not sold by the board foot.
type Measure struct {
	Thickness, Width Length // nominal of softwood; rough thickness and width of hardwood
	Surface          bool   // hardwood: by its surface measure
}

// Measure is by the nominal size, as softwood is sold; CLS is not sold by the
// board foot.
func (n Nominal) Measure() Measure {
	if n.metric {
		return Measure{}
	}
	return Measure{Thickness: n.thickness.nominal, Width: n.width.nominal}
}

// Measure is by the thickness as sawn, whatever was planed off since.
func (q Quarter) Measure(width Length) Measure {
	return Measure{Thickness: q.rough, Width: width, Surface: true}
}

// Volume is the volume at which count pieces are sold. For softwood it is exact, with no
// rounding to whole feet; hardwood is measured by a [Tally] of its own. Stock
// thinner than an inch counts as an inch (PS 20 and NHLA rules, from memory).
func (m Measure) Volume(length Length, count int) Volume {
	thickness := max(m.Thickness, Inch)
	if !m.Surface {
		return Volume{}.Add(thickness, m.Width, length, count)
	}
	var tally Tally
	surface := 0
	for range count {
		surface += tally.SurfaceMeasure(m.Width, length)
	}
	return Volume{}.Add(thickness, Foot, Foot, surface)
}

// BoardFeet is v to the nearest hundredth of a board foot, a half upwards.
func (v Volume) BoardFeet() BoardFeet {
	return BoardFeet(roundHalfUp(v.boardFeet(100)))
}

// boardFeet counts v in board feet, each of so many parts.
func (v Volume) boardFeet(parts int64) *big.Rat {
	foot := plus(nil, 144, int64(Inch), int64(Inch), int64(Inch))
	return new(big.Rat).SetFrac(new(big.Int).Mul(v.count(), big.NewInt(parts)), foot)
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
