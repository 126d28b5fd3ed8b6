package checks

import (
	"math"
	"strings"
	"testing"

	"sawbill/stock"
)

// Wood Handbook, Equation 9-2, by hand:
//
//   - red oak, 3/4 x 10 in, span 36 in, 25 lb/ft: w = 2.083333 lb/in, I = 0.3515625
//     in4, E = 1.82e6 psi (Table 5-3b): 5 x 2.083333 x 36^4 / (384 E I) = 0.071209 in
//   - MDF, 18 x 300 mm, span 800 mm, 0.365 N/mm: I = 145 800 mm4, E = 3590 N/mm2
//     (Table 12-1): 5 x 0.365 x 4.096e11 / (384 x 3590 x 145 800) = 3.71912 mm
//   - plywood, 18 x 280 mm, span 700 mm, 0.5 N/mm: I = 136 080 mm4, E = 6960 N/mm2
//     (Table 12-1): 1.65043 mm
//
// Clamped ends give one fifth.
func TestSagByTheHandbook(t *testing.T) {
	for _, test := range []struct {
		name            string
		modulus, load   float64
		span, thickness Length
		want            float64 // mm
	}{
		{"red oak", 1.82e6 * psi, 25.0 / 12 / 10 * psi, imperial("36"), imperial("3/4"), 0.071209 * 25.4},
		{"MDF", 3590, 0.365 / 300, metric("800"), metric("18"), 3.71912},
		{"plywood", 6960, 0.5 / 280, metric("700"), metric("18"), 1.65043},
	} {
		got := inMillimeters(resting.sag(test.modulus, test.load, test.span.Value, test.thickness.Value))
		if math.Abs(got-test.want) > 5e-5 {
			t.Errorf("%s: %f mm, want %f", test.name, got, test.want)
		}
		if got := inMillimeters(clamped.sag(test.modulus, test.load, test.span.Value, test.thickness.Value)); math.Abs(got-test.want/5) > 5e-5 {
			t.Errorf("%s, clamped: %f mm, want %f", test.name, got, test.want/5)
		}
	}
}

// 144 lb/ft2 are 1 psi.
func TestLoadsOfAFace(t *testing.T) {
	if got := 144 * squareFootLoad / psi; math.Abs(got-1) > 1e-7 {
		t.Errorf("144 lb/ft2 are %f psi", got)
	}
}

// A loose shelf of 861 x 18 mm under 244 kg/m2, 0.0023940 N/mm2, of a panel with
// 7000 N/mm2: 5 x 0.0023940 x 861^4 / (32 x 7000 x 18^3) = 5.04 mm; 861/144 =
// 5.98. With 5000 N/mm2 it is 7.05.
func TestDeflectionOfAShelf(t *testing.T) {
	d := plain()
	d.Bays = []Bay{{Openings: []Opening{{Shelves: count(1)}}}}
	for _, test := range []struct {
		modulus float64
		want    Verdict
		sag     string
	}{{7000, Within, "some 5.0 mm"}, {5000, Beyond, "some 7.0 mm"}} {
		c := derive(t, d, stiff(test.modulus))
		k := checkOn(t, c, "shelf deflection")
		if k.Verdict != test.want || !strings.Contains(k.Text, test.sag) || k.Source == "" || len(k.Assumptions) == 0 {
			t.Errorf("%+v, want %s by %s", k, test.want, test.sag)
		}
		if cautionOn(c, "shelf span") != "" {
			t.Error("the rule of thumb is given besides")
		}
	}
}

func TestAShelfOfUnknownWoodKeepsTheRuleOfThumb(t *testing.T) {
	d := plain()
	d.Bays = []Bay{{Openings: []Opening{{Shelves: count(1)}}}}
	c := derive(t, d, workshop(stock.Millimeters))
	if len(c.Checks) > 0 || !strings.Contains(cautionOn(c, "shelf span"), `give the [[material]] "carcass" a wood or a modulus`) {
		t.Errorf("checks %v, cautions %v", c.Checks, c.Cautions)
	}
}

// 122 kg/m2 is half the load, and half the sag of 5.04 mm.
func TestGivenLoadOfShelves(t *testing.T) {
	d := plain()
	d.Bays = []Bay{{Openings: []Opening{{Shelves: count(1)}}}}
	d.Shelf.Load = count(122)
	if k := checkOn(t, derive(t, d, stiff(7000)), "shelf deflection"); !strings.Contains(k.Text, "Under 122 kg/m2") || !strings.Contains(k.Text, "some 2.5 mm") {
		t.Error(k.Text)
	}
}

// stiff is the workshop with a modulus for its carcass.
func stiff(modulus float64) Context {
	from := workshop(stock.Millimeters)
	m := from.Materials["carcass"]
	m.Modulus = Property{Value: modulus, Source: "test"}
	from.Materials["carcass"] = m
	return from
}

// checkOn wants the first check on a subject.
func checkOn(t *testing.T, c *derived, subject string) Check {
	t.Helper()
	for _, k := range c.Checks {
		if k.Subject == subject {
			return k
		}
	}
	t.Fatalf("no check on %s", subject)
	return Check{}
}

// The spans of a shelf table, Architectural Woodwork Standards 2009 (AWI, AWMAC,
// WI), in inches for thickness 3/4 and 1 at 40 and 50 pounds per square foot.
// The table rounds to whole inches, once by 0.7 downwards.
func TestLongestSpanGivesThePublishedTable(t *testing.T) {
	for _, test := range []struct {
		material  string
		modulus   float64
		thickness stock.Length
		load      float64
		want      float64
	}{
		{"fir plywood", 0.95e6, 3 * stock.Inch / 4, 40, 40},
		{"fir plywood", 0.95e6, 3 * stock.Inch / 4, 50, 37},
		{"fir plywood", 0.95e6, stock.Inch, 40, 53},
		{"fir plywood", 0.95e6, stock.Inch, 50, 49},
		{"hardwood-faced", 1.80e6, 3 * stock.Inch / 4, 40, 49},
		{"hardwood-faced", 1.80e6, 3 * stock.Inch / 4, 50, 46},
		{"hardwood-faced", 1.80e6, stock.Inch, 40, 66},
		{"hardwood-faced", 1.80e6, stock.Inch, 50, 61},
		{"red oak", 1.82e6, 3 * stock.Inch / 4, 40, 49},
		{"red oak", 1.82e6, 3 * stock.Inch / 4, 50, 46},
		{"red oak", 1.82e6, stock.Inch, 40, 66},
		{"red oak", 1.82e6, stock.Inch, 50, 61},
	} {
		got := float64(resting.longest(test.modulus*psi, test.load*squareFootLoad, test.thickness)) / float64(stock.Inch)
		if got < test.want-0.5 || got > test.want+0.75 {
			t.Errorf("%s %d at %g: span %.3f in, want %g", test.material, test.thickness, test.load, got, test.want)
		}
	}
}
