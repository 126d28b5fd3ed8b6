package nest

// Cut is the direction of a saw cut: a rip divides the width, a crosscut the
// length.
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
	// Kerf is the width one cut turns to dust.
	Kerf int64
	// Stages is the greatest number of levels of cuts, each level all rips or
	// all crosscuts, trimming a blank to size included; 0 is any number.
	Stages int
	// Keep is the least leftover that is an offcut; anything smaller in either
	// direction is waste.
	Keep Size
}

// Size is a rectangle: length along the stock's length, width across it.
type Size struct {
	Length, Width int64
}

// Stock is one size of piece that can be cut.
type Stock struct {
	Length, Width int64
	// TrimLength is cut off each end, TrimWidth off each edge, before the
	// first cut of the plan.
	TrimLength, TrimWidth int64
	// Price of one piece; at least 0.
	Price int64
	// Count is how many there are; 0 is no limit.
	Count int
	// OnHand stock is not bought: its price is 0 and its area does not count
	// as area bought.
	OnHand bool
	// FirstCut is the direction of this stock's first level of cuts.
	FirstCut Cut
	// NarrowestRip is the least width of a blank, offcut or split that comes
	// off a rip; waste may be narrower.
	NarrowestRip int64
}

// Usable is what is left inside the trim: the root of every layout.
func (s Stock) Usable() Size {
	return Size{s.Length - 2*s.TrimLength, s.Width - 2*s.TrimWidth}
}

// Blank is a rectangle that is wanted, Count times.
type Blank struct {
	Length, Width int64
	Count         int
	// From lists the stock it may come from, each once. A blank that fits none
	// of them by size stays unplaced.
	From []Source
}

// Source is one stock a blank may come from, and how it may lie there.
type Source struct {
	Stock   int  // index into Problem.Stock
	Upright bool // length along the stock's length
	Turned  bool // length across it
}
