package casework

import (
	"math"

	"sawbill/stock"
)

// Moduli of elasticity in pounds per square inch.
const (
	// Particleboard, the low end of Wood Handbook Table 12-1.
	softestPanel = 0.40e6
	// Fir plywood, Architectural Woodwork Standards 2009.
	softwoodPlywood = 0.95e6
)

// bookLoad is the shelf load of schools and libraries, in pounds per square
// foot: Architectural Woodwork Standards 2009, 1.2.21.2.
const bookLoad = 50

// sagSpan is the span over which a loose shelf under a load sags by 1/144
// of itself, the limit of Architectural Woodwork Standards 2009, 1.2.21.3.
//
// The sag of a simply supported beam under an even load is 5 w L^4 / (384 E I)
// (Wood Handbook, Equation 9-2). With w = load x depth / 144 and I = depth x
// t^3 / 12 the depth cancels, and sag = L / 144 gives
//
//	L = (6.4 E t^3 / load)^(1/3)   in inches and pounds
func sagSpan(modulus float64, thickness stock.Length, load float64) stock.Length {
	t := float64(thickness) / float64(stock.Inch)
	return stock.Length(math.Cbrt(6.4*modulus*t*t*t/load) * float64(stock.Inch))
}
