package design

// Properties are the known figures of a material besides its sizes.
type Properties struct {
	Density Property // kg/m3
	Modulus Property // of elasticity along the length, N/mm2
	// Radial and Tangential are the change of width for each percent of moisture,
	// of quarter-sawn and of flat-sawn lumber, as a share of the width.
	Radial, Tangential Property
}

// Property is one figure of a material. The zero Property is not known.
type Property struct {
	Value  float64
	Source string
}

// Known reports whether there is a figure.
func (p Property) Known() bool { return p.Value > 0 }

const (
	// psi is a pound-force per square inch in N/mm2.
	psi = 0.006894757
	// perGravity is the density in kg/m3 at 12 % moisture of wood whose specific
	// gravity is 1: that is oven-dry mass over volume at 12 %, next to water, and
	// 12 % of the oven-dry mass comes to it, 1000 x 1.12.
	perGravity = 1120

	ofWoods    = "Wood Handbook (2010), Table 5-3b"
	ofPanels   = "Wood Handbook (2010), Table 12-1"
	ofMovement = "Wood Handbook (2010), Table 13-5"
	ofTrade    = "Architectural Woodwork Standards 2009"
	ofMidRange = "mid-range of " + ofPanels
	ofLowEnd   = "low end of " + ofPanels
)

// kind is one row of the tables of wood.
type kind struct {
	name string
	Properties
}

// solid is a species: specific gravity, modulus in 10^6 psi, and movement, 0
// where it is not known.
func solid(name string, gravity, modulus, radial, tangential float64) kind {
	k := kind{name, Properties{
		Density: Property{gravity * perGravity, ofWoods},
		Modulus: Property{modulus * 1e6 * psi, ofWoods},
	}}
	if radial > 0 {
		k.Radial, k.Tangential = Property{radial, ofMovement}, Property{tangential, ofMovement}
	}
	return k
}

// recalled says which figures of a wood stand here from memory, not looked up in
// their table.
type recalled int

const (
	gravity recalled = 1 << iota
	modulus
	movement
)

// fromMemory says so at the source of those figures.
func (k kind) fromMemory(which recalled) kind {
	for _, figure := range []struct {
		recalled
		properties []*Property
	}{
		{gravity, []*Property{&k.Density}}, {modulus, []*Property{&k.Modulus}}, {movement, []*Property{&k.Radial, &k.Tangential}},
	} {
		for _, p := range figure.properties {
			if which&figure.recalled != 0 {
				p.Source += ", from memory"
			}
		}
	}
	return k
}

// kinds lists the woods and panels that a material may be. Means of small clear straight-grained
// pieces; of panels the low end, to be on the safe side. Sheets hardly move, so they have no
// figures of movement.
func kinds() []kind {
	return []kind{
		solid("red alder", 0.41, 1.38, 0.00151, 0.00256),
		solid("white ash", 0.60, 1.74, 0.00169, 0.00274),
		solid("basswood", 0.37, 1.46, 0.00230, 0.00330),
		solid("beech", 0.64, 1.72, 0.00190, 0.00431),
		solid("paper birch", 0.55, 1.59, 0.00219, 0.00304),
		solid("yellow birch", 0.62, 2.01, 0.00256, 0.00338),
		solid("cherry", 0.50, 1.49, 0.00126, 0.00248),
		solid("red maple", 0.54, 1.64, 0.00137, 0.00289),
		solid("sugar maple", 0.63, 1.83, 0.00165, 0.00353).fromMemory(gravity | modulus),
		solid("red oak", 0.63, 1.82, 0.00158, 0.00369).fromMemory(gravity),
		solid("white oak", 0.68, 1.78, 0.00180, 0.00365),
		solid("walnut", 0.55, 1.68, 0.00190, 0.00274).fromMemory(gravity | modulus),
		solid("yellow-poplar", 0.42, 1.58, 0.00158, 0.00289).fromMemory(gravity | modulus | movement),
		solid("douglas-fir", 0.48, 1.95, 0.00165, 0.00267).fromMemory(movement),
		solid("western hemlock", 0.45, 1.63, 0, 0),
		solid("eastern white pine", 0.35, 1.24, 0.00071, 0.00212).fromMemory(gravity | modulus | movement),
		solid("ponderosa pine", 0.40, 1.29, 0.00133, 0.00216).fromMemory(movement),
		solid("western white pine", 0.38, 1.46, 0, 0),
		solid("longleaf pine", 0.59, 1.98, 0, 0),
		solid("redwood", 0.40, 1.34, 0, 0),
		solid("spruce", 0.35, 1.30, 0, 0), // Engelmann
		{"birch plywood", Properties{
			Density: Property{685, "a maker's data sheet of birch plywood, 18 mm"},
			Modulus: Property{1.01e6 * psi, ofLowEnd},
		}},
		{"softwood plywood", Properties{
			Density: Property{500, ofMidRange},
			Modulus: Property{SoftwoodPlywood, ofTrade},
		}},
		{"MDF", Properties{Density: Property{750, ofMidRange}, Modulus: Property{0.52e6 * psi, ofPanels}}},
		{"particleboard", Properties{Density: Property{660, ofMidRange}, Modulus: Property{SoftestPanel, ofLowEnd}}},
		{"OSB", Properties{Density: Property{650, ofMidRange}, Modulus: Property{0.64e6 * psi, ofLowEnd}}},
		{"hardboard", Properties{Density: Property{950, ofMidRange}, Modulus: Property{0.45e6 * psi, ofLowEnd}}},
	}
}

// Woods are the names that [Wood] knows.
func Woods() []string {
	var names []string
	for _, k := range kinds() {
		names = append(names, k.name)
	}
	return names
}

// Wood returns the properties of a wood or panel, nothing where it is not known.
func Wood(name string) Properties {
	for _, k := range kinds() {
		if k.name == name {
			return k.Properties
		}
	}
	return Properties{}
}
