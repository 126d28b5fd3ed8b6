package checks

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
			got := cautionOn(derive(t, d, workshop(stock.Millimeters)), "tipping")
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
	if got := cautionOn(derive(t, d, workshop(stock.Millimeters)), "shelf span"); !strings.Contains(got, "A shelf is 861 mm long and 18 mm thick.") {
		t.Errorf("caution = %q", got)
	}
	d.Bays = append(d.Bays, d.Bays[0])
	if got := cautionOn(derive(t, d, workshop(stock.Millimeters)), "shelf span"); got != "" {
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
	if got := cautionOn(derive(t, d, workshop(stock.Millimeters)), "drawers of unequal width"); got != want {
		t.Errorf("caution = %q, want %q", got, want)
	}
}
