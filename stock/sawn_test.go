package stock

import (
	"errors"
	"sawbill/stock/fault"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// Source: EN 1313-1:2010 and EN 336 with their UK annexes, from memory: sawn
// sizes, and the machined size of each that is listed.
func TestSawnSizesFollowTheStandards(t *testing.T) {
	thicknesses := map[Length]Length{16: 0, 19: 0, 22: 0, 25: 0, 32: 0, 38: 35, 47: 44, 50: 0, 63: 60, 75: 72, 100: 0}
	widths := map[Length]Length{75: 72, 100: 97, 115: 0, 125: 120, 150: 145, 175: 170, 200: 195, 225: 220, 250: 245, 275: 270, 300: 295}
	check := func(listed []Length, want map[Length]Length) {
		if len(listed) != len(want) {
			t.Errorf("%d sizes are listed, want %d", len(listed), len(want))
		}
		for _, sawn := range listed {
			machined, there := want[sawn/Millimeter]
			if !there {
				t.Errorf("%s mm is not in the standard", sawn.Decimal())
			}
			if got := s4s(sawn); machined > 0 && got != machined*Millimeter {
				t.Errorf("%s mm planed is %s mm, want %d", sawn.Decimal(), got.Decimal(), machined)
			}
		}
	}
	check(sawnThicknesses, thicknesses)
	check(sawnWidths, widths)
	for _, test := range []struct {
		name             string
		how              Surfacing
		thickness, width Length
	}{
		{"47x100", AsSawn, 47, 100}, {"47x100", AllRound, 44, 97}, {"25 × 150", AllRound, 22, 145}, {"22X75", AllRound, 19, 72},
	} {
		s, err := ParseSawn(test.name)
		if err != nil {
			t.Error(err)
			continue
		}
		if thickness, width, err := s.Surfaced(test.how); err != nil || thickness != test.thickness*Millimeter || width != test.width*Millimeter {
			t.Errorf("%s %v: %s, %v", test.name, test.how, Ruler{}.Size(thickness, width), err)
		}
	}
	if _, _, err := (Sawn{}).Surfaced(TwoSides); err == nil || !strings.Contains(err.Error(), "S4S") {
		t.Errorf("softwood planed on two sides: %v", err)
	}
}

func TestParseSawnNamesWhatIsSawn(t *testing.T) {
	for text, remedy := range map[string]string{
		"48x100": "47, 50", "100x47": "thickness first", "47x110": "100, 115", "2x4": "16, 19", "100x75": "thickness first",
		"": "47x100", "47": "47x100", `47"x100`: "47x100", strings.Repeat("47x100", 20): "number",
	} {
		_, err := ParseSawn(text)
		var wrong fault.Fault
		if !errors.As(err, &wrong) || !strings.HasPrefix(wrong.Key, "sawn size ") || !strings.Contains(wrong.Remedy, remedy) {
			t.Errorf("%.20q: %v, want %q", text, err, remedy)
		}
	}
}

// Source: EN 336 with its UK annex, from memory; 38 x 63 confirmed in a trade
// journal's column.
func TestCLSIsNamedByItsFinishedSize(t *testing.T) {
	var names []string
	for _, n := range clsSizes {
		names = append(names, n.String())
		back, err := ParseNominal(n.String())
		if thickness, width := back.Dressed(); err != nil || back != n || thickness.Decimal()+"x"+width.Decimal() != n.String() {
			t.Errorf("%v reads back as %v, %v", n, back, err)
		}
		if n.Measure() != (Measure{}) {
			t.Errorf("%v is reckoned in board feet", n)
		}
	}
	if d := cmp.Diff([]string{"38x63", "38x89", "38x114", "38x140", "38x184", "38x235", "38x285"}, names); d != "" {
		t.Errorf("(-want +got):\n%s", d)
	}
	for _, text := range []string{"38x90", "45x95", "38 x 89.5", "89x38"} {
		_, err := ParseNominal(text)
		var wrong fault.Fault
		if !errors.As(err, &wrong) || !strings.Contains(wrong.Remedy, "38x63, 38x89") {
			t.Errorf("%q: %v", text, err)
		}
	}
}
