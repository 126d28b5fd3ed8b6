package casework

import (
	"math/rand/v2"
	"reflect"
	"slices"
	"strings"
	"testing"

	"sawbill/stock"

	"github.com/google/go-cmp/cmp"
)

// randomDesign is a case that can be built: large enough for all that is in
// it. Every length that has a default in two units is given.
func randomDesign(rnd *rand.Rand) Design {
	mm := func(low, high int) Length {
		tenths := 10*low + rnd.IntN(10*(high-low)+1)
		return Length{Value: stock.Length(tenths) * stock.Millimetre / 10, Set: true}
	}
	joint := func() (Word, Length) {
		if rnd.IntN(2) == 0 {
			return Word{}, Length{}
		}
		return word("dado"), mm(3, 8)
	}
	d := Design{
		OutsideWidth: mm(1800, 2400), OutsideHeight: mm(1500, 2200), OutsideDepth: mm(400, 700),
		Carcass: Carcass{Material: word("carcass"), Top: oneWord(rnd, "between", "over"), Bottom: oneWord(rnd, "between", "under")},
		Shelf:   Shelf{Clearance: mm(0, 4), SetBack: mm(0, 20)},
		Drawer: Drawer{
			Front: oneWord(rnd, "none", "inset", "overlay"), Gap: mm(1, 4), SideClearance: mm(5, 14), HeightClearance: mm(5, 15),
			Material: word("box"), BottomMaterial: word("back"), GrooveDepth: metric("6"), BottomClearance: mm(0, 3),
		},
		Door: Door{Fit: oneWord(rnd, "inset", "overlay"), Gap: mm(0, 4), HandleInset: mm(20, 80)},
		Back: Back{Fit: oneWord(rnd, "applied", "rabbet", "groove"), Material: word("back"), Clearance: mm(0, 3)},
	}
	switch rnd.IntN(3) {
	case 0:
		d.Base = Base{Kind: word("plinth"), Height: mm(60, 120), SetBack: mm(0, 80)}
	case 1:
		d.Base = Base{Kind: word("feet"), Height: mm(30, 150), Depth: mm(50, 100), Forward: mm(0, 80)}
	}
	if d.Drawer.Front.Value == "overlay" {
		d.Drawer.Overlay = mm(2, 5)
	}
	if d.Door.Fit.Value == "overlay" {
		d.Door.Overlay = mm(3, 7)
	}
	d.Carcass.Joint, d.Carcass.JointDepth = joint()
	if !d.Carcass.Joint.Set && rnd.IntN(2) == 0 {
		d.Carcass.Joint = word("loose-tenon")
		d.LooseTenon = LooseTenon{Material: word("spruce"), Length: mm(30, 60), Spacing: mm(100, 200)}
	}
	if !d.Carcass.Joint.Set {
		d.Carcass.Joint = oneWord(rnd, "butt", "dowel")
	}
	d.GlueBlock = Joinery{Count: count(rnd.IntN(3)), Length: mm(30, 60), Width: mm(20, 30)}
	if d.GlueBlock.Count.Value > 0 {
		d.GlueBlock.Material = word("spruce")
	}
	d.Partition.Joint, d.Partition.JointDepth = joint()
	d.Divider.Joint, d.Divider.JointDepth = joint()
	for _, joint := range []*Word{&d.Partition.Joint, &d.Divider.Joint} {
		if !joint.Set {
			*joint = oneWord(rnd, "butt", "dowel")
		}
	}
	if d.Back.Fit.Value != "applied" {
		d.Back.Depth = mm(3, 8)
	}
	if d.Back.Fit.Value == "groove" {
		d.Back.SetIn = mm(4, 10)
	}
	if rnd.IntN(2) == 0 {
		d.Construction = word("framed")
		d.Frame = Frame{Material: word("spruce"), StileWidth: mm(40, 60), RailWidth: mm(40, 60),
			Inset: mm(0, 15), Corner: oneWord(rnd, "butt", "half-lap", "box-joint", "dowel")}
		if rnd.IntN(2) == 0 {
			d.Frame.MidRailWidth = mm(40, 60)
		}
	}
	d.moreJoints(rnd, mm)
	d.Bays = []Bay{{Openings: []Opening{{Shelves: count(1), Doors: count(1)}}}}
	for range rnd.IntN(3) {
		var b Bay
		if len(d.Bays) > 0 && rnd.IntN(2) == 0 { // the first always shares
			b.Width = mm(250, 400)
		}
		for k := range 1 + rnd.IntN(3) {
			var o Opening
			if k > 0 && rnd.IntN(2) == 0 { // likewise
				o.Height = mm(200, 300)
			}
			switch rnd.IntN(3) {
			case 0:
				o.Shelves, o.Doors = count(1+rnd.IntN(2)), count(rnd.IntN(3))
			case 1:
				n := 1 + rnd.IntN(3)
				o.Drawers = []DrawerBox{{Count: count(n)}}
				if rnd.IntN(2) == 0 {
					o.Doors = count(1 + rnd.IntN(2))
					d.Drawer.GapBefore = mm(0, 30)
				}
				if o.Doors.Value == 1 {
					o.Hinged = oneWord(rnd, "left", "right")
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
func (d *Design) moreJoints(rnd *rand.Rand, mm func(low, high int) Length) {
	if d.Carcass.Joint.Value == "dado" && rnd.IntN(2) == 0 {
		d.Carcass.Joint = word("rabbet")
	}
	switch held := oneWord(rnd, "pins", "dado", "butt"); held.Value {
	case "dado":
		d.Shelf.Held, d.Shelf.JointDepth, d.Shelf.Clearance = held, mm(3, 8), Length{}
	case "butt":
		d.Shelf.Held, d.Shelf.Clearance = held, Length{}
	}
	switch corner := oneWord(rnd, "butt", "rabbet", "box-joint"); corner.Value {
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
		d.Frame.Corner, d.Frame.TenonLength = word("mortise-and-tenon"), mm(20, 30)
	case 1:
		d.Frame.Corner = word("loose-tenon")
		if !d.LooseTenon.Material.Set {
			d.LooseTenon = LooseTenon{Material: word("spruce"), Length: mm(30, 50)}
		}
		d.LooseTenon.Width = mm(20, 30) // across a rail, which is no narrower than 40
	}
}

// randomEdgings are on panels that there are: shelves and doors in the first bay.
func randomEdgings(rnd *rand.Rand, d Design, mm func(low, high int) Length) []Edging {
	on := []string{"shelves", "fronts"}
	if d.Construction.Value != "framed" {
		on = append(on, "carcass")
		if d.Carcass.Top.Value == "over" && d.Carcass.JointDepth.Value == 0 {
			on = append(on, "top")
		}
		if len(d.Bays) > 1 {
			on = append(on, "partitions")
		}
		if slices.ContainsFunc(d.Bays, func(b Bay) bool { return len(b.Openings) > 1 }) {
			on = append(on, "dividers")
		}
	}
	var all []Edging
	for _, panels := range on {
		e := Edging{On: word(panels), Material: word("spruce"), Thickness: mm(3, 10)}
		if panels == "top" { // what is left must hold dowels
			e.Thickness = mm(3, 6)
		}
		if panels == "fronts" || panels == "top" {
			e.Corner = oneWord(rnd, "butt", "mitre")
		}
		if rnd.IntN(2) == 0 {
			all = append(all, e)
		}
	}
	return all
}

func oneWord(rnd *rand.Rand, words ...string) Word { return word(words[rnd.IntN(len(words))]) }

// eachRandomCase runs check on the same designs every time.
func eachRandomCase(t *testing.T, check func(t *testing.T, d Design, c *Case)) {
	t.Helper()
	from := workshop(stock.Millimetres)
	for seed := range uint64(200) {
		d := randomDesign(rand.New(rand.NewPCG(seed, 1)))
		c := derive(t, d, from)
		check(t, d, c)
		if t.Failed() {
			t.Fatalf("seed %d: %v", seed, cut(c, from.Ruler))
		}
	}
}

func sizeNamed(t *testing.T, c *Case, name string) stock.Length {
	t.Helper()
	for _, d := range c.Sizes {
		if d.Dimension == name {
			return d.Sum.Total()
		}
	}
	t.Fatalf("no size %q", name)
	return 0
}

// What stands in a line adds up to what it stands in, but for the shares'
// rounding down to 25 nm.
func TestLinesAddUp(t *testing.T) {
	eachRandomCase(t, func(t *testing.T, d Design, c *Case) {
		thickness := metric("18").Value
		end, upright, rail := thickness, thickness, thickness
		if d.Construction.Value == "framed" {
			end, upright, rail = d.Frame.StileWidth.Value, d.Frame.StileWidth.Value, d.Frame.RailWidth.Value
		}
		between := thickness
		for _, p := range c.Parts {
			if strings.HasPrefix(p.Name, "mid rail") {
				between = p.Width
			}
		}
		wide := 2*end + stock.Length(len(d.Bays)-1)*upright
		high := make([]stock.Length, len(d.Bays))
		for i, b := range d.Bays {
			high[i] = d.Base.Height.Value + 2*rail + stock.Length(len(b.Openings)-1)*between
		}
		for _, o := range c.Openings {
			high[o.Bay-1] += o.Height
			if o.Number == 1 {
				wide += o.Width
			}
		}
		adds := func(what string, sum, whole stock.Length, members int) {
			if short := whole - sum; short < 0 || short >= stock.Length(members) {
				t.Errorf("%s: %d members come to %d, not %d", what, members, sum, whole)
			}
		}
		adds("width", wide, sizeNamed(t, c, "outside width"), len(d.Bays))
		for i, b := range d.Bays {
			adds("height", high[i], sizeNamed(t, c, "outside height"), len(b.Openings))
		}
	})
}

// Whatever is written, there is either a case or a fault, and every part of a
// case can be cut.
func TestAnyDesignGivesACaseOrFaults(t *testing.T) {
	from := workshop(stock.Millimetres)
	cases := 0
	for seed := range uint64(2000) {
		rnd := rand.New(rand.NewPCG(seed, 2))
		d := randomDesign(rnd)
		spoil(rnd, reflect.ValueOf(&d).Elem())
		c, faults := Derive(d, from)
		if (c == nil) != (len(faults) > 0) {
			t.Fatalf("seed %d: case %v, faults %q", seed, c, spelled(faults))
		}
		if c == nil {
			continue
		}
		cases++
		names := make(map[string]bool)
		for _, p := range c.Parts {
			if p.Length <= 0 || p.Width <= 0 || p.Thickness <= 0 || p.Count <= 0 || names[p.Name] {
				t.Fatalf("seed %d: part %+v", seed, p)
			}
			names[p.Name] = true
		}
	}
	if cases < 150 {
		t.Errorf("only %d of the designs gave a case", cases)
	}
}

// spoil drops or changes a value here and there.
func spoil(rnd *rand.Rand, table reflect.Value) {
	for i := range table.NumField() {
		field := table.Field(i)
		often := rnd.IntN(40)
		switch v := field.Addr().Interface().(type) {
		case *Length:
			switch often {
			case 0:
				*v = Length{}
			case 1:
				*v = Length{Value: stock.Length(rnd.IntN(400)-5) * stock.Millimetre, Set: true}
			}
		case *Count:
			if often < 2 {
				*v = Count{Value: rnd.IntN(12) - 2, Set: true}
			}
		case *Word:
			words := strings.Fields(table.Type().Field(i).Tag.Get("words"))
			if often < 2 && len(words) > 0 {
				*v = oneWord(rnd, words...)
			}
		default:
			switch field.Kind() {
			case reflect.Struct:
				spoil(rnd, field)
			case reflect.Slice:
				for k := range field.Len() {
					spoil(rnd, field.Index(k))
				}
			}
		}
	}
}

// A part's size is the sum that it is explained by.
func TestSizesAreTheirSums(t *testing.T) {
	eachRandomCase(t, func(t *testing.T, _ Design, c *Case) {
		for _, p := range c.Parts {
			for i, size := range []stock.Length{p.Length, p.Width, p.Thickness} {
				if got := p.How[i].Sum.Total(); got != size {
					t.Errorf("%s: %s is %d, its sum %d", p.Name, p.How[i].Dimension, size, got)
				}
			}
		}
	})
}

// Inside sizes instead of the outside ones they came from give the same case.
func TestOutwardsUndoesInwards(t *testing.T) {
	eachRandomCase(t, func(t *testing.T, d Design, c *Case) {
		inside := func(name string) Length { return Length{Value: sizeNamed(t, c, name), Set: true} }
		d.InsideWidth, d.InsideHeight, d.InsideDepth = inside("inside width"), inside("inside height"), inside("inside depth")
		d.OutsideWidth, d.OutsideHeight, d.OutsideDepth = Length{}, Length{}, Length{}
		back := derive(t, d, workshop(stock.Millimetres))
		wantLines(t, cut(c, stock.Ruler{}), cut(back, stock.Ruler{}))
	})
}

// Fronts that share an opening are rounded to the marks of the ruler, a single one is not.
func TestUnitsChangeNoSize(t *testing.T) {
	eachRandomCase(t, func(t *testing.T, d Design, _ *Case) {
		from := workshop(stock.Millimetres)
		oneDrawerEach(&d)
		c := derive(t, d, from)
		from.Ruler.Units = stock.Inches
		if diff := cmp.Diff(c.Parts, derive(t, d, from).Parts); diff != "" {
			t.Errorf("(-mm +in):\n%s", diff)
		}
	})
}

// oneDrawerEach leaves one drawer in every stack.
func oneDrawerEach(d *Design) {
	bays := slices.Clone(d.Bays)
	for i := range bays {
		bays[i].Openings = slices.Clone(bays[i].Openings)
		for k := range bays[i].Openings {
			if o := &bays[i].Openings[k]; o.Drawers != nil {
				o.Drawers, o.Graded = []DrawerBox{{}}, Length{}
			}
		}
	}
	d.Bays = bays
}

// A deeper case has deeper parts, and nothing else changes: what runs from
// front to back grows by as much as the case.
func TestDepthGrowsWhatRunsFrontToBack(t *testing.T) {
	const grown = 10 * stock.Millimetre
	eachRandomCase(t, func(t *testing.T, d Design, c *Case) {
		d.OutsideDepth.Value += grown
		deeper := derive(t, d, workshop(stock.Millimetres))
		for i, p := range c.Parts {
			var length, width stock.Length
			switch role, _, _ := strings.Cut(p.Name, ","); role {
			case "side", "top", "bottom", "partition", "divider", "shelf", "drawer bottom":
				width = grown
			case "drawer side", "plinth cross piece", "top side trim":
				length = grown
			}
			q := deeper.Parts[i]
			if strings.HasPrefix(p.Name, "loose tenon strip") && int64(q.Count)*int64(q.Length) >= int64(p.Count)*int64(p.Length) {
				continue // a deeper corner may take a tenon more
			}
			if p.Name != q.Name || q.Length-p.Length != length || q.Width-p.Width != width || q.Thickness != p.Thickness {
				t.Errorf("%s: %d x %d became %s %d x %d", p.Name, p.Length, p.Width, q.Name, q.Length, q.Width)
			}
		}
	})
}

// A wider case has a longer top, bottom, rail and back. The bays that share
// take it all, equally; a bay whose width is given keeps its parts.
func TestWidthGrowsWhatRunsAcross(t *testing.T) {
	const grown = 60 * stock.Millimetre // divides by 1, 2, and 3
	eachRandomCase(t, func(t *testing.T, d Design, c *Case) {
		d.OutsideWidth.Value += grown
		wider := derive(t, d, workshop(stock.Millimetres))
		for i, p := range c.Parts {
			var length, width stock.Length
			switch p.Name {
			case "top", "bottom", "rail", "plinth front and back", "top edging", "bottom edging", "top trim":
				length = grown
			case "back":
				if d.Construction.Value == "framed" && len(d.Bays) > 1 {
					continue // one for each bay, unless applied
				}
				width = grown
			case "side", "stile", "mid stile", "partition":
			default:
				continue // in a bay
			}
			q := wider.Parts[i]
			if p.Name != q.Name || q.Length-p.Length != length || q.Width-p.Width != width {
				t.Errorf("%s: %d x %d became %s %d x %d", p.Name, p.Length, p.Width, q.Name, q.Length, q.Width)
			}
		}
		sharing := 0
		for _, b := range d.Bays {
			if !b.Width.Set {
				sharing++
			}
		}
		for i, o := range c.Openings {
			want := grown / stock.Length(sharing)
			if d.Bays[o.Bay-1].Width.Set {
				want = 0
			}
			if got := wider.Openings[i].Width - o.Width; got != want {
				t.Errorf("bay %d grew by %d, want %d", o.Bay, got, want)
			}
		}
	})
}

// A taller case has longer uprights; openings that share take the height.
func TestHeightGrowsWhatStands(t *testing.T) {
	const grown = 60 * stock.Millimetre
	eachRandomCase(t, func(t *testing.T, d Design, c *Case) {
		d.OutsideHeight.Value += grown
		taller := derive(t, d, workshop(stock.Millimetres))
		for _, p := range c.Parts {
			want := stock.Length(0)
			switch role, _, _ := strings.Cut(p.Name, ","); role {
			case "side", "stile", "mid stile", "partition", "back", "side edging":
				want = grown
			case "top", "bottom", "rail", "divider", "shelf", "plinth front and back", "plinth cross piece", "foot", "front foot", "back foot":
			default:
				continue // of drawers, which may share
			}
			if got := partNamed(t, taller, p.Name).Length - p.Length; got != want {
				t.Errorf("%s grew by %d, want %d", p.Name, got, want)
			}
		}
		for i, o := range c.Openings {
			sharing := 0
			for _, other := range d.Bays[o.Bay-1].Openings {
				if !other.Height.Set {
					sharing++
				}
			}
			want := grown / stock.Length(sharing)
			if d.Bays[o.Bay-1].Openings[o.Number-1].Height.Set {
				want = 0
			}
			if got := taller.Openings[i].Height - o.Height; got != want {
				t.Errorf("bay %d opening %d grew by %d, want %d", o.Bay, o.Number, got, want)
			}
		}
	})
}
