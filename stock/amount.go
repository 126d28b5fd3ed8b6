package stock

import (
	"fmt"
	"math/big"
	"regexp"
	"sawbill/stock/fault"
	"strings"
)

// An amount is a number without its unit: "698.5", "27,5", "1/2", "27 1/2",
// "27-1/2".
var (
	decimalAmount  = regexp.MustCompile(`^(\d*)(?:([.,])(\d+))?$`)
	fractionAmount = regexp.MustCompile(`^(?:(\d+)(?: | ?- ?))?(\d+) ?/ ?(\d+)$`)
)

// isAmount reports whether text has the form of an amount.
func isAmount(text string) bool {
	return text != "" && (decimalAmount.MatchString(text) || fractionAmount.MatchString(text))
}

// readAmount reads an amount exactly. The text is as typed returns it.
func readAmount(text string) (*big.Rat, *fault.Fault) {
	if !isAmount(text) {
		return nil, diagnose(text)
	}
	if m := fractionAmount.FindStringSubmatch(text); m != nil {
		return readFraction(m[1], m[2], m[3])
	}
	m := decimalAmount.FindStringSubmatch(text)
	return readDecimal(m[1], m[2], m[3])
}

// readDecimal reads a whole number or a decimal. A comma before three digits
// may part thousands, which no reader can tell; a dot never does.
func readDecimal(whole, mark, part string) (*big.Rat, *fault.Fault) {
	thousands := mark == "," && len(part) == 3 && len(whole) <= 3 && !strings.HasPrefix(whole, "0") && whole != ""
	if thousands {
		return nil, &fault.Fault{
			Cause:  "the comma may part decimals or thousands",
			Remedy: fmt.Sprintf("write %s.%s or %s%s", whole, part, whole, part),
		}
	}
	return ratio(whole+part, "1"+strings.Repeat("0", len(part))), nil
}

// readFraction reads a fraction with or without a whole number before it, and
// refuses the two ways in which one goes wrong: a fraction of one or more
// behind a whole number, and a lost space.
func readFraction(whole, numerator, denominator string) (*big.Rat, *fault.Fault) {
	if strings.Trim(denominator, "0") == "" {
		return nil, &fault.Fault{Cause: "nothing can be divided by 0", Remedy: "write a fraction such as 1/2"}
	}
	fraction := ratio(numerator, denominator)
	improper := fraction.Cmp(big.NewRat(1, 1)) >= 0
	if whole == "" {
		if split := lostSpace(numerator, denominator); improper && split != "" {
			return nil, &fault.Fault{
				Cause:  "a space seems to be missing",
				Remedy: fmt.Sprintf("write %s or %s", split, mixed(fraction)),
			}
		}
		return fraction, nil
	}
	value := new(big.Rat).Add(ratio(whole, "1"), fraction)
	if improper {
		return nil, &fault.Fault{
			Cause:  fmt.Sprintf("%s/%s is not less than one", numerator, denominator),
			Remedy: fmt.Sprintf("write %s if that is meant", mixed(value)),
		}
	}
	return value, nil
}

// lostSpace returns the mixed number that "271/2" may have been: "27 1/2".
// It returns "" where the digits cannot be split so.
func lostSpace(numerator, denominator string) string {
	one := big.NewRat(1, 1)
	for cut := 1; cut < len(numerator); cut++ {
		whole, rest := numerator[:cut], numerator[cut:]
		if rest[0] != '0' && ratio(rest, denominator).Cmp(one) < 0 {
			return fmt.Sprintf("%s %s/%s", whole, rest, denominator)
		}
	}
	return ""
}

// mixed writes "135 1/2", "1/2" or "3".
func mixed(r *big.Rat) string {
	whole, rest := new(big.Int).QuoRem(r.Num(), r.Denom(), new(big.Int))
	switch {
	case rest.Sign() == 0:
		return whole.String()
	case whole.Sign() == 0:
		return fmt.Sprintf("%s/%s", rest, r.Denom())
	}
	return fmt.Sprintf("%s %s/%s", whole, rest, r.Denom())
}

// ratio divides two strings of digits.
func ratio(numerator, denominator string) *big.Rat {
	n, fine := new(big.Int).SetString(numerator, 10)
	d, fineToo := new(big.Int).SetString(denominator, 10)
	if !fine || !fineToo {
		panic("stock: ratio of something else than digits: " + numerator + "/" + denominator)
	}
	return new(big.Rat).SetFrac(n, d)
}

// diagnoses are tried in turn on a text that is no amount.
var diagnoses = []struct {
	pattern *regexp.Regexp
	wrong   fault.Fault
}{
	{regexp.MustCompile(`^$`), fault.New(
		"there is no number", "write a number such as 698.5 mm or 27 1/2 in")},
	{regexp.MustCompile(`^[-+]`), fault.New(
		"a size has no sign", "leave the sign out")},
	{regexp.MustCompile(`_`), fault.New(
		"there is an underscore in the number", "leave it out")},
	{regexp.MustCompile(`^0[xob]`), fault.New(
		"this is a number for machines", "write it as on a tape, such as 16")},
	{regexp.MustCompile(`^[\d.,]+e[-+]?\d`), fault.New(
		"there is an exponent in the number", "write the number out, such as 2440")},
	{regexp.MustCompile(`\d['"]? ?[x*] ?\d`), fault.New(
		"these are two figures", `write one length; the trade name of a lumber size goes under the key "nominal"`)},
	{regexp.MustCompile(`^[\d.,]+ ?- ?[\d.,]+$`), fault.New(
		"this may be a range, or feet and inches", `write one length, or feet and inches as 2' 3"`)},
	{regexp.MustCompile(`[.,]\d*[.,]`), fault.New(
		"there are two decimal marks or separators", "write one decimal mark at most, and no separator of thousands")},
	{regexp.MustCompile(`[.,]( |$)`), fault.New(
		"there is no digit after the decimal mark", "write 27 or 27.0")},
	{regexp.MustCompile(`\d \d`), fault.New(
		"there is a space inside the number", "close it up, or write a fraction behind the space, such as 27 1/2")},
}

// diagnose says what keeps a text from being read as a length.
func diagnose(text string) *fault.Fault {
	for _, d := range diagnoses {
		if d.pattern.MatchString(text) {
			return &d.wrong
		}
	}
	return &fault.Fault{Cause: "this is no way to write a length", Remedy: `write it like 698.5 mm, 27 1/2 in or 2' 3-1/2"`}
}
