package checks

import (
	"slices"

	"sawbill/stock"
	"sawbill/stock/casework/design"
	"sawbill/stock/casework/pieces"
	"sawbill/stock/casework/solid"
)

// Weight is the weight of the pieces of one part.
type Weight struct {
	Part      int // an index into Case.Parts
	Each, All stock.Grams
}

// weigh is the weight of a box of wood, to the gram; 0 where its density is not known. The wood
// that joints remove counts.
func weigh(p design.Property, size solid.Point) stock.Grams {
	if !p.Known() {
		return 0
	}
	return stock.Weigh(size[0], size[1], size[2], p.Value)
}

// weights weighs every part whose material has a density, and names the
// materials that have none.
func weights(c *pieces.Standing) (all []Weight, unknown []string) {
	for i, p := range c.Parts {
		density := c.Materials[p.Material].Density
		if !density.Known() {
			if !slices.Contains(unknown, p.Material) {
				unknown = append(unknown, p.Material)
			}
			continue
		}
		each := weigh(density, solid.Point{p.Length, p.Width, p.Thickness})
		all = append(all, Weight{Part: i, Each: each, All: each * stock.Grams(p.Count)})
	}
	return all, unknown
}

// load is a weight at a place.
type load struct {
	weight stock.Grams
	at     [3]float64 // in units of stock.Length
}

// loads are the weights of the solids, each at its middle. Where the weight of
// one is not known it is 0.
func loads(c *pieces.Standing) []load {
	all := make([]load, len(c.Solids))
	for i, s := range c.Solids {
		all[i].weight = s.Weight
		if s.Part >= 0 {
			all[i].weight = weigh(c.Materials[c.Parts[s.Part].Material].Density, s.Size)
		}
		for a := range s.At {
			all[i].at[a] = float64(2*s.At[a]+s.Size[a]) / 2
		}
	}
	return all
}

// together is all loads as one, at their center of gravity.
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
