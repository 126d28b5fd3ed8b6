package stock

import (
	"fmt"
	"math/bits"
	"regexp"
	"sawbill/stock/fault"
	"strconv"
	"strings"
)

// Money is a whole number of cents of the job's one currency.
type Money int64

// Dearest is the greatest price that is read, a thousand million. Some ninety
// million pieces at that price still add up within a Money.
const Dearest Money = 1_000_000_000_00

var price = regexp.MustCompile(`^(\d+)(?:[.,](\d{1,2}))?$`)

// ParseMoney reads a price of at most two decimals, "74.5" or "74,50", without
// sign, currency or separators of thousands, up to [Dearest]. Every error is a
// [fault.Fault].
func ParseMoney(text string) (Money, error) {
	m, wrong := readMoney(strings.TrimSpace(text))
	return m, notation("price", text, wrong)
}

func readMoney(text string) (Money, *fault.Fault) {
	switch {
	case len(text) > longestText:
		return 0, &tooLong
	case text == "":
		return 0, &fault.Fault{Cause: "there is no amount", Remedy: "write a price such as 74.50, or leave the key out"}
	case strings.HasPrefix(text, "-") || strings.HasPrefix(text, "+"):
		return 0, &fault.Fault{Cause: "a price has no sign", Remedy: "leave the sign out"}
	}
	m := price.FindStringSubmatch(text)
	if m == nil {
		return 0, &fault.Fault{
			Cause:  "this is no amount with at most two decimals",
			Remedy: "write it like 74.50, without currency and without separators of thousands",
		}
	}
	cents, err := strconv.ParseInt(m[1]+(m[2] + "00")[:2], 10, 64)
	if err != nil || Money(cents) > Dearest {
		return 0, &fault.Fault{Cause: "this is more than " + Dearest.String(), Remedy: "check the decimal mark"}
	}
	return Money(cents), nil
}

// String writes two decimals, "149.00".
func (m Money) String() string {
	sign, cents := "", uint64(m)
	if m < 0 {
		sign, cents = "-", -cents
	}
	return fmt.Sprintf("%s%d.%02d", sign, cents/100, cents%100)
}

// Times is the price of count pieces. It panics if the price or the count is
// negative, or if the product overflows: no price up to [Dearest] does so
// with fewer than 92 million pieces.
func (m Money) Times(count int) Money {
	if m < 0 || count < 0 {
		panic(fmt.Sprintf("stock: %d pieces at %v", count, m))
	}
	hi, lo := bits.Mul64(uint64(m), uint64(count))
	if hi != 0 || int64(lo) < 0 {
		panic(fmt.Sprintf("stock: %d pieces at %v are more than can be counted", count, m))
	}
	return Money(lo)
}
