package stock

// Length is a whole count of 25 nm, so that 0.001 mm (40), 0.001 in (1,016)
// and 1/64 in (15,875) are all exact and no sum ever drifts.
type Length int64

const (
	Millimetre Length = 40_000
	Inch       Length = 1_016_000
	Foot              = 12 * Inch
)

// Units says how bare numbers are read and how lengths are printed.
type Units int

const (
	Millimetres Units = iota
	Inches
)

// Ruler prints lengths: millimetres to 0.1, or inches to a fraction. The zero
// Ruler prints millimetres.
type Ruler struct {
	Units       Units
	Denominator int64 // of inch fractions; 0 means 32
}

// Print writes the bare number, "698.5" or "27 1/2", behind "≈" where it was
// rounded.
func (r Ruler) Print(l Length) string { panic("stock: not written yet") }
