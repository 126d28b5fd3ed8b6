package casework

import (
	"strings"
	"testing"

	"sawbill/stock"
	"sawbill/stock/casework/solid"
)

// Taken off, the sides are 300 - 5 = 295 wide and begin at 5; the strips, as long
// as the sides, the top and the bottom, begin at 0.
func TestEdgingTakenOffTheCarcass(t *testing.T) {
	d, from := edgedCase("carcass", "taken-off")
	c := derive(t, d, from)
	wantLines(t, []string{
		"2 side 720 x 295 x 18 carcass",
		"1 top 864 x 295 x 18 carcass",
		"1 bottom 864 x 295 x 18 carcass",
		"1 shelf 861 x 300 x 18 carcass",
		"2 side edging 720 x 18 x 5 oak",
		"2 top and bottom edging 864 x 18 x 5 oak",
	}, cut(c, from.Ruler))
	wantLines(t, []string{"side at 0, 5, 0", "side at 882, 5, 0", "side edging at 0, 0, 0", "side edging at 882, 0, 0"},
		only(standing(c, from.Ruler), "side"))
}

// A top over the sides and dados 5 deep: the sides are 720 - 18 + 5 = 707 long, their
// strips stop under the top, at 702. The bottom is 900 - 2 x 18 + 2 x 5 = 874 and the
// shelf, in dados 6 deep, 864 + 2 x 6 = 876; both strips lie between the sides, 864 from
// 18 on.
func TestEdgingStopsWhereItsPanelIsHoused(t *testing.T) {
	d, from := edgedCase("carcass", "taken-off")
	d.Carcass.Top, d.Carcass.Joint, d.Carcass.JointDepth = word("over"), word("dado"), metric("5")
	d.Shelf.Held, d.Shelf.JointDepth = word("dado"), metric("6")
	d.Edgings = append(d.Edgings, Edging{On: word("shelves"), Material: word("oak")})
	c := derive(t, d, from)
	wantLines(t, []string{
		"2 side 707 x 295 x 18 carcass",
		"1 top 900 x 295 x 18 carcass",
		"1 bottom 874 x 295 x 18 carcass",
		"1 shelf 876 x 295 x 18 carcass",
		"2 side edging 702 x 18 x 5 oak",
		"1 top edging 900 x 18 x 5 oak",
		"2 bottom and shelf edging 864 x 18 x 5 oak",
	}, cut(c, from.Ruler))
	wantLines(t, []string{
		"side edging at 0, 0, 0", "side edging at 882, 0, 0", "top edging at 0, 0, 702", "bottom edging at 18, 0, 0", "shelf edging at 18, 0, 351",
	}, only(standing(c, from.Ruler), "edging"))
}

// A bottom under the sides, in dados 5 deep: they begin at 18 - 5 = 13 and are 707
// long, their strips begin on the bottom, at 18. Bays are (864 - 18) / 2 = 423 and 684
// high. The partition, 6 deep in the bottom and the top, is 684 + 12 = 696; its strip
// 684. The divider, 7 deep in the side and the partition, is 423 + 14 = 437; its
// strip 423, from 18 on, at 18 + 333 = 351.
func TestEdgingOfWhatDivides(t *testing.T) {
	d, from := edgedCase("carcass", "taken-off")
	d.Carcass.Bottom, d.Carcass.Joint, d.Carcass.JointDepth = word("under"), word("dado"), metric("5")
	d.Partition.Joint, d.Partition.JointDepth = word("dado"), metric("6")
	d.Divider.Joint, d.Divider.JointDepth = word("dado"), metric("7")
	d.Bays = []Bay{{Openings: []Opening{{}, {}}}, {}}
	for _, on := range []string{"partitions", "dividers"} {
		d.Edgings = append(d.Edgings, Edging{On: word(on), Material: word("oak")})
	}
	c := derive(t, d, from)
	wantLines(t, []string{"2 side edging 702 x 18 x 5 oak", "1 top edging 864 x 18 x 5 oak", "1 bottom edging 900 x 18 x 5 oak",
		"1 partition edging 684 x 18 x 5 oak", "1 divider edging 423 x 18 x 5 oak"}, only(cut(c, from.Ruler), "edging"))
	wantLines(t, []string{"side edging at 0, 0, 18", "side edging at 882, 0, 18", "top edging at 18, 0, 702", "bottom edging at 0, 0, 0",
		"partition edging at 441, 0, 18", "divider edging at 18, 0, 351"}, only(standing(c, from.Ruler), "edging"))
}

// An overlay door stands before the case, up to 0. Strips of 5 added to shelves of
// another bay are not in its way, nor to one behind it that is set back by 5.
func TestEdgingAddedBesideDoors(t *testing.T) {
	d, from := edgedCase("shelves", "added")
	d.Door.Fit, d.Door.Overlay = word("overlay"), metric("5")
	d.Bays = append(d.Bays, Bay{Openings: []Opening{{Doors: count(1)}}})
	// (864 - 18) / 2 - 3 = 420 long, from 18 + 1.5.
	wantLines(t, []string{"shelf edging at 19.5, -5, 351"}, only(standing(derive(t, d, from), from.Ruler), "shelf edging"))
	d.Bays = []Bay{{Openings: []Opening{{Shelves: count(1), Doors: count(1)}}}}
	d.Shelf.SetBack = metric("5")
	wantLines(t, []string{"shelf edging at 19.5, 0, 351"}, only(standing(derive(t, d, from), from.Ruler), "shelf edging"))
}

// Added, the shelf keeps its 300 and the strip stands before it, at -5.
func TestEdgingAddedToShelves(t *testing.T) {
	d, from := edgedCase("shelves", "added")
	c := derive(t, d, from)
	wantLines(t, []string{"1 shelf 861 x 300 x 18 carcass", "1 shelf edging 861 x 18 x 5 oak"}, only(cut(c, from.Ruler), "shelf"))
	wantLines(t, []string{"shelf at 19.5, 0, 351", "shelf edging at 19.5, -5, 351"}, only(standing(c, from.Ruler), "shelf"))
}

// A door of 684 - 4 = 680 by 864 - 4 = 860: within strips of 5 it is 670 x 850.
// Two strips are 680 long. The end strips are 860 in miters and 860 - 10 = 850
// butted.
func TestEdgingAllRoundADoor(t *testing.T) {
	for corner, want := range map[string][]string{
		"butt": {
			"1 door 670 x 850 x 18 carcass", "2 door edging 680 x 18 x 5 oak", "2 door end edging 850 x 18 x 5 oak",
			"door at 25, 0, 25",
			"door edging at 20, 0, 20", "door edging at 875, 0, 20",
			"door end edging at 25, 0, 20", "door end edging at 25, 0, 695",
		},
		"miter": {
			"1 door 670 x 850 x 18 carcass", "2 door edging 680 x 18 x 5 oak", "2 door end edging 860 x 18 x 5 oak",
			"door at 25, 0, 25",
			"door edging at 20, 0, 20", "door edging at 875, 0, 20",
			"door end edging at 20, 0, 20", "door end edging at 20, 0, 695",
		},
	} {
		d, from := edgedCase("fronts", "taken-off")
		d.Bays[0].Openings[0] = Opening{Doors: count(1)}
		d.Edgings[0].Corner = word(corner)
		c := derive(t, d, from)
		wantLines(t, want, append(only(cut(c, from.Ruler), "door"), only(standing(c, from.Ruler), "door")...))
		for _, p := range c.Parts {
			if p.Material == "oak" && (p.Allowance.Miters == 2) != (corner == "miter") {
				t.Errorf("%s: %s has %d miters", corner, p.Name, p.Allowance.Miters)
			}
		}
	}
}

// A top of 900 x 300 over the sides, with a trim of 5 on three edges. Taken off,
// the top is 890 x 295; the front strip 900, the side strips 300 in miters and 295
// butted. Added, the front strip is 910, the side strips 305 in miters and 300
// butted.
func TestTrimRoundATop(t *testing.T) {
	for _, test := range []struct {
		fit, corner string
		want        []string
	}{
		{"taken-off", "miter", []string{"1 top 890 x 295 x 18 carcass", "1 top trim 900 x 18 x 5 oak", "2 top side trim 300 x 18 x 5 oak",
			"top at 5, 5, 702", "top trim at 0, 0, 702", "top side trim at 0, 0, 702", "top side trim at 895, 0, 702"}},
		{"taken-off", "butt", []string{"1 top 890 x 295 x 18 carcass", "1 top trim 900 x 18 x 5 oak", "2 top side trim 295 x 18 x 5 oak",
			"top at 5, 5, 702", "top trim at 0, 0, 702", "top side trim at 0, 5, 702", "top side trim at 895, 5, 702"}},
		{"added", "miter", []string{"1 top 900 x 300 x 18 carcass", "1 top trim 910 x 18 x 5 oak", "2 top side trim 305 x 18 x 5 oak",
			"top at 0, 0, 702", "top trim at -5, -5, 702", "top side trim at -5, -5, 702", "top side trim at 900, -5, 702"}},
		{"added", "butt", []string{"1 top 900 x 300 x 18 carcass", "1 top trim 910 x 18 x 5 oak", "2 top side trim 300 x 18 x 5 oak",
			"top at 0, 0, 702", "top trim at -5, -5, 702", "top side trim at -5, 0, 702", "top side trim at 900, 0, 702"}},
	} {
		d, from := edgedCase("top", test.fit)
		d.Carcass.Top = word("over")
		d.Edgings[0].Corner = word(test.corner)
		c := derive(t, d, from)
		t.Run(test.fit+" "+test.corner, func(t *testing.T) {
			wantLines(t, test.want, append(only(cut(c, from.Ruler), " top "), only(standing(c, from.Ruler), "top ")...))
		})
	}
}

// Edging taken off changes what the panels are cut to, and nothing that is clear.
func TestEdgingTakenOffKeepsTheOpenings(t *testing.T) {
	d, from := edgedCase("carcass", "taken-off")
	with := derive(t, d, from)
	d.Edgings = nil
	wantLines(t, derivations(derive(t, d, from), from.Ruler), derivations(with, from.Ruler))
}

// A partition in dados 6 deep, flush with the front of the carcass, reaches 8 into
// the strips that are glued on in front of top and bottom: its corners are notched, 8
// wide and 6 deep. Its own strip of 8 makes room; one of 5 leaves 8 - 5 = 3.
func TestHousedPanelsAreNotchedBehindEdging(t *testing.T) {
	from := workshop(stock.Millimeters)
	for own, want := range map[string][]string{
		"":  {"both ends: from the front edge 0; 8 wide, 6 deep", "notch of a partition behind edging 8 = 8 (edging)"},
		"5": {"both ends: from the front edge 0; 3 wide, 6 deep", "notch of a partition behind edging 3 = 8 (edging) - 5 (stands back)"},
		"8": nil,
	} {
		d := plain()
		d.Bays = make([]Bay, 2)
		d.Partition = Divider{Joint: word("dado"), JointDepth: metric("6")}
		d.Edgings = []Edging{{On: word("carcass"), Material: word("spruce"), Thickness: metric("8")}}
		if own != "" {
			d.Edgings = append(d.Edgings, Edging{On: word("partitions"), Material: word("spruce"), Thickness: metric(own)})
		}
		c := derive(t, d, from)
		wantLines(t, want, append(marked(c, from.Ruler, "partition", "notch"), only(derivations(c, from.Ruler), "notch")...))
		if said := c.Assembly[0].Text; strings.Contains(said, "Notch the front corners of partitions") != (want != nil) {
			t.Errorf("strips of %q: %s", own, said)
		}
		if got := partNamed(t, c, "partition").Length; got != metric("696").Value {
			t.Errorf("strips of %q: the partition is %s long", own, from.Ruler.Print(got))
		}
	}
}

// A divider on the right of the partition, set in it and the side 7 deep: with strips
// of 5 on partitions alone it is notched at its left end alone.
func TestOneEndIsNotched(t *testing.T) {
	d, from := edgedCase("partitions", "taken-off")
	d.Divider.Joint, d.Divider.JointDepth = word("dado"), metric("7")
	d.Bays = []Bay{{}, {Openings: []Opening{{}, {}}}}
	wantLines(t, []string{"left end: from the front edge 0; 5 wide, 7 deep"}, marked(derive(t, d, from), from.Ruler, "divider", "notch"))
}

// Nothing takes up the room of a strip but what is notched away.
func TestNothingReachesIntoEdging(t *testing.T) {
	seen := 0
	eachRandomCase(t, func(t *testing.T, _ Context, d Design, c *Case) {
		marks := make(map[[3]stock.Length]bool) // solid, width, depth
		for _, k := range c.Marks {
			for _, spot := range k.Spots {
				if k.What == "notch" {
					marks[[3]stock.Length{stock.Length(spot.Solid), k.Width, k.Depth}] = true
				}
			}
		}
		for _, strip := range c.Solids {
			for i, s := range c.Solids {
				if !strip.Role.Strip() || s.Role.Strip() || !strip.Overlaps(s) {
					continue
				}
				room, _ := solid.Shared(strip, s)
				seen++
				if s.Through == Y || room.Size[s.Through] != s.Size[s.Through] || room.At[Y] != s.At[Y] ||
					!marks[[3]stock.Length{stock.Length(i), room.Size[Y], room.Size[s.Along]}] {
					t.Errorf("a %s reaches into the %s: %v", s.Role, strip.Role, room.Size)
				}
			}
		}
	})
	if seen == 0 {
		t.Error("no case has a notch")
	}
}
