package casework

import (
	"reflect"
	"strings"
	"testing"

	"sawbill/stock"
)

// What each design must say of its assembly, in this order, and what it must not.
func TestAssemblyFollowsFromTheConstruction(t *testing.T) {
	drawer := Drawer{Front: word("inset"), Material: word("box"), BottomMaterial: word("back"), GrooveDepth: metric("6"), Corner: word("box-joint")}
	frame := Frame{Material: word("spruce"), StileWidth: metric("60"), RailWidth: metric("60"), Corner: word("half-lap"), Inset: metric("2")}
	measured := []Bay{{Openings: []Opening{{Drawers: []DrawerBox{{Width: metric("400"), Height: metric("100"), Depth: metric("300")}}}}}}
	shelves := []Bay{{Openings: []Opening{{Shelves: count(2)}, {}}}, {}}
	tests := []struct {
		reason string
		d      Design
		units  string
		says   []string
		not    []string
	}{
		{"an open box of butted panels", Design{}, "case carcass carcass carcass finish case",
			[]string{"Dry-fit sides, top and bottom:", "Glue the sides to bottom and top, on dowels or screws at the butt joints.", "diagonals", "finish the carcass."},
			[]string{"back", "shelves", "drawer", "door", "frame", "Cut "}},
		{"dowels are bored before, and hold the corners", Design{Carcass: Carcass{Joint: word("dowel")}}, "case carcass carcass carcass finish case",
			[]string{"Bore the holes for the dowels", "Glue the sides to bottom and top, on dowels."}, []string{"screws", "Cut "}},
		{"shelves on pins stay loose, and so does a back in a rabbet",
			Design{Back: Back{Fit: word("rabbet"), Material: word("back"), Depth: metric("6")}, Bays: shelves},
			"case carcass carcass carcass back finish shelves case",
			[]string{"Cut the rabbet for the back", "Bore the rows for the shelf pins", "with 1 partition and 1 divider:", "Fix 1 partition and 1 divider first", "the back, laid on dry",
				"Dry-fit the back in its rabbet", "it stays off until the finish is dry", "carcass and back apart", "shelves stay loose", "fix the back"}, []string{"Take the slides", "hinges"}},
		{"shelves in dados are glued in with the carcass",
			Design{Shelf: Shelf{Held: word("dado"), JointDepth: metric("6")}, Bays: shelves}, "case carcass carcass carcass finish case",
			[]string{"Cut dados, after", "1 partition, 1 divider and 2 fixed shelves first"}, []string{"stay loose"}},
		{"a back in a groove is closed in",
			Design{Back: Back{Fit: word("groove"), Material: word("back"), Depth: metric("6"), SetIn: metric("10")}},
			"case carcass carcass carcass finish case",
			[]string{"the groove for the back", "the back in its groove", "Slide the back into its groove, without glue, before the last panel"},
			[]string{"fix the back", "Dry-fit the back"}},
		{"a top over and a bottom under the sides", Design{Carcass: Carcass{Top: word("over"), Bottom: word("under"), Joint: word("rabbet"), JointDepth: metric("6")}},
			"case carcass carcass carcass finish case", []string{"Cut rabbets", "Glue the sides between bottom and top, in the rabbets."}, nil},
		{"drawers to be made behind false fronts", Design{Drawer: drawer, Bays: []Bay{{Openings: []Opening{{Drawers: []DrawerBox{{Count: count(2)}}}}}}},
			"case carcass carcass carcass drawers finish case",
			[]string{"to the sides at the box joints; the bottom lies loose", "false fronts last", "carcass and drawers apart", "hang the drawers"},
			[]string{"finished drawers", "while the back is off"}},
		{"frames come first, and hold the carcass",
			Design{Construction: word("framed"), Frame: frame, Back: Back{Fit: word("applied"), Material: word("back")}, Bays: measured},
			"case frames carcass carcass frames back drawers finish case",
			[]string{"of the front frame, then of the back frame, at the half-laps", "Glue the carcass to the back frame", "2 mm inside the frames' outer edges",
				"Dry-fit the back flush", "Try the finished drawers", "while the back is off", "fix the back"}, []string{"hinges", "false fronts", "the bottom lies loose"}},
		{"a grooved back goes into its frame",
			Design{Construction: word("framed"), Frame: frame, Back: Back{Fit: word("groove"), Material: word("back"), Depth: metric("6"), SetIn: metric("5")}},
			"case frames carcass carcass frames finish case",
			[]string{"The back goes into the back frame's groove"}, []string{"Slide the back"}},
	}
	from := workshop(stock.Millimeters)
	from.Materials["box"] = Material{Kind: stock.Board, Thicknesses: []stock.Length{metric("12").Value}}
	for _, tt := range tests {
		t.Run(tt.reason, func(t *testing.T) {
			tt.d.Carcass.Material = word("carcass")
			if !reflect.DeepEqual(tt.d.Bays, measured) { // those settle the case
				tt.d.OutsideWidth, tt.d.OutsideHeight, tt.d.OutsideDepth = metric("900"), metric("700"), metric("400")
			}
			var units, texts []string
			for _, s := range derive(t, tt.d, from).Assembly {
				units, texts = append(units, s.Unit), append(texts, s.Text)
			}
			if got := strings.Join(units, " "); got != tt.units {
				t.Errorf("units %s, want %s", got, tt.units)
			}
			all := strings.Join(texts, "\n")
			rest := all
			for _, want := range tt.says {
				_, after, found := strings.Cut(rest, want)
				if !found {
					t.Fatalf("%q is missing, or out of order, in\n%s", want, all)
				}
				rest = after
			}
			for _, no := range tt.not {
				if strings.Contains(all, no) {
					t.Errorf("%q is said in\n%s", no, all)
				}
			}
		})
	}
}

// Only what is there and comes on later is edged before it is fitted.
func TestEdgingStepNamesWhatThereIs(t *testing.T) {
	const always = "Glue the edging on, each strip cut to what is there, and trim it flush"
	for _, tt := range []struct {
		on   []string
		held string
		want string
	}{
		{[]string{"carcass"}, "pins", always + "."},
		{[]string{"shelves"}, "pins", always + "; that of loose shelves before they are fitted."},
		{[]string{"shelves"}, "butt", always + "."},
		{[]string{"carcass", "shelves", "fronts"}, "pins", always + "; that of loose shelves and doors before they are fitted."},
	} {
		d, from := edgedCase("carcass", "taken-off")
		d.Shelf.Held = word(tt.held)
		d.Bays[0].Openings[0].Doors = count(1)
		d.Edgings = nil
		for _, on := range tt.on {
			d.Edgings = append(d.Edgings, Edging{On: word(on), Material: word("oak")})
		}
		for _, s := range derive(t, d, from).Assembly {
			if s.Unit == "edging" && s.Text != tt.want {
				t.Errorf("on %v: %q, want %q", tt.on, s.Text, tt.want)
			}
		}
	}
}

func TestAssemblyIsShort(t *testing.T) {
	eachRandomCase(t, func(t *testing.T, _ Context, d Design, c *Case) {
		if n := len(c.Assembly); n < 6 || n > 13 {
			t.Errorf("%d steps: %v", n, c.Assembly)
		}
		for _, s := range c.Assembly {
			if s.Unit == "" || !strings.HasSuffix(s.Text, ".") || strings.Contains(s.Text, "  ") {
				t.Errorf("step %q", s)
			}
		}
	})
}
