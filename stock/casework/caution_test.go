package casework

import (
	"strings"
	"testing"

	"sawbill/stock"
)

// 27 in (685.8 mm) is where 16 CFR part 1261 and ASTM F2057-23 begin, as the
// abstract of the standard says.
func TestTippingIsToldFromItsHeightOrDrawers(t *testing.T) {
	for _, test := range []struct {
		name   string
		change func(*Design)
		want   bool
	}{
		{"low and open", func(d *Design) { d.OutsideHeight = metric("685.7") }, false},
		{"as high as the standard's least", func(d *Design) { d.OutsideHeight = metric("685.8") }, true},
		{"low with drawers", func(d *Design) {
			d.OutsideHeight, d.OutsideWidth = Length{}, Length{}
			d.Bays = []Bay{measured(1, "300", "100", "200")}
		}, true},
	} {
		t.Run(test.name, func(t *testing.T) {
			d := plain()
			test.change(&d)
			got := cautionOn(derive(t, d, workshop(stock.Millimetres)), "tipping")
			if (got != "") != test.want {
				t.Errorf("caution = %q, want one: %t", got, test.want)
			}
			if test.want && !strings.HasSuffix(got, defers) {
				t.Errorf("%q does not defer", got)
			}
		})
	}
}

func TestLongShelvesAreTold(t *testing.T) {
	d := plain()
	d.Bays = []Bay{{Openings: []Opening{{Shelves: count(1)}}}}
	if got := cautionOn(derive(t, d, workshop(stock.Millimetres)), "shelf span"); !strings.Contains(got, "A shelf is 861 mm long and 18 mm thick.") {
		t.Errorf("caution = %q", got)
	}
	d.Bays = append(d.Bays, d.Bays[0])
	if got := cautionOn(derive(t, d, workshop(stock.Millimetres)), "shelf span"); got != "" {
		t.Errorf("two bays of 423 mm: caution = %q", got)
	}
}

func TestUnequalDrawersArePacked(t *testing.T) {
	d := plain()
	d.OutsideWidth, d.OutsideHeight = Length{}, Length{}
	d.Bays = []Bay{measured(2, "300", "100", "200")}
	narrow := DrawerBox{Width: metric("298"), Height: metric("100"), Depth: metric("200")}
	d.Bays[0].Openings[0].Drawers = append(d.Bays[0].Openings[0].Drawers, narrow)
	want := "In bay 1 opening 1, drawer 3 is 2 mm narrower than its bay has room for: pack its slides out by half of that on each side."
	if got := cautionOn(derive(t, d, workshop(stock.Millimetres)), "drawers of unequal width"); got != want {
		t.Errorf("caution = %q, want %q", got, want)
	}
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
