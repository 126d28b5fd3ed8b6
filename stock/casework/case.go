package casework

import "sawbill/stock"

// Case is a derived design: its parts, and what is worth knowing besides.
type Case struct {
	// Parts are named once each; From is "case", How the arithmetic of each
	// size. Of their allowances only Mitres is told.
	Parts []stock.Part
	// Sizes are those of the case as a whole, and what led to them, in the
	// order of the reckoning: "outside width", "inside width", "bay 1 width".
	Sizes    []stock.Derivation
	Openings []Space
	// Hung: it hangs on a wall, and its height begins at its lower edge, not at the
	// floor.
	Hung bool
	// Storage is what the drawers to be made hold, in the order of their bays
	// and openings, from the top.
	Storage []Storage
	// Solids are the pieces one by one, where they stand, in the order of Parts.
	Solids []Solid
	// Marks are what is laid out on the parts, in their order.
	Marks []Mark
	// Assembly is the order of putting it together.
	Assembly []Step
	Cautions []Caution
	Checks   []Check
	Hardware []Hardware
	Finish   Finish
	// Materials are those of the job, by name.
	Materials map[string]Material
}

// Space is one opening of a finished case, clear on all sides.
type Space struct {
	Bay, Number          int // both from 1: from the left, from the top
	Width, Height, Depth stock.Length
	At                   Point  // where it begins, next to the zero point
	Holds                string // "3 drawers", "2 doors, 1 shelf, 12 bottles", or "" when open
}

// Storage is the inside of a drawer's box, above its bottom.
type Storage struct {
	Drawer               string // "bay 1 drawer 2", in as few words as tell it apart
	Width, Depth, Height stock.Length
}

// CubicMillimetres is the volume, for print: rounded to a double's 53 bits.
func (s Storage) CubicMillimetres() float64 {
	const mm = float64(stock.Millimetre)
	return float64(s.Width) / mm * (float64(s.Depth) / mm) * (float64(s.Height) / mm)
}

// Caution is something to see to before the case is built or used.
type Caution struct {
	Subject string // "tipping"
	Text    string // whole sentences
}
