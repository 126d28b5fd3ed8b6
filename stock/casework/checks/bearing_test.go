package checks

import (
	"strings"
	"testing"

	"sawbill/stock"
)

// Contents of 90 kg stand in three rows, 30 kg on each of two shelves of 861 x 300 x
// 18: 30 x 9.80665 / (861 x 300) = 0.00113901 N/mm2, which sags by 5 x 0.00113901 x
// 861^4 / (32 x 7000 x 18^3) = 2.40 mm. Where something of unknown weight stands on
// such a shelf too, it is books, 5.04 mm; 120 kg/m2, 0.0011768 N/mm2 and 2.48 mm, are
// more than 30 kg, and less than 40 kg, 3.19 mm.
func TestShelvesBearTheirContents(t *testing.T) {
	for _, test := range []struct {
		weight, load int
		besides      bool
		want, sag    string
	}{
		{90, 0, false, "Under 30.0 kg of contents a shelf", "some 2.4 mm"},
		{90, 0, true, "a load of books", "some 5.0 mm"},
		{90, 120, false, "Under 120 kg/m2", "some 2.5 mm"},
		{120, 120, true, "Under 40.0 kg of contents a shelf", "some 3.2 mm"},
	} {
		d := plain()
		d.Bays = []Bay{{Openings: []Opening{{Shelves: count(2), Contents: Contents{Weight: count(test.weight)}}}}}
		if test.besides { // a second opening, of a case so much higher
			d.OutsideHeight = Length{}
			d.Bays[0].Openings[0].Height = metric("684")
			d.Bays[0].Openings = append(d.Bays[0].Openings, Opening{Height: metric("684"), Shelves: count(2)})
		}
		if test.load > 0 {
			d.Shelf.Load = count(test.load)
		}
		c := derive(t, d, stiff(7000))
		var k Check
		for _, one := range c.Checks {
			if one.Of == "shelf" {
				k = one
			}
		}
		if !strings.Contains(k.Text, test.want) || !strings.Contains(k.Text, test.sag) {
			t.Errorf("%d kg and %d kg/m2: %s", test.weight, test.load, k.Text)
		}
		if of := strings.Contains(test.want, "contents"); of != strings.Contains(strings.Join(k.Assumptions, " "), "Contents weigh what the job file says") {
			t.Errorf("%d kg: assumed %q", test.weight, k.Assumptions)
		}
	}
}

// A divider bears the lowest row above it: 60 kg without shelves, 20 of 60 with two.
func TestADividerBearsTheLowestRowAboveIt(t *testing.T) {
	for shelves, want := range map[int]string{0: "Under 60.0 kg of contents a divider", 2: "Under 20.0 kg of contents a divider"} {
		d := plain()
		d.Bays = []Bay{{Openings: []Opening{{Shelves: count(shelves), Contents: Contents{Weight: count(60)}}, {}}}}
		found := false
		for _, k := range derive(t, d, stiff(7000)).Checks {
			found = found || strings.Contains(k.Text, want)
		}
		if !found {
			t.Errorf("with %d shelves nothing is said of %q", shelves, want)
		}
	}
}

// 100 kg in a case 300 deep, in the middle of it, hold it down by 15 kg m more; of
// pieces 100 deep, which may stand at the front, by 5. Empty, sides of 2.722 kg, top and
// bottom of 3.266, all 150 behind the front, hold by 1.796.
func TestContentsHoldACaseDown(t *testing.T) {
	const pulled = "pulled forward with 10 lbf (44.5 N) at its top, at most 56 in (1422.4 mm) up: holding"
	for depth, want := range map[string]string{"": "16.796", "100": "6.796"} {
		d := plain()
		d.Bays = []Bay{{Openings: []Opening{{Contents: Contents{Weight: count(100)}}}}}
		if depth != "" {
			d.Bays[0].Openings[0].Contents.Depth = metric(depth)
		}
		k := checkOn(t, derive(t, d, weighed(map[string]float64{"carcass": 700})), "tipping")
		empty, with := resultOf(k, pulled), resultOf(k, "with its contents, and "+pulled)
		if empty != "1.796" || with != want {
			t.Errorf("pieces %q deep: holding %s empty and %s with contents", depth, empty, with)
		}
		if !strings.Contains(strings.Join(k.Assumptions, " "), "Contents weigh 100.0 kg, as the job file says") || len(k.States) != 2 {
			t.Errorf("%q, assumed %q", k.States, k.Assumptions)
		}
	}
}

// Rows stand on shelves: two of 10 kg in an opening 684 high with a shelf of 18 have
// 333 each, and their middle, 100 high, at 18 + 50 and 18 + 333 + 18 + 50.
func TestWhereContentsStand(t *testing.T) {
	d := plain()
	d.Shelf.SetBack = metric("20")
	d.Bays = []Bay{{Openings: []Opening{{Shelves: count(1), Contents: Contents{Height: metric("100"), Depth: metric("60"), Weight: count(20)}}}}}
	c := derive(t, d, workshop(stock.Millimeters))
	mm := float64(stock.Millimeter)
	want := []load{{10_000, [3]float64{450 * mm, 50 * mm, 68 * mm}}, {10_000, [3]float64{450 * mm, 50 * mm, 419 * mm}}}
	got := (&checker{Maker: c.Maker}).contentsLoads()
	if len(got) != 2 || got[0] != want[0] || got[1] != want[1] {
		t.Errorf("loads %v, want %v", got, want)
	}
}

// Drawers of 5 kg with 20 kg in each: all open, 4 x 25 x 0.19 = 19 kg m. A load of 1
// kg is less than clothing of 0.8 x 0.38 x 0.16 m3 x 136.2 = 6.625 kg: 4 x 11.625 x
// 0.19 = 8.835.
func TestDrawersTipWithTheirLoad(t *testing.T) {
	for given, want := range map[int]string{20: "19.000", 1: "8.835"} {
		d := plain()
		d.OutsideWidth, d.OutsideHeight, d.OutsideDepth = Length{}, Length{}, metric("400")
		d.Bays = []Bay{measured(4, "800", "160", "380")}
		d.Bays[0].Openings[0].Drawers[0].Weight, d.Bays[0].Openings[0].Drawers[0].Load = count(5), count(given)
		k := checkOn(t, derive(t, d, weighed(map[string]float64{"carcass": 700})), "tipping")
		if got := resultOf(k, "all drawers fully open, filled with clothing or their load: tipping"); got != want {
			t.Errorf("with %d kg: %s, want %s", given, got, want)
		}
	}
}

// What is not known of the European rule is not given as if it were.
func TestTheRulesAreNamed(t *testing.T) {
	k := checkOn(t, chest(t, count(5)), "tipping")
	said := strings.Join(k.Assumptions, " ")
	for _, want := range []string{"16 CFR part 1261", "ASTM F2057-23", "three tests", "EN 14749:2016", "EN 16122",
		"loads for stability are not known here and not reckoned", "From memory"} {
		if !strings.Contains(said, want) {
			t.Errorf("nothing is said of %q: %s", want, said)
		}
	}
}
