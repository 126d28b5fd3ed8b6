// Package checks estimates what follows from a case: weights, surfaces and hardware, the sag of its
// shelves, the movement of its wood and whether it tips. No size of a part follows from these figures.
package checks

import (
	"sawbill/stock/casework/joints"
	"sawbill/stock/casework/pieces"
)

// Check is one estimate about the finished case.
type Check struct {
	Subject string // "shelf deflection"
	Of      string // the piece it is about: "shelf"; "case"
	Verdict Verdict
	Text    string // the outcome, in whole sentences
	// States are the states that were checked, if there are several: "all drawers fully open,
	// empty: margin 2.75".
	States []string
	// Inputs and Results are figures as decimals, for other programs.
	Inputs, Results []Figure
	Assumptions     []string // whole sentences
	Source          string   // of formula, limits and figures
}

// Verdict is how a result stands to its limit.
type Verdict string

const (
	Within   Verdict = "within the limit"
	Beyond   Verdict = "beyond the limit"
	AllowFor Verdict = "to allow for" // there is no limit: the design must allow for it
	// Tipping has no better verdict: the states checked are no proof.
	Stands Verdict = "stands in the states reckoned, which is no proof that it is safe"
	Tips   Verdict = "tips in states reckoned"
)

// Figure is a decimal number with its unit, "" where it has none.
type Figure struct{ Name, Value, Unit string }

// checker estimates weights, sag, movement and tipping of a case.
type checker struct {
	*pieces.Maker
	checks []Check
}

// Found has the estimates of a case. The cautions name the figures that others lack.
type Found struct {
	Checks   []Check
	Hardware []Hardware
	Anchored bool // the case may tip, and is to be fixed to the wall
}

// Case checks a case. Pegs lists the pegs of its joints.
func Case(made *pieces.Maker, pegs []joints.Pegged) Found {
	r := &checker{Maker: made}
	r.cautionUse()
	found := Found{Hardware: r.hardware(pegs), Anchored: r.tips() != nil}
	r.checkTipping()
	r.cautionHanging()
	r.checkDeflection()
	r.checkMovement()
	found.Checks = r.checks
	return found
}
