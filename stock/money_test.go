package stock

import (
	"errors"
	"math"
	"sawbill/stock/fault"
	"strings"
	"testing"
)

func TestParseMoneyReadsExactCents(t *testing.T) {
	for text, want := range map[string]Money{
		"0":             0,
		"74.5":          7450,
		"74.50":         7450,
		"74,50":         7450,
		"74,5":          7450,
		"4.98":          498,
		"0.07":          7,
		"149":           14900,
		" 149.00 ":      14900,
		"1000000000":    Dearest,
		"0001000000000": Dearest,
	} {
		got, err := ParseMoney(text)
		if err != nil || got != want {
			t.Errorf("ParseMoney(%q) = %d, %v, want %d", text, got, err, want)
		}
	}
}

func TestParseMoneyRefusesNonsense(t *testing.T) {
	for text, cause := range map[string]string{
		"":                        "no amount",
		"  ":                      "no amount",
		"-1":                      "no sign",
		"+1":                      "no sign",
		"1.234":                   "at most two decimals",
		"1,234":                   "at most two decimals",
		"1,234.50":                "at most two decimals",
		"1 234":                   "at most two decimals",
		".5":                      "at most two decimals",
		"5.":                      "at most two decimals",
		"$5":                      "at most two decimals",
		"5 EUR":                   "at most two decimals",
		"1e3":                     "at most two decimals",
		"NaN":                     "at most two decimals",
		"٣":                       "at most two decimals",
		"1000000000.01":           "more than 1000000000.00",
		"99999999999999999999":    "more than 1000000000.00",
		strings.Repeat("9", 9999): "too long",
	} {
		got, err := ParseMoney(text)
		var wrong fault.Fault
		if !errors.As(err, &wrong) || !strings.HasPrefix(wrong.Key, "price ") || !strings.Contains(wrong.Cause, cause) || wrong.Remedy == "" {
			t.Errorf("ParseMoney(%.70q) = %d, %.200v, want %q", text, got, err, cause)
		}
	}
}

func TestMoneyPrintsTwoDecimals(t *testing.T) {
	for m, want := range map[Money]string{
		0: "0.00", 7: "0.07", -7: "-0.07", 498: "4.98", 14900: "149.00", -14950: "-149.50",
		math.MaxInt64: "92233720368547758.07", math.MinInt64: "-92233720368547758.08",
	} {
		if got := m.String(); got != want {
			t.Errorf("Money(%d) prints %q, want %q", int64(m), got, want)
		}
	}
}

func TestMoneyTimesNeverWrapsAround(t *testing.T) {
	if got := Money(7450).Times(2); got != 14900 {
		t.Errorf("2 at 74.50 are %v", got)
	}
	if got := Dearest.Times(92_000_000); got != 92_000_000*Dearest {
		t.Errorf("92 million at the dearest are %v", got)
	}
	if got := Money(498).Times(0); got != 0 {
		t.Errorf("none at 4.98 are %v", got)
	}
	for _, test := range []struct {
		price Money
		count int
	}{
		{Dearest, 93_000_000},
		{math.MaxInt64, math.MaxInt32},
		{1, -1},
		{-1, 1},
	} {
		func() {
			defer func() {
				if recover() == nil {
					t.Errorf("%d at %v does not panic", test.count, test.price)
				}
			}()
			test.price.Times(test.count)
		}()
	}
}
