package casework

import (
	"fmt"
	"testing"

	"sawbill/stock"
)

// The examples of this file and the next are worked by hand; the comment above
// each is the reckoning. How joints change a part's length (shelf in dados:
// inside + 2 depths; back in rabbets: opening + 2 rabbets - 1/16 in; rail with
// tenons: shoulder length + 2 tenons) is common practice, no source.

// Inside 900 - 2 x 18 = 864 wide, 720 - 2 x 18 = 684 high, 300 - 6 = 294 deep.
// Top and bottom 864 + 2 x 6 = 876. Back 684 + 2 x 6 - 1.5 = 694.5 by
// 864 + 2 x 6 - 1.5 = 874.5. Shelves on pins 864 - 3 = 861.
func TestRabbetedCaseFromItsOutside(t *testing.T) {
	d := Design{
		OutsideWidth: metric("900"), OutsideHeight: metric("720"), OutsideDepth: metric("300"),
		Carcass: Carcass{Material: word("carcass"), Joint: word("rabbet"), JointDepth: metric("6")},
		Back:    Back{Fit: word("rabbet"), Material: word("back"), Depth: metric("6")},
		Bays:    []Bay{{Openings: []Opening{{Shelves: count(2)}}}},
	}
	from := workshop(stock.Millimeters)
	c := derive(t, d, from)
	wantLines(t, []string{
		"2 side 720 x 300 x 18 carcass",
		"1 top 876 x 300 x 18 carcass",
		"1 bottom 876 x 300 x 18 carcass",
		"1 back 694.5 x 874.5 x 6 back",
		"2 shelf 861 x 294 x 18 carcass",
	}, cut(c, from.Ruler))
	wantLines(t, []string{
		"outside width 900 = 900 (given)",
		"inside width 864 = 900 (outside width) - 2 x 18 (side)",
		"bay 1 width 864 = 864 (inside width)",
		"outside height 720 = 720 (given)",
		"inside height 684 = 720 (outside height) - 18 (top) - 18 (bottom)",
		"bay 1 opening 1 height 684 = 684 (inside height)",
		"outside depth 300 = 300 (given)",
		"inside depth 294 = 300 (outside depth) - 6 (back)",
	}, derivations(c, from.Ruler))
}

// A base of the usual 34 1/2 by 24 in, 36 in wide. The sides stand under the
// top: 34 1/2 - 3/4 + 1/4 = 34. The bottom stands between them:
// 36 - 1 1/2 + 2 x 1/4 = 35. Inside 34 1/2 wide, 33 high and
// 24 - 1/4 - 1/2 = 23 1/4 deep. Back 33 + 1/2 - 1/16 = 33 7/16 by
// 34 1/2 + 1/2 - 1/16 = 34 15/16. Shelf in dados 34 1/2 + 2 x 3/8 = 35 1/4.
func TestTopOverSidesInInches(t *testing.T) {
	d := Design{
		OutsideWidth: imperial("36"), OutsideHeight: imperial("34 1/2"), OutsideDepth: imperial("24"),
		Carcass: Carcass{Material: word("carcass"), Top: word("over"), Joint: word("rabbet"), JointDepth: imperial("1/4")},
		Back:    Back{Fit: word("groove"), Material: word("back"), Depth: imperial("1/4"), SetIn: imperial("1/2")},
		Shelf:   Shelf{Held: word("dado"), JointDepth: imperial("3/8")},
		Bays:    []Bay{{Openings: []Opening{{Shelves: count(1)}}}},
	}
	from := workshop(stock.Inches)
	wantLines(t, []string{
		"2 side 34 x 24 x 3/4 carcass",
		"1 top 36 x 24 x 3/4 carcass",
		"1 bottom 35 x 24 x 3/4 carcass",
		"1 back 33 7/16 x 34 15/16 x 1/4 back",
		"1 shelf 35 1/4 x 23 1/4 x 3/4 carcass",
	}, cut(derive(t, d, from), from.Ruler))
}

// Three finished drawers 855.6 x 180 x 500, slides of 12.7 per side (1/2 in,
// common practice, no source). Bay 855.6 + 2 x 12.7 = 881, outside 917. Height
// 3 x 180 + 3 above + 2 x 3 between + 3 below = 552, outside 588. Depth
// 500 + 10 = 510, with the back on it 516.
func TestPanelCaseAroundMeasuredDrawers(t *testing.T) {
	d := Design{
		Carcass: Carcass{Material: word("carcass")},
		Back:    Back{Fit: word("applied"), Material: word("back")},
		Drawer:  Drawer{GapBehind: metric("10")},
		Bays: []Bay{{Openings: []Opening{{Drawers: []DrawerBox{
			{Count: count(3), Width: metric("855.6"), Height: metric("180"), Depth: metric("500")},
		}}}}},
	}
	from := workshop(stock.Millimeters)
	c := derive(t, d, from)
	wantLines(t, []string{
		"2 side 588 x 510 x 18 carcass",
		"1 top 881 x 510 x 18 carcass",
		"1 bottom 881 x 510 x 18 carcass",
		"1 back 588 x 917 x 6 back",
	}, cut(c, from.Ruler))
	wantLines(t, []string{
		"outside width 917 = 881 (inside width) + 2 x 18 (side)",
		"inside width 881 = 855.6 (drawer) + 2 x 12.7 (side clearance)",
		"bay 1 width 881 = 855.6 (drawer) + 2 x 12.7 (side clearance)",
		"outside height 588 = 552 (inside height) + 18 (top) + 18 (bottom)",
		"inside height 552 = 3 x 180 (drawer) + 3 (gap above) + 2 x 3 (gap) + 3 (gap below)",
		"bay 1 opening 1 height 552 = 3 x 180 (drawer) + 3 (gap above) + 2 x 3 (gap) + 3 (gap below)",
		"outside depth 516 = 510 (inside depth) + 6 (back)",
		"inside depth 510 = 500 (drawer) + 10 (gap behind)",
	}, derivations(c, from.Ruler))
}

// Mixed: 1500 outside, 1464 inside. Bay 2 needs 500 + 25.4 = 525.4 for its
// drawers; bays 1 and 3 share 1464 - 2 x 18 - 525.4 = 902.6, 451.3 each. The
// drawers are 2 x 200 + 3 x 3 = 409 high, so the opening over them has
// 800 - 36 - 409 - 18 = 337. Partitions 764 + 2 x 6 = 776, the divider
// 525.4 + 2 x 6 = 537.4, shelves 451.3 - 3 = 448.3.
func TestBaysShareWhatDrawersLeave(t *testing.T) {
	dado := Divider{Joint: word("dado"), JointDepth: metric("6")}
	d := Design{
		OutsideWidth: metric("1500"), OutsideHeight: metric("800"), OutsideDepth: metric("450"),
		Carcass: Carcass{Material: word("carcass")}, Partition: dado, Divider: dado,
		Bays: []Bay{
			{Openings: []Opening{{Shelves: count(2)}}},
			{Openings: []Opening{{}, {Drawers: []DrawerBox{
				{Count: count(2), Width: metric("500"), Height: metric("200"), Depth: metric("400")}}}}},
			{Openings: []Opening{{Shelves: count(1)}}},
		},
	}
	from := workshop(stock.Millimeters)
	c := derive(t, d, from)
	wantLines(t, []string{
		"2 side 800 x 450 x 18 carcass",
		"1 top 1464 x 450 x 18 carcass",
		"1 bottom 1464 x 450 x 18 carcass",
		"2 partition 776 x 450 x 18 carcass",
		"3 shelf 448.3 x 450 x 18 carcass",
		"1 divider 537.4 x 450 x 18 carcass",
	}, cut(c, from.Ruler))
	wantLines(t, []string{"bay 1 opening 1 764", "bay 2 opening 1 337", "bay 2 opening 2 409", "bay 3 opening 1 764"}, heights(c, from.Ruler))
}

func heights(c *Case, r stock.Ruler) []string {
	var lines []string
	for _, o := range c.Openings {
		lines = append(lines, fmt.Sprintf("bay %d opening %d %s", o.Bay, o.Number, r.Print(o.Height)))
	}
	return lines
}
