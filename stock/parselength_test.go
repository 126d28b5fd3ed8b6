package stock

import (
	"errors"
	"fmt"
	"sawbill/stock/fault"
	"strings"
	"testing"
)

func TestParseLengthReadsTradeNotation(t *testing.T) {
	const half = 27*Inch + Inch/2 // 698.5 mm = 27.5 in = 2 ft 3-1/2 in
	tests := []struct {
		text  string
		units Units
		want  Length
	}{
		// One length in all the ways it is written (common practice, no source).
		{`2' 3-1/2"`, Millimeters, half},
		{`2'3 1/2"`, Millimeters, half},
		{`2'-3 1/2"`, Millimeters, half},
		{`2'-3-1/2"`, Millimeters, half},
		{`2' - 3 1/2"`, Millimeters, half},
		{`2' 3 1/2`, Millimeters, half},
		{`2' 3.5"`, Millimeters, half},
		{`2 ft 3-1/2 in`, Millimeters, half},
		{`2ft 3 1/2in`, Millimeters, half},
		{`2ft. 3 1/2in.`, Millimeters, half},
		{`2 feet 3 1/2 inches`, Millimeters, half},
		{`2 FT 3 1/2 IN`, Millimeters, half},
		{`2′ 3½″`, Millimeters, half},
		{`2’ 3½”`, Millimeters, half},
		{`2'3½''`, Millimeters, half},
		{`27 1/2`, Inches, half},
		{`27-1/2`, Inches, half},
		{`27 - 1/2`, Inches, half},
		{`27½`, Inches, half},
		{`27 ½`, Inches, half},
		{`27-½`, Inches, half},
		{"27\u00a0½", Inches, half},
		{"27\u20091\u20442", Inches, half},
		{"27–1/2", Inches, half},
		{`27.5`, Inches, half},
		{`27 1/2"`, Millimeters, half},
		{`27-1/2"`, Millimeters, half},
		{`27½"`, Millimeters, half},
		{`27.5in`, Millimeters, half},
		{`27.5 in`, Millimeters, half},
		{`27,5 in`, Millimeters, half},
		{`27 1/2 inches`, Millimeters, half},
		{`27 1/2''`, Millimeters, half},
		{`55/2"`, Millimeters, half},
		{`55 / 2 in`, Millimeters, half},
		{`55/2`, Inches, half},
		{`698.5`, Millimeters, half},
		{`698,5`, Millimeters, half},
		{`698.5mm`, Inches, half},
		{`698.5 mm`, Inches, half},
		{` 698.500 MM `, Inches, half},
		{`69.85 cm`, Inches, half},
		{`0.6985 m`, Inches, half},
		{`0,6985 m`, Inches, half},
		{`.6985 meters`, Inches, half},

		// Bare numbers take the job's units.
		{`18`, Millimeters, 18 * Millimeter},
		{`18`, Inches, 18 * Inch},
		{`0`, Millimeters, 0},
		{`0 in`, Millimeters, 0},
		{`2440`, Millimeters, 2440 * Millimeter},
		{`3.2`, Millimeters, 128_000},
		{`0.125`, Inches, Inch / 8},
		{`007`, Millimeters, 7 * Millimeter},

		// Feet, with inches or without.
		{`2'3`, Millimeters, 2*Foot + 3*Inch},
		{`8 ft`, Millimeters, 8 * Foot},
		{`8.5'`, Millimeters, 8*Foot + 6*Inch},
		{`8 1/2 ft`, Millimeters, 8*Foot + 6*Inch},
		{`1/3 ft`, Millimeters, 4 * Inch},
		{`2' 1/2"`, Millimeters, 2*Foot + Inch/2},
		{`2' 0"`, Millimeters, 2 * Foot},
		{`1 foot`, Millimeters, Foot},

		// Fractions.
		{`½`, Inches, Inch / 2},
		{`¾"`, Millimeters, 3 * Inch / 4},
		{`⅝"`, Millimeters, 5 * Inch / 8},
		{`⅛ in`, Millimeters, Inch / 8},
		{`⅕ in`, Millimeters, Inch / 5},
		{`1/2 mm`, Inches, Millimeter / 2},
		{`23/32`, Inches, 23 * Inch / 32},
		{`45/64 in`, Millimeters, 45 * Inch / 64},
		{`5/4"`, Millimeters, 5 * Inch / 4},
		{`5/4 in`, Inches, 5 * Inch / 4},
		{`3/2`, Inches, 3 * Inch / 2},
		{`3/4`, Inches, 3 * Inch / 4},
		{`92-5/8"`, Millimeters, 2_352_675 * Millimeter / 1000},

		// The finest and the longest.
		{`0.000025`, Millimeters, 1},
		{`0.001 in`, Millimeters, 1016},
		{`1/64"`, Millimeters, 15_875},
		{`1,2195 m`, Millimeters, 12195 * Millimeter / 10},
		{`1.219 m`, Millimeters, 1219 * Millimeter},
		{`0,125 in`, Millimeters, Inch / 8},
		{`1.219`, Millimeters, 1219 * Millimeter / 1000},
		{`100 m`, Millimeters, Longest},
		{`100000`, Millimeters, Longest},
	}
	for _, test := range tests {
		got, err := ParseLength(test.text, test.units)
		if err != nil || got != test.want {
			t.Errorf("ParseLength(%q, %v) = %s mm, %v, want %s mm", test.text, test.units, got.Decimal(), err, test.want.Decimal())
		}
	}
}

// Source: 1 in = 25.4 mm and 1 ft = 304.8 mm exactly (National Bureau of
// Standards, Circular 572, addendum); the fractions follow.
func TestInchesAndMillimetersAgreeExactly(t *testing.T) {
	for _, test := range []struct{ imperial, metric string }{
		{"1 in", "25.4 mm"},
		{"1 ft", "304.8 mm"},
		{"3 ft", "0.9144 m"}, // the yard of 1959
		{"1/16 in", "1.5875 mm"},
		{"1/32 in", "0.79375 mm"},
		{"1/64 in", "0.396875 mm"},
		{"0.001 in", "0.0254 mm"},
		{"27 1/2 in", "698.5 mm"},
		{"6 ft", "1828.8 mm"},
		{"24 ft", "7315.2 mm"},
		{"2 ft", "609.6 mm"},
		{"92-5/8 in", "2352.675 mm"},
	} {
		a, err := ParseLength(test.imperial, Millimeters)
		if err != nil {
			t.Error(err)
		}
		b, err := ParseLength(test.metric, Inches)
		if err != nil {
			t.Error(err)
		}
		if a != b {
			t.Errorf("%s = %d, %s = %d", test.imperial, a, test.metric, b)
		}
	}
}

func TestParseLengthRefusesWhatItCannotReadOneWay(t *testing.T) {
	tests := []struct {
		text   string
		units  Units
		cause  string // part of it
		remedy string // part of it
	}{
		{``, Millimeters, "no number", "698.5 mm"},
		{"  \t", Millimeters, "no number", "698.5 mm"},
		{`mm`, Millimeters, "no number", "698.5 mm"},
		{`"`, Millimeters, "no number", "698.5 mm"},

		{`271/2`, Inches, "space seems to be missing", "27 1/2 or 135 1/2"},
		{`271/2"`, Millimeters, "space seems to be missing", "27 1/2 or 135 1/2"},
		{`1315/16 in`, Millimeters, "space seems to be missing", "13 15/16 or 82 3/16"},
		{`11/8"`, Millimeters, "space seems to be missing", "1 1/8 or 1 3/8"},
		{`12/4"`, Millimeters, "space seems to be missing", "1 2/4 or 3"},
		{`2' 31/2"`, Millimeters, "space seems to be missing", "3 1/2 or 15 1/2"},
		{`2-3`, Inches, "feet and inches", `2' 3"`},
		{`2-3"`, Millimeters, "feet and inches", `2' 3"`},
		{`300-400`, Millimeters, "range", "one length"},
		{`1,219`, Millimeters, "thousands", "1.219 or 1219"},
		{`1,219 mm`, Inches, "thousands", "1.219 or 1219"},
		{`2' 3,125"`, Inches, "thousands", "3.125 or 3125"},
		{`1,219.5`, Millimeters, "two decimal marks", "no separator"},
		{`1.219,5 mm`, Millimeters, "two decimal marks", "no separator"},
		{`1'219`, Millimeters, "twelve inches or more", "less than 12"},
		{`2' 12"`, Millimeters, "twelve inches or more", "less than 12"},
		{`2.5' 3"`, Millimeters, "feet are not whole", "whole feet"},
		{`2x4`, Inches, "two figures", "nominal"},
		{`48 x 96"`, Inches, "two figures", "nominal"},
		{`48"×96"`, Inches, "two figures", "nominal"},
		{`5/4`, Inches, "trade name", "1 1/4 in"},
		{`5/4`, Millimeters, "trade name", "1 1/4 in"},
		{`4/4`, Inches, "trade name", "1 in"},
		{`8 / 4`, Inches, "trade name", "2 in"},
		{`27 1/2`, Millimeters, "no unit", "27 1/2 in"},
		{`½`, Millimeters, "no unit", "1/2 in"},
		{`27 5/4 in`, Inches, "5/4 is not less than one", "28 1/4"},
		{`27 4/4`, Inches, "4/4 is not less than one", "28"},
		{`1 219 mm`, Millimeters, "space inside", "27 1/2"},
		{`2 3"`, Millimeters, "space inside", "27 1/2"},

		{`1/3 in`, Inches, "no whole count", "write 8.466675 mm, which is nearest, or 21/64 in"},
		{`1/128"`, Millimeters, "no whole count", "write 0.19845 mm, which is nearest, or 1/64 in"},
		{`0.0000001 mm`, Millimeters, "less than 0.000025 mm", "check the unit"},
		{`0.00001`, Millimeters, "less than 0.000025 mm", "check the unit"},
		{`0.00003`, Millimeters, "no whole count", "write 0.000025 mm, which is nearest"},
		{`2.2916667'`, Millimeters, "no whole count", "write 698.5 mm, which is nearest, or 27 1/2 in"},
		{`100001 mm`, Millimeters, "more than 100 m", "check the unit"},
		{`100000.000025`, Millimeters, "more than 100 m", "check the unit"},
		{`9223372036854775807`, Millimeters, "more than 100 m", "check the unit"},
		{`99999999999999999999999999999999 in`, Millimeters, "more than 100 m", "check the unit"},
		{strings.Repeat("9", 1_000_000), Millimeters, "too long", "number with its unit"},

		{`-5`, Millimeters, "no sign", "leave the sign out"},
		{`−5 mm`, Millimeters, "no sign", "leave the sign out"},
		{`+5`, Millimeters, "no sign", "leave the sign out"},
		{`1e3`, Millimeters, "exponent", "2440"},
		{`1.5E+3`, Millimeters, "exponent", "2440"},
		{`0x10`, Millimeters, "machines", "16"},
		{`1_000`, Millimeters, "underscore", "leave it out"},
		{`nan`, Millimeters, "no number", "698.5 mm"},
		{`inf`, Millimeters, "no number", "698.5 mm"},
		{`1/0 in`, Millimeters, "divided by 0", "1/2"},
		{`27 1/0 in`, Millimeters, "divided by 0", "1/2"},
		{`27.`, Millimeters, "no digit after", "27.0"},
		{`27. mm`, Millimeters, "no digit after", "27.0"},
		{`5 yd`, Millimeters, `"yd" is no unit`, "mm, cm, m, in or ft"},
		{`5 mmm`, Millimeters, `"mmm" is no unit`, "mm, cm, m, in or ft"},
		{`1/2½`, Inches, "space inside", "27 1/2"},
		{`½5`, Inches, "space inside", "27 1/2"},
		{`½/2`, Inches, "no way to write", "698.5 mm"},
		{`1/2/2 in`, Inches, "no way to write", "698.5 mm"},
		{`5²`, Millimeters, "no way to write", "698.5 mm"},
		{`٣ mm`, Millimeters, "no way to write", "698.5 mm"},
		{`abc`, Millimeters, "no number", "698.5 mm"},
		{`shelf 5 mm`, Millimeters, "no way to write", "698.5 mm"},
		{"\xff\xfe", Millimeters, "no way to write", "698.5 mm"},
	}
	for _, test := range tests {
		got, err := ParseLength(test.text, test.units)
		if err == nil {
			t.Errorf("ParseLength(%.70q, %v) = %s mm, want an error", test.text, test.units, got.Decimal())
			continue
		}
		var wrong fault.Fault
		if !errors.As(err, &wrong) {
			t.Errorf("ParseLength(%.70q) gives %T", test.text, err)
			continue
		}
		if shown := test.text[:min(len(test.text), longestText)]; !strings.HasPrefix(wrong.Key, strings.TrimSuffix(fmt.Sprintf("length %q", shown), `"`)) {
			t.Errorf("ParseLength(%.70q) speaks of %s", test.text, wrong.Key)
		}
		if !strings.Contains(wrong.Cause, test.cause) || !strings.Contains(wrong.Remedy, test.remedy) {
			t.Errorf("ParseLength(%.70q): cause %q, remedy %q, want %q and %q", test.text, wrong.Cause, wrong.Remedy, test.cause, test.remedy)
		}
	}
}

func TestNotationIsRefusedInOneShortLine(t *testing.T) {
	for _, test := range []struct{ text, want string }{
		{"271/2\n", `length "271/2\n": a space seems to be missing; write 27 1/2 or 135 1/2`},
		{strings.Repeat("9", 1000), `length "` + strings.Repeat("9", 64) + `...": the text is too long to be one figure; write a number with its unit`},
	} {
		if _, err := ParseLength(test.text, Inches); err == nil || err.Error() != test.want {
			t.Errorf("got %v, want %s", err, test.want)
		}
	}
}

// FuzzParseLength: whatever is read lies in range, and prints and reads back
// as the same length; whatever is refused says why and what to do.
func FuzzParseLength(f *testing.F) {
	for _, text := range []string{
		`27 1/2`, `27-1/2"`, `27.5 in`, `27,5 in`, `2' 3-1/2"`, `2'-3 1/2"`, `2'3`, `2ft 3 1/2in`,
		`55/2"`, `698.5 mm`, `69.85 cm`, `0.6985 m`, `½`, `27½`, `2′ 3½″`, `1/3 in`, `271/2`, `2-3`,
		`1,219`, `2x4`, `5/4`, `-1`, `1e9`, `0x1p4`, `NaN`, `1/0`, `''`, `½½`, "\xff", `99999999999999999999`,
	} {
		f.Add(text, false)
		f.Add(text, true)
	}
	f.Fuzz(func(t *testing.T, text string, inches bool) {
		units := Millimeters
		if inches {
			units = Inches
		}
		l, err := ParseLength(text, units)
		if err != nil {
			var wrong fault.Fault
			if !errors.As(err, &wrong) || wrong.Cause == "" || wrong.Remedy == "" {
				t.Fatalf("%q: poor error %#v", text, err)
			}
			return
		}
		if l < 0 || l > Longest {
			t.Fatalf("%q reads as %d", text, l)
		}
		if back, err := ParseLength(l.Decimal()+" mm", Inches); err != nil || back != l {
			t.Fatalf("%q = %s mm reads back as %d, %v", text, l.Decimal(), back, err)
		}
		for _, r := range []Ruler{{}, {Units: Inches}, {Inches, 64}} {
			if back, err := ParseLength(r.PrintUnit(l), units); r.Exact(l) && (err != nil || back != l) {
				t.Fatalf("%q = %s reads back as %d, %v", text, r.PrintUnit(l), back, err)
			}
		}
	})
}
