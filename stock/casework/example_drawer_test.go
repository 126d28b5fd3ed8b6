package casework

import (
	"fmt"
	"testing"

	"sawbill/stock"
)

// Three drawers with inset fronts of 18 in an opening 464 x 364 x 400: fronts
// share 364 - 4 x 2 = 356 less the top one's 98: 258 / 2 = 129. Fronts
// 464 - 2 x 2 = 460 wide. Boxes 464 - 2 x 12.7 = 438.6 wide (side-mount slides
// take 12.7 per side, common practice, no source), 400 - 18 - 10 = 372 deep,
// and 12.7 lower than their fronts: 85.3 and 116.3. Rabbets 4 deep: front and
// back 438.6 - 24 + 8 = 422.6. Bottom 438.6 - 24 + 12 - 1.5 = 425.1 by
// 372 - 24 + 12 - 1.5 = 358.5.
func TestInsetDrawersToBeMade(t *testing.T) {
	d := Design{
		OutsideWidth: metric("500"), OutsideHeight: metric("400"), InsideDepth: metric("400"),
		Carcass: Carcass{Material: word("carcass")},
		Drawer: Drawer{
			Front: word("inset"), GapBehind: metric("10"),
			Material: word("box"), Corner: word("rabbet"), CornerDepth: metric("4"),
			BottomMaterial: word("back"), GrooveDepth: metric("6"),
		},
		Bays: []Bay{{Openings: []Opening{{Drawers: []DrawerBox{{FrontHeight: metric("98")}, {Count: count(2)}}}}}},
	}
	from := workshop(stock.Millimeters)
	wantLines(t, []string{
		"2 side 400 x 400 x 18 carcass",
		"1 top 464 x 400 x 18 carcass",
		"1 bottom 464 x 400 x 18 carcass",
		"2 drawer side, drawer 1 372 x 85.3 x 12 box",
		"2 drawer front and back, drawer 1 422.6 x 85.3 x 12 box",
		"3 drawer bottom 425.1 x 358.5 x 6 back",
		"1 false front, drawer 1 460 x 98 x 18 carcass",
		"4 drawer side, drawers 2 and 3 372 x 116.3 x 12 box",
		"4 drawer front and back, drawers 2 and 3 422.6 x 116.3 x 12 box",
		"2 false front, drawers 2 and 3 460 x 129 x 18 carcass",
	}, cut(derive(t, d, from), from.Ruler))
}

// The boxes of TestInsetDrawersToBeMade, 438.6 wide and 372 deep of 12 mm, are
// 414.6 by 348 inside. 10 under the bottom and 6 of bottom leave 85.3 - 16 = 69.3 of
// the first and 116.3 - 16 = 100.3 of the others: 414.6 x 348 x 69.3 = 9 998 659.44
// mm³ and 414.6 x 348 x 100.3 = 14 471 364.24.
func TestStorageOfDrawers(t *testing.T) {
	d := Design{
		OutsideWidth: metric("500"), OutsideHeight: metric("400"), InsideDepth: metric("400"),
		Carcass: Carcass{Material: word("carcass")},
		Drawer: Drawer{
			Front: word("inset"), GapBehind: metric("10"),
			Material: word("box"), Corner: word("rabbet"), CornerDepth: metric("4"),
			BottomMaterial: word("back"), GrooveDepth: metric("6"),
		},
		Bays: []Bay{{Openings: []Opening{{Drawers: []DrawerBox{{FrontHeight: metric("98")}, {Count: count(2)}}}}}},
	}
	from := workshop(stock.Millimeters)
	var got []string
	for _, s := range derive(t, d, from).Storage {
		got = append(got, fmt.Sprintf("%s: %s x %s: %.2f", s.Drawer, from.Ruler.Size(s.Width, s.Depth), from.Ruler.Print(s.Height), s.CubicMillimeters()))
	}
	wantLines(t, []string{
		"drawer 1: 414.6 x 348 x 69.3: 9998659.44",
		"drawer 2: 414.6 x 348 x 100.3: 14471364.24",
		"drawer 3: 414.6 x 348 x 100.3: 14471364.24",
	}, got)
}

// Two overlay drawers, 7 5/8 fronts with 1/8 between and 1/2 over each edge:
// the opening is 2 x 7 5/8 + 1/8 - 2 x 1/2 = 14 3/8, outside 15 7/8. Inside
// 18 - 1 1/2 = 16 1/2: fronts 17 1/2, boxes 15 1/2 (opening less 1 in: common
// practice, no source). A box stands behind its front less the overlay and
// 1/2 of clearance: 7 5/8 - 1/2 - 1/2 = 6 5/8. Box-jointed, front and back are
// as wide as the box. Bottom 15 1/2 - 1 + 1/2 - 1/16 = 14 15/16 by
// 16 - 1 + 1/2 - 1/16 = 15 7/16. The box is 16 deep, so that is the inside.
func TestOverlayDrawersToBeMadeSettleTheCase(t *testing.T) {
	d := Design{
		OutsideWidth: imperial("18"),
		Carcass:      Carcass{Material: word("carcass")},
		Drawer: Drawer{
			Front: word("overlay"), Overlay: imperial("1/2"), BoxDepth: imperial("16"),
			Material: word("box"), Corner: word("box-joint"),
			BottomMaterial: word("back"), GrooveDepth: imperial("1/4"),
		},
		Bays: []Bay{{Openings: []Opening{{Drawers: []DrawerBox{{Count: count(2), FrontHeight: imperial("7 5/8")}}}}}},
	}
	from := workshop(stock.Inches)
	wantLines(t, []string{
		"2 side 15 7/8 x 16 x 3/4 carcass",
		"1 top 16 1/2 x 16 x 3/4 carcass",
		"1 bottom 16 1/2 x 16 x 3/4 carcass",
		"4 drawer side 16 x 6 5/8 x 1/2 box",
		"4 drawer front and back 15 1/2 x 6 5/8 x 1/2 box",
		"2 drawer bottom 14 15/16 x 15 7/16 x 1/4 back",
		"2 false front 17 1/2 x 7 5/8 x 3/4 carcass",
	}, cut(derive(t, d, from), from.Ruler))
}

// Without false fronts a box fills its share: 200 - 3 above - 3 between
// - 3 below = 191, 95.5 each. Butt corners: 464 - 25.4 - 2 x 12 = 414.6.
func TestDrawersWithoutFalseFronts(t *testing.T) {
	d := Design{
		OutsideWidth: metric("500"), InsideHeight: metric("200"), OutsideDepth: metric("300"),
		Carcass: Carcass{Material: word("carcass")},
		Drawer:  Drawer{Material: word("box"), BottomMaterial: word("back"), GrooveDepth: metric("6"), GapBehind: metric("20")},
		Bays:    []Bay{{Openings: []Opening{{Drawers: []DrawerBox{{Count: count(2)}}}}}},
	}
	from := workshop(stock.Millimeters)
	wantLines(t, []string{
		"2 side 236 x 300 x 18 carcass",
		"1 top 464 x 300 x 18 carcass",
		"1 bottom 464 x 300 x 18 carcass",
		"4 drawer side 280 x 95.5 x 12 box",
		"4 drawer front and back 414.6 x 95.5 x 12 box",
		"2 drawer bottom 425.1 x 266.5 x 6 back",
	}, cut(derive(t, d, from), from.Ruler))
}

// An overlay of 8 on both sides of a divider of 18 with a gap of 2 fits
// exactly: 2 x 8 + 2. In the middle of three bays the side does not count.
func TestOverlaysMayMeetInTheMiddle(t *testing.T) {
	d := plain()
	made(&d, "overlay", DrawerBox{})
	d.Drawer.Overlay, d.Drawer.Gap = metric("8"), metric("2")
	d.Bays[0].Openings = append(d.Bays[0].Openings, d.Bays[0].Openings[0])
	derive(t, d, workshop(stock.Millimeters))

	thick := plain()
	made(&thick, "overlay", DrawerBox{})
	thick.Drawer.Overlay = metric("10")
	thick.Carcass.Material = word("box") // 12 mm
	thick.Partition.Material = word("carcass")
	thick.Bays = []Bay{{}, thick.Bays[0], {}}
	derive(t, thick, workshop(stock.Millimeters))
}
