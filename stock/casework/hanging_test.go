package casework

import (
	"slices"
	"strings"
	"testing"

	"sawbill/stock"
)

// 900 x 720 x 300 of 18: between sides 864, below the top at 720 - 18 - 80 = 622 and on
// the bottom at 18, before what there is of a back: without one 18 before 300, at 282.
// Behind a back set in 18 they lie there too; one set in 10, 6 thick, leaves 284 inside, and
// they begin at 266, in two bays of (864 - 18) / 2 = 423 one in each.
func TestHangingRails(t *testing.T) {
	groove := func(setIn string) Back {
		return Back{Fit: word("groove"), Material: word("back"), Depth: metric("6"), SetIn: metric(setIn)}
	}
	for _, test := range []struct {
		name string
		back Back
		bays int
		part string
		at   []string
	}{
		{"no back", Back{}, 1, "2 hanging rail 864 x 80 x 18 carcass", []string{"18, 282, 622", "18, 282, 18"}},
		{"behind the back", groove("18"), 2, "2 hanging rail 864 x 80 x 18 carcass", []string{"18, 282, 622", "18, 282, 18"}},
		{"before the back", groove("10"), 2, "4 hanging rail 423 x 80 x 18 carcass",
			[]string{"18, 266, 622", "18, 266, 18", "459, 266, 622", "459, 266, 18"}},
	} {
		d := plain()
		d.Base.Kind, d.Back, d.Bays = word("hung"), test.back, make([]Bay, test.bays)
		from := workshop(stock.Millimeters)
		c := derive(t, d, from)
		if got := cut(c, from.Ruler); !slices.Contains(got, test.part) {
			t.Errorf("%s: no %s in %q", test.name, test.part, got)
		}
		var at []string
		for _, line := range only(standing(c, from.Ruler), "hanging") {
			at = append(at, strings.TrimPrefix(line, "hanging rail at "))
		}
		wantLines(t, test.at, at)
	}
}

// It cannot tip, though it is 720 high; what it must bear is told: the bottom, 864 x 300,
// and a shelf of 861 x 300 under 244.12 kg/m2 are 126.3 kg.
func TestAHungCaseIsFixedAndStandsOnNothing(t *testing.T) {
	d := plain()
	d.Base = Base{Kind: word("hung"), Rails: count(1), RailWidth: metric("60")}
	d.Bays = []Bay{{Openings: []Opening{{Shelves: count(1)}}}}
	from := workshop(stock.Millimeters)
	c := derive(t, d, from)
	if got := cautionOn(c, "tipping"); got != "" {
		t.Error(got)
	}
	if got := cautionOn(c, "hanging"); !strings.Contains(got, "into studs") || !strings.Contains(got, "must bear some 126.3 kg and its own weight") {
		t.Error(got)
	}
	wantLines(t, []string{"inner face: from the bottom end 642; 60 wide, 0 deep"}, marked(c, from.Ruler, "side", "hanging rail line"))
	var steps []string
	for _, s := range c.Assembly {
		steps = append(steps, s.Text)
	}
	all := strings.Join(steps, " ")
	if !strings.Contains(all, "screw the level case to the wall") || strings.Contains(all, "where it is to stand") {
		t.Error(all)
	}
	wantLines(t, []string{"2 fixings into the wall"}, fittingsOf(c, "fixings"))

	from = weighed(map[string]float64{"carcass": 0.6})
	if got := cautionOn(derive(t, d, from), "hanging"); !strings.Contains(got, "It weighs some ") {
		t.Error(got)
	}
}

// The rails of a framed case's back frame hold it.
func TestAFramedCaseHangsByItsBackFrame(t *testing.T) {
	d := framed()
	d.Base.Kind = word("hung")
	c := derive(t, d, workshop(stock.Millimeters))
	for _, p := range c.Parts {
		if p.Name == "hanging rail" {
			t.Error("it has a hanging rail")
		}
	}
	if got := cautionOn(c, "hanging"); !strings.Contains(got, "the rails of its back frame") {
		t.Error(got)
	}
}
