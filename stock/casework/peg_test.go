package casework

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"sawbill/stock"
)

func fittingsOf(c *Case, name string) []string {
	var lines []string
	for _, h := range c.Hardware {
		if strings.HasPrefix(h.Name, name) {
			lines = append(lines, fmt.Sprint(h.Count, " ", h.Name))
		}
	}
	return lines
}

// 900 x 720 x 300 of 18: 5/12 of 18 is 7.5, so dowels of 8. Holes in the face are 2/3 of
// 18 = 12 deep, with 1 for glue: a dowel reaches 11, and twice 11 into the end is less
// than 35 - 11 = 24, so it is 30 long, 30 - 11 = 19 in the end, in holes of 20. The first is 2 x 8 = 16 from the front, the
// last at 300 - 16 = 284; 268 / 150 are two spaces, so one at 16 + 134 = 150. They lie
// 18 / 2 = 9 from the lower face of top and bottom, so at 9 and 720 - 9 = 711 up the
// side. Four corners of three are 12. Top and bottom are as for a butt joint,
// 900 - 36 = 864.
func TestDowelsInACarcass(t *testing.T) {
	d := plain()
	d.Carcass.Joint = word("dowel")
	from := workshop(stock.Millimeters)
	c := derive(t, d, from)
	wantLines(t, []string{"2 side 720 x 300 x 18 carcass", "1 top 864 x 300 x 18 carcass", "1 bottom 864 x 300 x 18 carcass"}, cut(c, from.Ruler))
	wantLines(t, []string{"inner face: from the bottom end 9, 711; from the front edge 16, 150, 284; 0 wide, 12 deep"},
		marked(c, from.Ruler, "side", "dowel hole"))
	for _, part := range []string{"top", "bottom"} {
		wantLines(t, []string{"both ends: from the front edge 16, 150, 284; from the lower face 9; 0 wide, 20 deep"},
			marked(c, from.Ruler, part, "dowel hole"))
	}
	wantLines(t, []string{"12 dowels 8 mm x 30 mm"}, fittingsOf(c, "dowels"))
}

// A groove for a back of 6, set in 10, begins 300 - 16 = 284 behind the front: the
// last dowel lies 16 before it, at 268, and one in the middle at 142.
func TestDowelsKeepFromTheGrooveOfTheBack(t *testing.T) {
	d := plain()
	d.Carcass.Joint = word("dowel")
	d.Back = Back{Fit: word("groove"), Material: word("back"), Depth: metric("6"), SetIn: metric("10")}
	from := workshop(stock.Millimeters)
	wantLines(t, []string{"inner face: from the bottom end 9, 711; from the front edge 16, 142, 268; 0 wide, 12 deep"},
		marked(derive(t, d, from), from.Ruler, "side", "dowel hole"))
}

// As in the first case, with a top over the sides: 900 long, its dowels at 9 and 900 - 9 = 891
// from the left. The sides are 720 - 18 = 702 long, with the bottom's dowels at 9.
// A partition in the middle, behind 18 + (864 - 18) / 2 = 441: at 450 of the top, and
// at 450 - 18 = 432 of the bottom. A divider lies in the left bay, 684 - 18 = 666 / 2
// = 333 above the bottom: at 333 + 9 = 342 of the partition, bored 12 deep like the
// side, since nothing lies beyond, and at 18 + 342 = 360 of the left side.
func TestDowelsOfPartitionsAndDividers(t *testing.T) {
	d := plain()
	d.Carcass.Joint, d.Carcass.Top = word("dowel"), word("over")
	d.Partition.Joint, d.Divider.Joint = word("dowel"), word("dowel")
	d.Bays = []Bay{{Openings: []Opening{{}, {}}}, {}}
	from := workshop(stock.Millimeters)
	c := derive(t, d, from)
	for _, test := range []struct {
		part string
		want []string
	}{
		{"top", []string{"inner face: from the left end 9, 450, 891; from the front edge 16, 150, 284; 0 wide, 12 deep"}},
		{"bottom", []string{"both ends: from the front edge 16, 150, 284; from the lower face 9; 0 wide, 20 deep",
			"inner face: from the left end 432; from the front edge 16, 150, 284; 0 wide, 12 deep"}},
		{"side", []string{"top end: from the front edge 16, 150, 284; from the left face 9; 0 wide, 20 deep",
			"left, inner face: from the bottom end 9, 360; from the front edge 16, 150, 284; 0 wide, 12 deep",
			"right, inner face: from the bottom end 9; from the front edge 16, 150, 284; 0 wide, 12 deep"}},
		{"partition", []string{"both ends: from the front edge 16, 150, 284; from the left face 9; 0 wide, 20 deep",
			"left face: from the bottom end 342; from the front edge 16, 150, 284; 0 wide, 12 deep"}},
		{"divider", []string{"both ends: from the front edge 16, 150, 284; from the lower face 9; 0 wide, 20 deep"}},
	} {
		wantLines(t, test.want, marked(c, from.Ruler, test.part, "dowel hole"))
	}
}

// Three bays of equal width: 900 - 36
// = 864 less two partitions of 18 are 828, so bays of 276. The dividers of both outer
// bays are opposed at their inner ends alone, those of the middle bay at both: bored 18 / 3
// = 6 deep there, the shortest dowel reaches 5 in, and 30 - 5 + 1 = 26 into the end. Two in each
// bay are told by their places.
func TestMarksTellWhichDividersTheyAreOn(t *testing.T) {
	d := plain()
	d.Divider.Joint = word("dowel")
	three := Bay{Openings: []Opening{{}, {}, {}}}
	d.Bays = []Bay{three, three, three}
	from := workshop(stock.Millimeters)
	wantLines(t, []string{
		"bay 1 upper and bay 1 lower, left end; bay 3 upper and bay 3 lower, right end: from the front edge 16, 150, 284; from the lower face 9; 0 wide, 20 deep",
		"bay 1 upper and bay 1 lower, right end; bay 2 upper and bay 2 lower, both ends; bay 3 upper and bay 3 lower, left end: from the front edge 16, 150, 284; from the lower face 9; 0 wide, 26 deep",
	}, marked(derive(t, d, from), from.Ruler, "divider", "dowel hole"))
}

// Dividers on both sides of a partition of 18: at one height a third of it is bored
// from each, 6, and 40 - 6 = 34 in their ends. With openings of 300 on the left and 320
// on the right, from above, they lie 20 apart, more than the 18 they are thick, and
// each is bored two thirds deep. Of 300 and 310 they overlap.
func TestPartitionsBoredFromBothSides(t *testing.T) {
	for _, test := range []struct {
		right string
		want  int
	}{{"300", 6}, {"310", 6}, {"317.9", 6}, {"318", 12}, {"320", 12}} {
		d := plain()
		d.Divider.Joint = word("dowel")
		d.Bays = []Bay{
			{Openings: []Opening{{Height: metric("300")}, {}}},
			{Openings: []Opening{{Height: metric(test.right)}, {}}},
		}
		from := workshop(stock.Millimeters)
		c := derive(t, d, from)
		for _, k := range c.Marks {
			if name := c.Parts[k.Part].Name; k.What == "dowel hole" && name == "partition" && k.Depth != stock.Length(test.want)*stock.Millimeter {
				t.Errorf("openings of 300 and %s: bored %s deep, want %d", test.right, from.Ruler.Print(k.Depth), test.want)
			}
		}
	}
}

// A shelf in a dado, or butted, beyond the divider counts too: openings of 333 on
// the left have the divider at 351, and so lies the shelf in the middle of 684.
func TestPartitionsBoredBehindAShelf(t *testing.T) {
	for held, want := range map[string]string{"dado": "6", "butt": "6", "pins": "12"} {
		d := plain()
		d.Divider.Joint = word("dowel")
		d.Shelf.Held = word(held)
		if held == "dado" {
			d.Shelf.JointDepth = metric("6")
		}
		d.Bays = []Bay{{Openings: []Opening{{}, {}}}, {Openings: []Opening{{Shelves: count(1)}}}}
		from := workshop(stock.Millimeters)
		wantLines(t, []string{"left face: from the bottom end 342; from the front edge 16, 150, 284; 0 wide, " + want + " deep"},
			marked(derive(t, d, from), from.Ruler, "partition", "dowel hole"))
	}
}

// Members 50 wide and 38 thick, 900 x 720: dowels of 10, the thickest, 40 long, 20
// in each piece, in holes of 21. Two diameters from both edges would leave them 10 apart, so they
// lie a quarter of 50 in: 12.5 and 37.5, and at 720 - 50 + 12.5 = 682.5 and 707.5 of
// the stile, 38 / 2 = 19 from the front. Eight corners of two are 16. The rails are as for
// a butt joint, 900 - 100 = 800.
func TestDowelsInFrames(t *testing.T) {
	d := framed()
	d.Frame.Corner, d.Frame.TenonLength = word("dowel"), Length{}
	from := workshop(stock.Millimeters)
	c := derive(t, d, from)
	if got := partNamed(t, c, "rail").Length; got != metric("800").Value {
		t.Errorf("rails are %s long", from.Ruler.Print(got))
	}
	wantLines(t, []string{"both ends: from the lower edge 12.5, 37.5; from the front face 19; 0 wide, 21 deep"},
		marked(c, from.Ruler, "rail", "dowel hole"))
	wantLines(t, []string{"inner edge: from the bottom end 12.5, 37.5, 682.5, 707.5; from the front face 19; 0 wide, 21 deep"},
		marked(c, from.Ruler, "stile", "dowel hole"))
	wantLines(t, []string{"16 dowels 10 mm x 40 mm"}, fittingsOf(c, "dowels"))
}

// A back of 6, set in 10, leaves 38 - 16 = 22 of a back frame before it: there the
// dowels lie 11 from the front, in the front frame 19 as ever.
func TestDowelsOfABackFrameKeepFromItsGroove(t *testing.T) {
	d := framed()
	d.Frame.Corner, d.Frame.TenonLength = word("dowel"), Length{}
	d.Back = Back{Fit: word("groove"), Material: word("back"), Depth: metric("6"), SetIn: metric("10")}
	from := workshop(stock.Millimeters)
	wantLines(t, []string{
		"front lower and front upper, both ends: from the lower edge 12.5, 37.5; from the front face 19; 0 wide, 21 deep",
		"rear lower and rear upper, both ends: from the lower edge 12.5, 37.5; from the front face 11; 0 wide, 21 deep",
	}, marked(derive(t, d, from), from.Ruler, "rail", "dowel hole"))
}

// The case of TestLooseTenonsInACarcass: two at each corner, in the middle of 300 / 2
// = 150, so at 75 and 225; mortises 12 deep in the face of 18, of which the tenon takes 11, and
// 40 - 11 + 1 = 30 in the end.
func TestMortisesOfLooseTenonsInACarcass(t *testing.T) {
	d := plain()
	d.Carcass.Joint = word("loose-tenon")
	d.LooseTenon = LooseTenon{Material: word("oak"), Length: metric("40")}
	from := withOak(stock.Millimeters)
	c := derive(t, d, from)
	wantLines(t, []string{"inner face: from the bottom end 9, 711; from the front edge 75, 225; 0 wide, 12 deep"},
		marked(c, from.Ruler, "side", "mortise center"))
	wantLines(t, []string{"both ends: from the front edge 75, 225; from the lower face 9; 0 wide, 30 deep"},
		marked(c, from.Ruler, "top", "mortise center"))
	for _, k := range c.Marks {
		if want := "18 mm wide, 6 mm high, for a loose tenon"; k.What == "mortise center" && k.Note != want {
			t.Errorf("note %q, want %q", k.Note, want)
		}
	}
}

// The case of TestLooseTenonsInFrames: one in the middle of each joint, 2 1/2 / 2 = 1
// 1/4, 3/4 from the front, 1 1/2 in each piece and 1/32 more for glue. On the stile at 1 1/4 and 30 - 1 1/4 = 28
// 3/4; on the rail in the middle of 35.
func TestMortisesOfLooseTenonsInFrames(t *testing.T) {
	d := Design{
		Construction: word("framed"),
		OutsideWidth: imperial("40"), OutsideHeight: imperial("30"), OutsideDepth: imperial("20"),
		Carcass: Carcass{Material: word("carcass")},
		Frame: Frame{Material: word("spruce"), StileWidth: imperial("2 1/2"), RailWidth: imperial("2 1/2"),
			Corner: word("loose-tenon")},
		LooseTenon: LooseTenon{Material: word("oak"), Length: imperial("3")},
		Bays:       make([]Bay, 2),
	}
	from := withOak(stock.Inches)
	c := derive(t, d, from)
	wantLines(t, []string{"inner edge: from the bottom end 1 1/4, 28 3/4; from the front face 3/4; 0 wide, 1 17/32 deep"},
		marked(c, from.Ruler, "stile", "mortise center"))
	wantLines(t, []string{"both ends: from the left edge 1 1/4; from the front face 3/4; 0 wide, 1 17/32 deep"},
		marked(c, from.Ruler, "mid stile", "mortise center"))
	wantLines(t, []string{
		"both ends: from the lower edge 1 1/4; from the front face 3/4; 0 wide, 1 17/32 deep",
		"inner edge: from the left end 17 1/2; from the front face 3/4; 0 wide, 1 17/32 deep",
	}, marked(c, from.Ruler, "rail", "mortise center"))
}

// bored is a hole in the case: the axis it is bored along, where it begins, and the
// piece.
type bored struct {
	along Axis
	at    Point
	solid Solid
	depth stock.Length
	face  Face
}

// holes reads the marks back: those in ends begin there, those in faces leave open
// which of the two it is.
func holes(c *Case) (ends, faces []bored) {
	for _, k := range c.Marks {
		if k.What != "dowel hole" && k.What != "mortise center" {
			continue
		}
		for _, spot := range k.Spots {
			s := c.Solids[spot.Solid]
			a, _, _ := k.From.Side.Axis()
			b, _, _ := k.Across.From.Side.Axis()
			for _, one := range k.At {
				for _, other := range k.Across.At {
					h := bored{along: X + Y + Z - a - b, at: s.At, solid: s, depth: k.Depth, face: spot.Face}
					h.at[a] += one
					h.at[b] += other
					low, high := h, h
					high.at[h.along] = s.End()[h.along]
					switch {
					case spot.Face.Side == Both:
						ends = append(ends, low, high)
					case spot.Face.Extent == End:
						if _, far, _ := spot.Face.Side.Axis(); far {
							low = high
						}
						ends = append(ends, low)
					default:
						faces = append(faces, h)
					}
				}
			}
		}
	}
	return ends, faces
}

// Every hole in an end meets exactly one in a face, at the same place in the case. The
// two are together 2 deeper than the peg is long, and nothing comes through.
func TestHolesOfMatesMeet(t *testing.T) {
	seen := 0
	eachRandomCase(t, func(t *testing.T, _ Context, d Design, c *Case) {
		ends, faces := holes(c)
		if len(ends) != len(faces) {
			t.Errorf("%d holes in ends, %d in faces", len(ends), len(faces))
		}
		long := []stock.Length{metric("25").Value, metric("30").Value, metric("35").Value, metric("40").Value, d.LooseTenon.Length.Value}
		for _, e := range ends {
			met := 0
			for _, f := range faces {
				place := f.at
				if f.face.Side != Left && e.at[e.along] == f.solid.End()[e.along] {
					place[e.along] = e.at[e.along]
				} else if f.face.Side == Right {
					continue
				}
				if e.along == f.along && e.at == place {
					met++
					if !slices.Contains(long, e.depth+f.depth-metric("2").Value) {
						t.Errorf("holes %d and %d deep", e.depth, f.depth)
					}
				}
			}
			if met != 1 {
				t.Errorf("a hole in the end of a %s at %v meets %d others", e.solid.Role, e.at, met)
			}
		}
		for _, f := range faces {
			if 3*f.depth > 2*f.solid.Size[f.along] {
				t.Errorf("a hole %d deep comes through a %s", f.depth, f.solid.Role)
			}
		}
		seen += len(ends)
	})
	if seen == 0 {
		t.Error("no case has a peg")
	}
}

// Dividers of 18 mm on dowels of 8 on both sides of a partition of 6: a third of it
// is 2, and 1 less is less than half a dowel. Two thirds of 18 are plenty.
func TestShallowDowelsAreRefused(t *testing.T) {
	d := plain()
	d.Bays = []Bay{{Openings: make([]Opening, 2)}, {Openings: make([]Opening, 2)}}
	d.Partition = Divider{Material: word("back"), Thickness: metric("6")}
	d.Divider.Joint = word("dowel")
	_, faults := Derive(d, workshop(stock.Millimeters))
	if len(faults) != 1 || faults[0].Cause != "dowels 8 mm thick go only 1 mm into the face of a partition" {
		t.Errorf("%+v", faults)
	}
}

// Whatever the depth of the corner, tenons stand no farther apart than the spacing.
func TestLooseTenonsKeepTheSpacing(t *testing.T) {
	spacing := metric("150")
	for _, depth := range []string{"290", "300", "300.1", "320", "400", "449", "450", "451", "590"} {
		d := plain()
		d.OutsideDepth, d.Carcass.Joint = metric(depth), word("loose-tenon")
		d.LooseTenon = LooseTenon{Material: word("oak"), Length: metric("40")}
		from := withOak(stock.Millimeters)
		c := derive(t, d, from)
		for _, k := range c.Marks {
			if k.What != "mortise center" {
				continue
			}
			at := k.At
			if k.From != (Face{Side: Front, Extent: Edge}) {
				at = k.Across.At
			}
			for i := 1; i < len(at); i++ {
				if apart := at[i] - at[i-1]; apart > spacing.Value {
					t.Errorf("%s deep: tenons %s apart", depth, from.Ruler.Print(apart))
				}
			}
		}
	}
}

// Of two dividers at one height each has 18 / 3 = 6 of the partition, 5 without the room
// for glue: less than the 8 that a dowel is thick. 11 of 18 on one side are enough, but
// 60 - 11 + 1 = 50 is more than five times the 6 that a loose tenon is thick.
func TestPegsThatAreUnwise(t *testing.T) {
	both := Bay{Openings: make([]Opening, 2)}
	d := plain()
	d.Divider.Joint = word("dowel")
	d.Bays = []Bay{both, both}
	const shallow = "A dowel 8 mm thick reaches only 5 mm into the face of a partition 18 mm thick, for it is met on both sides at one height. " +
		"Make one opening there higher or lower by 18 mm or more, take dados, or thicker stock. As it is, it aligns more than it holds."
	if got := cautionOn(derive(t, d, workshop(stock.Millimeters)), "shallow dowels"); got != shallow {
		t.Error(got)
	}
	d.Bays[1] = Bay{}
	if got := cautionOn(derive(t, d, workshop(stock.Millimeters)), "shallow dowels"); got != "" {
		t.Error(got)
	}
	d = plain()
	d.Carcass.Joint, d.LooseTenon = word("loose-tenon"), LooseTenon{Material: word("oak"), Length: metric("60")}
	const deep = "A mortise 50 mm deep in the end of a top and 6 mm wide, for a loose tenon 60 mm long, is deeper than 5 times its width: a shorter tenon will do."
	if got := cautionOn(derive(t, d, withOak(stock.Millimeters)), "deep mortises"); got != deep {
		t.Error(got)
	}
	d.LooseTenon.Length = metric("40")
	if got := cautionOn(derive(t, d, withOak(stock.Millimeters)), "deep mortises"); got != "" {
		t.Error(got)
	}
}
