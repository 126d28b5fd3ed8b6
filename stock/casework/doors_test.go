package casework

import (
	"testing"

	"sawbill/stock"
)

// 900 x 720 x 300 with two inset doors of 18: the opening is 864 x 684. Doors
// (864 - 3 x 2) / 2 = 429 wide and 684 - 2 x 2 = 680 high, from 18 + 2 = 20, the
// second from 20 + 429 + 2 = 451. The shelf lies behind them: 300 - 18 = 282 wide,
// 864 - 3 = 861 long, from 18 + 1.5, in the middle: 18 + (684 - 18) / 2 = 351.
func TestTwoInsetDoors(t *testing.T) {
	d := plain()
	d.Bays = []Bay{{Openings: []Opening{{Doors: count(2), Shelves: count(1)}}}}
	from := workshop(stock.Millimeters)
	c := derive(t, d, from)
	wantLines(t, []string{
		"2 side 720 x 300 x 18 carcass",
		"1 top 864 x 300 x 18 carcass",
		"1 bottom 864 x 300 x 18 carcass",
		"1 shelf 861 x 282 x 18 carcass",
		"2 door 680 x 429 x 18 carcass",
	}, cut(c, from.Ruler))
	wantLines(t, []string{"door at 20, 0, 20", "door at 451, 0, 20"}, only(standing(c, from.Ruler), "door"))
	wantLines(t, []string{"bay 1 opening 1 width of both doors 858 = 864 (bay 1) - 3 x 2 (gap)"}, only(derivations(c, from.Ruler), "door"))
	if got, want := c.Openings[0].Holds, "2 doors, 1 shelf"; got != want {
		t.Errorf("the opening holds %q, want %q", got, want)
	}
}

// Two bays side by side, 40 x 30 x 12 of 3/4, (40 - 3 x 3/4) / 2 = 18 7/8 wide and
// 28 1/2 high, with one overlay door each. They reach 5/16 over their edges and
// leave 1/8 on the partition: 2 x 5/16 + 1/8 = 3/4, all of it. Doors 18 7/8 + 5/8 =
// 19 1/2 wide, 28 1/2 + 5/8 = 29 1/8 high; from 3/4 - 5/16 = 7/16, and from 3/4 +
// 18 7/8 + 3/4 - 5/16 = 20 1/16.
func TestOverlayDoorsMeetOnAPartition(t *testing.T) {
	d := Design{
		OutsideWidth: imperial("40"), OutsideHeight: imperial("30"), OutsideDepth: imperial("12"),
		Carcass: Carcass{Material: word("carcass")},
		Door:    Door{Fit: word("overlay"), Overlay: imperial("5/16")},
		Bays:    []Bay{{Openings: []Opening{{Doors: count(1)}}}, {Openings: []Opening{{Doors: count(1)}}}},
	}
	from := workshop(stock.Inches)
	c := derive(t, d, from)
	wantLines(t, []string{"2 door 29 1/8 x 19 1/2 x 3/4 carcass"}, only(cut(c, from.Ruler), "door"))
	wantLines(t, []string{"door at 7/16, -3/4, 7/16", "door at 20 1/16, -3/4, 7/16"}, only(standing(c, from.Ruler), "door"))
}

// A frame of 38 is thicker than an inset door of 18: the shelf keeps its depth.
func TestInsetDoorWithinAFrameTakesNothingOfAShelf(t *testing.T) {
	d := framed()
	d.Bays = []Bay{{Openings: []Opening{{Shelves: count(1)}}}}
	from := workshop(stock.Millimeters)
	open := only(cut(derive(t, d, from), from.Ruler), "shelf")
	d.Bays[0].Openings[0].Doors = count(1)
	wantLines(t, open, only(cut(derive(t, d, from), from.Ruler), "shelf"))
}

// On a divider of 18 a front that covers 5 and a gap of 3 leave a door 10.
func TestDoorsAndFrontsShareADivider(t *testing.T) {
	d := plain()
	made(&d, "overlay", DrawerBox{})
	d.Drawer.Overlay = metric("5")
	d.Door = Door{Fit: word("overlay"), Overlay: metric("10")}
	d.Bays[0].Openings = append(d.Bays[0].Openings, Opening{Doors: count(2)})
	derive(t, d, workshop(stock.Millimeters))
}
