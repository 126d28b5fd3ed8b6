package stock

import (
	"errors"
	"sawbill/stock/fault"
	"strings"
	"testing"
)

// Source: American Softwood Lumber Standard, PS 20-20, minimum dressed dry
// sizes of boards and dimension lumber; millimeters are inches x 25.4. Each
// figure is checked in a size of every class that lists it.
func TestDressedFollowsTheStandard(t *testing.T) {
	tests := []struct {
		nominal                 string
		dryThickness, thickness string // in, mm
		dryWidth, width         string
	}{
		// Thicknesses of boards.
		{"3/8x2", "5/16", "7.9375", "1-1/2", "38.1"},
		{"1/2x3", "7/16", "11.1125", "2-1/2", "63.5"},
		{"5/8x4", "9/16", "14.2875", "3-1/2", "88.9"},
		{"3/4x5", "5/8", "15.875", "4-1/2", "114.3"},
		{"1x6", "3/4", "19.05", "5-1/2", "139.7"},
		{"1-1/4x6", "1", "25.4", "5-1/2", "139.7"},
		{"5/4x6", "1", "25.4", "5-1/2", "139.7"},
		{"1-1/2x6", "1-1/4", "31.75", "5-1/2", "139.7"},
		{"6/4x6", "1-1/4", "31.75", "5-1/2", "139.7"},
		// Widths of boards.
		{"1x2", "3/4", "19.05", "1-1/2", "38.1"},
		{"1x3", "3/4", "19.05", "2-1/2", "63.5"},
		{"1x4", "3/4", "19.05", "3-1/2", "88.9"},
		{"1x5", "3/4", "19.05", "4-1/2", "114.3"},
		{"1x7", "3/4", "19.05", "6-1/2", "165.1"},
		{"1x8", "3/4", "19.05", "7-1/4", "184.15"},
		{"1x9", "3/4", "19.05", "8-1/4", "209.55"},
		{"1x10", "3/4", "19.05", "9-1/4", "234.95"},
		{"1x11", "3/4", "19.05", "10-1/4", "260.35"},
		{"1x12", "3/4", "19.05", "11-1/4", "285.75"},
		{"1x14", "3/4", "19.05", "13-1/4", "336.55"},
		{"1x16", "3/4", "19.05", "15-1/4", "387.35"},
		// Thicknesses of dimension lumber.
		{"2x4", "1-1/2", "38.1", "3-1/2", "88.9"},
		{"2-1/2x4", "2", "50.8", "3-1/2", "88.9"},
		{"3x4", "2-1/2", "63.5", "3-1/2", "88.9"},
		{"3-1/2x4", "3", "76.2", "3-1/2", "88.9"},
		{"4x4", "3-1/2", "88.9", "3-1/2", "88.9"},
		{"4-1/2x6", "4", "101.6", "5-1/2", "139.7"},
		// Widths of dimension lumber.
		{"2x2", "1-1/2", "38.1", "1-1/2", "38.1"},
		{"2x2-1/2", "1-1/2", "38.1", "2", "50.8"},
		{"2x3", "1-1/2", "38.1", "2-1/2", "63.5"},
		{"2x3-1/2", "1-1/2", "38.1", "3", "76.2"},
		{"2x4-1/2", "1-1/2", "38.1", "4", "101.6"},
		{"2x5", "1-1/2", "38.1", "4-1/2", "114.3"},
		{"2x6", "1-1/2", "38.1", "5-1/2", "139.7"},
		{"2x8", "1-1/2", "38.1", "7-1/4", "184.15"},
		{"2x10", "1-1/2", "38.1", "9-1/4", "234.95"},
		{"2x12", "1-1/2", "38.1", "11-1/4", "285.75"},
		{"2x14", "1-1/2", "38.1", "13-1/4", "336.55"},
		{"2x16", "1-1/2", "38.1", "15-1/4", "387.35"},
		// Timbers, dry: 5 and 6 are 1/2 in under, 7 to 15 3/4 in, 16 up 1 in.
		{"5x5", "4-1/2", "114.3", "4-1/2", "114.3"},
		{"6x6", "5-1/2", "139.7", "5-1/2", "139.7"},
		{"6x7", "5-1/2", "139.7", "6-1/4", "158.75"},
		{"8x8", "7-1/4", "184.15", "7-1/4", "184.15"},
		{"6x15", "5-1/2", "139.7", "14-1/4", "361.95"},
		{"12x16", "11-1/4", "285.75", "15", "381"},
		{"24x24", "23", "584.2", "23", "584.2"},
	}
	for _, test := range tests {
		n, err := ParseNominal(test.nominal)
		thickness, width := n.Dressed()
		if err != nil {
			t.Error(err)
			continue
		}
		for _, side := range []struct {
			name, in, mm string
			got          Length
		}{
			{"thickness", test.dryThickness, test.thickness, thickness},
			{"width", test.dryWidth, test.width, width},
		} {
			if want, err := ParseLength(side.in, Inches); err != nil || side.got != want {
				t.Errorf("%s: dry %s %s mm, want %s in (%v)", test.nominal, side.name, side.got.Decimal(), side.in, err)
			}
			if side.got.Decimal() != side.mm {
				t.Errorf("%s: dry %s %s mm, want %s", test.nominal, side.name, side.got.Decimal(), side.mm)
			}
		}
	}
}

func TestParseNominalAcceptsWhatIsOnTheLabel(t *testing.T) {
	for text, want := range map[string]string{
		"2x4": "2x4", "2X4": "2x4", "2×4": "2x4", " 2 x 4 ": "2x4", `2"x4"`: "2x4", `2″ × 4″`: "2x4",
		"5/4x6": "5/4x6", "1-1/4 x 6": "5/4x6", "1 1/4x6": "5/4x6", "1¼x6": "5/4x6", "1.25x6": "5/4x6",
		"6/4x8": "6/4x8", "2½x4": "2-1/2x4", "3/4x4": "3/4x4", "12x16": "12x16",
	} {
		n, err := ParseNominal(text)
		if err != nil || n.String() != want {
			t.Errorf("ParseNominal(%q) = %v, %v, want %s", text, n, err, want)
		}
	}
}

func TestParseNominalNamesTheNearestSizes(t *testing.T) {
	for _, test := range []struct{ text, cause, remedy string }{
		{"2x7", "no softwood", "nearest are 2x6, 2x8 and 2x5;"},
		{"4x2", "no softwood", "nearest are 2x4, 2x3-1/2 and 2x4-1/2;"},
		{"1x1", "no softwood", "nearest are 1x2,"},
		{"1x13", "no softwood", "nearest are 1x12, 1x14 and"},
		{"2x40", "no softwood", "nearest are 2x16, 2x14 and 2x12;"},
		{"9x30", "no softwood", "nearest are 9x24,"},
		{"0x0", "no softwood", "nearest are 3/8x2,"},
		{"", "not a thickness and a width", "2x4"},
		{"2", "not a thickness and a width", "2x4"},
		{"2x4x8", "not a thickness and a width", "2x4"},
		{"x4", "not a thickness and a width", "2x4 or 5/4x6"},
		{"2x", "not a thickness and a width", "2x4 or 5/4x6"},
		{"ax4", "not a thickness and a width", "2x4 or 5/4x6"},
		{"11/2x6", "space seems to be missing", "1 1/2 or 5 1/2"},
		{"-2x4", "not a thickness and a width", "2x4 or 5/4x6"},
		{"1/3x4", "no whole count", "21/64"},
		{strings.Repeat("2x4", 100), "too long", "number"},
	} {
		_, err := ParseNominal(test.text)
		var wrong fault.Fault
		if !errors.As(err, &wrong) || !strings.HasPrefix(wrong.Key, "nominal size ") ||
			!strings.Contains(wrong.Cause, test.cause) || !strings.Contains(wrong.Remedy, test.remedy) {
			t.Errorf("ParseNominal(%.70q): %.300v, want %q and %q", test.text, err, test.cause, test.remedy)
		}
	}
}

func TestEveryNominalSizeReadsBackByItsName(t *testing.T) {
	seen := map[string]bool{}
	for _, n := range nominalSizes() {
		name := n.String()
		if seen[name] {
			t.Errorf("%s is listed twice", name)
		}
		seen[name] = true
		back, err := ParseNominal(name)
		if err != nil || back != n {
			t.Errorf("%s reads back as %v, %v", name, back, err)
		}
		thickness, width := n.Dressed()
		if thickness <= 0 || thickness >= n.thickness.nominal || width <= 0 || width >= n.width.nominal {
			t.Errorf("%s dresses to %s", name, Ruler{Units: Inches}.Size(thickness, width))
		}
	}
}
