package casework

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"sawbill/stock"
)

// Every part stands in the case as often as it is wanted and in its own size;
// nothing reaches out of the outside, and neighbors share no more room than
// their joint takes.
func TestSolidsFillTheCase(t *testing.T) {
	eachRandomCase(t, func(t *testing.T, from Context, d Design, c *Case) {
		counts := make([]int, len(c.Parts))
		for _, s := range c.Solids {
			if s.Part < 0 {
				continue
			}
			p := c.Parts[s.Part]
			counts[s.Part]++
			if s.Size[s.Along] != p.Length || s.Size[s.Across] != p.Width || s.Size[s.Through] != p.Thickness {
				t.Errorf("%s stands as %v", p.Name, s.Size)
			}
			if role, edging := strings.CutSuffix(string(s.Role), " edging"); !strings.HasPrefix(p.Name, string(s.Role)) && (!edging || !strings.Contains(p.Name, role)) {
				t.Errorf("%s is a %s", p.Name, s.Role)
			}
			outside := Point{sizeNamed(t, c, "outside width"), sizeNamed(t, c, "outside depth"), sizeNamed(t, c, "outside height")}
			first := Point{}
			switch {
			case s.Role == "front foot":
				first[Y] = -d.Base.Forward.Value
			case strings.HasPrefix(string(s.Role), "door") && d.Door.Fit.Value == "overlay",
				strings.HasPrefix(string(s.Role), "false front") && d.Drawer.Front.Value == "overlay":
				first[Y] = -metric("18").Value
			}
			for a, end := range s.End() {
				if s.At[a] < first[a] || end > outside[a] {
					t.Errorf("%s reaches from %v to %v, the case to %v", p.Name, s.At, s.End(), outside)
				}
			}
		}
		for i, n := range counts {
			if c.Parts[i].Name == "glue block" || strings.HasPrefix(c.Parts[i].Name, "loose tenon strip") {
				continue // the maker puts them
			}
			if n != c.Parts[i].Count {
				t.Errorf("%s: %d stand, %d are wanted", c.Parts[i].Name, n, c.Parts[i].Count)
			}
		}
		checkRoom(t, d, c)
	})
}

// Strips added to panels share no room with anything, or are refused.
func TestAddedStripsAreInNobodysWay(t *testing.T) {
	refused := 0
	eachRandomCase(t, func(t *testing.T, from Context, d Design, _ *Case) {
		d.Edgings = slices.Clone(d.Edgings)
		for i := range d.Edgings {
			if d.Edgings[i].On.Value != "fronts" {
				d.Edgings[i].Fit = word("added")
			}
		}
		c, faults := Derive(d, from)
		if c != nil {
			checkRoom(t, d, c)
			return
		}
		refused++
		for _, f := range faults {
			if !strings.Contains(f.Cause, "in the way") {
				t.Error(f)
			}
		}
	})
	if refused == 0 || refused > 150 {
		t.Errorf("%d of 200 are refused", refused)
	}
}

// checkRoom checks that no two pieces share more room than their joint takes.
func checkRoom(t *testing.T, d Design, c *Case) {
	t.Helper()
	for i, a := range c.Solids {
		for _, b := range c.Solids[:i] {
			if deep, most := overlap(a, b), jointBetween(d, a, b); deep > most {
				t.Errorf("%s at %v and %s at %v share %d, their joint takes %d", a.Role, a.At, b.Role, b.At, deep, most)
			}
		}
	}
}

// overlap is how deep two solids reach into each other at the least; 0 if they
// do not.
func overlap(a, b Solid) stock.Length {
	least := stock.Length(stock.Longest)
	for axis := range a.At {
		least = min(least, a.End()[axis]-b.At[axis], b.End()[axis]-a.At[axis])
	}
	return max(0, least)
}

// jointBetween is the greatest depth to which two pieces may reach into each other.
func jointBetween(d Design, a, b Solid) stock.Length {
	switch one, other := a.Role.Unit() == "edging", b.Role.Unit() == "edging"; {
	case one && other:
		return miterBetween(d, a, b)
	case one || other:
		if other {
			a, b = b, a
		}
		strip, panel := strings.TrimSuffix(string(a.Role), " edging"), b.Role
		switch { // a panel housed in another that has a strip goes into both
		case panel == "partition" && (strip == "top" || strip == "top trim" || strip == "bottom"):
			return d.Partition.JointDepth.Value
		case panel == "divider" && (strip == "side" || strip == "partition"):
			return d.Divider.JointDepth.Value
		case panel == "shelf" && (strip == "side" || strip == "partition"):
			return d.Shelf.JointDepth.Value
		}
		return 0
	}
	pair := func(one, other Role) bool {
		return a.Role == one && b.Role == other || a.Role == other && b.Role == one
	}
	either := func(roles ...Role) bool {
		for _, r := range roles {
			if a.Role == r || b.Role == r {
				return true
			}
		}
		return false
	}
	switch {
	case pair("stile", "rail") || pair("mid stile", "rail") || pair("stile", "mid rail") || pair("mid stile", "mid rail"): // laps and fingers
		return metric("60").Value
	case pair("side", "top") || pair("side", "bottom"):
		return d.Carcass.JointDepth.Value
	case either("back"):
		return d.Back.Depth.Value
	case either("drawer bottom"):
		return d.Drawer.GrooveDepth.Value
	case either("partition") && either("top", "bottom"):
		return d.Partition.JointDepth.Value
	case either("divider") && either("side", "partition"):
		return d.Divider.JointDepth.Value
	case either("shelf") && either("side", "partition"):
		return d.Shelf.JointDepth.Value
	case pair("drawer side", "drawer front and back") && d.Drawer.Corner.Value == "box-joint":
		return metric("12").Value // their fingers
	case pair("drawer side", "drawer front and back"):
		return d.Drawer.CornerDepth.Value
	}
	return 0
}

// miterBetween is the thickness of two strips round one panel that meet in miters.
func miterBetween(d Design, a, b Solid) stock.Length {
	on := map[Role]string{"top trim": "top", "top side trim": "top",
		"door edging": "fronts", "door end edging": "fronts", "false front edging": "fronts", "false front end edging": "fronts"}
	for _, e := range d.Edgings {
		if e.Corner.Value == "miter" && a.Role != b.Role && on[a.Role] == e.On.Value && on[b.Role] == e.On.Value {
			return e.Thickness.Value
		}
	}
	return 0
}

// The framed case of TestFramedCaseFromItsOutside, 40 x 20 x 30. The body begins
// at 1/4, 1 1/2, 1/4 and is 39 1/2 x 17 x 29 1/2: the right side at 1/4 + 39 1/2 -
// 3/4 = 39, the top at 1/4 + 29 1/2 - 3/4 = 29, both behind the front frame. The
// shelf lies between the panels, from 1 with half of 1/8 at each end, in the middle
// of the opening, which is 25 high and begins at the rail, 2 1/2: at 2 1/2 + (25 -
// 3/4) / 2 = 14 5/8. The rails' tenons begin at 2 1/2 - 1 = 1 1/2. The back lies in
// the back frame, flush behind, 1/4 thick: at 20 - 1/4 = 19 3/4, from 2 1/2 - 1/2 +
// 1/32 = 2 1/32.
func TestWhereTheFramedCaseStands(t *testing.T) {
	d := Design{
		Construction: word("framed"),
		OutsideWidth: imperial("40"), OutsideHeight: imperial("30"), OutsideDepth: imperial("20"),
		Carcass: Carcass{Material: word("carcass")},
		Frame: Frame{Material: word("spruce"), StileWidth: imperial("2 1/2"), RailWidth: imperial("2 1/2"),
			Corner: word("mortise-and-tenon"), TenonLength: imperial("1"), Inset: imperial("1/4")},
		Back: Back{Fit: word("rabbet"), Material: word("back"), Depth: imperial("1/2")},
		Bays: []Bay{{Openings: []Opening{{Shelves: count(1)}}}},
	}
	from := workshop(stock.Inches)
	wantLines(t, []string{
		"side at 1/4, 1 1/2, 1/4",
		"side at 39, 1 1/2, 1/4",
		"top at 1, 1 1/2, 29",
		"bottom at 1, 1 1/2, 1/4",
		"stile at 0, 0, 0",
		"stile at 37 1/2, 0, 0",
		"stile at 0, 18 1/2, 0",
		"stile at 37 1/2, 18 1/2, 0",
		"rail at 1 1/2, 0, 0",
		"rail at 1 1/2, 0, 27 1/2",
		"rail at 1 1/2, 18 1/2, 0",
		"rail at 1 1/2, 18 1/2, 27 1/2",
		"back at 2 1/32, 19 3/4, 2 1/32",
		"shelf at 1 1/16, 1 1/2, 14 5/8",
	}, standing(derive(t, d, from), from.Ruler))
}

// A case of 500 x 400 x 300 of 18 mm panels, with two drawers 100 and 158 high
// behind overlay fronts that reach 10 over the edges; 364 of opening less a gap of 4
// plus 2 x 10 are 2 fronts of 190. The upper front ends at 382 + 10 = 392, begins at
// 202; the lower one from 8 to 198. They stand 18 before the case. The boxes, 12.7
// within 464, begin at 30.7 and are 438.6 wide; each front covers 180 of the
// opening, less 12 of height clearance 168, in the middle: 202 + 6 = 208 and 18 + 6
// = 24. Their bottoms lie 10 higher and reach 5 into 10 mm sides, less half of 1: from
// 30.7 + 10 - 5 + 0.5 = 36.2.
func TestWhereDrawersStand(t *testing.T) {
	d := Design{
		OutsideWidth: metric("500"), OutsideHeight: metric("400"), OutsideDepth: metric("300"),
		Carcass: Carcass{Material: word("carcass")},
		Drawer: Drawer{Front: word("overlay"), Overlay: metric("10"), Gap: metric("4"), HeightClearance: metric("12"),
			Material: word("box"), Thickness: metric("10"), BottomMaterial: word("back"), GrooveDepth: metric("5"),
			BottomClearance: metric("1"), Corner: word("box-joint")},
		Bays: []Bay{{Openings: []Opening{{Drawers: []DrawerBox{{Count: count(2)}}}}}},
	}
	from := workshop(stock.Millimeters)
	from.Materials["box"] = Material{Kind: stock.Board, Thicknesses: []stock.Length{metric("10").Value}}
	var drawers []string
	for _, line := range standing(derive(t, d, from), from.Ruler) {
		if strings.Contains(line, "drawer") || strings.Contains(line, "front") {
			drawers = append(drawers, line)
		}
	}
	wantLines(t, []string{
		"drawer side at 30.7, 0, 208",
		"drawer side at 459.3, 0, 208",
		"drawer side at 30.7, 0, 24",
		"drawer side at 459.3, 0, 24",
		"drawer front and back at 30.7, 0, 208",
		"drawer front and back at 30.7, 290, 208",
		"drawer front and back at 30.7, 0, 24",
		"drawer front and back at 30.7, 290, 24",
		"drawer bottom at 36.2, 5.5, 218",
		"drawer bottom at 36.2, 5.5, 34",
		"false front at 8, -18, 202",
		"false front at 8, -18, 8",
	}, drawers)
}

func standing(c *Case, r stock.Ruler) []string {
	var lines []string
	for _, s := range c.Solids {
		lines = append(lines, fmt.Sprintf("%s at %s, %s, %s", s.Role, r.Print(s.At[X]), r.Print(s.At[Y]), r.Print(s.At[Z])))
	}
	return lines
}
