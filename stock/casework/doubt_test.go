package casework

import (
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"sawbill/stock"
)

// bookshelf conflicts in all directions at once: bay 1 is wider than the case, its
// drawers are higher than the opening, and deeper.
func bookshelf() Design {
	d := plain()
	d.Bays = []Bay{measured(3, "900", "240", "400")}
	return d
}

// Each direction is judged by itself, whatever else could not be read.
func TestFaultsThatDoNotFollowAreToldWithDoubts(t *testing.T) {
	from := workshop(stock.Millimeters)
	all := []string{"case.outside_width", "case.outside_height", "case.outside_depth"}
	for _, test := range []struct {
		doubt string
		want  []string
	}{
		{"case.finish", all},
		{"case.shelf.load", all},
		{"case.edging 1.on", all},
		{"case.drawer.side_clearance", all[1:]},
		{"case.drawer.gap", []string{all[0], all[2]}},
		{"case.drawer.gap_behind", all[:2]},
		{"case.outside_height", []string{all[0], all[2]}},
		{"case.bay 1.opening 1.drawer 1.height", []string{all[0], all[2]}},
		{"case.bay 1.opening 1.drawer", nil},
		{"case.bay", nil},
		{"case.carcass.thickness", nil},
		{"case", nil},
	} {
		from.Doubts = []string{test.doubt}
		c, faults := Derive(bookshelf(), from)
		if c != nil {
			t.Errorf("%s in doubt: a case came of it", test.doubt)
		}
		var got []string
		for _, f := range faults {
			got = append(got, f.Key)
		}
		if !slices.Equal(got, test.want) {
			t.Errorf("%s in doubt: faults at %q, want %q", test.doubt, got, test.want)
		}
	}
}

// What the stock may have is not said to be missing; what is wrong with the case
// itself is told.
func TestStockInDoubt(t *testing.T) {
	d := plain()
	d.Carcass.Material = word("unheard of")
	d.Back = Back{Fit: word("groove"), Material: word("ply"), SetIn: metric("5")}
	d.Bays = []Bay{{Openings: []Opening{{Doors: count(3)}}}}
	from := workshop(stock.Millimeters)
	from.StockInDoubt = true
	_, faults := Derive(d, from)
	wantLines(t, []string{
		"case.bay 1.opening 1.doors: an opening has one door or two, and 3 are given; give 1 or 2, or make more bays of it",
		"case.back.depth: a groove needs a depth, and none is given; a quarter to a third of the panel's thickness is usual",
	}, spelled(faults))
}

// A word that is no good is told once, and what has a use by the right word is not
// said to have none.
func TestNothingFollowsFromAWordInDoubt(t *testing.T) {
	d := plain()
	made(&d, "overley", DrawerBox{})
	d.Drawer.Overlay = metric("7")
	d.Bays[0].Openings = append(d.Bays[0].Openings, Opening{Doors: count(1)})
	d.Door = Door{Fit: word("overlai"), Overlay: metric("7")}
	d.Base = Base{Kind: word("plint"), Height: metric("80")}
	_, faults := Derive(d, workshop(stock.Millimeters))
	var got []string
	for _, f := range faults {
		got = append(got, f.Key)
	}
	if want := []string{"case.base.kind", "case.drawer.front", "case.door.fit"}; !slices.Equal(got, want) {
		t.Errorf("faults at %q, want %q", got, want)
	}
}

// keyed are keys of a random design, some of them in numbered tables.
var keyed = []string{"outside_width", "outside_depth", "construction", "carcass", "carcass.material", "carcass.joint", "frame.stile_width",
	"back.fit", "back.depth", "base.kind", "drawer.front", "drawer.material", "drawer.gap", "door.fit", "door.overlay", "shelf", "finish",
	"bay 1.opening 1.doors", "bay 2.opening 1", "bay 2.opening 1.drawer 1.count", "edging 1.on", "loose_tenon.length", "glue_block.count"}

// Of a design without faults none is told, whatever is in doubt: what was not
// given there would be missing.
func TestDoubtsMakeNoFaults(t *testing.T) {
	eachRandomCase(t, func(t *testing.T, from Context, d Design, _ *Case) {
		rnd := rand.New(rand.NewPCG(uint64(d.OutsideWidth.Value), 3))
		doubt := keyed[rnd.IntN(len(keyed))]
		from.Doubts = []string{"case." + doubt}
		forget(&d, doubt)
		if _, faults := Derive(d, from); len(faults) > 0 {
			t.Errorf("%s in doubt: %q", doubt, spelled(faults))
		}
	})
}

// forget takes out of a design what the job reader could not read.
func forget(d *Design, key string) {
	switch key {
	case "outside_width":
		d.OutsideWidth = Length{}
	case "outside_depth":
		d.OutsideDepth = Length{}
	case "construction":
		d.Construction = Word{}
	case "carcass":
		d.Carcass = Carcass{}
	case "carcass.material":
		d.Carcass.Material = Word{}
	case "carcass.joint":
		d.Carcass.Joint = Word{}
	case "frame.stile_width":
		d.Frame.StileWidth = Length{}
	case "back.fit":
		d.Back.Fit = Word{}
	case "back.depth":
		d.Back.Depth = Length{}
	case "base.kind":
		d.Base.Kind = Word{}
	case "drawer.front":
		d.Drawer.Front = Word{}
	case "drawer.material":
		d.Drawer.Material = Word{}
	case "drawer.gap":
		d.Drawer.Gap = Length{}
	case "door.fit":
		d.Door.Fit = Word{}
	case "door.overlay":
		d.Door.Overlay = Length{}
	case "shelf":
		d.Shelf = Shelf{}
	case "finish":
		d.Finish = Coating{}
	case "loose_tenon.length":
		d.LooseTenon.Length = Length{}
	case "glue_block.count":
		d.GlueBlock.Count = Count{}
	case "edging 1.on":
		if len(d.Edgings) > 0 {
			d.Edgings[0].On = Word{}
		}
	default: // of a bay
		if strings.HasSuffix(key, "doors") {
			d.Bays[0].Openings[0].Doors = Count{}
		} else if len(d.Bays) > 1 && strings.HasSuffix(key, "opening 1") {
			d.Bays[1].Openings[0] = Opening{}
		} else if len(d.Bays) > 1 && len(d.Bays[1].Openings[0].Drawers) > 0 {
			d.Bays[1].Openings[0].Drawers[0].Count = Count{}
		}
	}
}
