package stock

import (
	"fmt"
	"strings"
)

// Length is a whole count of 25 nm, so that 0.001 mm (40), 0.001 in (1,016)
// and 1/64 in (15,875) are all exact and no sum ever drifts.
type Length int64

// The inch is 25.4 mm by definition since 1959 (National Bureau of Standards,
// Circular 572, addendum), the foot 304.8 mm.
const (
	Millimeter Length = 40_000
	Inch       Length = 1_016_000
	Foot              = 12 * Inch
)

// Longest is the greatest length accepted. A longer one is a slip of the pen. The
// product of two such lengths overflows an int64, so Volume uses big integers.
const Longest = 100_000 * Millimeter

// Units says how bare numbers are read and how lengths are printed.
type Units int

const (
	Millimeters Units = iota
	Inches
)

// String returns the word of the job file: "mm" or "in".
func (u Units) String() string {
	return [...]string{"mm", "in"}[u]
}

// Decimal writes l exactly, in millimeters, as a plain decimal number: no
// exponent, no trailing zeros, at most six decimals. It is a valid number in
// JSON and TOML; one count of Length is "0.000025".
func (l Length) Decimal() string {
	sign, n := split(l)
	whole, rest := n/uint64(Millimeter), n%uint64(Millimeter)
	if rest == 0 {
		return fmt.Sprintf("%s%d", sign, whole)
	}
	const millionths = 25 // of a millimeter in one count
	return strings.TrimRight(fmt.Sprintf("%s%d.%06d", sign, whole, rest*millionths), "0")
}

// split gives the sign and the size of l. The size is unsigned because the
// least int64 has no positive twin.
func split(l Length) (sign string, size uint64) {
	if l < 0 {
		return "-", -uint64(l)
	}
	return "", uint64(l)
}
