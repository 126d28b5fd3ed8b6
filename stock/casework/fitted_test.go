package casework

import (
	"fmt"
	"strings"
	"testing"

	"sawbill/stock"
)

// The doors of a case 720 high inside 684 are 684 - 2 x 2 = 680 high and stand 18 + 2 = 20
// up. Two hinges 90 from their ends: 90 and 590, on the side 110 and 610. One catch 50 below
// the top: 630. An opening 1164 high has a door of 1160: three hinges, 90, 580 and 1070, and
// two catches, 50 and 1110.
func TestHingesAndCatches(t *testing.T) {
	d := plain()
	d.Bays = []Bay{{Openings: []Opening{{Doors: count(2)}}}}
	from := workshop(stock.Millimeters)
	c := derive(t, d, from)
	wantLines(t, []string{"hinged left, back face: from the bottom end 90, 590", "hinged right, back face: from the bottom end 90, 590"},
		marked(c, from.Ruler, "door", Hinge))
	wantLines(t, []string{"inner face: from the bottom end 110, 610"}, marked(c, from.Ruler, "side", Hinge))
	wantLines(t, []string{"hinged left, back face: from the bottom end 630", "hinged right, back face: from the bottom end 630"},
		marked(c, from.Ruler, "door", Catch))
	for _, k := range c.Marks { // the left door's hinges lie at its left edge, its catch at the right one
		if left := strings.HasPrefix(k.On, "hinged left"); k.What == Hinge && left && k.Stops[0] != 0 || k.What == Catch && left && k.Stops[1] != 0 {
			t.Errorf("%s of the %s stops %v", k.What, k.On, k.Stops)
		}
	}
	d.OutsideHeight, d.Bays[0].Openings[0].Doors = metric("1200"), count(1)
	c = derive(t, d, from)
	wantLines(t, []string{"back face: from the bottom end 90, 580, 1070"}, marked(c, from.Ruler, "door", Hinge))
	wantLines(t, []string{"back face: from the bottom end 50, 1110"}, marked(c, from.Ruler, "door", Catch))
}

// Sides 300 deep with an applied back. Boxes behind an overlay front begin at the front
// edge, behind an inset one of 18 at 18. A slide of 250 ends at 250, or at 18 + 250 = 268.
// Without a length a line runs to the back edge.
func TestSlideLinesLieWhereSlidesGo(t *testing.T) {
	for _, test := range []struct{ front, length, want string }{
		{"overlay", "250", "0 to 250"}, {"inset", "250", "18 to 268"}, {"overlay", "", "0 to 300"},
	} {
		d := Design{
			OutsideWidth: metric("500"), OutsideHeight: metric("400"), OutsideDepth: metric("300"),
			Carcass: Carcass{Material: word("carcass")},
			Drawer: Drawer{Front: word(test.front), Gap: metric("4"), HeightClearance: metric("12"),
				Material: word("box"), BottomMaterial: word("back"), GrooveDepth: metric("5")},
			Bays: []Bay{{Openings: []Opening{{Drawers: []DrawerBox{{Count: count(2)}}}}}},
		}
		if test.front == "overlay" {
			d.Drawer.Overlay = metric("10")
		}
		if test.length != "" {
			d.Drawer.SlideLength = metric(test.length)
		}
		from := workshop(stock.Millimeters)
		for _, k := range derive(t, d, from).Marks {
			if k.What != SlideLine {
				continue
			}
			if got := fmt.Sprintf("%s to %s", from.Ruler.Print(k.Stops[0]), from.Ruler.Print(300*mm1-k.Stops[1])); got != test.want {
				t.Errorf("%s fronts, slides %q: %s, want %s", test.front, test.length, got, test.want)
			}
		}
	}
}

const mm1 = stock.Millimeter

// Strips lie where the job puts them: on shelves and the carcass in front, on a door all
// round.
func TestEdgedEdges(t *testing.T) {
	for _, test := range []struct{ on, fit, role, want string }{
		{"shelves", "taken-off", "shelf", "[front edge]"}, {"shelves", "added", "shelf", "[front edge]"}, {"shelves", "added", "side", "[]"},
		{"carcass", "taken-off", "side", "[front edge]"}, {"carcass", "taken-off", "top", "[front edge]"},
	} {
		d, from := edgedCase(test.on, test.fit)
		c := derive(t, d, from)
		for i, s := range c.Solids {
			if got := fmt.Sprint(c.Edged(i)); string(s.Role) == test.role && got != test.want {
				t.Errorf("%s, %s: a %s has edging on %s, want %s", test.on, test.fit, s.Role, got, test.want)
			}
		}
	}
	d := plain()
	d.Bays = []Bay{{Openings: []Opening{{Doors: count(1)}}}}
	d.Edgings = []Edging{{On: word("fronts"), Material: word("spruce"), Thickness: metric("5")}}
	c := derive(t, d, workshop(stock.Millimeters))
	for i, s := range c.Solids {
		if got := fmt.Sprint(c.Edged(i)); s.Role == "door" && got != "[left edge right edge bottom end top end]" {
			t.Errorf("a door has edging on %s", got)
		}
	}
}
