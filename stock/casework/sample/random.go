package sample

import (
	"math/rand/v2"
	"slices"

	"sawbill/stock"
	"sawbill/stock/casework/design"
)

// Randoms is how many designs Each gives.
const Randoms = 200

// Each hands on the same random designs every time.
func Each(check func(seed uint64, d design.Design)) {
	for seed := range uint64(Randoms) {
		check(seed, Random(rand.New(rand.NewPCG(seed, 1))))
	}
}

// Random is a case that can be built: large enough for all that is in
// it. Every length that has a default in two units is given.
func Random(rnd *rand.Rand) design.Design {
	mm := func(low, high int) design.Length {
		tenths := 10*low + rnd.IntN(10*(high-low)+1)
		return design.Length{Value: stock.Length(tenths) * stock.Millimeter / 10, Set: true}
	}
	joint := func() (design.Word, design.Length) {
		if rnd.IntN(2) == 0 {
			return design.Word{}, design.Length{}
		}
		return Word("dado"), mm(3, 8)
	}
	d := design.Design{
		OutsideWidth: mm(1800, 2400), OutsideHeight: mm(1500, 2200), OutsideDepth: mm(400, 700),
		Carcass: design.Carcass{Material: Word("carcass"), Top: OneWord(rnd, "between", "over"), Bottom: OneWord(rnd, "between", "under")},
		Shelf:   design.Shelf{Clearance: mm(0, 4), SetBack: mm(0, 20)},
		Drawer: design.Drawer{
			Front: OneWord(rnd, "none", "inset", "overlay"), Gap: mm(1, 4), SideClearance: mm(5, 14), HeightClearance: mm(5, 15),
			Material: Word("box"), BottomMaterial: Word("back"), GrooveDepth: Metric("6"), BottomClearance: mm(0, 3),
		},
		Door: design.Door{Fit: OneWord(rnd, "inset", "overlay"), Gap: mm(0, 4), HandleInset: mm(20, 80)},
		Back: design.Back{Fit: OneWord(rnd, "applied", "rabbet", "groove"), Material: Word("back"), Clearance: mm(0, 3)},
	}
	switch rnd.IntN(3) {
	case 0:
		d.Base = design.Base{Kind: Word("plinth"), Height: mm(60, 120), SetBack: mm(0, 80)}
	case 1:
		d.Base = design.Base{Kind: Word("feet"), Height: mm(30, 150), Depth: mm(50, 100), Forward: mm(0, 80)}
	}
	if d.Drawer.Front.Value == "overlay" {
		d.Drawer.Overlay = mm(2, 5)
	}
	if d.Door.Fit.Value == "overlay" {
		d.Door.Overlay = mm(3, 7)
	}
	d.Carcass.Joint, d.Carcass.JointDepth = joint()
	if !d.Carcass.Joint.Set && rnd.IntN(2) == 0 {
		d.Carcass.Joint = Word("loose-tenon")
		d.LooseTenon = design.LooseTenon{Material: Word("spruce"), Length: mm(30, 60), Spacing: mm(100, 200)}
	}
	if !d.Carcass.Joint.Set {
		d.Carcass.Joint = OneWord(rnd, "butt", "dowel")
	}
	d.GlueBlock = design.Joinery{Count: Count(rnd.IntN(3)), Length: mm(30, 60), Width: mm(20, 30)}
	if d.GlueBlock.Count.Value > 0 {
		d.GlueBlock.Material = Word("spruce")
	}
	d.Partition.Joint, d.Partition.JointDepth = joint()
	d.Divider.Joint, d.Divider.JointDepth = joint()
	for _, joint := range []*design.Word{&d.Partition.Joint, &d.Divider.Joint} {
		if !joint.Set {
			*joint = OneWord(rnd, "butt", "dowel")
		}
	}
	if d.Back.Fit.Value != "applied" {
		d.Back.Depth = mm(3, 8)
	}
	if d.Back.Fit.Value == "groove" {
		d.Back.SetIn = mm(4, 10)
	}
	if rnd.IntN(2) == 0 {
		d.Construction = Word("framed")
		d.Frame = design.Frame{Material: Word("spruce"), StileWidth: mm(40, 60), RailWidth: mm(40, 60),
			Inset: mm(0, 15), Corner: OneWord(rnd, "butt", "half-lap", "bridle", "box-joint", "dowel")}
		if rnd.IntN(2) == 0 {
			d.Frame.MidRailWidth = mm(40, 60)
		}
	}
	moreJoints(&d, rnd, mm)
	d.Bays = []design.Bay{{Openings: []design.Opening{{Shelves: Count(1), Doors: Count(1)}}}}
	for range rnd.IntN(3) {
		var b design.Bay
		if len(d.Bays) > 0 && rnd.IntN(2) == 0 { // the first always shares
			b.Width = mm(250, 400)
		}
		for k := range 1 + rnd.IntN(3) {
			var o design.Opening
			if k > 0 && rnd.IntN(2) == 0 { // likewise
				o.Height = mm(200, 300)
			}
			switch rnd.IntN(3) {
			case 0:
				o.Shelves, o.Doors = Count(1+rnd.IntN(2)), Count(rnd.IntN(3))
			case 1:
				n := 1 + rnd.IntN(3)
				o.Drawers = []design.DrawerBox{{Count: Count(n)}}
				if rnd.IntN(2) == 0 {
					o.Doors = Count(1 + rnd.IntN(2))
					d.Drawer.GapBefore = mm(0, 30)
				}
				if o.Doors.Value == 1 {
					o.Hinged = OneWord(rnd, "left", "right")
				}
				if n > 1 && rnd.IntN(2) == 0 {
					o.Graded = mm(1, 12)
				}
			}
			b.Openings = append(b.Openings, o)
		}
		d.Bays = append(d.Bays, b)
	}
	d.Edgings = randomEdgings(rnd, d, mm)
	return d
}

// moreJoints chooses among the joints that randomDesign leaves out.
func moreJoints(d *design.Design, rnd *rand.Rand, mm func(low, high int) design.Length) {
	if d.Carcass.Joint.Value == "dado" && rnd.IntN(2) == 0 {
		d.Carcass.Joint = Word("rabbet")
	}
	switch held := OneWord(rnd, "pins", "dado", "butt"); held.Value {
	case "dado":
		d.Shelf.Held, d.Shelf.JointDepth, d.Shelf.Clearance = held, mm(3, 8), design.Length{}
	case "butt":
		d.Shelf.Held, d.Shelf.Clearance = held, design.Length{}
	}
	switch corner := OneWord(rnd, "butt", "rabbet", "box-joint"); corner.Value {
	case "rabbet":
		d.Drawer.Corner, d.Drawer.CornerDepth = corner, mm(3, 6)
	case "box-joint":
		d.Drawer.Corner = corner
	}
	if d.Construction.Value != "framed" {
		return
	}
	switch rnd.IntN(4) {
	case 0:
		d.Frame.Corner, d.Frame.TenonLength = Word("mortise-and-tenon"), mm(20, 30)
	case 1:
		d.Frame.Corner = Word("loose-tenon")
		if !d.LooseTenon.Material.Set {
			d.LooseTenon = design.LooseTenon{Material: Word("spruce"), Length: mm(30, 50)}
		}
		d.LooseTenon.Width = mm(20, 30) // across a rail, which is no narrower than 40
	}
}

// randomEdgings are on panels that there are: shelves and doors in the first bay.
func randomEdgings(rnd *rand.Rand, d design.Design, mm func(low, high int) design.Length) []design.Edging {
	on := []string{"shelves", "fronts"}
	if d.Construction.Value != "framed" {
		on = append(on, "carcass")
		if d.Carcass.Top.Value == "over" && d.Carcass.JointDepth.Value == 0 {
			on = append(on, "top")
		}
		if len(d.Bays) > 1 {
			on = append(on, "partitions")
		}
		if slices.ContainsFunc(d.Bays, func(b design.Bay) bool { return len(b.Openings) > 1 }) {
			on = append(on, "dividers")
		}
	}
	var all []design.Edging
	for _, panels := range on {
		e := design.Edging{On: Word(panels), Material: Word("spruce"), Thickness: mm(3, 10)}
		if panels == "top" { // what is left must hold dowels
			e.Thickness = mm(3, 6)
		}
		if panels == "fronts" || panels == "top" {
			e.Corner = OneWord(rnd, "butt", "miter")
		}
		if rnd.IntN(2) == 0 {
			all = append(all, e)
		}
	}
	return all
}

// OneWord is one of some words.
func OneWord(rnd *rand.Rand, words ...string) design.Word { return Word(words[rnd.IntN(len(words))]) }
