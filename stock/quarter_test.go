package stock

import (
	"errors"
	"sawbill/stock/fault"
	"strings"
	"testing"
)

// Source: rules of the National Hardwood Lumber Association, surfaced lumber,
// as in "Hardwood Lumber - Dimensions", engineeringtoolbox.com; 10/4 surfaced on
// two sides from memory. Millimeters are inches x 25.4.
func TestQuartersFollowTheRules(t *testing.T) {
	tests := []struct{ name, rough, roughMM, s1s, s2s, s2sMM string }{
		{"3/8", "3/8", "9.525", "", "3/16", "4.7625"},
		{"1/2", "1/2", "12.7", "3/8", "5/16", "7.9375"},
		{"5/8", "5/8", "15.875", "1/2", "7/16", "11.1125"},
		{"3/4", "3/4", "19.05", "5/8", "9/16", "14.2875"},
		{"4/4", "1", "25.4", "7/8", "13/16", "20.6375"},
		{"5/4", "1-1/4", "31.75", "1-1/8", "1-1/16", "26.9875"},
		{"6/4", "1-1/2", "38.1", "1-3/8", "1-5/16", "33.3375"},
		{"7/4", "1-3/4", "44.45", "", "1-1/2", "38.1"},
		{"8/4", "2", "50.8", "1-13/16", "1-3/4", "44.45"},
		{"10/4", "2-1/2", "63.5", "", "2-1/4", "57.15"},
		{"12/4", "3", "76.2", "2-13/16", "2-3/4", "69.85"},
		{"14/4", "3-1/2", "88.9", "", "3-1/4", "82.55"},
		{"16/4", "4", "101.6", "3-13/16", "3-3/4", "95.25"},
	}
	if len(tests) != len(hardwoodThicknesses) {
		t.Errorf("%d thicknesses are listed, want %d", len(hardwoodThicknesses), len(tests))
	}
	for _, test := range tests {
		q, err := ParseQuarter(test.name)
		if err != nil || q.String() != test.name {
			t.Errorf("%s: %v, %v", test.name, q, err)
			continue
		}
		for as, want := range map[Surfacing]string{AsSawn: test.rough, OneSide: test.s1s, TwoSides: test.s2s, AllRound: ""} {
			got, err := q.Surfaced(as)
			if want == "" {
				var wrong fault.Fault
				if !errors.As(err, &wrong) || got != 0 || !strings.Contains(wrong.Remedy, "rough (") || !strings.Contains(wrong.Remedy, "S2S (") {
					t.Errorf("%s %v is not listed, but gives %s, %v", test.name, as, got.Decimal(), err)
				}
				continue
			}
			if err != nil || got != mustLength(t, want) {
				t.Errorf("%s %v: %s mm, %v, want %s in", test.name, as, got.Decimal(), err, want)
			}
		}
		if s2s, _ := q.Surfaced(TwoSides); q.Rough().Decimal() != test.roughMM || s2s.Decimal() != test.s2sMM {
			t.Errorf("%s: %s and %s mm, want %s and %s", test.name, q.Rough().Decimal(), s2s.Decimal(), test.roughMM, test.s2sMM)
		}
	}
}

func TestParseQuarterNamesWhatExists(t *testing.T) {
	for _, text := range []string{"8/4", ` 8/4" `, "8 / 4"} {
		if q, err := ParseQuarter(text); err != nil || q.String() != "8/4" {
			t.Errorf("%q: %v, %v", text, q, err)
		}
	}
	for _, text := range []string{"9/4", "", "2", "8/4x6", "8", strings.Repeat("8/4", 50)} {
		_, err := ParseQuarter(text)
		var wrong fault.Fault
		if !errors.As(err, &wrong) || !strings.HasPrefix(wrong.Key, "hardwood thickness ") || len(text) < longestText && !strings.Contains(wrong.Remedy, "12/4, 14/4 and 16/4") {
			t.Errorf("%.20q: %v", text, err)
		}
	}
}
