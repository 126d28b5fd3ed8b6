package marksheet

import (
	"bytes"
	"flag"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"sawbill/report/internal/drawing"
	"sawbill/stock"
	"sawbill/stock/casework"
	"sawbill/stock/job"
)

var update = flag.Bool("update", false, "rewrite the golden files")

const mm1 = stock.Millimetre

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

// everySubject runs check on the examples and on random cases, in both units.
func everySubject(t *testing.T, check func(t *testing.T, s Subject)) {
	t.Helper()
	run := func(name string, s Subject) {
		for _, units := range []stock.Units{stock.Millimetres, stock.Inches} {
			s.Ruler.Units = units
			check(t, s)
			if t.Failed() {
				t.Fatalf("%s, %s", name, units)
			}
		}
	}
	for name, s := range examples(t) {
		run(name, s)
	}
	built := 0
	for seed := range uint64(150) {
		c, _ := casework.Derive(randomDesign(rand.New(rand.NewPCG(seed, 3))), workshop)
		if c == nil {
			continue
		}
		built++
		run(fmt.Sprintf("seed %d", seed), lettered(c))
	}
	if built < 60 {
		t.Errorf("only %d random designs can be built", built)
	}
}

var rooms = []drawing.Point{{X: 186, Y: 262}, {X: 191.9, Y: 244.4}}

// No two texts touch, none leaves its figure, and every row goes on a page.
func TestSheetsFitTheirPages(t *testing.T) {
	everySubject(t, func(t *testing.T, s Subject) {
		for _, room := range rooms {
			sheet := s.Draw(room.X, room.Y)
			count := 0
			for _, row := range sheet.Rows(Paper{room.X, room.Y, room.Y - 30}) {
				count += len(row.Figures)
				if err := drawing.CheckWriting(row.Drawing); err != nil {
					t.Error(err)
				}
				if row.Width > room.X || row.Height > room.Y {
					t.Errorf("a row of %.1f x %.1f", row.Width, row.Height)
				}
				if b := bounds(row.Drawing); b.X < 0 || b.Y < 0 || b.Right() > row.Width+1e-6 || b.Bottom() > row.Height+1e-6 {
					t.Errorf("a row of %.1f x %.1f is drawn on %.1f", row.Width, row.Height, b)
				}
			}
			if want := len(sheet.Faces) + len(sheet.Joints); count != want {
				t.Errorf("%d of %d figures stand in rows", count, want)
			}
			for _, k := range sheet.Left {
				if len(k.At) < 60 {
					t.Errorf("%s of %s is left out", k.What, s.Parts[k.Part].Name)
				}
			}
		}
	})
}

// Every mark of every piece is in a figure of that piece's face.
func TestEveryMarkIsInAFigure(t *testing.T) {
	everySubject(t, func(t *testing.T, s Subject) {
		faces, pairs, _ := s.figures()
		for _, p := range pairs {
			faces = append(faces, p[0], p[1])
		}
		for _, k := range s.Marks {
			for _, spot := range k.Spots {
				if !slices.ContainsFunc(faces, func(f figure) bool {
					return f.face == spot.Face && slices.ContainsFunc(f.marks, func(l casework.Mark) bool { return same(k, l) }) &&
						slices.ContainsFunc(f.members, func(m member) bool { return m.solid == spot.Solid && m.part == k.Part })
				}) {
					t.Errorf("%s of %s on its %s is in no figure", k.What, s.Parts[k.Part].Name, spot.Face)
				}
			}
		}
	})
}

// paperSide is where an edge lies on the paper of a face that is looked at along
// a direction, reckoned by vectors: whoever looks along d, u being up on the paper,
// has d x u on the right.
func (s Subject) paperSide(t *testing.T, f figure, name string) string {
	t.Helper()
	axis, far, _ := edge(name)
	var look, up [3]int
	look[f.normal] = 1
	if towards(f.face, f.normal, f.solid, s.Solids) {
		look[f.normal] = -1
	}
	up[f.upright] = 1
	if f.uprightTurned {
		up[f.upright] = -1
	}
	right := [3]int{look[1]*up[2] - look[2]*up[1], look[2]*up[0] - look[0]*up[2], look[0]*up[1] - look[1]*up[0]}
	sign := 1
	if !far {
		sign = -1
	}
	switch {
	case right[axis]*sign > 0:
		return "right"
	case right[axis]*sign < 0:
		return "left"
	case up[axis]*sign > 0:
		return "top"
	case up[axis]*sign < 0:
		return "bottom"
	}
	t.Errorf("the %s of %s lies on no side", name, f.face)
	return ""
}

// A dot stands for each position, as far from the circle at the edge that is
// named as the scale has it, and the figure of it is written; the circle lies at
// that edge. Where a stretch is left out on the way, it is as far from the nearer end.
func TestPositionsAreToScaleFromTheNamedEdge(t *testing.T) {
	whole, holes := 0, 0
	everySubject(t, func(t *testing.T, s Subject) {
		faces, _, _ := s.figures()
		for _, f := range faces {
			at := s.draw(f, rooms[0].X, rooms[0].Y)
			for _, k := range f.marks {
				for n, m := range []casework.Measure{k.Measure, k.Across} {
					if len(m.At) == 0 {
						continue
					}
					side := s.paperSide(t, f, m.From)
					fold := at.x
					if side == "top" || side == "bottom" {
						fold = at.y
					}
					for i, p := range m.At {
						text, middle := s.Ruler.Print(p), p
						if n == 0 && k.Width > 0 {
							text += " to " + s.Ruler.Print(p+k.Width)
							middle += k.Width / 2
						}
						if n == 1 && k.Width > 0 && len(m.At) == 2 {
							if i == 1 {
								continue // told with the first
							}
							text += " to " + s.Ruler.Print(m.At[1])
							middle = (p + m.At[1]) / 2
						}
						if !written(at.Drawing, text) {
							t.Errorf("%s of %s: %q is not written", k.What, s.parts(f), text)
						}
						if len(fold.breaks) == 0 {
							whole++
							if n == 0 && len(k.Across.At) == 0 && !drawnAt(at, side, lengthOf(p, at.ratio)) {
								t.Errorf("%s of %s: nothing is drawn %s from the %s", k.What, s.parts(f), text, m.From)
							}
							if !dotted(at, side, lengthOf(middle, at.ratio)) {
								t.Errorf("%s of %s: no dot %s from the %s", k.What, s.parts(f), text, m.From)
							}
						}
					}
				}
				if len(k.Across.At) > 0 && k.Width == 0 && len(at.x.breaks)+len(at.y.breaks) == 0 {
					holes += s.wantHoles(t, f, at, k)
				}
			}
		}
	})
	if whole == 0 || holes == 0 {
		t.Errorf("%d positions and %d holes were looked at", whole, holes)
	}
}

// written reports whether a text is a figure, or begins with it.
func written(d drawing.Drawing, figure string) bool {
	return slices.ContainsFunc(d.Texts(), func(t drawing.Text) bool {
		return t.String == figure || strings.HasPrefix(t.String, figure+" ")
	})
}

func near(a, b float64) bool { return math.Abs(a-b) < 0.01 }

// away is a place so far from one side of a figure's outline.
func away(at drawn, side string, distance float64) float64 {
	switch side {
	case "left":
		return at.box.X + distance
	case "right":
		return at.box.Right() - distance
	case "top":
		return at.box.Y + distance
	}
	return at.box.Bottom() - distance
}

// drawnAt reports whether a line, or what is cut away, begins so far from a side
// of the outline.
func drawnAt(at drawn, side string, distance float64) bool {
	place := away(at, side, distance)
	return slices.ContainsFunc(at.Marks, func(m drawing.Mark) bool {
		var from, to drawing.Point
		switch m := m.(type) {
		case drawing.Line:
			if m.Pen == drawing.Fine || m.Pen == drawing.Narrow {
				return false
			}
			from, to = m.From, m.To
		case drawing.Hatch:
			from, to = drawing.Point{X: m.Area.X, Y: m.Area.Y}, drawing.Point{X: m.Area.Right(), Y: m.Area.Bottom()}
		default:
			return false
		}
		if side == "left" || side == "right" {
			return near(from.X, place) || near(to.X, place)
		}
		return near(from.Y, place) || near(to.Y, place)
	})
}

func dotted(at drawn, side string, distance float64) bool {
	return slices.ContainsFunc(at.Marks, func(m drawing.Mark) bool {
		dot, ok := m.(drawing.Disc)
		if !ok || dot.Radius != dotSize {
			return false
		}
		if side == "top" || side == "bottom" {
			return near(dot.Centre.Y, away(at, side, distance))
		}
		return near(dot.Centre.X, away(at, side, distance))
	})
}

// wantHoles wants a circle for each position with each of the other measure.
func (s Subject) wantHoles(t *testing.T, f figure, at drawn, k casework.Mark) int {
	count := 0
	for _, a := range k.At {
		for _, b := range k.Across.At {
			var c drawing.Point
			for _, from := range []struct {
				name string
				at   stock.Length
			}{{k.From, a}, {k.Across.From, b}} {
				place := away(at, s.paperSide(t, f, from.name), lengthOf(from.at, at.ratio))
				if side := s.paperSide(t, f, from.name); side == "left" || side == "right" {
					c.X = place
				} else {
					c.Y = place
				}
			}
			count++
			if !slices.ContainsFunc(at.Marks, func(m drawing.Mark) bool {
				hole, ok := m.(drawing.Disc)
				return ok && hole.Radius == holeRadius && near(hole.Centre.X, c.X) && near(hole.Centre.Y, c.Y)
			}) {
				t.Errorf("no hole of the %s at %.2f", k.What, c)
			}
		}
	}
	return count
}

// Of both mates of a box joint, one has a finger wherever the other has a gap, and
// the edges are those of the mark.
func TestFingersMeetGaps(t *testing.T) {
	seen := 0
	everySubject(t, func(t *testing.T, s Subject) {
		_, pairs, _ := s.figures()
		for _, p := range pairs {
			seen++
			at := s.drawPair(p, rooms[0].X, rooms[0].Y)
			k := p[0].marks[0]
			axis, _ := measured(k.Measure)
			edges := append(append([]stock.Length{0}, k.At...), p[0].solid.Size[axis])
			for i := range edges[1:] {
				var sides []string
				for _, m := range at.Marks {
					h, ok := m.(drawing.Hatch)
					if !ok || !near(h.Area.Bottom(), at.box.Bottom()-lengthOf(edges[i], at.ratio)) || !near(h.Area.Y, at.box.Bottom()-lengthOf(edges[i+1], at.ratio)) {
						continue
					}
					if h.Area.X < at.box.Right() {
						sides = append(sides, "left")
					} else {
						sides = append(sides, "right")
					}
				}
				want := [2]string{"right", "left"}[i%2] // the left mate starts with a finger
				if fmt.Sprint(sides) != "["+want+"]" {
					t.Errorf("%s: from %d on, gaps on %v, want the %s", s.parts(p[0]), edges[i], sides, want)
				}
			}
			for _, e := range k.At {
				if len(at.short) == 0 && !written(at.Drawing, s.Ruler.Print(e)) {
					t.Errorf("%s: %s is not written", s.parts(p[0]), s.Ruler.Print(e))
				}
			}
		}
	})
	if seen == 0 {
		t.Error("no box joint")
	}
}

// Whoever looks at the inner face of the left side has the front on the left; the
// right side is its mirror image. The top is seen from below.
func TestFacesAreSeenFromTheirBay(t *testing.T) {
	s := examples(t)["tall-chest.toml"]
	seen := make(map[string]string)
	faces, _, _ := s.figures()
	for _, f := range faces {
		for _, l := range s.caption(f)[1:] {
			seen[s.Solids[f.members[0].solid].Role+", "+f.face] = l.text
		}
	}
	for of, want := range map[string]string{
		"side, inner face":        "inner face, front on the left; right: mirror image",
		"top, inner face":         "inner face, front at the top",
		"bottom, inner face":      "inner face, front at the bottom",
		"drawer side, inner face": "inner face",
		"false front, front face": "front face",
	} {
		if seen[of] != want {
			t.Errorf("%s: %q, want %q", of, seen[of], want)
		}
	}
}

// Five drawers that differ only in height have their grooves drawn once, with all
// marks of their parts; the figure is broken where they differ.
func TestAlikeFacesAreDrawnOnce(t *testing.T) {
	s := examples(t)["tall-chest.toml"]
	faces, pairs, _ := s.figures()
	found := 0
	for _, f := range faces {
		if f.solid.Role != "drawer side" {
			continue
		}
		found++
		if len(f.members) != 10 || !f.varied[casework.Z] || !strings.HasSuffix(s.parts(f), ": drawer side") || strings.Count(s.parts(f), ",") != 4 {
			t.Errorf("%s: %d pieces", s.parts(f), len(f.members))
		}
		if at := s.draw(f, rooms[0].X, rooms[0].Y); len(at.y.breaks) != 1 {
			t.Errorf("%d breaks", len(at.y.breaks))
		}
	}
	if found != 1 || len(pairs) != 5 {
		t.Errorf("grooves in %d figures, %d box joints", found, len(pairs))
	}
}

// A piece too long for its paper is broken where nothing is marked; places keep
// their order, and what lies at either side of the break is to scale.
func TestFoldLeavesOutAFreeStretch(t *testing.T) {
	f := folded(1000*mm1, []stock.Length{100 * mm1, 950 * mm1}, 5, 100, unbroken)
	if len(f.breaks) != 1 || f.length() >= 100 {
		t.Fatalf("%d breaks on %.1f mm", len(f.breaks), f.length())
	}
	if !near(f.at(100*mm1), 20) || !near(f.length()-f.at(950*mm1), 10) || !near(f.at(950*mm1)-f.at(100*mm1), 2*beside+parted) {
		t.Errorf("100 at %.2f, 950 at %.2f of %.2f", f.at(100*mm1), f.at(950*mm1), f.length())
	}
	for at := stock.Length(0); at < 1000; at += 10 {
		if f.at(at*mm1) >= f.at((at+10)*mm1) {
			t.Errorf("%d does not lie before %d", at, at+10)
		}
	}
	if whole := folded(1000*mm1, nil, 10, 100, unbroken); len(whole.breaks) > 0 || !near(whole.length(), 100) {
		t.Errorf("%d breaks on %.1f mm", len(whole.breaks), whole.length())
	}
	if must := folded(100*mm1, []stock.Length{20 * mm1}, 1, 200, 20*mm1); len(must.breaks) != 1 || !near(must.at(20*mm1), 20) {
		t.Errorf("%d breaks", len(must.breaks))
	}
}

// Of a thousand holes not all positions can be told; the marks are left to the
// table, and what is drawn still fits.
func TestWhatHasNoRoomIsLeft(t *testing.T) {
	for _, pins := range []int{41, 999} {
		s := subject(t, casework.Design{
			OutsideWidth: size(800), OutsideHeight: size(1800), OutsideDepth: size(400),
			Carcass: casework.Carcass{Material: given("ply")},
			Shelf:   casework.Shelf{PinHoles: given(pins), PinPitch: size(1)},
			Bays:    []casework.Bay{{Openings: []casework.Opening{{Shelves: given(1)}}}},
		})
		sheet := s.Draw(186, 262)
		for _, f := range sheet.Faces {
			if err := drawing.CheckWriting(f); err != nil || f.Width > 186 || f.Height > 262 {
				t.Errorf("%d pins: %.1f x %.1f: %v", pins, f.Width, f.Height, err)
			}
		}
		if left := len(sheet.Left) > 0; left != (pins == 999) {
			t.Errorf("%d pins: %d marks are left", pins, len(sheet.Left))
		}
	}
}

func TestNoSheetWithoutMarks(t *testing.T) {
	if sheet := (Subject{Case: &casework.Case{}}).Draw(186, 262); len(sheet.Rows(Endless(186))) > 0 || sheet.Left != nil {
		t.Errorf("%v", sheet)
	}
	k := casework.Mark{What: "slide line", Measure: casework.Measure{From: "bottom end", At: []stock.Length{mm1}}}
	if sheet := (Subject{Case: &casework.Case{Marks: []casework.Mark{k}}}).Draw(186, 262); len(sheet.Left) != 1 {
		t.Errorf("a mark of no piece is lost: %v", sheet)
	}
}

// The first figures of the plan chest, as the manual shows them.
func TestSheetOfThePlanChest(t *testing.T) {
	s := examples(t)["plan-chest.toml"]
	rows := s.Draw(186, 262).Rows(Paper{186, 262, 240})
	sheet := Column(rows[:2])
	got := sheet.SVG("Marks of a chest")
	file := filepath.Join("testdata", "plan-chest.svg")
	if *update {
		if err := os.WriteFile(file, got, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(want, got) {
		t.Errorf("%s is not what is drawn; look at what -update changes", file)
	}
}
