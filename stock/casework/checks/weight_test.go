package checks

import (
	"math"
	"testing"

	"sawbill/stock"
)

// One 18 mm sheet of 1220 x 2440: 1.22 x 2.44 x 0.018 m3 = 0.0535824 m3, of birch
// plywood at 685 kg/m3 36.703944 kg.
func TestWeightOfASheet(t *testing.T) {
	size := Point{metric("2440").Value, metric("1220").Value, metric("18").Value}
	if got := weigh(Wood("birch plywood").Density, size); got != 36704 {
		t.Errorf("got %d g, want 36704", got)
	}
	if got := weigh(Property{}, size); got != 0 {
		t.Errorf("without a density: %d g", got)
	}
}

// 36704 / 453.59237 = 80.919 lb; 85 g are 2.998 oz.
func TestGramsPrint(t *testing.T) {
	for _, test := range []struct {
		weight       stock.Grams
		metric, inch string
	}{{36704, "36.7 kg", "80.9 lb"}, {1000, "1.0 kg", "2.2 lb"}, {999, "999 g", "2.2 lb"}, {85, "85 g", "3.0 oz"}, {0, "0 g", "0.0 oz"}} {
		if got := test.weight.PrintUnit(stock.Millimeters); got != test.metric {
			t.Errorf("%d g: %s, want %s", test.weight, got, test.metric)
		}
		if got := test.weight.PrintUnit(stock.Inches); got != test.inch {
			t.Errorf("%d g: %s, want %s", test.weight, got, test.inch)
		}
	}
}

// 900 x 720 x 300 of 18 mm panels at 700 kg/m3, butted, without a back:
//
//	side    720 x 300 x 18 = 3,888,000 mm3, 2721.6 g, to the gram 2722; two are 5444
//	top     864 x 300 x 18 = 4,665,600 mm3, 3265.9 g, to the gram 3266; so is the bottom
//	in all  5444 + 6532 = 11976 g
//
// Everything is symmetrical, so the center of gravity is in the middle.
func TestWeightOfACase(t *testing.T) {
	got := derive(t, plain(), weighed(map[string]float64{"carcass": 700})).TakeOff()
	if got.Weight != 11976 || len(got.Unweighed) > 0 {
		t.Errorf("weight %d g, unweighed %q", got.Weight, got.Unweighed)
	}
	if want := (Point{metric("450").Value, metric("150").Value, metric("360").Value}); got.Center == nil || *got.Center != want {
		t.Errorf("center %v, want %v", got.Center, want)
	}
}

// The same with an applied back of 900 x 720 x 6 at 1000 kg/m3, 3888 g, behind
// 294 of depth: the panels weigh 11976 x 294/300 = 11736 g, with their middle at
// 147, the back's is at 297. (11736 x 147 + 3888 x 297) / 15624 = 184.3.
func TestCenterOfGravityMovesToTheHeavyBack(t *testing.T) {
	d := plain()
	d.Back = Back{Fit: word("applied"), Material: word("back")}
	got := derive(t, d, weighed(map[string]float64{"carcass": 700, "back": 1000})).TakeOff()
	if want := (Point{metric("450").Value, metric("184").Value, metric("360").Value}); got.Center == nil || *got.Center != want {
		t.Errorf("center %v, want %v", got.Center, want)
	}
	got = derive(t, d, weighed(map[string]float64{"carcass": 700})).TakeOff()
	if got.Center != nil || len(got.Unweighed) != 1 || got.Unweighed[0] != "back" {
		t.Errorf("a back of unknown weight: center %v, unweighed %q", got.Center, got.Unweighed)
	}
}

// The rows of Wood Handbook (2010), Tables 5-3a and 5-3b: red oak 1.82 x 10^6 psi
// is 12.5 GPa, MDF in Table 12-1 0.52 is 3.59.
func TestWoodsHaveHandbookValues(t *testing.T) {
	for name, want := range map[string]float64{"red oak": 12550, "MDF": 3590, "cherry": 10270, "yellow birch": 13860} {
		if got := Wood(name).Modulus.Value; math.Abs(got-want) > 10 {
			t.Errorf("%s: %f N/mm2, want %f", name, got, want)
		}
	}
	for _, name := range Woods() {
		w := Wood(name)
		if w.Density.Value < 300 || w.Density.Value > 1000 || w.Modulus.Value < 2500 || w.Radial.Known() != w.Tangential.Known() ||
			w.Radial.Value > w.Tangential.Value {
			t.Errorf("%s: %+v", name, w)
		}
	}
}
