package casework

import (
	"reflect"
	"slices"
	"strings"
	"testing"

	"sawbill/stock"
	"sawbill/stock/fault"

	"github.com/google/go-cmp/cmp"
)

func TestFaults(t *testing.T) {
	for _, test := range []struct {
		name   string
		change func(*Design)
		want   string // "key: cause; remedy"
	}{
		// Over-determined.
		{"outside and drawers", func(d *Design) {
			d.OutsideHeight, d.OutsideDepth = Length{}, Length{}
			d.Bays = []Bay{measured(3, "855.6", "180", "250")}
		}, "case.outside_width: outside width 900 mm is given, but bay 1 needs 917 mm: " +
			"inside it is 881 = 855.6 (drawer) + 2 x 12.7 (side clearance), and leaves 864 = 900 (outside width) - 2 x 18 (side); " +
			"make outside_width 917 mm, or leave out one of the two"},
		{"outside and inside", func(d *Design) { d.InsideWidth = metric("860") },
			"case.outside_width: outside width 900 mm is given, but inside_width needs 896 mm: " +
				"inside it is 860 mm (given), and leaves 864 = 900 (outside width) - 2 x 18 (side); " +
				"make outside_width 896 mm, or leave out one of the two"},
		{"outside, inside and drawers", func(d *Design) {
			d.InsideWidth = metric("860")
			d.Bays = []Bay{measured(3, "855.6", "180", "250")}
			d.OutsideHeight = Length{}
		}, "case.outside_width: outside width 900 mm is given, but inside_width needs 896 mm: inside it is 860 mm (given); " +
			"bay 1 needs 917 mm: inside it is 881 = 855.6 (drawer) + 2 x 12.7 (side clearance), and leaves 864 = 900 (outside width) - 2 x 18 (side); " +
			"keep one of outside_width, inside_width or bay 1, and leave out or change the others"},
		{"drawers, and outside and inside that agree", func(d *Design) {
			d.InsideWidth = metric("864")
			d.Bays = []Bay{measured(3, "855.6", "180", "250")}
			d.OutsideHeight = Length{}
		}, "case.outside_width: outside width 900 mm is given, but bay 1 needs 917 mm: " +
			"inside it is 881 = 855.6 (drawer) + 2 x 12.7 (side clearance), and leaves 864 = 900 (outside width) - 2 x 18 (side); " +
			"make outside_width 917 mm and inside_width 881 mm, or leave them out"},
		{"an opening's height and the outside against drawers", func(d *Design) {
			d.OutsideWidth = Length{}
			d.Bays = []Bay{measured(7, "300", "100", "200")}
			d.Bays[0].Openings[0].Height = metric("684")
		}, "case.outside_height: outside height 720 mm is given, but bay 1 needs 760 mm: " +
			"inside it is 724 = 7 x 100 (drawer) + 3 (gap above) + 6 x 3 (gap) + 3 (gap below), and leaves 684 = 720 (outside height) - 18 (top) - 18 (bottom); " +
			"and as height of opening 1 684 mm is given, but the drawers need 724 = 7 x 100 (drawer) + 3 (gap above) + 6 x 3 (gap) + 3 (gap below); " +
			"make outside_height 760 mm or leave it out, and leave out the height of opening 1"},
		{"inside and bays", func(d *Design) {
			d.OutsideWidth, d.InsideWidth = Length{}, metric("800")
			d.Bays = []Bay{{Width: metric("300")}, {Width: metric("400")}}
		}, "case.inside_width: inside width 800 mm is given, but what stands side by side needs 718 mm: " +
			"718 = 300 (bay 1) + 400 (bay 2) + 18 (partition); make inside_width 718 mm, or leave out one of the two"},
		{"two stacks of unequal height", func(d *Design) {
			d.OutsideHeight = Length{}
			d.Bays = []Bay{measured(2, "300", "100", "200"), measured(3, "300", "100", "200")}
			d.OutsideWidth = Length{}
		}, "case.bay 2: bay 2 needs an inside height of 312 mm, but bay 1 needs 209 mm; " +
			"leave out one height in the smaller of the two, or add an open space to it"},
		{"bay width and drawers", func(d *Design) {
			d.OutsideHeight, d.OutsideWidth = Length{}, Length{}
			b := measured(2, "300", "100", "200")
			b.Width = metric("320")
			d.Bays = []Bay{b}
		}, "case.bay 1.width: width 320 mm is given, but the drawers need 325.4 = 300 (drawer) + 2 x 12.7 (side clearance); " +
			"make it 325.4 mm or leave it out"},
		{"opening height and drawers", func(d *Design) {
			d.OutsideHeight, d.OutsideWidth = Length{}, Length{}
			d.Bays = []Bay{measured(1, "300", "100", "200")}
			d.Bays[0].Openings[0].Height = metric("100")
		}, "case.bay 1.opening 1.height: height 100 mm is given, but the drawer needs 106 = 100 (drawer) + 3 (gap above) + 3 (gap below); " +
			"make it 106 mm or leave it out"},

		// Under-determined.
		{"no width", func(d *Design) {
			d.OutsideWidth = Length{}
			d.Bays = []Bay{{Width: metric("300")}, {}, {}}
		}, "case: the width is not settled: neither outside_width nor inside_width is given, nor what goes in; " +
			"give outside_width, inside_width or a width for bay 2 and bay 3"},
		{"no height", func(d *Design) { d.OutsideHeight = Length{} },
			"case: the height is not settled: neither outside_height nor inside_height is given, nor what goes in; " +
				"give outside_height, inside_height or a height for opening 1 of bay 1"},
		{"no depth", func(d *Design) { d.OutsideDepth = Length{} },
			"case: the depth is not settled: neither outside_depth nor inside_depth is given, nor what goes in; " +
				"give outside_depth or inside_depth"},
		{"no material", func(d *Design) { d.Carcass.Material = Word{} },
			"case.carcass.material: no material is given; give the name of a material that the job offers"},
		{"several thicknesses", func(d *Design) { d.Carcass.Material = word("ply") },
			"case.carcass.thickness: ply comes in 3 thicknesses, and none is given; give 6 mm, 12 mm or 18 mm"},
		{"dado without depth", func(d *Design) { d.Carcass.Joint = word("dado") },
			"case.carcass.joint_depth: a dado needs a depth, and none is given; give a quarter to a third of it, 4.5 mm to 6 mm"},
		{"back without fit", func(d *Design) { d.Back.Material = word("back") },
			`case.back.fit: a back is described, but not how it is fitted; give "applied", "rabbet" or "groove"`},
		{"half a measured drawer", func(d *Design) {
			d.OutsideWidth, d.OutsideHeight = Length{}, Length{}
			d.Bays = []Bay{{Openings: []Opening{{Drawers: []DrawerBox{{Width: metric("300"), Height: metric("100")}}}}}}
		},
			"case.bay 1.opening 1.drawer 1.depth: a measured drawer needs width, height and depth, and one is missing; " +
				"measure it, or leave all three out of a drawer that is to be made"},
		{"overlay without amount", func(d *Design) { made(d, "overlay", DrawerBox{}) },
			"case.drawer.overlay: not given, and needed; give how far a front reaches over each edge of its opening"},
		{"frame without rails", func(d *Design) { *d = framed(); d.Frame.RailWidth = Length{} },
			"case.frame.rail_width: not given, and needed; give the face width of the level members"},

		// Not buildable.
		{"dado through half", func(d *Design) { d.Carcass.Joint, d.Carcass.JointDepth = word("dado"), metric("10") },
			"case.carcass.joint_depth: a dado 10 mm deep is more than half of the 18 mm that it is cut into; " +
				"give a quarter to a third of it, 4.5 mm to 6 mm"},
		{"dados meet in a partition", func(d *Design) {
			d.Shelf.Held, d.Shelf.JointDepth = word("dado"), metric("9")
			d.Bays = []Bay{{Openings: []Opening{{Shelves: count(1)}}}, {Openings: []Opening{{Shelves: count(1)}}}}
		}, "case.bay 2: dados 9 mm and 9 mm deep in its two faces go right through a partition 18 mm thick; " +
			"make them shallower, or the partition thicker"},
		{"back rabbet through the side", func(d *Design) {
			d.Back = Back{Fit: word("rabbet"), Material: word("back"), Depth: metric("18")}
		}, "case.back.depth: a rabbet 18 mm deep leaves nothing of the 18 mm that it is cut into; leave a quarter of an inch, 6 mm, of the panel or more"},
		{"drawer deeper than the case", func(d *Design) {
			d.OutsideHeight, d.OutsideWidth = Length{}, Length{}
			d.Back = Back{Fit: word("applied"), Material: word("back")}
			d.Bays = []Bay{measured(1, "300", "100", "480")}
		}, "case.outside_depth: outside depth 300 mm is given, but a drawer of bay 1 needs 486 mm: inside it is 480 mm (drawer), " +
			"and leaves 294 = 300 (outside depth) - 6 (back); make outside_depth 486 mm or more, or leave it out"},
		{"sides thicker than the case", func(d *Design) { d.OutsideWidth = metric("36") },
			"case.outside_width: nothing is left inside: 0 = 36 (outside width) - 2 x 18 (side); make the case larger, or its members thinner"},
		{"bays wider than the case", func(d *Design) { d.Bays = []Bay{{Width: metric("500")}, {Width: metric("400")}, {}} },
			"case.bay 1: nothing is left for bay 3, which has no size of its own: " +
				"-72 = 864 (inside width) - 2 x 18 (partition) - 500 (bay 1) - 400 (bay 2); make the case larger, or what else stands in line smaller"},
		{"fronts higher than the opening", func(d *Design) {
			made(d, "inset", DrawerBox{FrontHeight: metric("400")}, DrawerBox{FrontHeight: metric("400")}, DrawerBox{})
		}, "case.bay 1.opening 1: nothing is left for a front, which has no size of its own: " +
			"-124 = 684 (bay 1 opening 1 height) - 4 x 2 (gap) - 400 (front) - 400 (front); make the case larger, or what else stands in line smaller"},
		{"steps fill the opening", func(d *Design) {
			made(d, "inset", DrawerBox{Count: count(4)})
			d.Bays[0].Openings[0].Graded = metric("113")
		}, "case.bay 1.opening 1.graded: nothing is left for 4 fronts, each 113 mm higher than the one above: " +
			"-4 = 684 (bay 1 opening 1 height) - 5 x 2 (gap) - 6 x 113 (graded); make graded smaller, or the opening higher"},
		{"graded without drawers", func(d *Design) { d.Bays = []Bay{{Openings: []Opening{{Graded: metric("20")}}}} },
			"case.bay 1.opening 1.graded: graded tells by how much each front is higher than the one above, and there are no two drawers; leave it out"},
		{"graded, and a height below", func(d *Design) {
			made(d, "inset", DrawerBox{}, DrawerBox{FrontHeight: metric("100")})
			d.Bays[0].Openings[0].Graded = metric("20")
		}, "case.bay 1.opening 1.drawer 2.front_height: graded settles every front but the top one; " +
			"give front_height to the top drawer alone, or to none, or leave out graded"},
		{"shelves fill the opening", func(d *Design) { d.Bays = []Bay{{Openings: []Opening{{Shelves: count(38)}}}} },
			"case.bay 1.opening 1: 38 shelves 18 mm thick fill an opening 684 mm high; take fewer shelves, or give the opening more height"},
		{"slides wider than the bay", func(d *Design) {
			made(d, "none", DrawerBox{})
			d.Drawer.SideClearance = metric("420")
		}, "case.drawer.side_clearance: nothing is left for the length of a drawer front and back: " +
			"0 = 864 (bay 1) - 2 x 420 (side clearance) - 2 x 12 (drawer side); make the case larger, or what is taken off smaller"},
		{"overlay past the side", func(d *Design) {
			made(d, "overlay", DrawerBox{})
			d.Drawer.Overlay = metric("20")
		}, "case.drawer.overlay: an overlay of 20 mm reaches past the side, which is 18 mm thick; make the overlay at most 18 mm"},
		{"overlays meet on a partition", func(d *Design) {
			made(d, "overlay", DrawerBox{})
			d.Drawer.Overlay = metric("8")
			d.Bays = append(d.Bays, d.Bays[0])
		}, "case.drawer.overlay: two fronts with an overlay of 8 mm and a gap of 3 mm need 19 mm of the partition that they share, and it is 18 mm thick; " +
			"make the overlay at most 7.5 mm"},
		{"doors and fronts meet on a divider", func(d *Design) {
			made(d, "overlay", DrawerBox{})
			d.Drawer.Overlay = metric("5")
			d.Door = Door{Fit: word("overlay"), Overlay: metric("11")}
			d.Bays[0].Openings = append(d.Bays[0].Openings, Opening{Doors: count(1)})
		}, "case.door.overlay: a door with an overlay of 11 mm, a front with one of 5 mm and a gap of 3 mm need 19 mm of the divider that they share, " +
			"and it is 18 mm thick; make the overlay at most 10 mm"},
		{"three doors", func(d *Design) { d.Bays = []Bay{{Openings: []Opening{{Doors: count(3)}}}} },
			"case.bay 1.opening 1.doors: an opening has one door or two, and 3 are given; give 1 or 2, or make more bays of it"},
		{"drawer too deep behind a door", func(d *Design) {
			d.OutsideWidth, d.OutsideHeight = Length{}, Length{}
			d.Bays = []Bay{measured(1, "300", "100", "260")}
			d.Bays[0].Openings[0].Doors = count(1)
		}, "case.outside_depth: outside depth 300 mm is given, but a drawer of bay 1 needs 308 mm: inside it is 308 = 260 (drawer) + 18 (inset door) + 30 (gap before), " +
			"and leaves 300 mm (outside depth); make outside_depth 308 mm or more, or leave it out"},
		{"bay too narrow behind a door", func(d *Design) {
			d.OutsideWidth, d.OutsideHeight = Length{}, Length{}
			d.Bays = []Bay{measured(1, "300", "100", "240")}
			d.Bays[0].Width, d.Bays[0].Openings[0].Doors = metric("325.4"), count(2)
		}, "case.bay 1.width: width 325.4 mm is given, but the drawer needs 365.4 = 300 (drawer) + 2 x 12.7 (side clearance) + 2 x 20 (hinge clearance); " +
			"make it 365.4 mm or leave it out"},
		{"slide longer than the room behind a door", func(d *Design) {
			made(d, "none", DrawerBox{})
			d.Bays[0].Openings[0].Doors, d.Drawer.SlideLength = count(1), metric("250")
		}, "case.drawer.slide_length: a slide 250 mm long does not go in, for 249 mm are left inside; take a shorter slide, or make the case deeper"},
		{"door that takes the whole bay", func(d *Design) {
			made(d, "none", DrawerBox{})
			d.Bays[0].Openings[0].Doors, d.Drawer.HingeClearance = count(2), metric("410")
		}, "case.drawer.hinge_clearance: nothing is left for the length of a drawer front and back: " +
			"-5.4 = 864 (bay 1) - 2 x 410 (hinge clearance) - 2 x 12.7 (side clearance) - 2 x 12 (drawer side); make the case larger, or what is taken off smaller"},
		{"room behind no door", func(d *Design) {
			made(d, "none", DrawerBox{})
			d.Drawer.GapBefore = metric("5")
		}, "case.drawer.gap_before: gap_before has no use, since no drawers are behind doors; leave it out, or give the drawers' opening doors"},
		{"hinges of two doors", func(d *Design) { d.Bays = []Bay{{Openings: []Opening{{Doors: count(2), Hinged: word("right")}}}} },
			"case.bay 1.opening 1.hinged: hinged has no use but for a single door; leave it out, or set doors = 1"},
		{"overlay doors without amount", func(d *Design) {
			d.Door.Fit = word("overlay")
			d.Bays = []Bay{{Openings: []Opening{{Doors: count(1)}}}}
		}, "case.door.overlay: not given, and needed; give how far a door reaches over each edge of its opening"},
		{"overlay of inset doors", func(d *Design) {
			d.Door.Overlay = metric("10")
			d.Bays = []Bay{{Openings: []Opening{{Doors: count(1)}}}}
		}, `case.door.overlay: an overlay has no use, since fit is "inset"; leave it out, or set fit = "overlay"`},
		{"box no higher than its bottom", func(d *Design) { made(d, "inset", DrawerBox{BoxHeight: metric("16")}) },
			"case.bay 1.opening 1.drawer 1: nothing is left above the bottom of the drawer: " +
				"0 = 16 (box height) - 10 (under bottom) - 6 (drawer bottom); make it higher, or under_bottom smaller"},
		{"box higher than its share", func(d *Design) { made(d, "inset", DrawerBox{FrontHeight: metric("680"), BoxHeight: metric("690")}) },
			"case.bay 1.opening 1.drawer 1.box_height: a box 690 mm high does not go into its share of the opening, 680 mm (front height); " +
				"make it lower, or the front higher"},
		{"panel shows past the stile", func(d *Design) { *d = framed(); d.Frame.Inset, d.Frame.RailWidth = metric("40"), metric("60") },
			"case.frame.stile_width: stiles 50 mm wide do not cover a panel 18 mm thick with an inset of 40 mm; " +
				"make them at least 58 mm wide, or the inset smaller"},
		{"tenon through the stile", func(d *Design) {
			*d = framed()
			d.Frame.Corner, d.Frame.TenonLength = word("mortise-and-tenon"), metric("50")
		}, "case.frame.tenon_length: a tenon 50 mm long goes right through the stile, 50 mm wide; make the tenon shorter, or the stile wider"},
		{"no such thickness", func(d *Design) { d.Carcass.Material, d.Carcass.Thickness = word("ply"), metric("15") },
			"case.carcass.thickness: no ply gives a thickness of 15 mm; give 6 mm, 12 mm or 18 mm"},
		{"thicker than any board", func(d *Design) { *d = framed(); d.Frame.Thickness = metric("45") },
			"case.frame.thickness: no spruce gives a thickness of 45 mm; give 38 mm or less"},
		{"unknown material", func(d *Design) { d.Carcass.Material = word("carcas") },
			`case.carcass.material: unknown material "carcas"; did you mean "carcass"?`},
		{"shelves and drawers", func(d *Design) {
			d.OutsideHeight, d.OutsideWidth = Length{}, Length{}
			d.Bays = []Bay{measured(1, "300", "100", "200")}
			d.Bays[0].Openings[0].Shelves = count(1)
		}, "case.bay 1.opening 1: an opening holds shelves or drawers, and both are given; make two openings of it"},

		{"backs meet in a mid stile", func(d *Design) {
			*d = framed()
			d.Frame.MidStileWidth = metric("20")
			d.Back = Back{Fit: word("rabbet"), Material: word("back"), Depth: metric("10")}
			d.Bays = make([]Bay, 2)
		}, "case.back.depth: two rabbets 10 mm deep meet in a mid stile 20 mm wide; make them shallower, or the mid stile wider"},

		// Not what the words allow.
		{"unknown word", func(d *Design) { d.Carcass.Joint = word("rabet") },
			`case.carcass.joint: "rabet" is not a word for this; did you mean "rabbet"?`},
		{"foreign word", func(d *Design) { d.Carcass.Top = word("glued to the ceiling") },
			`case.carcass.top: "glued to the ceiling" is not a word for this; write "between" or "over"`},
		{"zero", func(d *Design) { d.OutsideWidth.Value = 0 },
			"case.outside_width: a length of 0 leaves nothing to cut; give a length above 0, or leave the key out"},
		{"negative", func(d *Design) { d.Shelf.SetBack = Length{Value: -stock.Millimeter, Set: true} },
			"case.shelf.set_back: a length of -1 mm is less than nothing; give a length above 0"},
		{"no drawers", func(d *Design) { d.Bays = []Bay{{Openings: []Opening{{Drawers: []DrawerBox{{Count: count(0)}}}}}} },
			"case.bay 1.opening 1.drawer 1.count: a count of 0 is less than one; give a whole number from 1, or leave it out"},
		{"too many", func(d *Design) { d.Bays = []Bay{{Openings: []Opening{{Shelves: count(1_000_000)}}}} },
			"case.bay 1.opening 1.shelves: 1000000 is more than a case can hold; give at most 1000"},

		{"feet wider than the case", func(d *Design) {
			d.OutsideWidth = metric("70")
			d.Base = Base{Kind: word("feet"), Material: word("spruce"), Height: metric("80"), Depth: metric("60")}
		}, "case.base.thickness: two feet 38 mm thick do not stand in 70 mm; make them at most 35 mm thick"},
		{"feet deeper than the case", func(d *Design) {
			d.Base = Base{Kind: word("feet"), Height: metric("80"), Depth: metric("160")}
		}, "case.base.depth: two feet 160 mm deep do not stand in 300 mm (outside depth); make them at most 150 mm deep"},
		{"plinth set back through the case", func(d *Design) {
			d.Base = Base{Kind: word("plinth"), Height: metric("80"), SetBack: metric("264")}
		}, "case.base.set_back: nothing is left for the length of a plinth cross piece: 0 = 300 (outside depth) - 264 (set back) - 2 x 18 (plinth front and back); " +
			"make the case larger, or what is taken off smaller"},
		{"base higher than the case", func(d *Design) { d.Base = Base{Kind: word("plinth"), Height: metric("700")} },
			"case.outside_height: nothing is left inside: -16 = 720 (outside height) - 18 (top) - 18 (bottom) - 700 (base); " +
				"make the case larger, or its members thinner"},
		{"base without height", func(d *Design) { d.Base.Kind = word("plinth") },
			"case.base.height: not given, and needed; give how high it lifts the case"},

		{"edging added to fronts", func(d *Design) {
			d.Bays = []Bay{{Openings: []Opening{{Doors: count(1)}}}}
			d.Edgings = []Edging{{On: word("fronts"), Material: word("back"), Fit: word("added")}}
		}, `case.edging 1.fit: strips added to a front would fill its gaps; set fit = "taken-off"`},
		{"edging under a door", func(d *Design) {
			d.Door.Fit, d.Door.Overlay = word("overlay"), metric("10")
			d.Bays = []Bay{{Openings: []Opening{{Doors: count(1)}}}}
			d.Edgings = []Edging{{Material: word("back"), Fit: word("added")}}
		}, `case.edging 1.fit: strips added before the panels would be in the way of a door; set fit = "taken-off"`},
		// The shelf begins behind the door, at 18; its strip would at 12.
		{"edging in an inset door", func(d *Design) {
			d.Bays = []Bay{{Openings: []Opening{{Shelves: count(1), Doors: count(1)}}}}
			d.Edgings = []Edging{{On: word("shelves"), Material: word("back"), Fit: word("added")}}
		}, `case.edging 1.fit: strips added before the panels would be in the way of a door; set fit = "taken-off"`},
		// The shelf begins at 38 and reaches 32 beside the opening, behind stiles.
		{"edging in a frame", func(d *Design) {
			*d = framed()
			d.Bays = []Bay{{Openings: []Opening{{Shelves: count(1)}}}}
			d.Edgings = []Edging{{On: word("shelves"), Material: word("back"), Fit: word("added")}}
		}, `case.edging 1.fit: strips added before the panels would be in the way of a stile; set fit = "taken-off"`},
		{"trim where the sides rise", func(d *Design) {
			d.Carcass.Top, d.Carcass.Joint, d.Carcass.JointDepth = word("over"), word("dado"), metric("6")
			d.Edgings = []Edging{{On: word("top"), Material: word("back")}}
		}, `case.edging 1.on: the sides rise 6 mm into the top, where its strips would be; ` +
			`set the carcass's joint = "butt", "dowel" or "loose-tenon", or fit = "added"`},
		// The strip begins at -6, the side at 0: the row would at -6 + 6.
		{"pins before the side", func(d *Design) {
			d.Shelf.PinInset = metric("6")
			d.Bays = []Bay{{Openings: []Opening{{Shelves: count(1)}}}}
			d.Edgings = []Edging{{On: word("shelves"), Material: word("back"), Fit: word("added")}}
		}, "case.shelf.pin_inset: a row of pins 6 mm from the front edge of a shelf would break out at that of the side; give a greater pin_inset, or thinner edging"},
		{"edging behind a frame", func(d *Design) {
			*d = framed()
			d.Edgings = []Edging{{Material: word("back")}}
		}, `case.edging 1.on: the front edges of its panels lie behind the frame; leave it out, or put it on "shelves" or "fronts"`},
		{"edging of no shelves", func(d *Design) { d.Edgings = []Edging{{On: word("shelves"), Material: word("back")}} },
			"case.edging 1.on: there is no panel for it: shelves; leave the edging out"},
		{"two edgings on one", func(d *Design) { d.Edgings = []Edging{{Material: word("back")}, {Material: word("back")}} },
			"case.edging 2.on: two edgings are on the carcass; leave one of the two out"},
		{"edging thicker than a front", func(d *Design) {
			made(d, "inset", DrawerBox{FrontHeight: metric("70")}, DrawerBox{})
			d.Edgings = []Edging{{On: word("fronts"), Material: word("spruce"), Thickness: metric("36")}}
		}, "case.edging 1.on: strips 36 mm thick leave nothing of a false front; make them thinner"},
		{"trim of a top between", func(d *Design) { d.Edgings = []Edging{{On: word("top"), Material: word("back")}} },
			`case.edging 1.on: a top between the sides shows its front edge alone; set top = "over", or put the edging on the "carcass"`},

		{"handle higher than a door", func(d *Design) {
			d.Bays = []Bay{{Openings: []Opening{{Doors: count(1)}}}}
			d.Door.HandleSpacing = metric("680") // 660 leaves 10 at both ends
		}, "case.door.handle_spacing: holes 680 mm apart do not go on a door 680 mm high; make handle_spacing at most 660 mm"},
		{"loose tenons of nothing", func(d *Design) { d.Carcass.Joint, d.LooseTenon.Length = word("loose-tenon"), metric("40") },
			"case.loose_tenon.material: no material is given; give the name of a material that the job offers"},
		{"loose tenons too thick", func(d *Design) {
			d.Carcass.Joint = word("loose-tenon")
			d.LooseTenon = LooseTenon{Material: word("spruce"), Length: metric("40"), Thickness: metric("10")}
		}, "case.loose_tenon.thickness: a tenon 10 mm thick takes more than half of the carcass, 18 mm thick; give about a third of it, 6 mm"},
		{"loose tenons too thick before a back", func(d *Design) { // 38 / 3 is more than two thirds of 38 - 14 - 6
			*d = framed()
			d.Frame.Corner, d.Frame.TenonLength = word("loose-tenon"), Length{}
			d.LooseTenon = LooseTenon{Material: word("spruce"), Length: metric("40"), Width: metric("30")}
			d.Back = Back{Fit: word("groove"), Material: word("back"), Depth: metric("6"), SetIn: metric("14")}
		}, "case.loose_tenon.thickness: a loose tenon ≈12.65 mm thick takes more than two thirds of the 18 mm that it has in the end of a rail; " +
			"make it thinner, or use thicker stock"},
		{"loose tenons too wide", func(d *Design) {
			d.Carcass.Joint = word("loose-tenon")
			d.LooseTenon = LooseTenon{Material: word("spruce"), Length: metric("40"), Width: metric("150")}
		}, "case.loose_tenon.width: a tenon 150 mm wide does not stand in the 150 mm that it has in the carcass; " +
			"make it narrower; two to four thicknesses are usual"},
		{"loose tenons too long", func(d *Design) {
			d.Carcass.Joint = word("loose-tenon")
			d.LooseTenon = LooseTenon{Material: word("spruce"), Length: metric("500")}
		}, "case.loose_tenon.length: loose tenons 500 mm long, 489 mm of it in each end, meet within a top 864 mm long; make them shorter"},
		{"dowels in what is too thin", func(d *Design) {
			d.Carcass.Joint, d.Carcass.Material, d.Carcass.Thickness = word("dowel"), word("ply"), metric("6")
		},
			"case.carcass.joint: a dowel 6 mm thick takes more than two thirds of the 6 mm that it has in the end of a top; use another joint, or thicker stock"},
		{"dowels too close", func(d *Design) { d.Carcass.Joint, d.OutsideDepth = word("dowel"), metric("30") },
			"case.carcass.joint: dowels 8 mm wide come too close in a joint 30 mm long at the end of a top; use another joint, or make the joint longer"},
		{"glue blocks without count", func(d *Design) { d.GlueBlock.Material = word("spruce") },
			"case.glue_block.count: not given, and needed; give how many there are to be, or leave the table out"},

		// Given without a use.
		{"loose tenons in no joint", func(d *Design) { d.LooseTenon.Material = word("spruce") },
			`case.loose_tenon: no joint has loose tenons; set joint or corner = "loose-tenon", or leave the table out`},
		{"corner of front edges", func(d *Design) { d.Edgings = []Edging{{Material: word("back"), Corner: word("miter")}} },
			"case.edging 1.corner: strips on the carcass meet at no corner; leave it out"},
		{"a plinth that reaches forward", func(d *Design) {
			d.Base = Base{Kind: word("plinth"), Height: metric("80"), Forward: metric("20")}
		}, `case.base.forward: it has no use, since kind is "plinth"; leave it out, or set kind = "feet"`},
		{"height of no base", func(d *Design) { d.Base.Height = metric("80") },
			`case.base.height: it has no use, since kind is "none"; leave it out, or set kind = "plinth" or "feet"`},
		{"depth of a butt joint", func(d *Design) { d.Carcass.JointDepth = metric("6") },
			`case.carcass.joint_depth: a depth of 6 mm has no use, since joint is "butt"; leave one of the two out`},
		{"depth of pins", func(d *Design) {
			d.Shelf.JointDepth = metric("6")
			d.Bays = []Bay{{Openings: []Opening{{Shelves: count(1)}}}}
		}, `case.shelf.joint_depth: a depth of 6 mm has no use, since held is "pins"; leave one of the two out`},
		{"depth of a box joint", func(d *Design) {
			made(d, "none", DrawerBox{})
			d.Drawer.Corner, d.Drawer.CornerDepth = word("box-joint"), metric("6")
		}, `case.drawer.corner_depth: a depth of 6 mm has no use, since corner is "box-joint"; leave one of the two out`},
		{"depth of a joint that is not known", func(d *Design) {
			d.Carcass.Joint, d.Carcass.JointDepth = word("dovetail"), metric("6")
		}, `case.carcass.joint: "dovetail" is not a word for this; write "butt", "rabbet", "dado", "dowel" or "loose-tenon"`},
		{"distance of a rabbet", func(d *Design) {
			d.Back = Back{Fit: word("rabbet"), Material: word("back"), Depth: metric("6"), SetIn: metric("10")}
		}, `case.back.set_in: set_in has no use, since fit is "rabbet"; leave one of the two out`},
		{"a mid rail that covers no divider", func(d *Design) {
			*d = twoDoors()
			d.Frame.MidRailWidth = metric("12")
		}, "case.frame.mid_rail_width: a mid rail 12 mm wide does not cover a divider 18 mm thick; give 18 mm or more, or a thinner divider"},
		{"a rabbet that leaves a thin wall", func(d *Design) {
			d.Back = Back{Fit: word("rabbet"), Material: word("back"), Depth: metric("17.8")}
		}, "case.back.depth: a rabbet 17.8 mm deep leaves 0.2 mm of the 18 mm that it is cut into; leave a quarter of an inch, 6 mm, of the panel or more"},
		{"feet farther forward than the case is deep", func(d *Design) {
			d.Base = Base{Kind: word("feet"), Height: metric("90"), Depth: metric("100"), Forward: metric("300.1")}
		}, "case.base.forward: feet that reach 300.1 mm forward stand farther before the case than it is deep, 300 mm (outside depth); " +
			"make it less; what the check of tipping asks for is enough"},
		{"loose tenons no mortise can take", func(d *Design) { // 11 in the face of 18
			d.Carcass.Joint = word("loose-tenon")
			d.LooseTenon = LooseTenon{Material: word("spruce"), Length: metric("86")}
		}, "case.loose_tenon.length: a mortise 76 mm deep in the end of a top, for a loose tenon 86 mm long, is deeper than cutters reach; " +
			"make it shorter; three to five times as long as it is thick in each piece will do"},
		{"a hanging rail behind drawers", func(d *Design) {
			made(d, "none", DrawerBox{})
			d.Base.Kind = word("hung")
		}, "case.base.kind: a hanging rail would be in the way of a drawer side; " +
			"make the rail narrower, what is in the way shorter behind, or set a grooved back in by the rail's thickness, 18 mm"},
		{"a hanging rail higher than its case", func(d *Design) { d.Base = Base{Kind: word("hung"), RailWidth: metric("685")} },
			"case.base.rail_width: a hanging rail 685 mm wide does not go between top and bottom, 684 mm apart; make it narrower"},
		{"three hanging rails", func(d *Design) { d.Base = Base{Kind: word("hung"), Rails: count(3)} },
			"case.base.rails: 3 hanging rails are more than one below the top and one above the bottom; give 1 or 2"},
		{"hanging rails of a plinth", func(d *Design) { d.Base = Base{Kind: word("plinth"), Height: metric("80"), Rails: count(2)} },
			`case.base.rails: it has no use, since kind is "plinth"; leave it out, or set kind = "hung"`},
		{"groove in the rear edge", func(d *Design) {
			d.Back = Back{Fit: word("groove"), Material: word("back"), Depth: metric("6"), SetIn: metric("0")}
		}, `case.back.set_in: 0 mm of wood behind the groove would break out; leave 6 mm, or set fit = "rabbet"`},
		{"frame of a panel case", func(d *Design) { d.Frame.Material = word("spruce") },
			`case.frame: a case of panels has no frame; set construction = "framed", or leave the table out`},
	} {
		t.Run(test.name, func(t *testing.T) {
			d := plain()
			test.change(&d)
			c, faults := Derive(d, workshop(stock.Millimeters))
			if c != nil {
				t.Errorf("a case came of it: %v", cut(c, stock.Ruler{}))
			}
			wantLines(t, []string{test.want}, spelled(faults))
		})
	}
}

func spelled(faults []fault.Fault) []string {
	var lines []string
	for _, f := range faults {
		lines = append(lines, f.Key+": "+f.Cause+"; "+f.Remedy)
	}
	return lines
}

// All faults come at once, by line; what was not written has the line of its
// table.
func TestFaultsComeTogetherInTheirOrder(t *testing.T) {
	d := plain()
	d.Carcass.Joint = Word{Value: "dado", Set: true, Line: 17}
	d.Back = Back{Line: 20, Fit: word("groove"), Material: Word{Value: "bakc", Set: true, Line: 21}}
	d.OutsideWidth = Length{Set: true, Line: 11}
	_, faults := Derive(d, workshop(stock.Millimeters))
	type place struct {
		Line int
		Key  string
	}
	var got []place
	for _, f := range faults {
		got = append(got, place{f.Line, f.Key})
	}
	want := []place{{11, "case.outside_width"}, {15, "case.carcass.joint_depth"}, {20, "case.back.depth"}, {21, "case.back.material"}}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
}

// Width, height and depth are settled even if one of them cannot be.
func TestEveryUnsettledDirectionIsTold(t *testing.T) {
	_, faults := Derive(Design{Carcass: Carcass{Material: word("carcass")}}, workshop(stock.Millimeters))
	if len(faults) != 3 {
		t.Errorf("faults = %q, want three", spelled(faults))
	}
}

// The job reader goes by the tags: each field has one, and no two of a table
// the same.
func TestEveryFieldHasItsKey(t *testing.T) {
	var visit func(table reflect.Type)
	visit = func(table reflect.Type) {
		var keys []string
		for i := range table.NumField() {
			field := table.Field(i)
			key := field.Tag.Get("toml")
			if key == "" || key != strings.ToLower(key) || slices.Contains(keys, key) {
				t.Errorf("%s.%s has the key %q", table.Name(), field.Name, key)
			}
			keys = append(keys, key)
			inner := field.Type
			if inner.Kind() == reflect.Slice {
				inner = inner.Elem()
			}
			if inner.Kind() == reflect.Struct && inner.NumField() > 0 && inner.Field(0).Name == "Line" {
				visit(inner)
			}
		}
	}
	visit(reflect.TypeFor[Design]())
}

// What a conflict's remedy says is enough: the case can then be built.
func TestTheRemedyOfAConflictHolds(t *testing.T) {
	for _, test := range []struct{ faulty, mended func(*Design) }{
		{func(d *Design) { d.OutsideHeight, d.Bays[0].Openings[0].Height = metric("300"), metric("264") },
			func(d *Design) { d.OutsideHeight, d.Bays[0].Openings[0].Height = metric("346"), Length{} }},
		{func(d *Design) { d.OutsideHeight, d.Bays[0].Openings[0].Height = metric("720"), metric("264") },
			func(d *Design) { d.Bays[0].Openings[0].Height = metric("684") }},
		{func(d *Design) { d.OutsideWidth, d.Bays[0].Width = metric("300"), metric("264") },
			func(d *Design) { d.OutsideWidth, d.Bays[0].Width = metric("366"), Length{} }},
		{func(d *Design) { d.InsideHeight, d.OutsideHeight = metric("300"), metric("336") },
			func(d *Design) { d.InsideHeight, d.OutsideHeight = metric("310"), metric("346") }},
	} {
		four := bottles()
		four.Across = count(4)
		d := contained(Opening{Contents: four})
		test.faulty(&d)
		if _, faults := Derive(d, workshop(stock.Millimeters)); len(faults) != 1 {
			t.Errorf("faults are %q, want one", spelled(faults))
		}
		test.mended(&d)
		derive(t, d, workshop(stock.Millimeters))
	}
}
