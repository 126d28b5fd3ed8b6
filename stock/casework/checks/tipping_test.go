package checks

import (
	"math"
	"strings"
	"testing"

	"sawbill/stock"
)

// inches is a weight in pounds at y behind the front and z above the floor.
func inchLoad(pounds int, y, z float64) load {
	return load{stock.OfPounds(pounds), [3]float64{0, y * float64(stock.Inch), z * float64(stock.Inch)}}
}

// Statics by hand, in lb-in: a case of 60 lb at y 9, z 18, on supports 16 in
// apart; four drawers of 12 lb with their centers at y 9, and 12 in of travel,
// fronts at y 0.
//
//	all open, empty: 60 x 9 - 4 x 12 x 3                    540 - 144 =  396
//	the same, pulled with 10 lbf at 30 in: 396 - 300                      96
//	one open, 60 lb on its front at y -12:
//	60 x 9 + 3 x 12 x 9 - 12 x 3 - 60 x 12                  864 - 756 =  108
//	all open, 60 lb on one front: 396 - 720                             -324
//	the same at z 27, the rear up 0.43: sin = 0.026875, cos = 0.99963881
//	  396 cos - (60 x 18 + 12 x (6 + 13 + 20 + 27)) sin
//	  - 60 (12 cos + 27 sin)                                        -417.730
//	filled drawers, the child and the carpet:
//	  312 cos - (60 x 18 + 19 x 66) sin - 60 (12 cos + 27 sin)      -514.116
func TestMomentsByHand(t *testing.T) {
	on := footing{rear: 16 * stock.Inch}
	body := inchLoad(60, 9, 18)
	var drawers []opens
	for _, z := range []float64{27, 20, 13, 6} {
		drawers = append(drawers, opens{empty: inchLoad(12, 9, z), filled: inchLoad(19, 9, z),
			top: stock.Length(z) * stock.Inch, travel: 12 * stock.Inch})
	}
	want := []struct{ holding, tipping, net float64 }{
		{540, 144, 396},
		// 2/3 open: 19 lb at y 1 hold it down
		{540 + 4*19, 0, 616},
		{540, 4 * 19 * 3, 540 - 228},
		{540, 144 + 300, 96},
		{864, 756, 108},
		{-1, -1, -417.730},
		{-1, -1, -514.116},
	}
	got := states(drawers, []load{body}, nil, 30*stock.Inch, "clothing")
	if len(got) != len(want) {
		t.Fatalf("%d states", len(got))
	}
	poundInch := 453.59237 * float64(stock.Inch)
	for i, w := range want {
		holding, tipping := on.moments(got[i])
		holding, tipping = holding/poundInch, tipping/poundInch
		// Weights are whole grams, so 60 lb are 0.001 % less or more.
		if math.Abs(holding-tipping-w.net) > 0.02 || w.holding >= 0 && (math.Abs(holding-w.holding) > 0.02 || math.Abs(tipping-w.tipping) > 0.02) {
			t.Errorf("%s: %f - %f = %f, want %+v", got[i].name, holding, tipping, holding-tipping, w)
		}
	}
}

// chest is 900 x 720 x 400 with four measured drawers of 5 kg.
func chest(t *testing.T, weight Count) *derived {
	d := plain()
	d.OutsideWidth, d.OutsideHeight, d.OutsideDepth = Length{}, Length{}, metric("400")
	d.Bays = []Bay{measured(4, "800", "160", "380")}
	d.Bays[0].Openings[0].Drawers[0].Weight = weight
	return derive(t, d, weighed(map[string]float64{"carcass": 700}))
}

// Two doors close a case of 1000 x 536 x 300, all of 18 mm and 700 kg/m3: (964 - 3 x 2)
// / 2 = 479 wide and 500 - 4 = 496 high, 5.987 kg together. Open, their middle is 239.5
// before the front, which tips by 1.434 kg m. The sides, 4.052 kg, and top and bottom,
// 7.288 kg, at 150, hold by 1.701.
func TestOpenDoorsTip(t *testing.T) {
	d := Design{
		OutsideWidth: metric("1000"), OutsideHeight: metric("536"), OutsideDepth: metric("300"),
		Carcass: Carcass{Material: word("carcass")}, Door: Door{Gap: metric("2")},
		Bays: []Bay{{Openings: []Opening{{Doors: count(2)}}}},
	}
	c := derive(t, d, weighed(map[string]float64{"carcass": 700}))
	_, rest := drawers(&c.Standing, nil)
	holding, tipping := standsOn(c.Solids).moments(state{loads: rest})
	inKilogramMeters := 1000 * 1000 * float64(stock.Millimeter)
	if got := holding / inKilogramMeters; math.Abs(got-1.701) > 0.002 {
		t.Errorf("holding %f kg m", got)
	}
	if got := tipping / inKilogramMeters; math.Abs(got-1.434) > 0.002 {
		t.Errorf("tipping %f kg m", got)
	}
}

func TestTippingOfAChest(t *testing.T) {
	c := chest(t, count(5))
	k := checkOn(t, c, "tipping")
	if cautionOn(c, "tipping") != "" {
		t.Error("the rule of thumb is given besides")
	}
	// A child of 27 kg out at 380 mm against some 20 kg of panels at 200: it tips.
	if k.Verdict != Tips || !strings.Contains(k.Text, "anchor it to the wall") || !strings.Contains(k.Text, "no substitute") {
		t.Errorf("%+v", k)
	}
	if len(k.Results) < 6*2 || len(k.Inputs) != 4 || k.Source == "" {
		t.Errorf("%+v", k)
	}
}

func TestTippingSaysWhatIsMissing(t *testing.T) {
	c := chest(t, Count{})
	if len(c.Checks) > 0 {
		t.Errorf("checks %v", c.Checks)
	}
	if got := cautionOn(c, "tipping"); !strings.Contains(got, "give every measured drawer its weight.") {
		t.Error(got)
	}
	d := plain()
	if got := cautionOn(derive(t, d, workshop(stock.Millimeters)), "tipping"); !strings.Contains(got, `give the [[material]] "carcass" a wood or a density.`) {
		t.Error(got)
	}
}

// Feet that reach 50 forward move the front support, and with it every margin up:
// the solids of a chest, and feet below it.
func TestFeetThatReachForwardHoldAChest(t *testing.T) {
	c := chest(t, count(5))
	drawers, rest := drawers(&c.Standing, nil)
	on := standsOn(c.Solids)
	if on.front != 0 || on.rear != metric("400").Value || on.floor != 0 {
		t.Errorf("without feet on %+v", on)
	}
	foot := Solid{Role: "foot", At: Point{0, -metric("50").Value, -metric("60").Value},
		Size: Point{metric("40").Value, metric("450").Value, metric("60").Value}}
	footed := standsOn(append(c.Solids, foot))
	if footed.front != -metric("50").Value || footed.floor != -metric("60").Value {
		t.Errorf("on feet %+v", footed)
	}
	for i, s := range states(drawers, rest, nil, 1000*stock.Millimeter, "clothing") {
		holding, tipping := on.moments(s)
		better, less := footed.moments(s)
		if better-less <= holding-tipping {
			t.Errorf("state %d: %f on feet, %f without", i, better-less, holding-tipping)
		}
	}
}

// A drawer to be made, of TestWhereDrawersStand: sides at 30.7 and 459.3, 10 thick;
// ends at 0 and 290, 10 thick; 168 high with its bottom 6 thick from 10 up: 418.6
// x 280 x 152.
func TestRoomInADrawer(t *testing.T) {
	mm := func(a, b, c string) Point { return Point{metric(a).Value, metric(b).Value, metric(c).Value} }
	got := roomIn([]Solid{
		{Role: "drawer side", At: mm("30.7", "0", "208"), Size: mm("10", "300", "168")},
		{Role: "drawer side", At: mm("459.3", "0", "208"), Size: mm("10", "300", "168")},
		{Role: "drawer front and back", At: mm("30.7", "0", "208"), Size: mm("438.6", "10", "168")},
		{Role: "drawer front and back", At: mm("30.7", "290", "208"), Size: mm("438.6", "10", "168")},
		{Role: "drawer bottom", At: mm("36.2", "5.5", "218"), Size: mm("427.6", "289", "6")},
	})
	if want := mm("418.6", "280", "152"); got != want {
		t.Errorf("%v, want %v", got, want)
	}
}

// The chest is 691 high: 2 x 18 + 4 x 160 + 5 gaps of 3. At 700 kg/m3 its sides of
// 691 x 400 x 18 weigh 3483 g each, top and bottom of 825.4 x 400 x 18 4160: 15286
// g, 200 behind the front; with the drawers 35286. An open drawer's middle is at
// -190. The highest hand-hold is 18 + 3 + 4 x 160 + 3 x 3 = 670 up. In kg m:
//
//	all open, empty     15.286 x 0.2 = 3.057        4 x 5 x 0.19 = 3.8        0.80
//	and pulled          3.057                       3.8 + 4.536 x 0.67 = 6.839
//	one, with a child   3.057 + 3 x 5 x 0.19        5 x 0.19 + 27.216 x 0.38
//	                    = 5.907                     = 11.292                  0.52
func TestMomentsOfAChest(t *testing.T) {
	k := checkOn(t, chest(t, count(5)), "tipping")
	if k.Inputs[0] != (Figure{"weight", "35.286", "kg"}) {
		t.Error(k.Inputs)
	}
	for name, want := range map[string]string{
		"all drawers fully open, empty: holding": "3.057",
		"all drawers fully open, empty: tipping": "3.800",
		"all drawers fully open, empty: margin":  "0.80",
		"all drawers fully open, empty, and pulled forward with 10 lbf (44.5 N) at the highest, at most 56 in (1422.4 mm) up: tipping": "6.839",
		"one drawer fully open, empty, with a child of 60 lb (27.2 kg) on its front: holding":                                          "5.907",
		"one drawer fully open, empty, with a child of 60 lb (27.2 kg) on its front: tipping":                                          "11.292",
		"one drawer fully open, empty, with a child of 60 lb (27.2 kg) on its front: margin":                                           "0.52",
	} {
		if got := resultOf(k, name); got != want {
			t.Errorf("%s: %s, want %s", name, got, want)
		}
	}
}

func resultOf(k Check, name string) string {
	for _, f := range k.Results {
		if f.Name == name {
			return f.Value
		}
	}
	return "none"
}

// 2000 high, so a hand pulls at 1422.4: 4.536 x 1.4224 = 6.452 kg m.
func TestATallCaseIsPulledNoHigherThanAHandReaches(t *testing.T) {
	d := plain()
	d.OutsideHeight = metric("2000")
	k := checkOn(t, derive(t, d, weighed(map[string]float64{"carcass": 700})), "tipping")
	if k.Results[1].Value != "6.452" {
		t.Error(k.Results)
	}
}

// Of two drawers a child is thought on the one that reaches out farther.
func TestAChildClimbsOnTheFarthestDrawer(t *testing.T) {
	near := opens{empty: inchLoad(12, 9, 20), top: 20 * stock.Inch, travel: 12 * stock.Inch}
	far := opens{empty: inchLoad(12, 9, 6), top: 6 * stock.Inch, travel: 14 * stock.Inch}
	for _, drawers := range [][]opens{{near, far}, {far, near}} {
		loads := states(drawers, nil, nil, 0, "clothing")[4].loads
		if child := loads[len(loads)-1]; child.weight != childWeight || child.at[Y] != -14*float64(stock.Inch) {
			t.Errorf("a child at %v", child)
		}
	}
}

// An overlay front 18 thick stands before the case, and a child climbs on that; the
// box behind it is 300 deep, the case's depth. Two fronts of 190, the upper from
// 202.
func TestAnOverlayFrontIsClimbedOn(t *testing.T) {
	d := Design{
		OutsideWidth: metric("500"), OutsideHeight: metric("400"), OutsideDepth: metric("300"),
		Carcass: Carcass{Material: word("carcass")},
		Drawer: Drawer{Front: word("overlay"), Overlay: metric("10"), Gap: metric("4"), Material: word("box"), BottomMaterial: word("back"),
			GrooveDepth: metric("5")},
		Bays: []Bay{{Openings: []Opening{{Drawers: []DrawerBox{{Count: count(2)}}}}}},
	}
	drawers, _ := drawers(&derive(t, d, workshop(stock.Millimeters)).Standing, nil)
	if len(drawers) != 2 {
		t.Fatal(drawers)
	}
	if got := drawers[0]; got.front != -metric("18").Value || got.travel != metric("300").Value || got.top != metric("392").Value {
		t.Errorf("%+v", got)
	}
}

// A drawer behind a door opens through it: the doors of a tipping chest stand open
// before the case in every state, and the drawer reaches 48 less far.
func TestDrawersBehindDoorsTipWithTheDoorsOpen(t *testing.T) {
	weights := weighed(map[string]float64{"carcass": 700, "box": 700, "back": 700})
	drawers, rest := drawers(&derive(t, behindTwoDoors(), weights).Standing, nil)
	doors := 0
	for _, l := range rest {
		if l.at[Y] < 0 {
			doors++
		}
	}
	if doors != 2 {
		t.Errorf("%d doors stand open before the case, want 2", doors)
	}
	if got, want := drawers[0].front, 48*stock.Millimeter; got != want {
		t.Errorf("a drawer begins at %d, want %d", got, want)
	}
}
