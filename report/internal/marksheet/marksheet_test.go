package marksheet

import (
	"bytes"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"sawbill/report/internal/drawing"
	"sawbill/stock"
	"sawbill/stock/casework"
)

var update = flag.Bool("update", false, "rewrite the golden files")

var rooms = []drawing.Point{{X: 186, Y: 262}, {X: 191.9, Y: 244.4}}

// No two texts touch, no line strikes one, none leaves its figure, and every row goes on a page.
func TestSheetsFitTheirPages(t *testing.T) {
	everySubject(t, func(t *testing.T, s Subject) {
		for _, room := range rooms {
			sheet := s.Draw(room.X, room.Y)
			count := 0
			for _, row := range sheet.Rows(Paper{room.X, room.Y, room.Y - 30}) {
				count += len(row.Figures)
				if err := drawing.CheckLegible(row.Drawing); err != nil {
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
			_, said, _ := strings.Cut(l.text, "; ")
			seen[string(s.Solids[f.members[0].solid].Role)+", "+f.face.String()] = said
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
			if err := drawing.CheckLegible(f); err != nil || f.Width > 186 || f.Height > 262 {
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
	k := casework.Mark{What: "slide line", Measure: casework.Measure{From: casework.Face{Side: casework.Lower, Extent: casework.End}, At: []stock.Length{mm1}}}
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
