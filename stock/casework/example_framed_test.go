package casework

import (
	"testing"

	"sawbill/stock"
)

// Framed, 40 x 30 x 20 outside, frames 1 1/2 thick with stiles and rails
// 2 1/2 wide, panels 3/4 inset 1/4. Rails with tenons 40 - 5 + 2 x 1 = 37.
// The box lies inside the inset: 39 1/2 x 29 1/2, and between the frames:
// 20 - 3 = 17. Top between the sides 39 1/2 - 1 1/2 = 38. Clear 40 - 5 = 35
// wide, but the panels stand 2 1/2 - 1/4 - 3/4 = 1 1/2 back on each side:
// 38 between them. Shelf on pins 38 - 1/8 = 37 7/8. The back lies in rabbets
// of the back frame: 25 + 2 x 1/2 - 1/16 = 25 15/16 by 35 + 1 - 1/16 = 35 15/16.
func TestFramedCaseFromItsOutside(t *testing.T) {
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
	c := derive(t, d, from)
	wantLines(t, []string{
		"2 side 29 1/2 x 17 x 3/4 carcass",
		"1 top 38 x 17 x 3/4 carcass",
		"1 bottom 38 x 17 x 3/4 carcass",
		"4 stile 30 x 2 1/2 x 1 1/2 spruce",
		"4 rail 37 x 2 1/2 x 1 1/2 spruce",
		"1 back 25 15/16 x 35 15/16 x 1/4 back",
		"1 shelf 37 7/8 x 17 x 3/4 carcass",
	}, cut(c, from.Ruler))
	wantLines(t, []string{
		"outside width 40 = 40 (given)",
		"inside width 35 = 40 (outside width) - 2 x 2 1/2 (stile)",
		"bay 1 width 35 = 35 (inside width)",
		"bay 1 width between panels 38 = 35 (opening) + 2 x 1 1/2 (behind the stile)",
		"outside height 30 = 30 (given)",
		"inside height 25 = 30 (outside height) - 2 x 2 1/2 (rail)",
		"bay 1 opening 1 height 25 = 25 (inside height)",
		"outside depth 20 = 20 (given)",
		"inside depth 18 1/2 = 20 (outside depth) - 1 1/2 (back frame)",
	}, derivations(c, from.Ruler))
}

// Framed around two stacks of two finished drawers 500 x 150 x 400, side by
// side. A bay needs 500 + 2 x 12.7 = 525.4, both and a mid stile of 40
// 1090.8, with two stiles of 60 outside 1210.8. Heights 2 x 150 + 3 x 3 = 309,
// with two rails of 60 429. Depth 400 + 38 of the back frame = 438. Half-lapped
// members run through. The box is 438 - 76 = 362 deep and, inset 10,
// 1190.8 x 409; its top lies over the sides, its bottom between them: side
// 409 - 18 = 391, bottom 1190.8 - 36 = 1154.8. Partition 409 - 36 = 373 in
// butt joints. A back for each bay, in grooves of the back frame:
// 309 + 2 x 8 - 2 = 323 by 525.4 + 14 = 539.4.
func TestFramedCaseAroundMeasuredDrawers(t *testing.T) {
	stack := Bay{Openings: []Opening{{Drawers: []DrawerBox{
		{Count: count(2), Width: metric("500"), Height: metric("150"), Depth: metric("400")}}}}}
	d := Design{
		Construction: word("framed"),
		Carcass:      Carcass{Material: word("carcass"), Top: word("over")},
		Frame: Frame{Material: word("spruce"), StileWidth: metric("60"), RailWidth: metric("60"), MidStileWidth: metric("40"),
			Corner: word("half-lap"), Inset: metric("10")},
		Back: Back{Fit: word("groove"), Material: word("back"), Depth: metric("8"), SetIn: metric("12"), Clearance: metric("2")},
		Bays: []Bay{stack, stack},
	}
	from := workshop(stock.Millimeters)
	c := derive(t, d, from)
	wantLines(t, []string{
		"2 side 391 x 362 x 18 carcass",
		"1 top 1190.8 x 362 x 18 carcass",
		"1 bottom 1154.8 x 362 x 18 carcass",
		"4 stile 429 x 60 x 38 spruce",
		"4 rail 1210.8 x 60 x 38 spruce",
		"2 mid stile 429 x 40 x 38 spruce",
		"2 back 323 x 539.4 x 6 back",
		"1 partition 373 x 362 x 18 carcass",
	}, cut(c, from.Ruler))

	// Behind a side's stile 60 - 10 - 18 = 32, behind the mid stile
	// (40 - 18) / 2 = 11: the slides are packed out by as much.
	want := "In bay 1 the panels stand back behind the stiles: pack the slides out by 32 mm on the left and 11 mm on the right."
	if got := cautionOn(c, "slides behind a frame"); got != want {
		t.Errorf("caution = %q, want %q", got, want)
	}
}

// The corner decides which members grow beyond the clear opening. 400 x 300
// outside, members 50 wide, tenons 30: clear 300 x 200.
func TestFrameCornersDecideWhichMembersGrow(t *testing.T) {
	for _, test := range []struct {
		corner                string
		stile, rail, midStile string
	}{
		{"butt", "300", "300", "200"},
		{"half-lap", "300", "400", "300"},
		{"box-joint", "300", "400", "200"},
		{"mortise-and-tenon", "300", "360", "260"},
	} {
		t.Run(test.corner, func(t *testing.T) {
			frame := Frame{Material: word("spruce"), StileWidth: metric("50"), RailWidth: metric("50"), Corner: word(test.corner)}
			if test.corner == "mortise-and-tenon" {
				frame.TenonLength = metric("30")
			}
			d := Design{
				Construction: word("framed"), Frame: frame,
				OutsideWidth: metric("400"), OutsideHeight: metric("300"), OutsideDepth: metric("300"),
				Carcass: Carcass{Material: word("carcass")}, Bays: make([]Bay, 2),
			}
			c := derive(t, d, workshop(stock.Millimeters))
			for name, want := range map[string]string{"stile": test.stile, "rail": test.rail, "mid stile": test.midStile} {
				if got := partNamed(t, c, name).Length; got != metric(want).Value {
					t.Errorf("%s length = %d, want %s mm", name, got, want)
				}
			}
		})
	}
}

func partNamed(t *testing.T, c *Case, name string) stock.Part {
	t.Helper()
	for _, p := range c.Parts {
		if p.Name == name {
			return p
		}
	}
	t.Fatalf("no part %q in %v", name, cut(c, stock.Ruler{}))
	return stock.Part{}
}

func cautionOn(c *Case, subject string) string {
	for _, caution := range c.Cautions {
		if caution.Subject == subject {
			return caution.Text
		}
	}
	return ""
}
