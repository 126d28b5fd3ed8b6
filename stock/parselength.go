package stock

import (
	"fmt"
	"math/big"
	"regexp"
	"sawbill/stock/fault"
	"strings"
)

// A length is one amount with or without a unit, or feet and inches.
var (
	oneAmount  = regexp.MustCompile(`^([^'"a-z]*?) ?(['"]|[a-z]+\.?)?$`)
	feetInches = regexp.MustCompile(`^([^'"a-z]+?) ?(?:'|ft\.?|foot|feet)(?: ?- ?| ?)([^'"a-z]+?) ?(?:"|in\.?|inch|inches)?$`)
	quarters   = regexp.MustCompile(`^\d+ ?/ ?4$`)
)

// ParseLength reads one length as the trade writes it; a bare number is in
// units. It reads
//
//	698.5   698,5 mm   69.85 cm   0.6985 m
//	27 1/2   27-1/2"   27½   27.5 in   55/2"   27 1/2 inches
//	2' 3-1/2"   2'-3 1/2"   2'3   2ft 3 1/2in   8 ft   8.5'
//
// with typographic marks and dashes too. A dot always parts decimals. The value
// is exact: a text that is no whole count of 25 nm, such as 1/3 in, is refused
// with the nearest that is.
//
// What can be read in two ways is refused and both readings named: 271/2 (is
// the space missing?), 2-3, 1,219 (thousands?), 2x4, a bare fraction where
// units are millimeters, and a bare 5/4, which names a thickness of lumber;
// with an inch mark it is a plain fraction. So are signs, exponents, and
// anything beyond [Longest]. Every error is a [fault.Fault].
func ParseLength(text string, units Units) (Length, error) {
	l, wrong := readLength(text, units)
	return l, notation("length", text, wrong)
}

func readLength(text string, units Units) (Length, *fault.Fault) {
	if len(text) > longestText {
		return 0, &tooLong
	}
	plain := typed(text)
	if m := feetInches.FindStringSubmatch(plain); m != nil {
		return readFeetInches(m[1], m[2])
	}
	m := oneAmount.FindStringSubmatch(plain)
	if m == nil {
		return 0, diagnose(plain)
	}
	number, word := m[1], m[2]
	if word == "" {
		return readBare(number, units)
	}
	value, wrong := readAmount(number)
	if wrong != nil {
		return 0, wrong
	}
	unit, known := unitWords[strings.TrimSuffix(word, ".")] // an abbreviation may end with a period
	if !known {
		return 0, &fault.Fault{Cause: fmt.Sprintf("%q is no unit of length here", word), Remedy: "write mm, cm, m, in or ft"}
	}
	return exactly(value, unit)
}

// readBare reads an amount without a unit. Fractions without one are kept for
// jobs in inches: in a job in millimeters 27 1/2 is far likelier a forgotten
// inch mark than 27.5 mm, and wrong by a factor of 25.
func readBare(number string, units Units) (Length, *fault.Fault) {
	value, wrong := readAmount(number)
	if wrong != nil {
		return 0, wrong
	}
	if quarters.MatchString(number) && value.Cmp(big.NewRat(1, 1)) >= 0 {
		return 0, &fault.Fault{
			Cause:  number + " is the trade name of a thickness",
			Remedy: fmt.Sprintf("write %s in for that very size, or what the board measures", mixed(value)),
		}
	}
	if units == Inches {
		return exactly(value, Inch)
	}
	if strings.Contains(number, "/") {
		return 0, &fault.Fault{
			Cause:  "this fraction has no unit, and bare numbers are millimeters",
			Remedy: fmt.Sprintf("write %s in, or millimeters with decimals", number),
		}
	}
	return exactly(value, Millimeter)
}

// readFeetInches reads feet and inches. The feet are whole and the inches less
// than twelve: anything else is a slip, or the thousands mark of 1'219.
func readFeetInches(feetText, inchText string) (Length, *fault.Fault) {
	feet, wrong := readAmount(feetText)
	if wrong != nil {
		return 0, wrong
	}
	inches, wrong := readAmount(inchText)
	if wrong != nil {
		return 0, wrong
	}
	if !feet.IsInt() {
		return 0, &fault.Fault{Cause: "the feet are not whole, and inches follow", Remedy: "write whole feet before inches, or feet alone"}
	}
	twelve := big.NewRat(12, 1)
	if inches.Cmp(twelve) >= 0 {
		return 0, &fault.Fault{Cause: "twelve inches or more follow the feet", Remedy: "write less than 12 in after the feet, or inches alone"}
	}
	return exactly(feet.Mul(feet, twelve).Add(feet, inches), Inch)
}

// unitWords are the words and marks in use for the units of length.
var unitWords = map[string]Length{
	"mm": Millimeter, "millimeter": Millimeter, "millimeters": Millimeter, "millimetre": Millimeter, "millimetres": Millimeter,
	"cm": centimeter, "centimeter": centimeter, "centimeters": centimeter, "centimetre": centimeter, "centimetres": centimeter,
	"m": meter, "meter": meter, "meters": meter, "metre": meter, "metres": meter,
	`"`: Inch, "in": Inch, "inch": Inch, "inches": Inch,
	"'": Foot, "ft": Foot, "foot": Foot, "feet": Foot,
}

const centimeter, meter = 10 * Millimeter, 1000 * Millimeter

// exactly counts value x unit, which must come out whole and not beyond
// Longest.
func exactly(value *big.Rat, unit Length) (Length, *fault.Fault) {
	counts := new(big.Rat).Mul(value, big.NewRat(int64(unit), 1))
	if counts.Cmp(big.NewRat(int64(Longest), 1)) > 0 {
		return 0, &fault.Fault{Cause: "this is more than 100 m", Remedy: "check the unit and the decimal mark"}
	}
	if counts.IsInt() {
		return Length(counts.Num().Int64()), nil
	}
	nearest := roundHalfUp(counts)
	if nearest == 0 && counts.Sign() != 0 {
		return 0, &fault.Fault{Cause: "this is less than 0.000025 mm, the step in which lengths are kept", Remedy: "check the unit and the decimal mark"}
	}
	remedy := "write " + nearest.Decimal() + " mm, which is nearest"
	if unit == Inch || unit == Foot {
		tape := Ruler{Inches, 64}.Print((64*nearest + Inch/2) / Inch * Inch / 64)
		remedy = fmt.Sprintf("write %s mm, which is nearest, or %s in, nearest on a tape", nearest.Decimal(), tape)
	}
	return 0, &fault.Fault{Cause: "this is no whole count of 0.000025 mm, the step in which lengths are kept", Remedy: remedy}
}

// roundHalfUp rounds r, not negative and not beyond int64.
func roundHalfUp(r *big.Rat) Length {
	doubled := new(big.Int).Lsh(r.Num(), 1)
	doubled.Add(doubled, r.Denom())
	return Length(doubled.Quo(doubled, new(big.Int).Lsh(r.Denom(), 1)).Int64())
}
