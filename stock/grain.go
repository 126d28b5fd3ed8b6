package stock

// Grain says which way the grain of a part or of a piece of stock runs.
type Grain int

const (
	GrainLength  Grain = iota // along the length
	GrainWidth                // along the width
	GrainAny                  // a part that may lie either way, a stock without grain
	GrainUnknown              // of stock only: it has grain, and which way is not known
)

// String returns the word the job file uses for a part: "length", "width" or
// "any" (which a sheet's entry spells "none"); "unknown" of stock only.
func (g Grain) String() string {
	return [...]string{"length", "width", "any", "unknown"}[g]
}

// Lies reports how a part may lie in a piece of stock so that grain runs along
// grain: upright (length along length), turned by a quarter, or both.
func (g Grain) Lies(in Grain) (upright, turned bool) {
	if g == GrainAny || in == GrainAny {
		return true, true
	}
	if in == GrainUnknown {
		return false, false
	}
	return g == in, g != in
}

// Quarter is the grain of a piece that is turned by a quarter.
func (g Grain) Quarter() Grain {
	switch g {
	case GrainLength:
		return GrainWidth
	case GrainWidth:
		return GrainLength
	}
	return g
}
