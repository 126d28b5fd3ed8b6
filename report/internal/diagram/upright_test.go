package diagram

import (
	"fmt"
	"strings"
	"testing"

	"sawbill/report/internal/drawing"
	"sawbill/stock"
	"sawbill/stock/casework"
)

// chestOf is a case of two bays with drawers and shelves, with so many pins for
// each shelf.
func chestOf(t *testing.T, pins int) *casework.Case {
	t.Helper()
	length := func(n int) casework.Length {
		return casework.Length{Value: stock.Length(n) * stock.Millimetre, Set: true}
	}
	word := func(s string) casework.Word { return casework.Word{Value: s, Set: true} }
	count := func(n int) casework.Count { return casework.Count{Value: n, Set: true} }
	dado := casework.Divider{Joint: word("dado"), JointDepth: length(6)}
	d := casework.Design{
		OutsideWidth: length(1200), OutsideHeight: length(1800), OutsideDepth: length(400),
		Carcass:   casework.Carcass{Material: word("ply"), Joint: word("rabbet"), JointDepth: length(6)},
		Back:      casework.Back{Fit: word("groove"), Material: word("ply"), Depth: length(6), SetIn: length(10)},
		Partition: dado, Divider: dado,
		Shelf:  casework.Shelf{PinHoles: count(pins), PinPitch: length(10)},
		Drawer: casework.Drawer{Material: word("ply"), BottomMaterial: word("ply"), GrooveDepth: length(6)},
		Bays: []casework.Bay{
			{Openings: []casework.Opening{{Shelves: count(1)}, {Height: length(500), Drawers: []casework.DrawerBox{{Count: count(3)}}}}},
			{Openings: []casework.Opening{{Shelves: count(1)}}},
		},
	}
	c, faults := casework.Derive(d, casework.Context{Materials: map[string]casework.Material{
		"ply": {Kind: stock.Sheet, Thicknesses: []stock.Length{18 * stock.Millimetre}}}})
	if c == nil {
		t.Fatal(faults)
	}
	return c
}

// Both sides and both faces of the partition are drawn; rows stay within their
// room, and no writing within them touches.
func TestUprightsFitTheirRoom(t *testing.T) {
	const width, height = 186, 230
	for _, pins := range []int{3, 41, 999} {
		for _, r := range []stock.Ruler{{}, {Units: stock.Inches}} {
			rows, scale := Uprights(chestOf(t, pins), r, width, height)
			if scale != "1 : 10" {
				t.Errorf("scale %s", scale)
			}
			var captions []string
			for _, row := range rows {
				if err := drawing.CheckWriting(row); err != nil {
					t.Errorf("%d pins, %s: %v", pins, r.Units, err)
				}
				if row.Width > width || row.Height > height {
					t.Errorf("%d pins: a row of %.1f x %.1f", pins, row.Width, row.Height)
				}
				for _, text := range row.Texts() {
					if text.Face == drawing.Bold {
						captions = append(captions, text.String)
					}
				}
			}
			if got := strings.Join(captions, "; "); got != "side, left, inner face; side, right, inner face; partition, left face; partition, right face" {
				t.Errorf("faces: %s", got)
			}
		}
	}
}

// The front of the left side is at the left hand of whoever looks at its inner
// face, and a slide line at 1 : 10 lies a tenth of its height above the bottom.
func TestUprightsAreSeenFromTheirBay(t *testing.T) {
	c := chestOf(t, 3)
	rows, _ := Uprights(c, stock.Ruler{}, 1000, 230)
	var fronts []string
	for _, text := range rows[0].Texts() {
		if side, found := strings.CutPrefix(text.String, "front edge on the "); found {
			fronts = append(fronts, side)
		}
	}
	if got := fmt.Sprint(fronts); got != "[left right right left]" {
		t.Errorf("fronts on the %s", got)
	}
	for _, k := range c.Marks {
		if k.What != "slide line" {
			continue
		}
		y := faceCaption + millimetres(c.Solids[k.Spots[0].Solid].Size[casework.Z]-k.At[0])/10
		found := false
		for _, m := range rows[0].Marks {
			line, ok := m.(drawing.Line)
			found = found || ok && line.Pen == drawing.FineCut && line.From.Y == line.To.Y && line.From.Y > y-1e-6 && line.From.Y < y+1e-6
		}
		if !found {
			t.Errorf("no line at %.3f", y)
		}
	}
}

func TestNoUprightsWithoutMarks(t *testing.T) {
	if rows, _ := Uprights(&casework.Case{}, stock.Ruler{}, 186, 230); rows != nil {
		t.Errorf("%d rows", len(rows))
	}
}

// A slide line runs from where its slide begins, 50 from the front edge, to the
// back: at 1 : 10 from 5 to 40 on a face that has its front on the left, mirrored on
// the other.
func TestSlideLinesBeginWithTheirSlides(t *testing.T) {
	mm := stock.Millimetre
	c := &casework.Case{
		Parts:  []stock.Part{{Name: "side"}},
		Solids: []casework.Solid{{Role: "side", Size: casework.Point{18 * mm, 400 * mm, 1800 * mm}}},
	}
	for piece, want := range map[string][2]float64{"left": {5, 40}, "right": {35, 0}} {
		c.Marks = []casework.Mark{{
			Spots:   []casework.Spot{{Solid: 0, Piece: piece, Face: "inner face"}},
			Measure: casework.Measure{From: "bottom end", At: []stock.Length{900 * mm}},
			Across:  casework.Measure{From: "front edge", At: []stock.Length{50 * mm}},
			What:    "slide line", Spacers: []stock.Length{882 * mm},
		}}
		f := facesOf(c)[0]
		d := f.draw(10, 230, stock.Ruler{})
		found := false
		for _, m := range d.Marks {
			l, _ := m.(drawing.Line)
			found = found || l.Pen == drawing.FineCut && l.From.X == want[0] && l.To.X == want[1] && l.From.Y == l.To.Y
		}
		if !found {
			t.Errorf("%s: no line from %v to %v: %+v", piece, want[0], want[1], d.Marks)
		}
	}
}
