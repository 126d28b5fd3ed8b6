package checks

import (
	"math"
	"strconv"

	"sawbill/stock"
	"sawbill/stock/casework/pieces"
	"sawbill/stock/casework/solid"
)

// Takeoff lists the weight, finish and edging of a case. All of it is an estimate.
type Takeoff struct {
	// Weights has the parts whose material has a density, Unweighed the materials without one.
	// Weight is the sum, with the finished drawers.
	Weights   []Weight
	Unweighed []string
	Weight    stock.Grams
	// Finished counts the drawers that were measured whose weight is not known.
	Finished int
	// Center is the center of gravity, to the millimeter, of what is weighed;
	// nothing where not all parts are.
	Center *solid.Point

	Surfaces Surfaces
	// Edging is for the edges of sheets that show, with a tenth to spare.
	Edging stock.Length
}

// TakeOff estimates the weight, finish and edging of a case.
func TakeOff(c *pieces.Standing) Takeoff {
	t := Takeoff{Surfaces: surfaces(c), Edging: edgeLength(c)}
	t.Weights, t.Unweighed = weights(c)
	for _, w := range t.Weights {
		t.Weight += w.All
	}
	for _, s := range c.Solids {
		t.Weight += s.Weight
		if s.Part < 0 && s.Weight == 0 {
			t.Finished++
		}
	}
	if t.Weight > 0 && t.Unweighed == nil && t.Finished == 0 {
		whole := together(loads(c))
		t.Center = &solid.Point{nearestMillimeter(whole.at[solid.X]), nearestMillimeter(whole.at[solid.Y]), nearestMillimeter(whole.at[solid.Z])}
	}
	return t
}

func nearestMillimeter(l float64) stock.Length {
	return stock.Length(math.Round(l/float64(stock.Millimeter))) * stock.Millimeter
}

// fixed writes an estimate with so many decimals.
func fixed(v float64, decimals int) string { return strconv.FormatFloat(v, 'f', decimals, 64) }
