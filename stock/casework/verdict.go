package casework

// Check is one thing reckoned about the finished case. It is an estimate.
type Check struct {
	Subject string // "shelf deflection"
	Of      string // the piece it is about: "shelf"; "case"
	Verdict Verdict
	Text    string // the outcome, in whole sentences
	// States are those that the outcome was reckoned in, where there are several:
	// "all drawers fully open, empty: margin 2.75".
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
	// Of tipping nothing better is said than what was reckoned.
	Stands Verdict = "stands in the states reckoned, which is no proof that it is safe"
	Tips   Verdict = "tips in states reckoned"
)

// Figure is a decimal number with its unit, "" where it has none.
type Figure struct{ Name, Value, Unit string }

// checks reckons all there are figures for. What lacks one is told among the
// cautions.
func (r *reckoner) checks(c *Case) {
	r.checkTipping(c)
	r.cautionHanging(c)
	r.checkDeflection(c)
	r.checkMovement(c)
}
