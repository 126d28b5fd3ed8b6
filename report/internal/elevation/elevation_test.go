package elevation

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"sawbill/report/internal/drawing"
	"sawbill/stock"
	"sawbill/stock/casework"
	"sawbill/stock/casework/sample"
)

const mm1 = stock.Millimeter

func given[T any](v T) casework.Given[T] { return casework.Given[T]{Value: v, Set: true} }

func size(n int) casework.Length { return given(stock.Length(n) * mm1) }

var workshop = casework.Context{Materials: map[string]casework.Material{
	"ply":   {Kind: stock.Sheet, Thicknesses: []stock.Length{18 * mm1}},
	"thin":  {Kind: stock.Sheet, Thicknesses: []stock.Length{6 * mm1}},
	"box":   {Kind: stock.Board, Thicknesses: []stock.Length{12 * mm1}},
	"frame": {Kind: stock.Board, Thicknesses: []stock.Length{38 * mm1}},
}}

func subject(t *testing.T, d casework.Design) Subject {
	t.Helper()
	d.Carcass.Material = given("ply")
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
		s.Marks = append(s.Marks, strings.Repeat(string(rune('A'+i%26)), 1+i/26))
	}
	return s
}

// box is 600 x 300 x 400, its top between the sides in dados 6 deep, its back in a
// rabbet 9 deep without clearance.
func box() casework.Design {
	return casework.Design{
		OutsideWidth: size(600), OutsideDepth: size(300), OutsideHeight: size(400),
		Carcass: casework.Carcass{Joint: given("dado"), JointDepth: size(6)},
		Back:    casework.Back{Fit: given("rabbet"), Material: given("thin"), Depth: size(9), Clearance: size(0)},
	}
}

// randomDesign is any case of shelves and drawers.
func randomDesign(r *rand.Rand) casework.Design {
	d := casework.Design{
		OutsideWidth: size(700 + r.IntN(2000)), OutsideDepth: size(250 + r.IntN(600)), OutsideHeight: size(500 + r.IntN(1800)),
		Back:  casework.Back{Fit: given([]string{"applied", "rabbet", "groove"}[r.IntN(3)]), Material: given("thin")},
		Shelf: casework.Shelf{SetBack: size(3)},
		Drawer: casework.Drawer{Front: given([]string{"none", "inset"}[r.IntN(2)]), Material: given("box"),
			BottomMaterial: given("thin"), GrooveDepth: size(5), Corner: given("box-joint"), HeightClearance: size(2)},
	}
	if d.Back.Fit.Value != "applied" {
		d.Back.Depth = size(6)
	}
	if r.IntN(2) == 0 {
		d.Construction = given("framed")
		d.Frame = casework.Frame{Material: given("frame"), StileWidth: size(50), RailWidth: size(45), Corner: given("half-lap"), Inset: size(3)}
	}
	for range 1 + r.IntN(3) {
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

// anySubject is any case: every other one has all that a case can have.
func anySubject(t *testing.T, seed uint64) Subject {
	r := rand.New(rand.NewPCG(seed, 3))
	var s Subject
	if seed%2 == 0 {
		s = subject(t, randomDesign(r))
	} else {
		c, _ := casework.Derive(sample.Random(r), sample.Workshop(stock.Millimeters))
		for c == nil { // now and then a joint has no room
			c, _ = casework.Derive(sample.Random(r), sample.Workshop(stock.Millimeters))
		}
		s = lettered(c)
	}
	s.Ruler.Units = stock.Units(seed / 2 % 2)
	return s
}

// No two texts may touch, none may leave the paper, none may be too small, and
// every sheet goes on the page, whatever the case is.
func TestWritingNeverOverlapsAndEverySheetFits(t *testing.T) {
	for seed := range uint64(300) {
		s := anySubject(t, seed)
		const width, height = 186, 216
		sheet, _ := s.Sheet(width, height)
		if sheet.Width > width || sheet.Height > height {
			t.Errorf("seed %d: the sheet is %.1f x %.1f", seed, sheet.Width, sheet.Height)
		}
		if err := drawing.CheckLegible(sheet); err != nil {
			t.Errorf("seed %d: %v", seed, err)
		}
		for _, v := range Views {
			d, _ := s.Fit(v, 190, 190)
			if err := drawing.CheckLegible(d); err != nil {
				t.Errorf("seed %d, %s: %v", seed, v.Name(), err)
			}
		}
	}
}

// An edge is either seen or hidden, and what is seen is what remains when every
// later shape has hidden what lies within it: looked at point by point.
func TestHiddenEdgesAreThoseBehindOtherPieces(t *testing.T) {
	for seed := range uint64(30) {
		r := rand.New(rand.NewPCG(seed, 4))
		s := subject(t, randomDesign(r))
		for _, v := range Views {
			p := s.project(v)
			seen, hidden := p.edges()
			on := func(edges []edge, e edge, at stock.Length) bool {
				return slices.ContainsFunc(edges, func(o edge) bool {
					return o.upright == e.upright && o.at == e.at && o.from <= at && at <= o.to
				})
			}
			for i, sh := range p.shapes {
				for _, e := range sh.edges() {
					at := e.from + stock.Length(r.Int64N(int64(e.to-e.from)))
					x, y := at, e.at
					if e.upright {
						x, y = e.at, at
					}
					covered := slices.ContainsFunc(p.shapes[i+1:], func(o shape) bool { return o.x1 < x && x < o.x2 && o.y1 < y && y < o.y2 })
					if !covered && !on(seen, e, at) {
						t.Fatalf("seed %d, %s: an edge of %s is not drawn", seed, v.Name(), sh.Role)
					}
				}
			}
			for _, h := range hidden {
				if len(without([]edge{h}, seen)) != 1 {
					t.Fatalf("seed %d, %s: %v is drawn both ways", seed, v.Name(), h)
				}
			}
		}
	}
}

// Nearer pieces come later: at any point of the picture the last shape there is
// the one whose solid is nearest to the eye, or let into it.
func TestTheNearestPieceIsOnTop(t *testing.T) {
	for seed := range uint64(30) {
		s := subject(t, randomDesign(rand.New(rand.NewPCG(seed, 5))))
		for _, v := range Views {
			p := s.project(v)
			for i, a := range p.shapes {
				for _, b := range p.shapes[i+1:] {
					if a.meet(b.area).empty() {
						continue
					}
					if a.near < b.near || a.near == b.near && letInto(a.Solid, b.Solid) {
						t.Errorf("seed %d, %s: %s hides %s", seed, v.Name(), b.Role, a.Role)
					}
				}
			}
		}
	}
}

// The box from the front: the outline, the sides' inner edges where the top does not
// lie over them (18 and 582, from 18 to 382), the ends of top and bottom in the sides
// (12 and 588) and their inner edges (18 and 382). Hidden is the back: it reaches 9
// into all four, from 9 to 591 and from 9 to 391. From the inside corner on it is
// covered by nothing.
func TestEdgesOfTheBox(t *testing.T) {
	p := subject(t, box()).project(Front)
	seen, hidden := p.edges()
	tell := func(edges []edge) []string {
		var all []string
		for _, e := range edges {
			way := "level"
			if e.upright {
				way = "upright"
			}
			all = append(all, fmt.Sprintf("%s at %d from %d to %d", way, e.at/mm1, e.from/mm1, e.to/mm1))
		}
		return all
	}
	want := []string{
		"upright at 0 from 0 to 400",
		"upright at 12 from 0 to 18", "upright at 12 from 382 to 400",
		"upright at 18 from 18 to 382",
		"upright at 582 from 18 to 382",
		"upright at 588 from 0 to 18", "upright at 588 from 382 to 400",
		"upright at 600 from 0 to 400",
		"level at 0 from 0 to 600",
		"level at 18 from 12 to 588",
		"level at 382 from 12 to 588",
		"level at 400 from 0 to 600",
	}
	if d := cmp.Diff(want, tell(seen)); d != "" {
		t.Errorf("seen (-want +got)\n%s", d)
	}
	want = []string{
		"upright at 9 from 9 to 391", "upright at 591 from 9 to 391",
		"level at 9 from 9 to 591", "level at 391 from 9 to 591",
	}
	if d := cmp.Diff(want, tell(hidden)); d != "" {
		t.Errorf("hidden (-want +got)\n%s", d)
	}
}

// Neighbors in a section differ in their hatching, and no hatch covers another.
func TestNeighborsAreHatchedDifferently(t *testing.T) {
	for seed := range uint64(20) {
		s := subject(t, randomDesign(rand.New(rand.NewPCG(seed, 6))))
		for _, v := range []View{Upright, Level} {
			var hatched []drawing.Hatch
			d := s.Draw(v, 4)
			for _, m := range d.Marks {
				if h, ok := m.(drawing.Hatch); ok {
					hatched = append(hatched, h)
				}
			}
			if len(hatched) == 0 {
				t.Errorf("seed %d, %s: nothing is hatched", seed, v.Name())
			}
			for i, a := range hatched {
				for _, b := range hatched[:i] {
					if a.Area.Inset(0.01).Overlaps(b.Area.Inset(0.01)) {
						t.Errorf("seed %d, %s: %v lies over %v", seed, v.Name(), a, b)
					}
				}
			}
		}
		p := s.project(Upright)
		kinds := p.hatchings()
		for i, kind := range kinds {
			for j := range kinds[:i] {
				if kind >= 0 && kind == kinds[j] && p.shapes[i].touches(p.shapes[j].area) {
					t.Errorf("seed %d: %s and %s are hatched alike", seed, p.shapes[i].Role, p.shapes[j].Role)
				}
			}
		}
	}
}

func TestDimensionsOutside(t *testing.T) {
	d := box()
	d.Bays = []casework.Bay{
		{Openings: []casework.Opening{{Drawers: []casework.DrawerBox{{Count: given(2)}}}, {Height: size(150)}}}, {Width: size(200)},
	}
	d.Drawer = casework.Drawer{Material: given("box"), BottomMaterial: given("thin"), GrooveDepth: size(5), Gap: size(4)}
	s := subject(t, d)
	// 600 - 2 x 18 - 18 - 200 = 346; 400 - 2 x 18 - 18 - 150 = 196; (196 - 3 x 4) / 2 = 92
	for v, want := range map[View]string{
		Front:   "346 200 600 92 92 364 196 150 400",
		Side:    "300 400",
		Upright: "294 300 196 150 400",
		Level:   "346 200 600 294 300",
	} {
		var got []string
		for _, c := range s.chains(v) {
			got = append(got, c.labels...)
		}
		sorted := func(s []string) []string { slices.Sort(s); return s }
		if d := cmp.Diff(sorted(strings.Fields(want)), sorted(got)); d != "" {
			t.Errorf("%s: (-want +got)\n%s", v.Name(), d)
		}
		drawn := s.Draw(v, 2)
		for _, label := range got {
			if !slices.ContainsFunc(drawn.Texts(), func(t drawing.Text) bool { return t.String == label }) {
				t.Errorf("%s: %s is not written", v.Name(), label)
			}
		}
	}
}

// Without a back, the clear depth is that of the case: 300 stands below the section
// once, as it does beside the section from above.
func TestASizeIsToldOnce(t *testing.T) {
	d := box()
	d.Back = casework.Back{}
	s := subject(t, d)
	for _, v := range Views {
		told, want := 0, 1
		if v == Front {
			want = 0
		}
		picture := s.Draw(v, 4)
		for _, text := range picture.Texts() {
			if text.String == "300" {
				told++
			}
		}
		if told != want {
			t.Errorf("%s: 300 is told %d times", v.Name(), told)
		}
	}
}

// Of three bays the middle one alone has openings of 200 and 364 - 18 - 200 = 146.
func TestOpeningsOfAMiddleBayAreMeasuredWithinIt(t *testing.T) {
	d := box()
	d.OutsideWidth = size(1200)
	d.Bays = []casework.Bay{{}, {Openings: []casework.Opening{{Height: size(200)}, {}}}, {}}
	s := subject(t, d)
	if got := s.middleBays(); len(got) != 1 || strings.Join(got[0].labels, " ") != "200 146" {
		t.Errorf("measured within: %v", got)
	}
	written := func(scale int) bool {
		d := s.Draw(Front, scale)
		return slices.ContainsFunc(d.Texts(), func(t drawing.Text) bool { return t.String == "146" && t.Turned })
	}
	if !written(8) || written(60) {
		t.Errorf("written at 1:8 %v, at 1:60, without room, %v", written(8), written(60))
	}
}

// Of an opening of 364 the drawers take 2 gaps of 4 at the ends and 1 between them:
// (364 - 12) / 2 = 176. They stand behind a door that hides them from the front, so that the
// section measures them and the front does not.
func TestDrawersBehindDoorsAreMeasuredInTheSection(t *testing.T) {
	d := box()
	d.Bays = []casework.Bay{{Openings: []casework.Opening{{Doors: given(1), Drawers: []casework.DrawerBox{{Count: given(2)}}}}}}
	d.Door = casework.Door{Fit: given("inset"), Gap: size(2)}
	d.Drawer = casework.Drawer{Material: given("box"), BottomMaterial: given("thin"), GrooveDepth: size(5), Gap: size(4)}
	s := subject(t, d)
	for v, want := range map[View]int{Front: 0, Upright: 2} {
		told := 0
		picture := s.Draw(v, 4)
		for _, text := range picture.Texts() {
			if text.String == "176" {
				told++
			}
		}
		if told != want {
			t.Errorf("%s: 176 is told %d times, not %d", v.Name(), told, want)
		}
	}
}

func TestDrawnToScale(t *testing.T) {
	s := subject(t, box())
	f := newFrame(s.project(Front), nil, Front, 5)
	if f.outline.W != 120 || f.outline.H != 80 {
		t.Errorf("600 x 400 at 1:5 is drawn %v x %v", f.outline.W, f.outline.H)
	}
}

func TestMarksStandOnTheirParts(t *testing.T) {
	s := subject(t, box())
	var got []string
	for _, v := range Views {
		d := s.Draw(v, 4)
		for _, t := range d.Texts() {
			if t.Size == markSize && t.Face == drawing.Bold && len(t.String) == 1 && t.String > "9" {
				got = append(got, v.Name()+" "+t.String)
			}
		}
	}
	// A is the sides, B the top, C the bottom, D the back.
	want := []string{"front A", "front B", "front C", "front D", "plan A", "plan C", "plan D", "section A", "section B", "section C", "section D", "side A"}
	slices.Sort(got)
	if d := cmp.Diff(want, got); d != "" {
		t.Errorf("(-want +got)\n%s", d)
	}
}
