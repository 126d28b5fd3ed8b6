package casework

// Moduli of elasticity in N/mm2.
const (
	// Particleboard, the low end of Wood Handbook Table 12-1.
	softestPanel = 0.40e6 * psi
	// Fir plywood, Architectural Woodwork Standards 2009.
	softwoodPlywood = 0.95e6 * psi
)

// bookLoad is the shelf load of schools and libraries, 50 pounds per square foot, in
// N/mm2: Architectural Woodwork Standards 2009, 1.2.21.2.
const bookLoad = 50 * squareFootLoad
