package stock

import (
	"errors"
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
		{`2' 3-1/2"`, Millimetres, half},
		{`2'3 1/2"`, Millimetres, half},
		{`2'-3 1/2"`, Millimetres, half},
		{`2'-3-1/2"`, Millimetres, half},
		{`2' - 3 1/2"`, Millimetres, half},
		{`2' 3 1/2`, Millimetres, half},
		{`2' 3.5"`, Millimetres, half},
		{`2 ft 3-1/2 in`, Millimetres, half},
		{`2ft 3 1/2in`, Millimetres, half},
		{`2ft. 3 1/2in.`, Millimetres, half},
		{`2 feet 3 1/2 inches`, Millimetres, half},
		{`2 FT 3 1/2 IN`, Millimetres, half},
		{`2′ 3½″`, Millimetres, half},
		{`2’ 3½”`, Millimetres, half},
		{`2'3½''`, Millimetres, half},
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
		{`27 1/2"`, Millimetres, half},
		{`27-1/2"`, Millimetres, half},
		{`27½"`, Millimetres, half},
		{`27.5in`, Millimetres, half},
		{`27.5 in`, Millimetres, half},
		{`27,5 in`, Millimetres, half},
		{`27 1/2 inches`, Millimetres, half},
		{`27 1/2''`, Millimetres, half},
		{`55/2"`, Millimetres, half},
		{`55 / 2 in`, Millimetres, half},
		{`55/2`, Inches, half},
		{`698.5`, Millimetres, half},
		{`698,5`, Millimetres, half},
		{`698.5mm`, Inches, half},
		{`698.5 mm`, Inches, half},
		{` 698.500 MM `, Inches, half},
		{`69.85 cm`, Inches, half},
		{`0.6985 m`, Inches, half},
		{`0,6985 m`, Inches, half},
		{`.6985 metres`, Inches, half},

		// Bare numbers take the job's units.
		{`18`, Millimetres, 18 * Millimetre},
		{`18`, Inches, 18 * Inch},
		{`0`, Millimetres, 0},
		{`0 in`, Millimetres, 0},
		{`2440`, Millimetres, 2440 * Millimetre},
		{`3.2`, Millimetres, 128_000},
		{`0.125`, Inches, Inch / 8},
		{`007`, Millimetres, 7 * Millimetre},

		// Feet, with inches or without.
		{`2'3`, Millimetres, 2*Foot + 3*Inch},
		{`8 ft`, Millimetres, 8 * Foot},
		{`8.5'`, Millimetres, 8*Foot + 6*Inch},
		{`8 1/2 ft`, Millimetres, 8*Foot + 6*Inch},
		{`1/3 ft`, Millimetres, 4 * Inch},
		{`2' 1/2"`, Millimetres, 2*Foot + Inch/2},
		{`2' 0"`, Millimetres, 2 * Foot},
		{`1 foot`, Millimetres, Foot},

		// Fractions.
		{`½`, Inches, Inch / 2},
		{`¾"`, Millimetres, 3 * Inch / 4},
		{`⅝"`, Millimetres, 5 * Inch / 8},
		{`⅛ in`, Millimetres, Inch / 8},
		{`⅕ in`, Millimetres, Inch / 5},
		{`1/2 mm`, Inches, Millimetre / 2},
		{`23/32`, Inches, 23 * Inch / 32},
		{`45/64 in`, Millimetres, 45 * Inch / 64},
		{`5/4"`, Millimetres, 5 * Inch / 4},
		{`5/4 in`, Inches, 5 * Inch / 4},
		{`3/2`, Inches, 3 * Inch / 2},
		{`3/4`, Inches, 3 * Inch / 4},
		{`92-5/8"`, Millimetres, 2_352_675 * Millimetre / 1000},

		// The finest and the longest.
		{`0.000025`, Millimetres, 1},
		{`0.001 in`, Millimetres, 1016},
		{`1/64"`, Millimetres, 15_875},
		{`1,2195 m`, Millimetres, 12195 * Millimetre / 10},
		{`1.219 m`, Millimetres, 1219 * Millimetre},
		{`0,125 in`, Millimetres, Inch / 8},
		{`1.219`, Millimetres, 1219 * Millimetre / 1000},
		{`100 m`, Millimetres, Longest},
		{`100000`, Millimetres, Longest},
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
func TestInchesAndMillimetresAgreeExactly(t *testing.T) {
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
		a, err := ParseLength(test.imperial, Millimetres)
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
		{``, Millimetres, "no number", "698.5 mm"},
		{"  \t", Millimetres, "no number", "698.5 mm"},
		{`mm`, Millimetres, "no number", "698.5 mm"},
		{`"`, Millimetres, "no number", "698.5 mm"},

		{`271/2`, Inches, "space seems to be missing", "27 1/2 or 135 1/2"},
		{`271/2"`, Millimetres, "space seems to be missing", "27 1/2 or 135 1/2"},
		{`1315/16 in`, Millimetres, "space seems to be missing", "13 15/16 or 82 3/16"},
		{`11/8"`, Millimetres, "space seems to be missing", "1 1/8 or 1 3/8"},
		{`12/4"`, Millimetres, "space seems to be missing", "1 2/4 or 3"},
		{`2' 31/2"`, Millimetres, "space seems to be missing", "3 1/2 or 15 1/2"},
		{`2-3`, Inches, "feet and inches", `2' 3"`},
		{`2-3"`, Millimetres, "feet and inches", `2' 3"`},
		{`300-400`, Millimetres, "range", "one length"},
		{`1,219`, Millimetres, "thousands", "1.219 or 1219"},
		{`1,219 mm`, Inches, "thousands", "1.219 or 1219"},
		{`2' 3,125"`, Inches, "thousands", "3.125 or 3125"},
		{`1,219.5`, Millimetres, "two decimal marks", "no separator"},
		{`1.219,5 mm`, Millimetres, "two decimal marks", "no separator"},
		{`1'219`, Millimetres, "twelve inches or more", "less than 12"},
		{`2' 12"`, Millimetres, "twelve inches or more", "less than 12"},
		{`2.5' 3"`, Millimetres, "feet are not whole", "whole feet"},
		{`2x4`, Inches, "two figures", "nominal"},
		{`48 x 96"`, Inches, "two figures", "nominal"},
		{`48"×96"`, Inches, "two figures", "nominal"},
		{`5/4`, Inches, "trade name", "1 1/4 in"},
		{`5/4`, Millimetres, "trade name", "1 1/4 in"},
		{`4/4`, Inches, "trade name", "1 in"},
		{`8 / 4`, Inches, "trade name", "2 in"},
		{`27 1/2`, Millimetres, "no unit", "27 1/2 in"},
		{`½`, Millimetres, "no unit", "1/2 in"},
		{`27 5/4 in`, Inches, "5/4 is not less than one", "28 1/4"},
		{`27 4/4`, Inches, "4/4 is not less than one", "28"},
		{`1 219 mm`, Millimetres, "space inside", "27 1/2"},
		{`2 3"`, Millimetres, "space inside", "27 1/2"},

		{`1/3 in`, Inches, "no whole count", "write 8.466675 mm, which is nearest, or 21/64 in"},
		{`1/128"`, Millimetres, "no whole count", "write 0.19845 mm, which is nearest, or 1/64 in"},
		{`0.0000001 mm`, Millimetres, "less than 0.000025 mm", "check the unit"},
		{`0.00001`, Millimetres, "less than 0.000025 mm", "check the unit"},
		{`0.00003`, Millimetres, "no whole count", "write 0.000025 mm, which is nearest"},
		{`2.2916667'`, Millimetres, "no whole count", "write 698.5 mm, which is nearest, or 27 1/2 in"},
		{`100001 mm`, Millimetres, "more than 100 m", "check the unit"},
		{`100000.000025`, Millimetres, "more than 100 m", "check the unit"},
		{`9223372036854775807`, Millimetres, "more than 100 m", "check the unit"},
		{`99999999999999999999999999999999 in`, Millimetres, "more than 100 m", "check the unit"},
		{strings.Repeat("9", 1_000_000), Millimetres, "too long", "number with its unit"},

		{`-5`, Millimetres, "no sign", "leave the sign out"},
		{`−5 mm`, Millimetres, "no sign", "leave the sign out"},
		{`+5`, Millimetres, "no sign", "leave the sign out"},
		{`1e3`, Millimetres, "exponent", "2440"},
		{`1.5E+3`, Millimetres, "exponent", "2440"},
		{`0x10`, Millimetres, "machines", "16"},
		{`1_000`, Millimetres, "underscore", "leave it out"},
		{`nan`, Millimetres, "no number", "698.5 mm"},
		{`inf`, Millimetres, "no number", "698.5 mm"},
		{`1/0 in`, Millimetres, "divided by 0", "1/2"},
		{`27 1/0 in`, Millimetres, "divided by 0", "1/2"},
		{`27.`, Millimetres, "no digit after", "27.0"},
		{`27. mm`, Millimetres, "no digit after", "27.0"},
		{`5 yd`, Millimetres, `"yd" is no unit`, "mm, cm, m, in or ft"},
		{`5 mmm`, Millimetres, `"mmm" is no unit`, "mm, cm, m, in or ft"},
		{`1/2½`, Inches, "space inside", "27 1/2"},
		{`½5`, Inches, "space inside", "27 1/2"},
		{`½/2`, Inches, "no way to write", "698.5 mm"},
		{`1/2/2 in`, Inches, "no way to write", "698.5 mm"},
		{`5²`, Millimetres, "no way to write", "698.5 mm"},
		{`٣ mm`, Millimetres, "no way to write", "698.5 mm"},
		{`abc`, Millimetres, "no number", "698.5 mm"},
		{`shelf 5 mm`, Millimetres, "no way to write", "698.5 mm"},
		{"\xff\xfe", Millimetres, "no way to write", "698.5 mm"},
	}
	for _, test := range tests {
		got, err := ParseLength(test.text, test.units)
		if err == nil {
			t.Errorf("ParseLength(%.70q, %v) = %s mm, want an error", test.text, test.units, got.Decimal())
			continue
		}
		var wrong *NotationError
		if !errors.As(err, &wrong) {
			t.Errorf("ParseLength(%.70q) gives %T", test.text, err)
			continue
		}
		if wrong.Of != "length" || wrong.Text != test.text {
			t.Errorf("ParseLength(%.70q) speaks of %s %.70q", test.text, wrong.Of, wrong.Text)
		}
		if !strings.Contains(wrong.Cause, test.cause) || !strings.Contains(wrong.Remedy, test.remedy) {
			t.Errorf("ParseLength(%.70q): cause %q, remedy %q, want %q and %q", test.text, wrong.Cause, wrong.Remedy, test.cause, test.remedy)
		}
	}
}

func TestNotationErrorIsOneShortLine(t *testing.T) {
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
		units := Millimetres
		if inches {
			units = Inches
		}
		l, err := ParseLength(text, units)
		if err != nil {
			var wrong *NotationError
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
