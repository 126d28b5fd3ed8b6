package stock

import (
	"encoding/json"
	"math"
	"math/rand/v2"
	"strings"
	"testing"
)

const thousandth = Inch / 1000 // of an inch

func TestRulerPrintsHalfMarkBelowAndSaysWhenRounded(t *testing.T) {
	mm, in := Ruler{}, Ruler{Units: Inches}
	fine := Ruler{Units: Inches, Denominator: 64}
	coarse := Ruler{Units: Inches, Denominator: 16}
	tests := []struct {
		ruler  Ruler
		length Length
		want   string
		reason string
	}{
		{mm, 0, "0", "nothing"},
		{mm, 900 * Millimeter, "900", "no idle decimal"},
		{mm, 6985 * Millimeter / 10, "698.5", "tenths are exact"},
		{mm, Inch, "25.4", "an inch is whole tenths"},
		{mm, Inch / 8, "≈3.15", "3.175"},
		{mm, Inch / 32, "≈0.8", "0.79375"},
		{mm, 1, "≈0", "25 nm, not nothing"},
		{mm, -1, "≈0", "zero has no sign"},
		{mm, Millimeter / 20, "0.05", "half a mark"},
		{mm, 1275 * Millimeter / 100, "12.75", "a mark and a half"},
		{mm, 885 * Millimeter / 100, "8.85", "half of a sheet of 17.7"},
		{mm, 1000 * Millimeter / 3, "≈333.3", "333.333"},
		{mm, 2000 * Millimeter / 3, "≈666.65", "666.667 is more than 666.65, less than 666.7"},
		{mm, Millimeter/20 - 1, "≈0.05", "less than a hair below"},
		{mm, Millimeter/20 - 600, "≈0", "a hair below, 0.015 mm"},
		{mm, -3 * Millimeter, "-3", "negative"},
		{mm, -Millimeter / 20, "-0.05", "a negative half"},
		{mm, 999*Millimeter + 39_999, "≈1000", "rounding carries"},
		{mm, math.MinInt64, "≈-230584300921369.4", "the least int64"},
		{in, 0, "0", "nothing"},
		{in, 27*Inch + Inch/2, "27 1/2", "reduced"},
		{in, Inch / 32, "1/32", "the finest mark"},
		{in, 31 * Inch / 32, "31/32", "not reduced"},
		{in, Inch / 64, "1/64", "between the marks, as thicknesses of sheets are"},
		{in, 13 * Inch / 64, "13/64", "a sheet sold as 1/4"},
		{in, 13*Inch/64 + 1, "≈13/64", "on no 64th"},
		{in, 11*Inch + 35*Inch/64, "11 35/64", "a panel before a rabbet: no 11 9/16"},
		{in, 11*Inch + 71*Inch/128, "≈11 35/64", "no more than it is"},
		{in, -Inch / 2, "-1/2", "negative"},
		{in, -(3*Inch + Inch/4), "-3 1/4", "negative mixed number"},
		{in, 12*Inch - 1, "≈12", "rounding carries to the whole"},
		{in, 8 * Foot, "96", "feet print as inches"},
		{fine, Inch / 64, "1/64", "a finer ruler"},
		{coarse, Inch / 32, "1/32", "half a mark of a coarser ruler"},
		{coarse, 3 * Inch / 64, "≈1/32", "between its half marks"},
		{fine, 3 * Inch / 128, "≈1/64", "64ths have no halves"},
		{coarse, 125 * thousandth, "1/8", "0.125 in"},
	}
	for _, test := range tests {
		if got := test.ruler.Print(test.length); got != test.want {
			t.Errorf("%+v.Print(%d) = %q, want %q: %s", test.ruler, test.length, got, test.want, test.reason)
		}
		if got, want := test.ruler.Exact(test.length), !strings.HasPrefix(test.want, "≈"); got != want {
			t.Errorf("%+v.Exact(%d) = %v, want %v: %s", test.ruler, test.length, got, want, test.reason)
		}
	}
}

// Inch fractions of metric sizes, at the half mark below. Source: computed from 1 in = 25.4 mm
// (National Bureau of Standards, Circular 572, addendum); errors in counts of
// 25 nm, printed minus true.
func TestRulerConvertsMetricToFraction(t *testing.T) {
	tests := []struct {
		mm          Length
		denominator int64
		want        string
		error       Length
	}{
		{18, 32, "≈45/64", -5_625},        // -0.140625 mm
		{18, 64, "≈45/64", -5_625},        // -0.140625
		{19, 32, "≈3/4", 2_000},           // +0.05, a hair
		{12, 32, "≈15/32", -3_750},        // -0.09375
		{6, 64, "≈15/64", -1_875},         // -0.046875
		{3, 32, "≈7/64", -8_875},          // -0.221875
		{32, 64, "≈1 1/4", -10_000},       // -0.25
		{37, 64, "≈1 29/64", -3_625},      // -0.090625
		{600, 32, "≈23 5/8", 3_000},       // +0.075, a hair
		{2440, 32, "≈96 1/16", -500},      // -0.0125
		{1220, 32, "≈48 1/32", -250},      // -0.00625
		{127, 32, "5", 0},                 // exactly
		{2 * 254, 32, "20", 0},            // exactly
		{9_144, 32, "360", 0},             // ten yards, exactly
		{1_000, 64, "≈39 23/64", -10_875}, // -0.271875
	}
	for _, test := range tests {
		r := Ruler{Inches, test.denominator}
		l := test.mm * Millimeter
		got := r.Print(l)
		if got != test.want {
			t.Errorf("%d mm to 1/%d: %q, want %q", test.mm, test.denominator, got, test.want)
		}
		back, err := ParseLength(strings.TrimPrefix(got, "≈"), Inches)
		if err != nil || back-l != test.error {
			t.Errorf("%q is off by %d (%v), want %d", got, back-l, err, test.error)
		}
	}
}

// Halves of 1/16 and 1/32 in, and 1/64 itself: 0.79375, 0.396875 mm and as much; above no more than three tenths.
func TestRulerIsNeverOffByHalfAMark(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	for _, test := range []struct {
		denominator int64
		worst       Length
	}{{16, 31_750}, {32, 15_875}, {64, 15_875}} {
		r := Ruler{Inches, test.denominator}
		for range 2000 {
			l := Length(random.Int64N(int64(3 * Foot)))
			text := strings.TrimPrefix(r.Print(l), "≈")
			back, err := ParseLength(text, Inches)
			if err != nil {
				t.Fatal(err)
			}
			if l-back >= test.worst || 10*(back-l) >= 3*test.worst {
				t.Fatalf("%d prints as %s, off by %d, no less than %d, or more by three tenths", l, text, back-l, test.worst)
			}
		}
	}
}

func TestRulerPrintsUnitAndSize(t *testing.T) {
	mm, in := Ruler{}, Ruler{Units: Inches}
	l := 27*Inch + Inch/2
	for _, test := range []struct{ got, want string }{
		{mm.PrintUnit(l), "698.5 mm"},
		{in.PrintUnit(l), "27 1/2 in"},
		{mm.PrintUnit(Inch / 8), "≈3.15 mm"},
		{mm.Size(l, 300*Millimeter), "698.5 x 300"},
		{in.Size(l, 300*Millimeter), "27 1/2 x ≈11 13/16"},
	} {
		if test.got != test.want {
			t.Errorf("got %q, want %q", test.got, test.want)
		}
	}
}

func TestExactLengthsReadBackAsPrinted(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 4))
	rulers := []Ruler{{}, {Units: Inches}, {Inches, 16}, {Inches, 64}, {Inches, 128}}
	for _, r := range rulers {
		whole, marks := r.scale()
		for range 2000 {
			n := random.Int64N(int64(Longest/whole) * int64(marks))
			if n*int64(whole)%int64(marks) != 0 {
				continue // not a whole count: 1/128 in
			}
			l := Length(n * int64(whole) / int64(marks))
			if !r.Exact(l) {
				t.Fatalf("%+v: %d marks are not exact", r, n)
			}
			for _, units := range []Units{Millimeters, Inches} {
				back, err := ParseLength(r.PrintUnit(l), units)
				if err != nil || back != l {
					t.Fatalf("%s reads as %d (%v), want %d", r.PrintUnit(l), back, err, l)
				}
			}
		}
	}
}

func TestDecimalIsExactAndPlain(t *testing.T) {
	tests := []struct {
		length Length
		want   string
	}{
		{0, "0"},
		{1, "0.000025"},
		{-1, "-0.000025"},
		{40, "0.001"},
		{Millimeter, "1"},
		{10 * Millimeter, "10"},
		{Inch, "25.4"},
		{Inch / 64, "0.396875"},
		{thousandth, "0.0254"},
		{27*Inch + Inch/2, "698.5"},
		{2440 * Millimeter, "2440"},
		{-3 * Millimeter / 2, "-1.5"},
		{Longest, "100000"},
		{math.MaxInt64, "230584300921369.395175"},
		{math.MinInt64, "-230584300921369.3952"},
	}
	for _, test := range tests {
		got := test.length.Decimal()
		if got != test.want {
			t.Errorf("Length(%d).Decimal() = %q, want %q", test.length, got, test.want)
		}
		if !json.Valid([]byte(got)) {
			t.Errorf("%q is no JSON number", got)
		}
	}
}

func TestDecimalReadsBack(t *testing.T) {
	random := rand.New(rand.NewPCG(5, 6))
	for range 5000 {
		l := Length(random.Int64N(int64(Longest) + 1))
		back, err := ParseLength(l.Decimal(), Millimeters)
		if err != nil || back != l {
			t.Fatalf("%s reads as %d (%v), want %d", l.Decimal(), back, err, l)
		}
	}
}
