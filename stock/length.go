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

// String returns the word of the job file: "mm" or "in".
func (u Units) String() string {
	if u == Inches {
		return "in"
	}
	return "mm"
}

// Longest is the greatest length that ParseLength reads: 100 m.
const Longest = 100_000 * Millimetre

// Decimal writes l exactly, in millimetres, as a plain decimal number.
func (l Length) Decimal() string { panic("stock: not written yet") }
