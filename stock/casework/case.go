package casework

import "sawbill/stock"

// Case is a derived design: its parts, and what is worth knowing besides.
type Case struct {
	// Parts are named once each; From is "case", How the arithmetic of each
	// size.
	Parts []stock.Part
	// Sizes are those of the case as a whole, and what led to them, in the
	// order of the reckoning: "outside width", "inside width", "bay 1 width".
	Sizes    []stock.Derivation
	Openings []Space
	// Solids are the pieces one by one, where they stand, in the order of Parts.
	Solids []Solid
	// Assembly is the order of putting it together.
	Assembly []Step
	Cautions []Caution
}

// Space is one opening of a finished case, clear on all sides.
type Space struct {
	Bay, Number          int // both from 1: from the left, from the top
	Width, Height, Depth stock.Length
	At                   Point  // where it begins, next to the zero point
	Holds                string // "3 drawers", "1 shelf", or "" when open
}

// Caution is something to see to before the case is built or used.
type Caution struct {
	Subject string // "tipping"
	Text    string // whole sentences
}
