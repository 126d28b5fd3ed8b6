package casework

import (
	"testing"

	"sawbill/stock"
)

// contained is a case of one bay whose openings are to take contents, and
// nothing is said of its size.
func contained(openings ...Opening) Design {
	return Design{Carcass: Carcass{Material: word("carcass")}, Bays: []Bay{{Openings: openings}}}
}

// bottles are 80 x 300 x 80.
func bottles() Contents {
	return Contents{Name: word("bottles"), Width: metric("80"), Height: metric("300"), Depth: metric("80")}
}

// books is an opening for books so high and 220 deep; they fill any width.
func books(height string) Opening {
	return Opening{Contents: Contents{Name: word("books"), Height: metric(height), Depth: metric("220")}}
}

// Twelve bottles, six abreast on two levels:
//
//	width   6 x 80 + 10 = 490          outside + 2 x 18 = 526
//	height  2 x 300 + 2 x 10 + 18 = 638          + 2 x 18 = 674
//	depth   80 + 10 = 90               with its back + 6 = 96
//
// The shelf lies loose, 3 shorter.
func TestShelfForTwelveBottles(t *testing.T) {
	in := bottles()
	in.Across = count(6)
	d := contained(Opening{Shelves: count(1), Contents: in})
	d.Back = Back{Fit: word("applied"), Material: word("back")}
	from := workshop(stock.Millimeters)
	c := derive(t, d, from)
	wantLines(t, []string{
		"outside width 526 = 490 (inside width) + 2 x 18 (side)",
		"inside width 490 = 6 x 80 (bottles) + 10 (clearance)",
		"bay 1 width 490 = 6 x 80 (bottles) + 10 (clearance)",
		"outside height 674 = 638 (inside height) + 18 (top) + 18 (bottom)",
		"inside height 638 = 2 x 300 (bottles) + 2 x 10 (clearance) + 18 (shelf)",
		"bay 1 opening 1 height 638 = 2 x 300 (bottles) + 2 x 10 (clearance) + 18 (shelf)",
		"outside depth 96 = 90 (inside depth) + 6 (back)",
		"inside depth 90 = 80 (bottles) + 10 (clearance)",
	}, derivations(c, from.Ruler))
	wantLines(t, []string{
		"2 side 674 x 90 x 18 carcass",
		"1 top 490 x 90 x 18 carcass",
		"1 bottom 490 x 90 x 18 carcass",
		"1 back 674 x 526 x 6 back",
		"1 shelf 487 x 90 x 18 carcass",
	}, cut(c, from.Ruler))
	if got, want := c.Openings[0].Holds, "1 shelf, 12 bottles"; got != want {
		t.Errorf("holds %q, want %q", got, want)
	}
}

// Rows on one another share one clearance, here the default of a job in inches:
// 3 x 4 + 3/8 = 12 3/8 high, 2 x 6 + 3/8 = 12 3/8 deep.
func TestPiecesOnAndBehindOneAnother(t *testing.T) {
	d := contained(Opening{Contents: Contents{
		Height: imperial("4"), Depth: imperial("6"), High: count(3), Deep: count(2)}})
	d.InsideWidth = imperial("20")
	from := workshop(stock.Inches)
	c := derive(t, d, from)
	wantLines(t, []string{
		"inside height 12 3/8 = 3 x 4 (pieces) + 3/8 (clearance)",
		"bay 1 opening 1 height 12 3/8 = 3 x 4 (pieces) + 3/8 (clearance)",
		"inside depth 12 3/8 = 2 x 6 (pieces) + 3/8 (clearance)",
	}, only(derivations(c, from.Ruler), "(clearance)"))
	if got, want := c.Openings[0].Holds, "pieces"; got != want {
		t.Errorf("holds %q, want %q", got, want)
	}
}

// Books of three heights take 310, 250 and 190. With two dividers of 18 that is
// 786 inside, 822 outside. A case of 900 leaves 864 - 786 = 78 more, 26 for each;
// an open space below takes all of what it leaves, 78 - 18 = 60.
func TestBooksOfThreeHeights(t *testing.T) {
	for _, test := range []struct {
		name   string
		change func(*Design)
		want   []string
	}{
		{"as high as the books", func(*Design) {}, []string{
			"outside height 822 = 786 (inside height) + 18 (top) + 18 (bottom)",
			"inside height 786 = 310 (opening 1) + 250 (opening 2) + 190 (opening 3) + 2 x 18 (divider)",
			"bay 1 opening 1 height 310 = 300 (books) + 10 (clearance)",
			"bay 1 opening 2 height 250 = 240 (books) + 10 (clearance)",
			"bay 1 opening 3 height 190 = 180 (books) + 10 (clearance)",
		}},
		{"higher", func(d *Design) { d.OutsideHeight = metric("900") }, []string{
			"outside height 900 = 900 (given)",
			"inside height 864 = 900 (outside height) - 18 (top) - 18 (bottom)",
			"bay 1 opening 1 height 336 = 300 (books) + 10 (clearance) + 78 / 3 (left over)",
			"bay 1 opening 2 height 276 = 240 (books) + 10 (clearance) + 78 / 3 (left over)",
			"bay 1 opening 3 height 216 = 180 (books) + 10 (clearance) + 78 / 3 (left over)",
		}},
		{"higher, with an open space", func(d *Design) {
			d.OutsideHeight = metric("900")
			d.Bays[0].Openings = append(d.Bays[0].Openings, Opening{})
		}, []string{
			"outside height 900 = 900 (given)",
			"inside height 864 = 900 (outside height) - 18 (top) - 18 (bottom)",
			"bay 1 opening 1 height 310 = 300 (books) + 10 (clearance)",
			"bay 1 opening 2 height 250 = 240 (books) + 10 (clearance)",
			"bay 1 opening 3 height 190 = 180 (books) + 10 (clearance)",
			"bay 1 opening 4 height 60 = 864 (inside height) - 3 x 18 (divider) - 310 (opening 1) - 250 (opening 2) - 190 (opening 3)",
		}},
		{"one opening higher as given", func(d *Design) { d.Bays[0].Openings[0].Height = metric("320") }, []string{
			"outside height 832 = 796 (inside height) + 18 (top) + 18 (bottom)",
			"inside height 796 = 320 (opening 1) + 250 (opening 2) + 190 (opening 3) + 2 x 18 (divider)",
			"bay 1 opening 1 height 320 = 320 (given)",
			"bay 1 opening 2 height 250 = 240 (books) + 10 (clearance)",
			"bay 1 opening 3 height 190 = 180 (books) + 10 (clearance)",
		}},
		// The higher bay settles the case: 786 - 310 = 476 more for the lower.
		{"beside a lower bay", func(d *Design) { d.Bays = append([]Bay{{Openings: []Opening{books("300")}}}, d.Bays...) }, []string{
			"outside height 822 = 786 (inside height) + 18 (top) + 18 (bottom)",
			"inside height 786 = 310 (opening 1) + 250 (opening 2) + 190 (opening 3) + 2 x 18 (divider)",
			"bay 1 opening 1 height 786 = 300 (books) + 10 (clearance) + 476 (left over)",
			"bay 2 opening 1 height 310 = 300 (books) + 10 (clearance)",
			"bay 2 opening 2 height 250 = 240 (books) + 10 (clearance)",
			"bay 2 opening 3 height 190 = 180 (books) + 10 (clearance)",
		}},
	} {
		t.Run(test.name, func(t *testing.T) {
			d := contained(books("300"), books("240"), books("180"))
			d.OutsideWidth = metric("900")
			test.change(&d)
			from := workshop(stock.Millimeters)
			wantLines(t, test.want, only(derivations(derive(t, d, from), from.Ruler), "height"))
		})
	}
}

// The widest contents count: 330, not 210, in bay 1, whichever opening they are
// in; 160 in bay 2. With a partition of 18 that is 508 inside, 544 outside. A case
// of 600 leaves 56 more, 28 for each bay.
func TestWidestContentsSettleABay(t *testing.T) {
	wide := func(size string, across int) Opening {
		return Opening{Contents: Contents{Name: word("boxes"), Width: metric(size), Across: count(across)}}
	}
	from := workshop(stock.Millimeters)
	for _, openings := range [][]Opening{{wide("80", 4), wide("200", 1)}, {wide("200", 1), wide("80", 4)}} {
		d := contained(openings...)
		d.OutsideHeight, d.OutsideDepth = metric("720"), metric("300")
		d.Bays = append(d.Bays, Bay{Openings: []Opening{wide("150", 1)}})
		wantLines(t, []string{
			"outside width 544 = 508 (inside width) + 2 x 18 (side)",
			"inside width 508 = 330 (bay 1) + 160 (bay 2) + 18 (partition)",
			"bay 1 width 330 = 4 x 80 (boxes) + 10 (clearance)",
			"bay 2 width 160 = 150 (boxes) + 10 (clearance)",
		}, only(derivations(derive(t, d, from), from.Ruler), "width"))
		d.OutsideWidth = metric("600")
		wantLines(t, []string{
			"bay 1 width 358 = 4 x 80 (boxes) + 10 (clearance) + 56 / 2 (left over)",
			"bay 2 width 188 = 150 (boxes) + 10 (clearance) + 56 / 2 (left over)",
		}, only(derivations(derive(t, d, from), from.Ruler), "(boxes)"))
	}
}

// What stands before the contents comes to their depth of 220 + 10.
func TestDepthForContents(t *testing.T) {
	for _, test := range []struct {
		name   string
		change func(*Design)
		want   string
	}{
		{"open", func(*Design) {}, "inside depth 230 = 220 (books) + 10 (clearance)"},
		{"behind an inset door", func(d *Design) { d.Bays[0].Openings[0].Doors = count(1) },
			"inside depth 248 = 220 (books) + 10 (clearance) + 18 (inset door)"},
		{"behind an overlay door", func(d *Design) {
			d.Bays[0].Openings[0].Doors = count(1)
			d.Door = Door{Fit: word("overlay"), Overlay: metric("10")}
		}, "inside depth 230 = 220 (books) + 10 (clearance)"},
		{"on a shelf set back", func(d *Design) {
			d.Bays[0].Openings[0].Shelves = count(1)
			d.Shelf.SetBack = metric("15")
		}, "inside depth 245 = 220 (books) + 10 (clearance) + 15 (set back)"},
		{"behind a frame thicker than its door", func(d *Design) {
			d.Bays[0].Openings[0].Doors = count(1)
			d.Construction, d.Frame = word("framed"), framed().Frame
		}, "inside depth 268 = 220 (books) + 10 (clearance) + 38 (front frame)"},
	} {
		t.Run(test.name, func(t *testing.T) {
			d := contained(books("300"))
			d.OutsideWidth = metric("900")
			test.change(&d)
			from := workshop(stock.Millimeters)
			wantLines(t, []string{test.want}, only(only(derivations(derive(t, d, from), from.Ruler), "depth"), "(clearance)"))
		})
	}
}

// To the last unit of Length: a case that is less than three rows of books need
// is refused; in any other each shelf space takes its row, and the bay is full.
func TestContentsAreAMinimum(t *testing.T) {
	from := workshop(stock.Millimeters)
	need := metric("822").Value
	for more := -stock.Length(2); more < 8; more++ {
		d := contained(books("300"), books("240"), books("180"))
		d.OutsideWidth, d.OutsideHeight = metric("900"), Length{Value: need + more, Set: true}
		c, faults := Derive(d, from)
		if more < 0 {
			if c != nil || len(faults) != 1 {
				t.Errorf("%d less than needed: faults %q", -more, spelled(faults))
			}
			continue
		}
		if c == nil {
			t.Fatalf("%d more than needed: faults %q", more, spelled(faults))
		}
		sum := 2 * 18 * stock.Millimeter // dividers
		for i, least := range []string{"310", "250", "190"} {
			if c.Openings[i].Height < metric(least).Value {
				t.Errorf("%d more: opening %d is %d high", more, i+1, c.Openings[i].Height)
			}
			sum += c.Openings[i].Height
		}
		if short := sizeNamed(t, c, "inside height") - sum; short < 0 || short >= 3 {
			t.Errorf("%d more: the openings fall short by %d", more, short)
		}
	}
}

func TestFaultsOfContents(t *testing.T) {
	four := bottles()
	four.Across = count(4)
	for _, test := range []struct {
		name   string
		change func(*Design)
		want   string
	}{
		{"case narrower", func(d *Design) { d.OutsideWidth = metric("300") },
			"case.outside_width: outside width 300 mm is given, but bay 1 needs 366 mm: " +
				"inside it is 330 = 4 x 80 (bottles) + 10 (clearance), and leaves 264 = 300 (outside width) - 2 x 18 (side); " +
				"make outside_width 366 mm or more, or leave it out"},
		{"inside lower", func(d *Design) { d.InsideHeight = metric("305") },
			"case.inside_height: inside height 305 mm is given, but bay 1 needs 310 mm: 310 = 300 (bottles) + 10 (clearance); " +
				"make inside_height 310 mm or more, or leave it out"},
		// One height, refused twice: one fault, and what makes it good.
		{"opening and case lower", func(d *Design) {
			d.OutsideHeight, d.Bays[0].Openings[0].Height = metric("300"), metric("264")
		}, "case.outside_height: outside height 300 mm is given, but bay 1 needs 346 mm: " +
			"inside it is 310 = 300 (bottles) + 10 (clearance), and leaves 264 = 300 (outside height) - 18 (top) - 18 (bottom); " +
			"and as height of opening 1 264 mm is given, but the contents need 310 = 300 (bottles) + 10 (clearance); " +
			"make outside_height 346 mm or more or leave it out, and leave out the height of opening 1"},
		// 720 - 36 = 684 is all that it can be.
		{"opening lower, the case high enough", func(d *Design) {
			d.OutsideHeight, d.Bays[0].Openings[0].Height = metric("720"), metric("264")
		}, "case.bay 1.opening 1.height: height 264 mm is given, but the contents need 310 = 300 (bottles) + 10 (clearance); " +
			"make it 684 mm or leave it out"},
		{"bay and case narrower", func(d *Design) {
			d.OutsideWidth, d.Bays[0].Width = metric("300"), metric("264")
		}, "case.outside_width: outside width 300 mm is given, but bay 1 needs 366 mm: " +
			"inside it is 330 = 4 x 80 (bottles) + 10 (clearance), and leaves 264 = 300 (outside width) - 2 x 18 (side); " +
			"and as width of bay 1 264 mm is given, but the contents need 330 = 4 x 80 (bottles) + 10 (clearance); " +
			"make outside_width 366 mm or more or leave it out, and leave out the width of bay 1"},
		{"case shallower", func(d *Design) { d.OutsideDepth = metric("85") },
			"case.outside_depth: outside depth 85 mm is given, but what goes into bay 1 needs 90 mm: inside it is 90 = 80 (bottles) + 10 (clearance), " +
				"and leaves 85 mm (outside depth); make outside_depth 90 mm or more, or leave it out"},
		{"bay narrower", func(d *Design) { d.Bays[0].Width = metric("320") },
			"case.bay 1.width: width 320 mm is given, but the contents need 330 = 4 x 80 (bottles) + 10 (clearance); " +
				"make it 330 mm or more, or leave it out"},
		{"opening lower", func(d *Design) { d.Bays[0].Openings[0].Height = metric("300") },
			"case.bay 1.opening 1.height: height 300 mm is given, but the contents need 310 = 300 (bottles) + 10 (clearance); " +
				"make it 310 mm or more, or leave it out"},
		{"narrower drawers above", func(d *Design) {
			d.Bays[0].Openings = append(measured(1, "300", "100", "80").Openings, d.Bays[0].Openings...)
		}, "case.bay 1.opening 2.contents: the contents need a width of 330 = 4 x 80 (bottles) + 10 (clearance), " +
			"but what else stands in bay 1 needs 325.4 = 300 (drawer) + 2 x 12.7 (side clearance); put them in a bay of their own"},
		{"narrower drawers above, and their width given", func(d *Design) {
			d.Bays[0].Openings = append(measured(1, "300", "100", "80").Openings, d.Bays[0].Openings...)
			d.Bays[0].Width = metric("325.4")
		}, "case.bay 1.opening 2.contents: the contents need a width of 330 = 4 x 80 (bottles) + 10 (clearance), " +
			"but what else stands in bay 1 needs 325.4 = 300 (drawer) + 2 x 12.7 (side clearance); put them in a bay of their own"},
		{"a lower stack beside", func(d *Design) { d.Bays = append([]Bay{measured(2, "300", "100", "80")}, d.Bays...) },
			"case.bay 2: bay 2 needs an inside height of 310 mm, but bay 1 needs 209 mm; " +
				"leave out one height in the smaller of the two, or add an open space to it"},
		{"drawers within", func(d *Design) { d.Bays[0].Openings[0].Drawers = measured(1, "300", "100", "80").Openings[0].Drawers },
			"case.bay 1.opening 1.contents: an opening holds contents or drawers, and both are given; make two openings of it"},
		{"rows and spaces", func(d *Design) {
			d.Bays[0].Openings[0].Shelves, d.Bays[0].Openings[0].Contents.High = count(3), count(2)
		}, "case.bay 1.opening 1.contents.high: 3 shelves make 4 spaces, each for one row, and 2 rows are given; " +
			"make high 4 or leave it out, or change shelves"},
		{"no size", func(d *Design) {
			d.Bays[0].Openings[0].Contents = Contents{Name: word("air")}
			d.InsideWidth, d.InsideHeight, d.InsideDepth = metric("400"), metric("400"), metric("400")
		},
			"case.bay 1.opening 1.contents: contents without a size or a weight claim nothing; give width, height or depth of one piece, or the weight of all"},
		{"a number without its size", func(d *Design) {
			d.Bays[0].Openings[0].Contents.Width, d.OutsideWidth = Length{}, metric("900")
		}, "case.bay 1.opening 1.contents.across: across has no use without a width; give the width of one piece, or leave across out"},
	} {
		t.Run(test.name, func(t *testing.T) {
			d := contained(Opening{Contents: four})
			test.change(&d)
			c, faults := Derive(d, workshop(stock.Millimeters))
			if c != nil {
				t.Errorf("a case came of it: %v", cut(c, stock.Ruler{}))
			}
			wantLines(t, []string{test.want}, spelled(faults))
		})
	}
}
