package casework

import (
	"slices"
	"strings"
	"testing"

	"sawbill/stock"
)

// Members 50 wide: 720 - 100 = 620 inside, less a mid rail of 50 two openings of 285.
// The mid rail begins at 50 + 285 = 335; the divider, 18 thick, in the middle behind it,
// at 335 + 16 = 351 and behind the frame, 38. It lies between panels, 900 - 36 = 864,
// and is as deep as the box, 300 - 76 = 224. A door is 285 - 4 = 281 by 800 - 4 = 796.
// The joint adds to the mid rail, which has 800 between the stiles: tenons 2 x 30, laps
// 2 x 50.
func TestMidRailsPartOpeningsThatAreClosedFlush(t *testing.T) {
	from := workshop(stock.Millimeters)
	for corner, length := range map[string]string{"butt": "800", "box-joint": "800", "dowel": "800", "mortise-and-tenon": "860", "half-lap": "900"} {
		d := twoDoors()
		d.Frame.Corner = word(corner)
		if corner == "mortise-and-tenon" {
			d.Frame.TenonLength = metric("30")
		}
		c := derive(t, d, from)
		for _, part := range []string{"1 mid rail " + length + " x 50 x 38 spruce", "1 divider 864 x 224 x 18 carcass", "2 door 281 x 796 x 18 carcass"} {
			if got := cut(c, from.Ruler); !slices.Contains(got, part) {
				t.Errorf("%s: no %s in %q", corner, part, got)
			}
		}
		for _, at := range standing(c, from.Ruler) {
			if strings.HasPrefix(at, "divider") && at != "divider at 18, 38, 351" {
				t.Error(at)
			}
			if strings.HasPrefix(at, "mid rail") && !strings.HasSuffix(at, ", 0, 335") {
				t.Error(at)
			}
		}
	}
}

// Cheeks at a third of 38, shoulders 30 from both ends of 860; mortises 33 deep in the
// front stiles alone. Laps at 335, as wide as those of the rails.
func TestMarksOfMidRails(t *testing.T) {
	from := workshop(stock.Millimeters)
	d := twoDoors()
	d.Frame.Corner, d.Frame.TenonLength = word("mortise-and-tenon"), metric("30")
	c := derive(t, d, from)
	wantLines(t, []string{"both ends: from the left end 30, 830"}, marked(c, from.Ruler, "mid rail", "tenon shoulders"))
	wantLines(t, []string{
		"inner edge: from the bottom end ≈16.65, 670; from the front face ≈12.65, ≈25.3; ≈33.3 wide, 33 deep",
		"front left and front right, inner edge: from the bottom end 335; from the front face ≈12.65, ≈25.3; 50 wide, 33 deep",
	}, marked(c, from.Ruler, "stile", "mortise"))

	d.Frame = framed().Frame
	c = derive(t, d, from)
	wantLines(t, []string{"front left and front right, inner edge: from the bottom end 335; 50 wide, 0 deep"}, marked(c, from.Ruler, "stile", "mid rail line"))

	d.Frame.Corner = word("half-lap")
	c = derive(t, d, from)
	wantLines(t, []string{
		"front left and front right, back face: from the bottom end 0, 335, 670; 50 wide, 19 deep",
		"rear left and rear right, back face: from the bottom end 0, 670; 50 wide, 19 deep",
	}, marked(c, from.Ruler, "stile", "half lap"))
	wantLines(t, []string{"front face: from the left end 0, 850; 50 wide, 19 deep"}, marked(c, from.Ruler, "mid rail", "half lap"))
}

// Two bays of (800 - 50) / 2 = 375. A mid rail laps a stile, 50, and half of the mid
// stile, 25: 450 long, the right one beginning in the middle of the mid stile. On this the
// laps at 335 end there.
func TestMidRailsLapHalfOfAMidStile(t *testing.T) {
	from := workshop(stock.Millimeters)
	d := twoDoors()
	d.Frame.Corner = word("half-lap")
	d.Bays = append(d.Bays, d.Bays[0])
	c := derive(t, d, from)
	if p := partNamed(t, c, "mid rail"); p.Count != 2 || p.Length != metric("450").Value {
		t.Errorf("%d of %d", p.Count, p.Length)
	}
	var notes []string
	for _, k := range c.Marks {
		if c.Parts[k.Part].Name == "mid stile" {
			notes = append(notes, k.Note)
		}
	}
	wantLines(t, []string{"", "stopped 25 mm from the right edge", "stopped 25 mm from the left edge"}, notes)
	wantLines(t, []string{
		"bay 1, front face: from the left end 0; 50 wide, 19 deep",
		"bay 1, front face: from the left end 425; 25 wide, 19 deep",
		"bay 2, front face: from the left end 400; 50 wide, 19 deep",
		"bay 2, front face: from the left end 0; 25 wide, 19 deep",
	}, marked(c, from.Ruler, "mid rail", "half lap"))
}

// Overlay doors, or an open space above a door, need none; nor do doors in a panel case.
func TestMidRailsOnlyWhereTheyAreNeeded(t *testing.T) {
	from := workshop(stock.Millimeters)
	for name, change := range map[string]func(*Design){
		"overlay": func(d *Design) { d.Door.Fit, d.Door.Overlay = word("overlay"), metric("5") },
		"open":    func(d *Design) { d.Bays[0].Openings[0].Doors = count(0) },
		"panels":  func(d *Design) { d.Construction, d.Frame = Word{}, Frame{} },
		"none":    func(d *Design) { d.Frame.MidRailWidth = metric("0") },
	} {
		d := twoDoors()
		change(&d)
		c := derive(t, d, from)
		if slices.ContainsFunc(c.Parts, func(p stock.Part) bool { return strings.HasPrefix(p.Name, "mid rail") }) {
			t.Errorf("%s: a mid rail", name)
		}
		if told := cautionOn(c, "doors on nothing") != ""; told != (name == "none") {
			t.Errorf("%s: cautioned %t", name, told)
		}
	}
	d := twoDoors()
	d.Bays[0].Openings[1].Doors, d.Frame.MidRailWidth = count(0), metric("40")
	if p := partNamed(t, derive(t, d, from), "mid rail"); p.Width != metric("40").Value {
		t.Errorf("asked for 40, and is %d wide", p.Width)
	}
}
