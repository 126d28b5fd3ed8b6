package job

import (
	"math"

	"sawbill/stock"
	"sawbill/stock/casework"
)

// asGiven is the source of what the job file says itself.
const asGiven = "the job file"

// describe adds what each [[material]] says of the material's properties: those
// of its wood, and over them what is given.
func (a allowances) describe(materials map[string]casework.Material) map[string]casework.Material {
	for name, m := range materials {
		rec, there := a.of[name]
		if !there {
			continue
		}
		m.Properties = casework.Wood(rec.text("wood"))
		for key, property := range map[string]*casework.Property{"density": &m.Density, "modulus": &m.Modulus} {
			if rec.given(key) {
				*property = casework.Property{Value: float64(rec.count(key)), Source: asGiven}
			}
		}
		materials[name] = m
	}
	return materials
}

// densities are those of the materials on offer, in kg/m3, where they are known.
func (a allowances) densities(offers []offer) map[string]int {
	all := mapped(offers, func(o offer) stock.Stock { return o.Stock })
	var known map[string]int
	for name, m := range a.describe(casework.MaterialsOf(all)) {
		if m.Density.Known() {
			if known == nil {
				known = make(map[string]int)
			}
			known[name] = int(math.Round(m.Density.Value))
		}
	}
	return known
}
