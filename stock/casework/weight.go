package casework

import (
	"math/big"
	"slices"
	"strconv"

	"sawbill/stock"
)

// Grams is a weight. It is an estimate, for wood of one kind differs from board
// to board.
type Grams int64

// Weight is that of the pieces of one part.
type Weight struct {
	Part      int // an index into Case.Parts
	Each, All Grams
}

// pounds is the weight in pounds of 0.45359237 kg, by definition since 1959
// (National Bureau of Standards, Circular 572, addendum).
func (g Grams) pounds() float64 { return float64(g) / 453.59237 }

// ofPounds is the nearest to so many pounds.
func ofPounds(n int) Grams { return Grams((int64(n)*45_359_237 + 50_000) / 100_000) }

// PrintUnit writes "12.3 kg" or "85 g"; in a job in inches "27.1 lb" or "3.0 oz".
func (g Grams) PrintUnit(u stock.Units) string {
	switch pounds := g.pounds(); {
	case u == stock.Inches && pounds < 1:
		return fixed(16*pounds, 1) + " oz"
	case u == stock.Inches:
		return fixed(pounds, 1) + " lb"
	case g < 1000:
		return strconv.FormatInt(int64(g), 10) + " g"
	}
	return fixed(float64(g)/1000, 1) + " kg"
}

// weigh is the weight of a box of wood, to the gram; 0 where its density is not
// known. What joints take out of it is not taken off.
func (p Property) weigh(size Point) Grams {
	if !p.Known() {
		return 0
	}
	volume := big.NewInt(1)
	for _, side := range size {
		volume.Mul(volume, big.NewInt(int64(side)))
	}
	metre := big.NewInt(int64(1000 * stock.Millimetre))
	cube := new(big.Int).Exp(metre, big.NewInt(3), nil)
	grams := new(big.Rat).SetFrac(volume, cube)
	grams.Mul(grams, new(big.Rat).SetFloat64(p.Value*1000))
	grams.Add(grams, big.NewRat(1, 2))
	return Grams(new(big.Int).Quo(grams.Num(), grams.Denom()).Int64())
}

// weights weighs every part whose material has a density, and names the
// materials that have none.
func (c *Case) weights() (all []Weight, unknown []string) {
	for i, p := range c.Parts {
		density := c.Materials[p.Material].Density
		if !density.Known() {
			if !slices.Contains(unknown, p.Material) {
				unknown = append(unknown, p.Material)
			}
			continue
		}
		each := density.weigh(Point{p.Length, p.Width, p.Thickness})
		all = append(all, Weight{Part: i, Each: each, All: each * Grams(p.Count)})
	}
	return all, unknown
}

// load is a weight at a place.
type load struct {
	weight Grams
	at     [3]float64 // in units of stock.Length
}

// loads are the weights of the solids, each at its middle. Where the weight of
// one is not known it is 0.
func (c *Case) loads() []load {
	all := make([]load, len(c.Solids))
	for i, s := range c.Solids {
		all[i].weight = s.Weight
		if s.Part >= 0 {
			all[i].weight = c.Materials[c.Parts[s.Part].Material].Density.weigh(s.Size)
		}
		for a := range s.At {
			all[i].at[a] = float64(2*s.At[a]+s.Size[a]) / 2
		}
	}
	return all
}

// together is all loads as one, at their centre of gravity.
func together(loads []load) load {
	var sum load
	var moment [3]float64
	for _, l := range loads {
		sum.weight += l.weight
		for a := range moment {
			// The conversion keeps a processor from fusing the two operations,
			// which would round otherwise on some.
			moment[a] += float64(float64(l.weight) * l.at[a])
		}
	}
	for a := range moment {
		if sum.weight > 0 {
			sum.at[a] = moment[a] / float64(sum.weight)
		}
	}
	return sum
}
