package stock

// Kind tells a sheet, which has two sawn directions, from a board, whose grain
// runs along its length.
type Kind int

const (
	Sheet Kind = iota
	Board
)

// String returns the word of the job and plan files: "sheet" or "board".
func (k Kind) String() string {
	return [...]string{"sheet", "board"}[k]
}

// Stock is one size of anything that can be cut: an offer for sale, or pieces
// on hand.
type Stock struct {
	Name     string
	Kind     Kind
	Material string
	// Length runs along the face grain of a sheet unless Grain says otherwise.
	Length, Width, Thickness Length
	Grain                    Grain
	// Trim is cut off every edge of a sheet, off both ends of a board, before
	// anything else.
	Trim Length
	// Seller is who offers it; empty where that makes no difference.
	Seller string
	// Price is for one piece, 0 when none was given or it is on hand.
	Price Money
	// Count is how many can be had; 0 means no limit.
	Count int
	// OnHand pieces cost nothing: none is bought where they would do.
	OnHand bool
	// Measure is the size from which board feet are computed, for lumber with a nominal
	// size or a rough thickness.
	Measure Measure
	// From is the name of the offer of which s is a piece, cut by the seller; empty
	// for all that is bought as it is. Sawn is what the sides that the seller cut
	// lose at the least, whatever Trim says.
	From string
	Sawn Trims
	// Next is the direction of the first cut of a piece that was begun already.
	Next NextCut
	// Section is where s lies on a board that is cut apart at its defects;
	// Length is then that of the section.
	Section Section
}

// Usable is the size left inside the trim.
func (s Stock) Usable() (length, width Length) {
	t := s.Trims()
	return s.Length - t.NearEnd - t.FarEnd, s.Width - t.NearEdge - t.FarEdge
}

// Serves reports whether the material and thickness of s can give b: a sheet
// must have the blank's thickness, a board may be thicker and is planed down.
// HasRoom reports whether there is room for it.
func (s Stock) Serves(b Blank) bool {
	if s.Material != b.Part.Material {
		return false
	}
	if s.Kind == Board {
		return s.Thickness >= b.Thickness
	}
	return s.Thickness == b.Thickness
}

// HasRoom reports whether b, as its grain lets it lie, fits inside the trim of s.
func (s Stock) HasRoom(b Blank) bool {
	length, width := s.Usable()
	upright, turned := b.Part.Grain.Lies(s.Grain)
	return upright && b.Length <= length && b.Width <= width || turned && b.Length <= width && b.Width <= length
}

// Unlimited reports whether any number of s can be had.
func (s Stock) Unlimited() bool { return s.Count == 0 && !s.OnHand }
