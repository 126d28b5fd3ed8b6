package checks

import (
	"math"
	"strings"
	"testing"

	"sawbill/stock"
)

// Wood Handbook (2010), Table 13-5, by hand: cherry, flat-sawn, 18 in, 4 points:
// 18 x 0.00248 x 4 = 0.17856 in. Red oak, flat-sawn, 457 mm, 5 points: 457 x 0.00369
// x 5 = 8.43165 mm. White oak, quarter-sawn, 400 mm, 4 points: 400 x 0.00180 x 4 =
// 2.88 mm.
func TestMovementByTheHandbook(t *testing.T) {
	for _, test := range []struct {
		width       Length
		coefficient Property
		percent     float64
		want        float64 // mm
	}{
		{imperial("18"), Wood("cherry").Tangential, 4, 0.17856 * 25.4},
		{metric("457"), Wood("red oak").Tangential, 5, 8.43165},
		{metric("400"), Wood("white oak").Radial, 4, 2.88},
	} {
		if got := inMillimeters(change(test.width.Value, test.coefficient.Value, test.percent)); math.Abs(got-test.want) > 2e-5 {
			t.Errorf("%f mm, want %f", got, test.want)
		}
	}
}

// A case of cherry 300 deep: 300 x 0.00248 x 4 = 2.976 mm, quarter-sawn 300 x
// 0.00126 x 4 = 1.512.
func TestWideLumberMoves(t *testing.T) {
	from := workshop(stock.Millimeters)
	from.Materials["carcass"] = Material{Kind: stock.Board, Thicknesses: []stock.Length{metric("18").Value}, Properties: Wood("cherry")}
	k := checkOn(t, derive(t, plain(), from), "wood movement")
	if !strings.Contains(k.Text, "by 3.0 mm") || !strings.Contains(k.Text, "by 1.5 mm") || k.Verdict != AllowFor {
		t.Errorf("%+v", k)
	}
	from.Materials["carcass"] = Material{Kind: stock.Board, Thicknesses: []stock.Length{metric("18").Value}}
	c := derive(t, plain(), from)
	if len(c.Checks) > 0 || !strings.Contains(cautionOn(c, "wood movement"), "give the [[material]] a wood") {
		t.Errorf("checks %v, cautions %v", c.Checks, c.Cautions)
	}
	from.Materials["carcass"] = Material{Kind: stock.Sheet, Thicknesses: []stock.Length{metric("18").Value}, Properties: Wood("cherry")}
	if c := derive(t, plain(), from); len(c.Checks) != 1 || c.Checks[0].Subject != "tipping" || len(c.Cautions) > 0 {
		t.Errorf("sheets move: %v, %v", c.Checks, c.Cautions)
	}
}

// A figure that stands here from memory says so where its source is printed.
func TestFiguresFromMemorySaySo(t *testing.T) {
	const said = ", from memory"
	for wood, want := range map[string][3]bool{ // density, modulus, movement
		"cherry": {}, "red oak": {true, false, false}, "walnut": {true, true, false},
		"douglas-fir": {false, false, true}, "yellow-poplar": {true, true, true},
	} {
		w := Wood(wood)
		got := [3]bool{strings.HasSuffix(w.Density.Source, said), strings.HasSuffix(w.Modulus.Source, said), strings.HasSuffix(w.Tangential.Source, said)}
		if got != want || strings.HasSuffix(w.Radial.Source, said) != want[2] {
			t.Errorf("%s: %v, want %v", wood, got, want)
		}
		d := plain()
		d.Bays = []Bay{{Openings: []Opening{{Shelves: count(1)}}}}
		from := workshop(stock.Millimeters)
		from.Materials["carcass"] = Material{Kind: stock.Board, Thicknesses: []stock.Length{metric("18").Value}, Properties: w}
		for _, k := range derive(t, d, from).Checks {
			switch k.Subject {
			case "wood movement":
				if strings.Contains(k.Source, said) != want[2] {
					t.Errorf("%s: %s", wood, k.Source)
				}
			case "shelf deflection":
				if strings.Contains(strings.Join(k.Assumptions, " "), said) != want[1] {
					t.Errorf("%s: %q", wood, k.Assumptions)
				}
			}
		}
	}
}
