package casework

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"sawbill/stock"
	"sawbill/stock/casework/design"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
)

// marked writes the marks of a part that are called what, each in one line:
// "inner face: from the bottom end 351; 18 wide, 6 deep".
func marked(c *Case, r stock.Ruler, part, what string) []string {
	all := func(at []stock.Length) string {
		said := make([]string, len(at))
		for i, l := range at {
			said[i] = r.Print(l)
		}
		return strings.Join(said, ", ")
	}
	var lines []string
	for _, k := range c.Marks {
		if c.Parts[k.Part].Name != part || k.What != what {
			continue
		}
		line := fmt.Sprintf("%s: from the %s %s", k.On, k.From, all(k.At))
		if !k.Across.From.None() {
			line += fmt.Sprintf("; from the %s %s", k.Across.From, all(k.Across.At))
		}
		switch {
		case k.Diameter != 0 && k.Depth == 0:
			line += fmt.Sprintf("; %s in diameter, through", r.Print(k.Diameter))
		case k.Diameter != 0:
			line += fmt.Sprintf("; %s in diameter, %s deep", r.Print(k.Diameter), r.Print(k.Depth))
		case k.Width != 0 || k.Depth != 0:
			line += fmt.Sprintf("; %s wide, %s deep", r.Print(k.Width), r.Print(k.Depth))
		}
		if k.Spacers != nil {
			line += "; spacers " + all(k.Spacers)
		}
		lines = append(lines, line)
	}
	return lines
}

// The case of TestWhereDrawersStand: boxes 168 high from 24 and from 208 up, in
// a case whose sides begin at 0 and whose bottom is 18 thick. Spacers 24 - 18 = 6
// and 208 - 18 = 190. With a slide line 84 up, in the middle of the boxes, lines at
// 108 and 292, the spacers 108 - 18 = 90 and 292 - 18 = 274. On sides that stand on the bottom,
// every line is 18 less.
func TestSlideLines(t *testing.T) {
	d := Design{
		OutsideWidth: metric("500"), OutsideHeight: metric("400"), OutsideDepth: metric("300"),
		Carcass: Carcass{Material: word("carcass")},
		Drawer: Drawer{Front: word("overlay"), Overlay: metric("10"), Gap: metric("4"), HeightClearance: metric("12"),
			Material: word("box"), BottomMaterial: word("back"), GrooveDepth: metric("5")},
		Bays: []Bay{{Openings: []Opening{{Drawers: []DrawerBox{{Count: count(2)}}}}}},
	}
	from := workshop(stock.Millimeters)
	wantLines(t, []string{"inner face: from the bottom end 24, 208; spacers 6, 190"},
		marked(derive(t, d, from), from.Ruler, "side", "slide line"))
	d.Drawer.SlideLine = metric("84")
	wantLines(t, []string{"inner face: from the bottom end 108, 292; spacers 90, 274"},
		marked(derive(t, d, from), from.Ruler, "side", "slide line"))
	wantLines(t, []string{"outer face: from the lower edge 84"}, marked(derive(t, d, from), from.Ruler, "drawer side", "slide line"))
	d.Carcass.Bottom = word("under")
	wantLines(t, []string{"inner face: from the bottom end 90, 274; spacers 90, 274"},
		marked(derive(t, d, from), from.Ruler, "side", "slide line"))
}

// Finished drawers 18, 17 7/8, 9 and 18 in deep, from the top, in a case that is deep
// enough: each has a slide of its own. Alike ones are told once.
func TestEveryDrawerHasItsOwnSlide(t *testing.T) {
	box := func(depth string) DrawerBox {
		return DrawerBox{Width: imperial("16"), Height: imperial("4"), Depth: imperial(depth)}
	}
	d := Design{OutsideDepth: imperial("19 1/8"), Carcass: Carcass{Material: word("carcass")},
		Bays: []Bay{{Openings: []Opening{{Drawers: []DrawerBox{box("18"), box("17 7/8"), box("9"), box("18")}}}}}}
	note := func() string {
		c := derive(t, d, workshop(stock.Inches))
		return c.Marks[slices.IndexFunc(c.Marks, func(k Mark) bool { return k.What == "slide line" })].Note
	}
	const start = "bay 1 opening 1, spacers stand on the bottom and reach to the line, longest usual slide"
	if got, want := note(), start+"s, from the lowest drawer, 18 in, none so short, 16 in, 18 in"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	d.Bays[0].Openings[0].Drawers = []DrawerBox{box("18"), box("18")}
	if got, want := note(), start+" 18 in"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}

// 900 x 720 x 300 of 18: openings of (684 - 18) / 2 = 333, so the divider's dado
// begins at 18 + 333 = 351 up the side. Bays of (864 - 18) / 2 = 423; the bottom
// begins 5 within the side, so the partition's dado at 5 + 423 = 428. The partition
// begins 6 within the bottom: its dado at 6 + 333 = 339. Corner dados are as wide as
// top and bottom, at 0 and at 720 - 18 = 702. The back's groove lies 10 from behind.
// A top over the sides is 900 long: it has the corner dados, at 0 and at 900 - 18 =
// 882, and the partition's at 18 + 423 = 441.
func TestDadosAndGrooves(t *testing.T) {
	d := plain()
	d.Carcass.Joint, d.Carcass.JointDepth = word("dado"), metric("5")
	d.Partition.Joint, d.Partition.JointDepth = word("dado"), metric("6")
	d.Divider.Joint, d.Divider.JointDepth = word("dado"), metric("7")
	d.Back = Back{Fit: word("groove"), Material: word("back"), Depth: metric("8"), SetIn: metric("10")}
	d.Bays = []Bay{{Openings: []Opening{{}, {}}}, {}}
	from := workshop(stock.Millimeters)
	c := derive(t, d, from)
	wantLines(t, []string{
		"inner face: from the bottom end 0, 702; 18 wide, 5 deep",
		"left, inner face: from the bottom end 351; 18 wide, 7 deep",
	}, marked(c, from.Ruler, "side", "dado"))
	wantLines(t, []string{"inner face: from the back edge 10; 6 wide, 8 deep"}, marked(c, from.Ruler, "side", "groove"))
	wantLines(t, []string{"inner face: from the left end 428; 18 wide, 6 deep"}, marked(c, from.Ruler, "bottom", "dado"))
	wantLines(t, []string{"left face: from the bottom end 339; 18 wide, 7 deep"}, marked(c, from.Ruler, "partition", "dado"))

	d.Carcass.Top = word("over")
	wantLines(t, []string{"inner face: from the left end 0, 882; 18 wide, 5 deep", "inner face: from the left end 441; 18 wide, 6 deep"},
		marked(derive(t, d, from), from.Ruler, "top", "dado"))

	d.Back.SetIn = Length{} // 6 by default
	wantLines(t, []string{"inner face: from the back edge 6; 6 wide, 8 deep"}, marked(derive(t, d, from), from.Ruler, "side", "groove"))

	d.Carcass.Top, d.Divider = Word{}, Divider{}
	wantLines(t, []string{"left, inner face: from the bottom end 351; 18 wide, 0 deep"},
		marked(derive(t, d, from), from.Ruler, "side", "divider line"))
}

// Rows lie 37 within the edges of a shelf 300 deep, with a strip of 5 or without:
// 37 and 300 - 37 = 263 from the front of sides 300 wide. A strip that is added begins
// at -5: its row at 32. Sides that lose 5 to a strip begin at 5: 37 - 5 = 32 and 263 -
// 5 = 258.
func TestPinsAreMeasuredFromTheEdgedShelf(t *testing.T) {
	for _, test := range []struct{ on, fit, want string }{
		{"shelves", "taken-off", "37, 263"}, {"shelves", "added", "32, 263"}, {"carcass", "taken-off", "32, 258"},
	} {
		d, from := edgedCase(test.on, test.fit)
		wantLines(t, []string{"inner face: from the bottom end 287, 319, 351, 383, 415; from the front edge " + test.want + "; 5 in diameter, 10 deep"},
			marked(derive(t, d, from), from.Ruler, "side", "shelf pins"))
	}
}

// 900 x 720 x 300 of 18: a back that reaches 8 into it begins at 18 - 8 = 10, and ends
// as far from the other side. A bottom in dados 5 deep begins at 13: its groove runs
// through, that of sides 720 long does not. A top over the sides takes all of the back
// above them; its own groove ends with the back. A drawer's bottom reaches 6 into
// sides of 12 and stops 12 - 6 from their ends; fronts do the same where fingers take
// them to the outside, and are all grooved where they stand between the sides.
func TestGroovesAreStopped(t *testing.T) {
	d := plain()
	d.Carcass.Joint, d.Carcass.JointDepth = word("dado"), metric("5")
	d.Back = Back{Fit: word("groove"), Material: word("back"), Depth: metric("8"), SetIn: metric("10")}
	drawers := plain()
	made(&drawers, "inset", DrawerBox{})
	over, fingers := d, drawers
	over.Carcass.Top = word("over")
	fingers.Drawer.Corner = word("box-joint")
	for _, test := range []struct {
		d          Design
		part, want string
	}{
		{d, "side", "stopped 10 mm from the bottom end and 10 mm from the top end"},
		{d, "bottom", ""},
		{over, "side", "stopped 10 mm from the bottom end"},
		{over, "top", "stopped 10 mm from the left end and 10 mm from the right end"},
		{drawers, "drawer side", "stopped 6 mm from the front end and 6 mm from the back end"},
		{drawers, "drawer front and back", ""},
		{fingers, "drawer side", "stopped 6 mm from the front end and 6 mm from the back end"},
		{fingers, "drawer front and back", "stopped 6 mm from the left end and 6 mm from the right end"},
	} {
		c := derive(t, test.d, workshop(stock.Millimeters))
		var notes []string
		for _, k := range c.Marks {
			if k.What == "groove" && c.Parts[k.Part].Name == test.part {
				notes = append(notes, k.Note)
			}
		}
		if len(notes) != 1 || notes[0] != test.want {
			t.Errorf("the grooves of a %s are %q, want %q", test.part, notes, test.want)
		}
	}
}

// A top over the sides loses 8 to a trim at both ends. A back that reaches 9 into sides of
// 18 leaves 9 - 8 = 1 of it there, which would break: it is cut through. One that reaches 6
// leaves 12 - 8 = 4.
func TestRabbetsRunOutUnderATrim(t *testing.T) {
	for depth, want := range map[string]string{
		"9": "cut right through the left end and right end, where the trim covers it",
		"6": "stopped 4 mm from the left end and 4 mm from the right end",
	} {
		d := plain()
		d.Carcass.Top = word("over")
		d.Back = Back{Fit: word("rabbet"), Material: word("back"), Depth: metric(depth)}
		d.Edgings = []Edging{{On: word("top"), Material: word("spruce"), Thickness: metric("8"), Corner: word("miter")}}
		c := derive(t, d, workshop(stock.Millimeters))
		for _, k := range c.Marks {
			if k.What == "rabbet" && c.Parts[k.Part].Name == "top" && k.Note != want {
				t.Errorf("%q, want %q", k.Note, want)
			}
		}
	}
}

// Two backs in one rail: its rabbet runs from where the first begins to where the
// last ends. Stiles and mid stiles are 50 wide, backs reach 10 into them: rails with
// butted corners lie between the stiles and are rabbeted all along.
func TestARabbetForTwoBacksRunsOn(t *testing.T) {
	d := framed()
	d.Back = Back{Fit: word("rabbet"), Material: word("back"), Depth: metric("10")}
	d.Bays = []Bay{{}, {}}
	c := derive(t, d, workshop(stock.Millimeters))
	var notes []string
	for _, k := range c.Marks {
		if k.What == "rabbet" && c.Parts[k.Part].Name == "rail" {
			notes = append(notes, k.Note)
		}
	}
	if len(notes) != 1 || notes[0] != "" {
		t.Errorf("the rabbets of the rails are %q", notes)
	}
}

// A shelf that is set back does not fill a dado up to the front edge.
func TestDadosOfShelvesSetBackAreStopped(t *testing.T) {
	d := plain()
	d.Shelf = Shelf{Held: word("dado"), JointDepth: metric("6"), SetBack: metric("15")}
	d.Bays = []Bay{{Openings: []Opening{{Shelves: count(1)}}}}
	for _, k := range derive(t, d, workshop(stock.Millimeters)).Marks {
		if k.What == "dado" && k.Note != "stopped 15 mm behind the front edge" {
			t.Errorf("the note of a dado is %q", k.Note)
		}
	}
}

// Wherever the one mate has a finger, the other has a gap; together they fill
// the width.
func TestFingersOfMatesComplementEachOther(t *testing.T) {
	for _, given := range []Length{{}, metric("7.3")} {
		d := plain()
		made(&d, "none", DrawerBox{Count: count(3)})
		d.Drawer.Corner, d.Drawer.FingerWidth = word("box-joint"), given
		c := derive(t, d, workshop(stock.Millimeters))
		mates := make(map[string]Mark)
		for _, k := range c.Marks {
			if k.What == "box-joint fingers" {
				mates[c.Parts[k.Part].Name] = k
			}
		}
		side, front := mates["drawer side"], mates["drawer front and back"]
		wide := partNamed(t, c, "drawer side").Width
		if !slices.Equal(side.At, front.At) || len(side.At) < 2 || side.From != front.From {
			t.Fatalf("edges %v and %v", side.At, front.At)
		}
		if !strings.HasPrefix(side.Note, "starts with a finger") || !strings.HasPrefix(front.Note, "starts with a gap") {
			t.Errorf("both begin alike: %q, %q", side.Note, front.Note)
		}
		var fingers [2]stock.Length
		from := stock.Length(0)
		for i, to := range append(slices.Clone(side.At), wide) {
			if to <= from {
				t.Fatalf("edges fall: %v", side.At)
			}
			fingers[i%2] += to - from
			from = to
		}
		if fingers[0]+fingers[1] != wide {
			t.Errorf("fingers of %d and %d do not fill %d", fingers[0], fingers[1], wide)
		}
	}
}

// The framed case of TestWhereTheFramedCaseStands, 30 high: members 2 1/2 wide and
// 1 1/2 thick. Cheeks at a third and two thirds: 1/2 and 1. Rails 40 - 2 x 2 1/2 +
// 2 x 1 = 37 long, shoulders at 1 and 36. Tenons are cut back 2 1/2 / 3 = 5/6 (≈53/64)
// from the outer edge and 1 2/3 (1 21/32) wide; mortises 1 + 1/8 deep, from 5/6 and
// from 30 - 2 1/2 = 27 1/2.
func TestTenonsAndMortises(t *testing.T) {
	d := Design{
		Construction: word("framed"),
		OutsideWidth: imperial("40"), OutsideHeight: imperial("30"), OutsideDepth: imperial("20"),
		Carcass: Carcass{Material: word("carcass")},
		Frame: Frame{Material: word("spruce"), StileWidth: imperial("2 1/2"), RailWidth: imperial("2 1/2"),
			Corner: word("mortise-and-tenon"), TenonLength: imperial("1"), Inset: imperial("1/4")},
	}
	from := workshop(stock.Inches)
	c := derive(t, d, from)
	for _, test := range []struct {
		part, what string
		want       []string
	}{
		{"rail", "tenon shoulders", []string{"both ends: from the left end 1, 36"}},
		{"rail", "tenon cheeks", []string{"both ends: from the front face 1/2, 1"}},
		{"rail", "tenon edges", []string{
			"front lower and rear lower, both ends: from the lower edge ≈53/64, 2 1/2",
			"front upper and rear upper, both ends: from the lower edge 0, ≈1 21/32"}},
		{"stile", "mortise", []string{
			"inner edge: from the bottom end ≈53/64, 27 1/2; from the front face 1/2, 1; ≈1 21/32 wide, 1 1/8 deep"}},
	} {
		wantLines(t, test.want, marked(c, from.Ruler, test.part, test.what))
	}
	for _, k := range c.Marks {
		if k.What == "mortise" && (k.At[0]*3 > d.Frame.RailWidth.Value || d.Frame.RailWidth.Value-k.At[0]*3 > 2) {
			t.Errorf("a third of the rail is %d", k.At[0])
		}
	}
}

// Members 50 wide and 38 thick: cheeks at 12.7 and 25.3. A back of 6 in grooves 8 deep, set
// in 10, lies between 22 and 28 from the front, in the way of tenons: those of the back frame
// end 8 before the inner edge, and so do their mortises, 33.3 - 8 = 25.3 wide: of a lower
// rail from 16.7 to 50 - 8 = 42, of an upper from 8 to 33.3, and in the stile from 720 -
// 50 + 8 = 678. A mid stile loses 8 at both edges; its mortise of 34 begins 8 further on, at 30 + 345 + 8,
// for a rail is 800 + 60 long, (800 - 50) / 2 = 375 and 30 of tenon before the mid stile.
// The groove of a rail runs through. Set in 26 the back ends 12 from the front, before them.
func TestTenonsMakeRoomForTheGrooveOfTheBack(t *testing.T) {
	d := framed()
	d.Frame.Corner, d.Frame.TenonLength = word("mortise-and-tenon"), metric("30")
	d.Back = Back{Fit: word("groove"), Material: word("back"), Depth: metric("8"), SetIn: metric("10")}
	d.Bays = []Bay{{}, {}}
	from := workshop(stock.Millimeters)
	c := derive(t, d, from)
	wantLines(t, []string{
		"front lower, both ends: from the lower edge ≈16.65, 50", "front upper, both ends: from the lower edge 0, ≈33.3",
		"rear lower, both ends: from the lower edge ≈16.65, 42", "rear upper, both ends: from the lower edge 8, ≈33.3",
	}, marked(c, from.Ruler, "rail", "tenon edges"))
	wantLines(t, []string{
		"front left and front right, inner edge: from the bottom end ≈16.65, 670; from the front face ≈12.65, ≈25.3; ≈33.3 wide, 33 deep",
		"rear left and rear right, inner edge: from the bottom end ≈16.65, 678; from the front face ≈12.65, ≈25.3; ≈25.3 wide, 33 deep",
	}, marked(c, from.Ruler, "stile", "mortise"))
	wantLines(t, []string{"rear, both ends: from the left edge 8, 42"}, marked(c, from.Ruler, "mid stile", "tenon edges"))
	wantLines(t, []string{
		"front lower and front upper, inner edge: from the left end 405; from the front face ≈12.65, ≈25.3; 50 wide, 33 deep",
		"rear lower and rear upper, inner edge: from the left end 413; from the front face ≈12.65, ≈25.3; 34 wide, 33 deep",
	}, marked(c, from.Ruler, "rail", "mortise"))
	for _, k := range c.Marks {
		if name := c.Parts[k.Part].Name; k.What == "groove" && name == "rail" && k.Note != "" {
			t.Errorf("the groove of a rail is %s", k.Note)
		}
	}
	d.Back.SetIn = metric("26")
	if got := marked(derive(t, d, from), from.Ruler, "mid stile", "tenon edges"); got != nil {
		t.Errorf("cut back for nothing: %q", got)
	}
}

// Members 50 wide and 38 thick, 900 x 720, two bays: stiles lapped at 0 and at 720
// - 50 = 670, half of 38 deep; so are the mid stiles. The rails at 0 and 900 - 50 =
// 850, and where the mid stile lies, in the middle: (900 - 50) / 2 = 425.
func TestHalfLaps(t *testing.T) {
	d := framed()
	d.Frame.Corner = word("half-lap")
	d.Bays = []Bay{{}, {}}
	from := workshop(stock.Millimeters)
	c := derive(t, d, from)
	wantLines(t, []string{"back face: from the bottom end 0, 670; 50 wide, 19 deep"}, marked(c, from.Ruler, "stile", "half lap"))
	wantLines(t, []string{"back face: from the bottom end 0, 670; 50 wide, 19 deep"}, marked(c, from.Ruler, "mid stile", "half lap"))
	wantLines(t, []string{"front face: from the left end 0, 425, 850; 50 wide, 19 deep"}, marked(c, from.Ruler, "rail", "half lap"))
}

// One shelf in the middle of 684: its lower face at 18 + (684 - 18) / 2 = 351, so
// holes at 351 and 32 and 64 below and above. Rows 37 from both edges of 300. Set
// back 20, the shelf is 280 deep: rows at 57 and at 20 + 280 - 37 = 263.
// Four shelves of 18 leave (684 - 72) / 5 = 122.4 between, 140.4 from one to the
// next: (140.4 - 32) / 64 = 1.69, so one hole above and below.
func TestShelfPins(t *testing.T) {
	d := plain()
	d.Bays = []Bay{{Openings: []Opening{{Shelves: count(1)}}}}
	from := workshop(stock.Millimeters)
	wantLines(t, []string{"inner face: from the bottom end 287, 319, 351, 383, 415; from the front edge 37, 263; 5 in diameter, 10 deep"},
		marked(derive(t, d, from), from.Ruler, "side", "shelf pins"))
	d.Shelf = Shelf{SetBack: metric("20"), PinHoles: count(3), PinPitch: metric("25")}
	wantLines(t, []string{"inner face: from the bottom end 326, 351, 376; from the front edge 57, 263; 5 in diameter, 10 deep"},
		marked(derive(t, d, from), from.Ruler, "side", "shelf pins"))
	d.Shelf = Shelf{}
	d.Bays[0].Openings[0].Shelves = count(4)
	wantLines(t, []string{"inner face: from the bottom end 108.4, 140.4, 172.4, 248.8, 280.8, 312.8, 389.2, 421.2, 453.2, 529.6, 561.6, 593.6; " +
		"from the front edge 37, 263; 5 in diameter, 10 deep"}, marked(derive(t, d, from), from.Ruler, "side", "shelf pins"))
}

// A front of 460 x 98: the middle is at 230 and 49; two holes 96 apart at
// (460 - 96) / 2 = 182 and 278.
func TestHandleHoles(t *testing.T) {
	d := plain()
	d.OutsideWidth, d.OutsideHeight = metric("500"), metric("138")
	made(&d, "inset", DrawerBox{})
	from := workshop(stock.Millimeters)
	wantLines(t, []string{"front face: from the left end 230; from the lower edge 49; 5 in diameter, through"},
		marked(derive(t, d, from), from.Ruler, "false front", "handle hole"))
	d.Drawer.HandleSpacing = metric("96")
	wantLines(t, []string{"front face: from the left end 182, 278; from the lower edge 49; 5 in diameter, through"},
		marked(derive(t, d, from), from.Ruler, "false front", "handle hole"))
	d.Drawer.Front = word("none")
	c := derive(t, d, from)
	if got := marked(c, from.Ruler, "drawer front and back", "handle hole"); len(got) != 1 || !strings.HasPrefix(got[0], "front, front face: ") {
		t.Errorf("marks = %q, want them on the front alone", got)
	}
}

// The doors of TestTwoInsetDoors are 429 wide and 680 high: holes 340 up and 40 from
// where they meet, so 389 from the left edge of the left one.
func TestHandlesOfTwoDoors(t *testing.T) {
	d := plain()
	d.Bays = []Bay{{Openings: []Opening{{Doors: count(2)}}}}
	from := workshop(stock.Millimeters)
	wantLines(t, []string{"hinged left, front face: from the bottom end 340; from the left edge 389; 5 in diameter, through",
		"hinged right, front face: from the bottom end 340; from the left edge 40; 5 in diameter, through"}, marked(derive(t, d, from), from.Ruler, "door", "handle hole"))
	d.Door.HandleSpacing = metric("128")
	wantLines(t, []string{"hinged left, front face: from the bottom end 276, 404; from the left edge 389; 5 in diameter, through",
		"hinged right, front face: from the bottom end 276, 404; from the left edge 40; 5 in diameter, through"}, marked(derive(t, d, from), from.Ruler, "door", "handle hole"))
}

// One door of 864 - 4 = 860: at 820 if it hangs on the left, as it is taken to, else
// at 40. Within strips of 5 it is 850 and 670, so at 810 of it, 335 up. One 60 wide has
// its handle in the middle.
func TestHandlesOfSingleDoors(t *testing.T) {
	for _, test := range []struct {
		hinged, edging string
		width          Length
		want           string
	}{
		{want: "front face: from the bottom end 340; from the left edge 820; 5 in diameter, through"},
		{hinged: "left", want: "front face: from the bottom end 340; from the left edge 820; 5 in diameter, through"},
		{hinged: "right", want: "front face: from the bottom end 340; from the left edge 40; 5 in diameter, through"},
		{hinged: "left", edging: "5", want: "front face: from the bottom end 335; from the left edge 810; 5 in diameter, through"},
		{hinged: "right", width: metric("64"), want: "front face: from the bottom end 340; from the left edge 30; 5 in diameter, through"},
	} {
		d := plain()
		if test.width.Set {
			d.OutsideWidth, d.InsideWidth = Length{}, test.width
		}
		d.Bays = []Bay{{Openings: []Opening{{Doors: count(1)}}}}
		if test.hinged != "" {
			d.Bays[0].Openings[0].Hinged = word(test.hinged)
		}
		if test.edging != "" {
			d.Edgings = []Edging{{On: word("fronts"), Material: word("spruce"), Thickness: metric(test.edging)}}
		}
		from := workshop(stock.Millimeters)
		c := derive(t, d, from)
		wantLines(t, []string{test.want}, marked(c, from.Ruler, "door", "handle hole"))
		if got, want := noteOf(c, "handle hole"), "; hinged on the "+design.Or(word(test.hinged), "left"); test.hinged != "" && !strings.HasSuffix(got, want) {
			t.Errorf("note %q, want %q", got, want)
		}
	}
}

func noteOf(c *Case, what string) string {
	for _, k := range c.Marks {
		if k.What == what {
			return k.Note
		}
	}
	return ""
}

// Every door and every front has the handle that is counted.
func TestEveryHandleHasItsPlace(t *testing.T) {
	eachRandomCase(t, func(t *testing.T, _ Context, d Design, c *Case) {
		places, counted := 0, 0
		for _, k := range c.Marks {
			if k.What == "handle hole" {
				places += len(k.Spots)
			}
		}
		for _, h := range c.Hardware {
			if h.Name == "handle" || h.Name == "handles" {
				counted = h.Count
			}
		}
		if places != counted {
			t.Errorf("%d places for %d handles", places, counted)
		}
	})
}

// Every mark lies on its part, from the named edge on, and in order; slides have
// room below each other.
func TestMarksLieOnTheirParts(t *testing.T) {
	eachRandomCase(t, func(t *testing.T, _ Context, _ Design, c *Case) {
		for _, k := range c.Marks {
			if len(k.Spots) == 0 || len(k.At) == 0 {
				t.Errorf("%s of %s is nowhere", k.What, c.Parts[k.Part].Name)
			}
			for _, spot := range k.Spots {
				s := c.Solids[spot.Solid]
				if s.Part != k.Part {
					t.Errorf("%s is on another part", k.What)
				}
				for _, measure := range []Measure{k.Measure, k.Across} {
					long := sizeFrom(s, measure.From)
					if !slices.IsSorted(measure.At) || len(measure.At) > 0 && (measure.At[0] < 0 || measure.At[len(measure.At)-1] > long) {
						t.Errorf("%s on %s of %d: %v", k.What, s.Role, long, measure.At)
					}
				}
				if last := k.At[len(k.At)-1]; k.What != "box-joint fingers" && last+k.Width > sizeFrom(s, k.From) {
					t.Errorf("%s on %s reaches out: %v and %d", k.What, s.Role, k.At, k.Width)
				}
			}
			for i, spacer := range k.Spacers {
				if spacer < 0 || i > 0 && spacer-k.Spacers[i-1] != k.At[i]-k.At[i-1] {
					t.Errorf("spacers %v set %v", k.Spacers, k.At)
				}
			}
		}
	})
}

// sizeFrom is how far a piece reaches from one of its edges.
func sizeFrom(s Solid, edge Face) stock.Length {
	axis, _, ok := edge.Side.Axis()
	if !ok {
		return 0
	}
	return s.Size[axis]
}

// Each drawer has a slide line at its own height, and each divider its mark, in
// the case: none is lost when equal marks are taken together.
func TestEveryDrawerHasItsSlideLines(t *testing.T) {
	eachRandomCase(t, func(t *testing.T, _ Context, _ Design, c *Case) {
		type line struct {
			solid int
			at    stock.Length // in the case
		}
		lines := make(map[line]bool)
		for _, k := range c.Marks {
			for _, spot := range k.Spots {
				for _, at := range k.At {
					if k.What == "slide line" {
						lines[line{spot.Solid, c.Solids[spot.Solid].At[Z] + at}] = true
					}
				}
			}
		}
		for _, s := range c.Solids {
			if s.Role != "drawer side" {
				continue
			}
			beside := 0
			for l := range lines {
				if l.at == s.At[Z] {
					beside++
				}
			}
			if beside < 2 {
				t.Errorf("a drawer at %v has %d slide lines", s.At, beside)
			}
		}
	})
}

// Units choose what is suggested in notes, and defaults; no mark moves if they
// are given.
func TestUnitsMoveNoMark(t *testing.T) {
	eachRandomCase(t, func(t *testing.T, from Context, d Design, _ *Case) {
		d.Shelf.PinInset, d.Shelf.PinPitch, d.Drawer.UnderBottom = metric("30"), metric("25"), metric("8")
		for _, joint := range []*Word{&d.Carcass.Joint, &d.Partition.Joint, &d.Divider.Joint, &d.Frame.Corner} {
			if joint.Value == "dowel" { // sold in one or the other
				*joint = Word{}
			}
		}
		mortised := d.Frame.Corner.Value == "mortise-and-tenon" // 3 mm or 1/8 in deeper than tenons are long
		// Mortises for loose tenons have 1 mm of room in the one and 1/32 in in the other.
		// Holes are bored with bits of the one or the other, and hinges lie at whole figures.
		undeep := func(c *Case) []Mark {
			var all []Mark
			for _, k := range c.Marks {
				if k.Diameter > 0 || k.What == "mortise center" {
					k.Depth, k.Diameter = 0, 0
				}
				if k.What != "hinge" && k.What != "catch" {
					all = append(all, k)
				}
			}
			return all
		}
		c := derive(t, d, from)
		from.Ruler.Units = stock.Inches
		if diff := cmp.Diff(undeep(c), undeep(derive(t, d, from)), cmpopts.IgnoreFields(Mark{}, "Note"),
			cmp.FilterPath(func(p cmp.Path) bool { return mortised && p.Last().String() == ".Depth" }, cmp.Ignore())); diff != "" {
			t.Errorf("(-mm +in):\n%s", diff)
		}
	})
}

// As many drawers as a case can hold.
func BenchmarkMarksOfAThousandDrawers(b *testing.B) {
	d := plain()
	d.OutsideHeight = metric("90000")
	made(&d, "inset", DrawerBox{Count: count(1000)})
	d.Drawer.Corner = word("box-joint")
	from := workshop(stock.Millimeters)
	for b.Loop() {
		if c, faults := Derive(d, from); c == nil {
			b.Fatal(spelled(faults))
		}
	}
}

func TestMarksThatCannotBeMade(t *testing.T) {
	for _, test := range []struct {
		name   string
		change func(*Design)
		want   string
	}{
		{"slide longer than the side", func(d *Design) {
			made(d, "none", DrawerBox{})
			d.Drawer.SlideLength = metric("300")
		}, "case.drawer.slide_length: a slide 300 mm long does not go in, for 297 mm are left inside; take a shorter slide, or make the case deeper"},
		{"slide above the box", func(d *Design) {
			made(d, "none", DrawerBox{FrontHeight: metric("100")}, DrawerBox{})
			d.Drawer.SlideLine = metric("100")
		}, "case.drawer.slide_line: a slide line 100 mm up lies above a box 100 mm high; make it less than the height of the lowest box"},
		{"finger narrower than the kerf", func(d *Design) {
			made(d, "none", DrawerBox{})
			d.Drawer.Corner, d.Drawer.FingerWidth = word("box-joint"), metric("3")
		}, "case.drawer.finger_width: a finger 3 mm wide is narrower than the kerf, 3.2 mm; give wider fingers, or another corner"},
		{"a single finger", func(d *Design) {
			*d = framed()
			d.Frame.Corner, d.Frame.FingerWidth = word("box-joint"), metric("20")
		}, "case.frame.finger_width: fingers 20 mm wide leave fewer than two on a width of 38 mm; make them narrower"},
		{"fingers without number", func(d *Design) {
			made(d, "none", DrawerBox{})
			d.Drawer.Corner, d.Drawer.FingerWidth = word("box-joint"), metric("0.5")
		}, "case.drawer.finger_width: fingers 0.5 mm wide are more than 1000 on a width of 678 mm; make them wider"},
		{"fingers of a butt joint", func(d *Design) {
			made(d, "none", DrawerBox{})
			d.Drawer.FingerWidth = metric("6")
		}, `case.drawer.finger_width: fingers have no use, since corner is "butt"; leave one of the two out`},
		{"rows of pins that meet", func(d *Design) {
			d.Shelf.PinInset = metric("150")
			d.Bays = []Bay{{Openings: []Opening{{Shelves: count(1)}}}}
		}, "case.shelf.pin_inset: two rows of pins 150 mm from the edges meet under a shelf 300 mm deep; give a smaller pin_inset"},
		{"handle wider than the front", func(d *Design) {
			made(d, "inset", DrawerBox{})
			d.Drawer.HandleSpacing = metric("860")
		}, "case.drawer.handle_spacing: holes 860 mm apart do not go on a front 860 mm wide; make handle_spacing at most 840 mm"},
		{"mortise right through", func(d *Design) {
			*d = framed()
			d.Frame.Corner, d.Frame.TenonLength = word("mortise-and-tenon"), metric("47")
		}, "case.frame.tenon_length: a mortise 50 mm deep, 3 mm more than its tenon, goes right through the stile, 50 mm wide; " +
			"make the tenon shorter, or the stile wider"},
		{"mortises that meet", func(d *Design) {
			*d = twoDoors()
			d.Frame.Corner, d.Frame.TenonLength = word("mortise-and-tenon"), metric("25")
			d.Bays = append(d.Bays, d.Bays[0])
		}, "case.frame.tenon_length: mortises 28 mm deep in both edges of a mid stile 50 mm wide meet; " +
			"make the tenon shorter, or the mid stile wider, or move the openings so that no two mid rails lie at one height"},
	} {
		t.Run(test.name, func(t *testing.T) {
			d := plain()
			test.change(&d)
			from := workshop(stock.Millimeters)
			from.Kerf = metric("3.2").Value
			c, faults := Derive(d, from)
			if c != nil {
				t.Errorf("a case came of it: %v", cut(c, stock.Ruler{}))
			}
			wantLines(t, []string{test.want}, spelled(faults))
		})
	}
}

// A slide may be made longer than a box, if the case has the room; a tenon of
// 90 in stock 38 thick is wider than 6 x 12.7 = 76, a mortise of 70 + 3 deeper than
// 5 x 12.7 = 63.3.
func TestMarksThatAreUnwise(t *testing.T) {
	subjects := func(c *Case) (all []string) {
		for _, x := range c.Cautions {
			all = append(all, x.Subject)
		}
		return all
	}
	d := plain()
	made(&d, "none", DrawerBox{Count: count(2)})
	d.Drawer.BoxDepth, d.Drawer.SlideLength = metric("240"), metric("250")
	from := workshop(stock.Millimeters)
	if got := subjects(derive(t, d, from)); !slices.Contains(got, "slides longer than the drawer") {
		t.Errorf("cautions %q", got)
	}
	f := framed()
	f.Frame.Corner, f.Frame.TenonLength, f.Frame.RailWidth = word("mortise-and-tenon"), metric("30"), metric("135")
	if got := subjects(derive(t, f, from)); !slices.Contains(got, "wide tenons") || slices.Contains(got, "deep mortises") {
		t.Errorf("cautions %q", got)
	}
	f.Frame.StileWidth, f.Frame.TenonLength = metric("80"), metric("70")
	if got := subjects(derive(t, f, from)); !slices.Contains(got, "deep mortises") {
		t.Errorf("cautions %q", got)
	}
}
