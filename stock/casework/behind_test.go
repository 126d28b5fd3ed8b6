package casework

import (
	"slices"
	"strings"
	"testing"

	"sawbill/stock"
)

// The opening is 864 x 684, the case 300 deep. Doors of 18 with gaps of 2, open at a
// right angle, stand 18 + 2 = 20 in the opening on either side. Fronts are 864 - 2 x
// 20 - 2 x 2 = 820 long and (684 - 3 x 2) / 2 = 339 high; they stand 18 + 30 = 48
// back, from 18 + 20 + 2 = 40.
//
// Boxes are 864 - 2 x 20 - 2 x 12.7 = 798.6 wide, from 18 + 20 + 12.7 = 50.7; 300 - 18
// - 30 - 18 = 234 deep, from 48 + 18 = 66, where slides begin; 339 - 12.7 = 326.3 high. Their
// ends are 798.6 - 2 x 12 = 774.6 long, bottoms 774.6 + 2 x 6 - 1.5 = 785.1 by 234 -
// 24 + 12 - 1.5 = 220.5. The longest slide would be 300 - 48 - 18 - 3 = 231: there is
// no usual one.
func TestDrawersBehindInsetDoors(t *testing.T) {
	from := workshop(stock.Millimeters)
	c := derive(t, behindTwoDoors(), from)
	wantLines(t, []string{
		"2 side 720 x 300 x 18 carcass",
		"1 top 864 x 300 x 18 carcass",
		"1 bottom 864 x 300 x 18 carcass",
		"2 door 680 x 429 x 18 carcass",
		"4 drawer side 234 x 326.3 x 12 box",
		"4 drawer front and back 774.6 x 326.3 x 12 box",
		"2 drawer bottom 785.1 x 220.5 x 6 back",
		"2 false front 820 x 339 x 18 carcass",
	}, cut(c, from.Ruler))
	wantLines(t, []string{"hinge clearance 20 = 18 (door) + 2 (gap)"}, only(derivations(c, from.Ruler), "hinge"))
	for _, p := range c.Parts {
		if p.Name == "drawer side" {
			want := "234 = 300 (inside depth) - 18 (inset door) - 30 (gap before) - 18 (inset front)"
			if got := p.How[0].Sum.Print(from.Ruler); got != want {
				t.Errorf("the length of a drawer side is %s, want %s", got, want)
			}
		}
	}
	wantLines(t, []string{"false front at 40, 48, 361", "false front at 40, 48, 20"}, only(standing(c, from.Ruler), "false front"))
	for _, k := range c.Marks {
		if k.What == "slide line" && (k.Across.From != (Face{Side: Front, Extent: Edge}) || len(k.Across.At) != 1 || k.Across.At[0] != metric("66").Value) {
			t.Errorf("slides begin at %v, want 66 from the front edge", k.Across)
		}
	}
	if got, want := c.Openings[0].Holds, "2 doors, 2 drawers"; got != want {
		t.Errorf("the opening holds %q, want %q", got, want)
	}
	want := "In bay 1 opening 1 open the doors to a right angle or further before any drawer. Pack the slides out by 20 mm on each side, " +
		"where an open door stands; try it with the door hung before the packing is fixed. Handles behind doors must stand out less than 30 mm."
	if got := cautionOn(c, "drawers behind doors"); got != want {
		t.Errorf("caution = %q, want %q", got, want)
	}
	told := false
	for _, s := range c.Assembly {
		told = told || s.Unit == "doors" && strings.Contains(s.Text, "run the drawers behind it past it")
	}
	if !told {
		t.Error("the assembly does not try the drawers behind their doors")
	}
}

// Outwards: three drawers of 14 x 4 x 12 behind one door of 3/4 that is hung on the
// right and reaches 3/8 over. Open it stands 3/4 - 3/8 = 3/8 in the opening, which is
// 14 + 2 x 1/2 + 3/8 = 15 3/8 wide; outside 15 3/8 + 2 x 3/4 = 16 7/8. The height is 3
// x 4 + 4 x 1/8 = 12 1/2, outside 14; the depth 12 + 1 1/4 = 13 1/4. The door is 12
// 1/2 + 3/4 = 13 1/4 by 15 3/8 + 3/4 = 16 1/8. Drawers stand from 3/4 + 1/2 = 1 1/4 on the
// left, 1 1/4 back, and from 3/4 + 1/8 = 7/8 upwards by 4 + 1/8.
func TestFinishedDrawersBehindAnOverlayDoor(t *testing.T) {
	d := Design{
		Carcass: Carcass{Material: word("carcass")},
		Door:    Door{Fit: word("overlay"), Overlay: imperial("3/8")},
		Bays: []Bay{{Openings: []Opening{{Doors: count(1), Hinged: word("right"), Drawers: []DrawerBox{
			{Count: count(3), Width: imperial("14"), Height: imperial("4"), Depth: imperial("12")}}}}}},
	}
	from := workshop(stock.Inches)
	c := derive(t, d, from)
	wantLines(t, []string{
		"outside width 16 7/8 = 15 3/8 (inside width) + 2 x 3/4 (side)",
		"inside width 15 3/8 = 14 (drawer) + 2 x 1/2 (side clearance) + 3/8 (hinge clearance)",
		"bay 1 width 15 3/8 = 14 (drawer) + 2 x 1/2 (side clearance) + 3/8 (hinge clearance)",
	}, only(derivations(c, from.Ruler), "width"))
	wantLines(t, []string{
		"outside depth 13 1/4 = 13 1/4 (inside depth)",
		"inside depth 13 1/4 = 12 (drawer) + 1 1/4 (gap before)",
	}, only(derivations(c, from.Ruler), "depth"))
	wantLines(t, []string{"1 door 13 1/4 x 16 1/8 x 3/4 carcass"}, only(cut(c, from.Ruler), "door"))
	wantLines(t, []string{"drawer at 1 1/4, 1 1/4, 9 1/8", "drawer at 1 1/4, 1 1/4, 5", "drawer at 1 1/4, 1 1/4, 7/8"},
		only(standing(c, from.Ruler), "drawer"))
	d.Bays[0].Openings[0].Hinged = word("left")
	wantLines(t, []string{"drawer at 1 5/8, 1 1/4, 9 1/8", "drawer at 1 5/8, 1 1/4, 5", "drawer at 1 5/8, 1 1/4, 7/8"},
		only(standing(derive(t, d, from), from.Ruler), "drawer"))
}

// Hinges that swing the doors clear, and drawers without handles, give the room
// back: boxes 864 - 25.4 = 838.6 wide and 300 - 18 - 4 - 18 = 260 deep.
func TestWhatADoorTakesCanBeGiven(t *testing.T) {
	d := behindTwoDoors()
	d.Drawer.HingeClearance, d.Drawer.GapBefore = metric("0"), metric("4")
	c := derive(t, d, workshop(stock.Millimeters))
	wantLines(t, []string{
		"4 drawer side 260 x 326.3 x 12 box",
		"4 drawer front and back 814.6 x 326.3 x 12 box",
		"2 drawer bottom 825.1 x 246.5 x 6 back",
	}, only(cut(c, stock.Ruler{}), "drawer"))
}

// No front reaches over an opening behind its doors: those drawers show their boxes.
// One above, open to the front, has its front.
func TestOverlayFrontsStayOffBehindDoors(t *testing.T) {
	d := behindTwoDoors()
	d.Drawer.Front, d.Drawer.Overlay = word("overlay"), metric("7")
	d.Bays[0].Openings = append([]Opening{{Height: metric("120"), Drawers: []DrawerBox{{}}}}, d.Bays[0].Openings...)
	c := derive(t, d, workshop(stock.Millimeters))
	wantLines(t, []string{"1 false front 878 x 134 x 18 carcass"}, only(cut(c, stock.Ruler{}), "false front"))
	if got := cautionOn(c, "drawers behind doors"); !strings.Contains(got, "these drawers have none but their box's own") {
		t.Errorf("caution = %q", got)
	}
}

// Whatever is behind doors passes them when they stand open at a right angle about
// their front corner, and is clear of them when they are closed.
func TestDrawersPassOpenDoors(t *testing.T) {
	passed := 0
	eachRandomCase(t, func(t *testing.T, from Context, d Design, c *Case) {
		if slices.ContainsFunc(d.Edgings, func(e Edging) bool { return e.On.Value == "fronts" }) {
			return // a door is then smaller by its strips
		}
		for _, o := range c.Openings {
			design := d.Bays[o.Bay-1].Openings[o.Number-1]
			if design.Doors.Value == 0 {
				continue
			}
			var doors, drawers []Solid
			for _, s := range c.Solids {
				middle := [2]stock.Length{s.At[X] + s.Size[X]/2 - o.At[X], s.At[Z] + s.Size[Z]/2 - o.At[Z]}
				switch {
				case middle[0] < 0 || middle[0] > o.Width || middle[1] < 0 || middle[1] > o.Height:
				case s.Role == "door":
					doors = append(doors, s)
				case s.Drawer > 0:
					drawers = append(drawers, s)
				}
			}
			if len(doors) != design.Doors.Value {
				t.Fatalf("bay %d opening %d has %d doors, want %d", o.Bay, o.Number, len(doors), design.Doors.Value)
			}
			for i, door := range doors {
				from, to := door.At[X], door.At[X]+door.Size[Y] // hinged on its left, open
				if i == 1 || len(doors) == 1 && design.Hinged.Value == "right" {
					from, to = door.End()[X]-door.Size[Y], door.End()[X]
				}
				for _, s := range drawers {
					passed++
					if s.At[X] < to && s.End()[X] > from {
						t.Errorf("a %s from %d to %d meets an open door from %d to %d", s.Role, s.At[X], s.End()[X], from, to)
					}
					if s.At[Y] < door.End()[Y] {
						t.Errorf("a %s begins at %d, before the door ends at %d", s.Role, s.At[Y], door.End()[Y])
					}
				}
			}
		}
	})
	if passed < 100 {
		t.Errorf("only %d pieces of drawers stood behind doors", passed)
	}
}
