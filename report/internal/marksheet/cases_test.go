package marksheet

import (
	"fmt"
	"math/rand/v2"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"sawbill/stock"
	"sawbill/stock/casework"
	"sawbill/stock/casework/sample"
	"sawbill/stock/job"
)

const mm1 = stock.Millimeter

func given[T any](v T) casework.Given[T] { return casework.Given[T]{Value: v, Set: true} }

func size(n int) casework.Length { return given(stock.Length(n) * mm1) }

var workshop = casework.Context{Kerf: 3 * mm1, Materials: map[string]casework.Material{
	"ply":   {Kind: stock.Sheet, Thicknesses: []stock.Length{18 * mm1}},
	"thin":  {Kind: stock.Sheet, Thicknesses: []stock.Length{6 * mm1}},
	"box":   {Kind: stock.Board, Thicknesses: []stock.Length{12 * mm1}},
	"frame": {Kind: stock.Board, Thicknesses: []stock.Length{38 * mm1}},
}}

// subject derives a case.
func subject(t *testing.T, d casework.Design) Subject {
	t.Helper()
	c, faults := casework.Derive(d, workshop)
	for _, f := range faults {
		t.Fatalf("%s: %s", f.Key, f.Cause)
	}
	return lettered(c)
}

// lettered marks the parts A, B, ... Z, AA, BB, ...
func lettered(c *casework.Case) Subject {
	s := Subject{Case: c}
	for i := range c.Parts {
		s.Letters = append(s.Letters, strings.Repeat(string(rune('A'+i%26)), 1+i/26))
	}
	return s
}

// examples are the cases among the example jobs.
func examples(t *testing.T) map[string]Subject {
	t.Helper()
	files, err := filepath.Glob("../../../testdata/jobs/*.toml")
	if err != nil {
		t.Fatal(err)
	}
	all := make(map[string]Subject)
	for _, file := range files {
		f, err := job.Read(file)
		if err != nil {
			t.Fatal(err)
		}
		if f.Case != nil {
			s := lettered(f.Case)
			s.Ruler.Units = f.Units
			all[filepath.Base(file)] = s
		}
	}
	if len(all) < 4 {
		t.Fatalf("only %d of the examples have a case", len(all))
	}
	return all
}

// randomDesign has every kind of mark now and then.
func randomDesign(r *rand.Rand) casework.Design {
	word := func(words ...string) casework.Word { return given(words[r.IntN(len(words))]) }
	joint := func() casework.Divider {
		if r.IntN(3) == 0 {
			return casework.Divider{Joint: word("butt", "dowel")}
		}
		return casework.Divider{Joint: given("dado"), JointDepth: size(3 + r.IntN(5))}
	}
	d := casework.Design{
		OutsideWidth: size(900 + r.IntN(1600)), OutsideHeight: size(900 + r.IntN(1200)), OutsideDepth: size(350 + r.IntN(350)),
		Carcass: casework.Carcass{Material: given("ply"), Top: word("between", "over"), Bottom: word("between", "under"), Joint: word("butt", "dowel", "rabbet")},
		Back:    casework.Back{Fit: word("applied", "rabbet", "groove"), Material: given("thin")},
		Shelf:   casework.Shelf{Held: word("pins", "butt"), SetBack: size(r.IntN(20))},
		Drawer: casework.Drawer{Front: word("none", "inset"), Material: given("box"), BottomMaterial: given("thin"), GrooveDepth: size(5),
			Corner: word("box-joint", "butt"), HeightClearance: size(2)},
		Partition: joint(), Divider: joint(),
	}
	if d.Carcass.Joint.Value == "rabbet" {
		d.Carcass.JointDepth = size(6)
	}
	if d.Back.Fit.Value != "applied" {
		d.Back.Depth = size(6)
	}
	if r.IntN(2) == 0 {
		d.Construction = given("framed")
		d.Frame = casework.Frame{Material: given("frame"), StileWidth: size(60), RailWidth: size(55), Corner: word("half-lap", "box-joint", "mortise-and-tenon"), Inset: size(3)}
		if d.Frame.Corner.Value == "mortise-and-tenon" {
			d.Frame.TenonLength = size(35)
		}
	}
	if r.IntN(3) == 0 {
		d.Edgings = []casework.Edging{{On: given("shelves"), Material: given("box"), Thickness: size(8)}}
	}
	d.Bays = []casework.Bay{{Openings: []casework.Opening{{Shelves: given(1 + r.IntN(2))}}}}
	for range r.IntN(3) {
		var b casework.Bay
		for range 1 + r.IntN(3) {
			o := casework.Opening{}
			switch r.IntN(3) {
			case 0:
				o.Shelves = given(1 + r.IntN(2))
			case 1:
				o.Drawers = []casework.DrawerBox{{Count: given(1 + r.IntN(3))}}
			}
			b.Openings = append(b.Openings, o)
		}
		d.Bays = append(d.Bays, b)
	}
	return d
}

// everySubject runs check on the examples in both units, and on 300 random cases, each in one.
func everySubject(t *testing.T, check func(t *testing.T, s Subject)) {
	t.Helper()
	run := func(name string, s Subject, units stock.Units) {
		s.Ruler.Units = units
		check(t, s)
		if t.Failed() {
			t.Fatalf("%s, %s", name, units)
		}
	}
	for name, s := range examples(t) {
		run(name, s, stock.Millimeters)
		run(name, s, stock.Inches)
	}
	all := randomSubjects()
	for seed, s := range all {
		if s.Case != nil {
			run(fmt.Sprintf("seed %d", seed), s, stock.Units(seed/2%2))
		}
	}
}

// randomSubjects are random cases, by their seeds; a few that cannot be built have no case.
var randomSubjects = sync.OnceValue(func() []Subject {
	all := make([]Subject, 300)
	built := 0
	for seed := range all {
		r := rand.New(rand.NewPCG(uint64(seed), 3))
		design, from := randomDesign(r), workshop
		if seed%2 == 0 {
			design, from = sample.Random(r), sample.Workshop(stock.Millimeters)
		}
		if c, _ := casework.Derive(design, from); c != nil {
			all[seed] = lettered(c)
			built++
		}
	}
	if built < 200 {
		panic(fmt.Sprintf("only %d random designs can be built", built))
	}
	return all
})
