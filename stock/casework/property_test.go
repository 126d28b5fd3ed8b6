package casework

import (
	"math/rand/v2"
	"reflect"
	"strings"
	"testing"

	"sawbill/stock"
	"sawbill/stock/casework/joints"
	"sawbill/stock/casework/sample"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
)

// eachRandomCase runs check on the same designs every time, with exact sizes and with sizes on the
// step of usual tools.
func eachRandomCase(t *testing.T, check func(t *testing.T, from Context, d Design, c *Case)) {
	t.Helper()
	exact, stepped := workshop(stock.Millimeters), workshop(stock.Millimeters)
	stepped.Tools = UsualTools(stock.Millimeters)
	for _, from := range []Context{exact, stepped} {
		sample.Each(func(seed uint64, d Design) {
			c := derive(t, d, from)
			check(t, from, d, c)
			if t.Failed() {
				t.Fatalf("step %d, seed %d: %v", from.Tools.Step, seed, cut(c, from.Ruler))
			}
		})
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
	eachRandomCase(t, func(t *testing.T, _ Context, d Design, c *Case) {
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
	from := workshop(stock.Millimeters)
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
				*v = Length{Value: stock.Length(rnd.IntN(400)-5) * stock.Millimeter, Set: true}
			}
		case *Count:
			if often < 2 {
				*v = Count{Value: rnd.IntN(12) - 2, Set: true}
			}
		case *Word:
			words := strings.Fields(table.Type().Field(i).Tag.Get("words"))
			if tag := table.Type().Field(i).Tag.Get("joint"); tag != "" {
				words = joints.WordsOf(tag)
			}
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
	eachRandomCase(t, func(t *testing.T, _ Context, _ Design, c *Case) {
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
	eachRandomCase(t, func(t *testing.T, from Context, d Design, c *Case) {
		inside := func(name string) Length { return Length{Value: sizeNamed(t, c, name), Set: true} }
		d.InsideWidth, d.InsideHeight, d.InsideDepth = inside("inside width"), inside("inside height"), inside("inside depth")
		d.OutsideWidth, d.OutsideHeight, d.OutsideDepth = Length{}, Length{}, Length{}
		back := derive(t, d, from)
		wantLines(t, cut(c, stock.Ruler{}), cut(back, stock.Ruler{}))
	})
}

// The step is that of the tools, not of the ruler that prints.
func TestUnitsChangeNoSize(t *testing.T) {
	eachRandomCase(t, func(t *testing.T, from Context, d Design, _ *Case) {
		c := derive(t, d, from)
		from.Ruler.Units = stock.Inches
		said := cmpopts.IgnoreFields(stock.Term{}, "Label") // names gaps in units
		if diff := cmp.Diff(c.Parts, derive(t, d, from).Parts, said); diff != "" {
			t.Errorf("(-mm +in):\n%s", diff)
		}
	})
}

// A deeper case has deeper parts, and nothing else changes: what runs from
// front to back grows by as much as the case.
func TestDepthGrowsWhatRunsFrontToBack(t *testing.T) {
	const grown = 10 * stock.Millimeter
	eachRandomCase(t, func(t *testing.T, from Context, d Design, c *Case) {
		d.OutsideDepth.Value += grown
		deeper := derive(t, d, from)
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
	const grown = 60 * stock.Millimeter // divides by 1, 2, and 3
	eachRandomCase(t, func(t *testing.T, from Context, d Design, c *Case) {
		d.OutsideWidth.Value += grown
		wider := derive(t, d, from)
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
	const grown = 60 * stock.Millimeter
	eachRandomCase(t, func(t *testing.T, from Context, d Design, c *Case) {
		d.OutsideHeight.Value += grown
		taller := derive(t, d, from)
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
