package nest

// Cut is the direction of a saw cut: a rip divides the width, a crosscut the length.
type Cut int

const (
	AnyCut Cut = iota
	Rip
	Crosscut
)

// Problem is one planning task. Solve and Verify never change it.
type Problem struct {
	Stock  []Stock
	Blanks []Blank
	// Groups are blanks that come from one piece, side by side. A blank is in one group at most.
	Groups []Group
	// Kerf is the width that one cut turns to dust.
	Kerf int64
	// Stages is the maximum number of levels of cuts; 0 is no limit. Each level is all rips or
	// all crosscuts. Trimming a blank to size counts.
	Stages int
	// Keep is the smallest offcut. A leftover that is smaller in either direction is waste.
	Keep Size
}

// Size is a rectangle: length along the stock's length, width across it.
type Size struct {
	Length, Width int64
}

// Stock is one size of piece that can be cut.
type Stock struct {
	Length, Width int64
	// TrimLength is cut off each end, and TrimWidth off each edge, before the first cut of the
	// plan.
	TrimLength, TrimWidth int64
	// Price of one piece; at least 0.
	Price int64
	// Count is the number of pieces; 0 is no limit.
	Count int
	// OnHand stock is not bought. Its price is 0, and its area does not count as bought.
	OnHand bool
	// FirstCut is the direction of this stock's first level of cuts.
	FirstCut Cut
	// NarrowestRip is the minimum width of a blank, offcut or split that comes off a rip. Waste
	// may be narrower.
	NarrowestRip int64
	// Defects lie within every piece, trim included. Neither parts nor offcuts hold any of
	// them; waste may, and cuts may pass them.
	Defects []Defect
}

// Defect is a rectangle that is of no use: its corner nearest to the reference corner, measured
// along the length and across it, and its size.
type Defect struct {
	X, Y          int64
	Length, Width int64
}

// Usable returns the size inside the trim: the root of every layout.
func (s Stock) Usable() Size {
	return Size{s.Length - 2*s.TrimLength, s.Width - 2*s.TrimWidth}
}

// Blank is a rectangle with a demand of Count.
type Blank struct {
	Length, Width int64
	Count         int
	// From lists the stock that the blank may come from, each once. A blank that fits none of
	// them stays unplaced.
	From []Source
}

// Group is a run of blanks cut from one piece one after another, with one kerf between, such as
// drawer fronts over which the grain runs on. All lie upright, or all turned.
type Group struct {
	// Blanks are indices into Problem.Blanks, in the order from the reference corner on; two or
	// more. A blank may occur several times.
	Blanks []int
	// Lengthwise blanks follow one another along their length and have one width. Others lie
	// edge to edge and have one length.
	Lengthwise bool
	// Count is how many runs there are. The Count of each blank is that of all runs.
	Count int
}

// Source is one stock that a blank may come from, and the blank's orientations there.
type Source struct {
	Stock   int  // index into Problem.Stock
	Upright bool // length along the stock's length
	Turned  bool // length across it
}
