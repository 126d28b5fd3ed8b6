package stock

import (
	"math/big"
	"strconv"
)

// Grams is a weight. It is an estimate, for wood of one kind differs from board
// to board.
type Grams int64

// Weigh is the weight of a box of wood, to the gram, by its density in kg/m3.
func Weigh(length, width, thickness Length, density float64) Grams {
	volume := plus(nil, int64(length), int64(width), int64(thickness))
	cube := plus(nil, int64(meter), int64(meter), int64(meter))
	grams := new(big.Rat).SetFrac(volume, cube)
	return Grams(roundHalfUp(grams.Mul(grams, new(big.Rat).SetFloat64(density*1000))))
}

// Pounds is the weight in pounds of 0.45359237 kg, by definition since 1959
// (National Bureau of Standards, Circular 572, addendum).
func (g Grams) Pounds() float64 { return float64(g) / 453.59237 }

// OfPounds is the nearest to so many pounds.
func OfPounds(n int) Grams { return Grams((int64(n)*45_359_237 + 50_000) / 100_000) }

// PrintUnit writes "12.3 kg" or "85 g"; in a job in inches "27.1 lb" or "3.0 oz".
func (g Grams) PrintUnit(u Units) string {
	tenths := func(x float64) string { return strconv.FormatFloat(x, 'f', 1, 64) }
	switch pounds := g.Pounds(); {
	case u == Inches && pounds < 1:
		return tenths(16*pounds) + " oz"
	case u == Inches:
		return tenths(pounds) + " lb"
	case g < 1000:
		return strconv.FormatInt(int64(g), 10) + " g"
	}
	return tenths(float64(g)/1000) + " kg"
}
