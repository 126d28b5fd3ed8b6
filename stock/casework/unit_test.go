package casework

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"sawbill/stock"
)

func TestUnitsHoldEveryPartAsOftenAsItIsWanted(t *testing.T) {
	eachRandomCase(t, func(t *testing.T, _ Context, d Design, c *Case) {
		counts := make([]int, len(c.Parts))
		var drawers []int
		for _, u := range c.Units() {
			drawers = append(drawers, u.Drawers...)
			for _, it := range u.Items {
				counts[it.Part] += u.Count * it.Count
			}
		}
		for i, p := range c.Parts {
			if counts[i] != p.Count {
				t.Errorf("%s: %d in units, %d wanted", p.Name, counts[i], p.Count)
			}
		}
		slices.Sort(drawers)
		for i, n := range drawers {
			if n != i+1 {
				t.Errorf("drawers %v", drawers)
			}
		}
	})
}

// Three drawers, the lowest higher than the others, whose parts but the sides'
// and fronts' heights are alike.
func TestAlikeDrawersAreOneUnit(t *testing.T) {
	c := derive(t, Design{
		OutsideWidth: metric("500"), OutsideHeight: metric("600"), OutsideDepth: metric("400"),
		Carcass: Carcass{Material: word("carcass")},
		Drawer:  Drawer{Material: word("box"), BottomMaterial: word("back"), GrooveDepth: metric("5")},
		Bays: []Bay{{Openings: []Opening{
			{Drawers: []DrawerBox{{Count: count(2), FrontHeight: metric("100")}, {FrontHeight: metric("150")}}}, {Shelves: count(1)},
		}}},
	}, workshop(stock.Millimeters))
	var got []string
	for _, u := range c.Units() {
		var items []string
		for _, it := range u.Items {
			items = append(items, fmt.Sprintf("%d %s", it.Count, c.Parts[it.Part].Name))
		}
		got = append(got, fmt.Sprintf("%d x %s %v: %s", u.Count, u.Name, u.Drawers, strings.Join(items, "; ")))
	}
	wantLines(t, []string{
		"1 x carcass []: 2 side; 1 top; 1 bottom; 1 divider",
		"2 x drawer [1 2]: 2 drawer side, opening 1 drawers 1 and 2; 2 drawer front and back, opening 1 drawers 1 and 2; 1 drawer bottom",
		"1 x drawer [3]: 1 drawer bottom; 2 drawer side, opening 1 drawer 3; 2 drawer front and back, opening 1 drawer 3",
		"1 x shelves []: 1 shelf",
	}, got)
}

func TestEveryRoleHasItsUnit(t *testing.T) {
	for role, want := range map[Role]string{
		"side": "carcass", "mid stile": "frames", "back": "back", "shelf": "shelves", "door": "doors", "door panel": "doors",
		"hanging rail": "carcass", "mid rail": "frames", "plinth front and back": "base", "foot": "base", "back foot": "base", "shelf edging": "edging", "top side trim": "edging",
		"loose tenon strip": "joinery", "spline": "joinery", "glue block": "joinery",
	} {
		if got := role.Unit(); got != want {
			t.Errorf("%s: %s, want %s", role, got, want)
		}
	}
}

// Nothing but shelves, doors and drawers stands in an opening.
func TestOpeningsAreClear(t *testing.T) {
	eachRandomCase(t, func(t *testing.T, _ Context, d Design, c *Case) {
		for _, o := range c.Openings {
			room := Solid{At: o.At, Size: Point{o.Width, o.Depth, o.Height}}
			for _, s := range c.Solids {
				role, _, _ := strings.Cut(string(s.Role), " ") // with its edging
				if s.Drawer == 0 && role != "shelf" && role != "door" && overlap(room, s) > 0 {
					t.Errorf("%s at %v stands in bay %d opening %d at %v", s.Role, s.At, o.Bay, o.Number, o.At)
				}
			}
		}
	})
}
