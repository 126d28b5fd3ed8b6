package design

// Moduli of elasticity in N/mm2.
const (
	// Particleboard, the low end of Wood Handbook Table 12-1.
	SoftestPanel = 0.40e6 * psi
	// Fir plywood, Architectural Woodwork Standards 2009.
	SoftwoodPlywood = 0.95e6 * psi
)
