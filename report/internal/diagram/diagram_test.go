package diagram

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"sawbill/nest/cutplan"
	"sawbill/report/internal/drawing"
	"sawbill/report/internal/edging"
	"sawbill/report/internal/samples"
	"sawbill/stock"
)

var update = flag.Bool("update", false, "rewrite the golden files")

func view(p cutplan.Plan, i int) View {
	l := p.Layouts[i]
	return View{Layout: l, Steps: p.Steps(l), Rows: p.StepRows(i), Kerf: p.Job.Saw.Kerf, Bill: p.Bill,
		Ruler: stock.Ruler{Units: p.Job.Units}}
}

func TestDiagramsOfTheBench(t *testing.T) {
	p := samples.Bench()
	for i := range p.Layouts {
		picture := New(view(p, i), 190, 150)
		got := string(picture.SVG("layout"))
		golden := filepath.Join("testdata", fmt.Sprintf("bench-%d.svg", i+1))
		if *update {
			if err := os.WriteFile(golden, []byte(got), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		want, err := os.ReadFile(golden)
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(string(want), got); diff != "" {
			t.Errorf("%s (-want +got)\n%s", golden, diff)
		}
	}
}

// someLie gives some parts edging and an outside.
func someLie(n *cutplan.Node) Lie {
	k := n.Blank
	return Lie{Edged: edging.Sides{Lower: k%2 == 0, Upper: k%5 == 0, Left: k%3 == 0, Right: k%7 == 0}, Outside: k%4 == 1}
}

// No two texts may touch, none may leave the picture, none may be too small,
// whatever a plan cuts.
func TestWritingNeverOverlapsNorLeavesThePicture(t *testing.T) {
	for seed := range uint64(300) {
		p := samples.Random(seed)
		for i := range p.Layouts {
			v := view(p, i)
			v.Lie = someLie
			picture := New(v, 190, 150)
			if err := drawing.CheckLegible(picture.Drawing); err != nil {
				t.Fatalf("seed %d layout %d: %v", seed, i, err)
			}
		}
	}
}

// A long narrow piece of stock laid across, whose own size is wider than itself.
func TestFigureOfATinyLengthStandsBesideIt(t *testing.T) {
	p := samples.Bench()
	p.Layouts[0].Stock.Length, p.Layouts[0].Stock.Width = 75*stock.Millimeter, 1800*stock.Millimeter
	p.Layouts[0].Root = cutplan.Node{Length: 75 * stock.Millimeter, Width: 1800 * stock.Millimeter, Use: cutplan.Waste}
	v := view(p, 0)
	v.Ruler.Units = stock.Inches
	if err := drawing.CheckLegible(New(v, 190, 110).Drawing); err != nil {
		t.Error(err)
	}
}

func TestEveryPartAndCutIsNamed(t *testing.T) {
	p := samples.Bench()
	for i := range p.Layouts {
		v := view(p, i)
		picture := New(v, 190, 150)
		if picture.Unnamed != 0 {
			t.Errorf("layout %d: %d pieces or cuts without a label", i, picture.Unnamed)
		}
		written := numbersWritten(picture)
		for _, s := range v.Steps {
			if written[s.Number] == 0 {
				t.Errorf("layout %d: cut %d has no number", i, s.Number)
			}
		}
	}
}

// numbersWritten counts how often each cut is numbered: numbers are the only
// white texts.
func numbersWritten(p Picture) map[int]int {
	written := map[int]int{}
	for _, text := range p.Texts() {
		if !text.Reversed {
			continue
		}
		for _, part := range strings.Split(text.String, ", ") {
			first, last, isRange := strings.Cut(part, "–")
			if !isRange {
				last = first
			}
			from, _ := strconv.Atoi(first)
			to, _ := strconv.Atoi(last)
			for n := from; n <= to; n++ {
				written[n]++
			}
		}
	}
	return written
}

func TestDrawnToScale(t *testing.T) {
	p := samples.Bench()
	v := view(p, 0)
	f := newFrame(v, 190, 150, lanes{})
	if got, want := f.stock.W*float64(f.scale), 2440.0; got != want {
		t.Errorf("the sheet is drawn %v mm long, want %v", got, want)
	}
	shelf := f.rect(&v.Layout.Root.Children[1].Children[0])
	if got := shelf.W / shelf.H; got < 2.999 || got > 3.001 {
		t.Errorf("a 900 x 300 shelf is drawn %v times as long as wide", got)
	}
}

// Rips of small pieces in a row are numbered one by one as long as a number lies
// within its piece: one number for all would lie across the walls between them.
func TestNumbersOfRipsInARowStayWithinTheirPieces(t *testing.T) {
	const mm = stock.Millimeter
	m := samples.New(stock.Job{
		Saw:   stock.Saw{Kerf: 2 * mm},
		Stock: []stock.Stock{{Material: "ply", Length: 1240 * mm, Width: 310 * mm, Thickness: 9 * mm}},
		Parts: []stock.Part{{Name: "block", Material: "ply", Length: 90 * mm, Width: 90 * mm, Thickness: 9 * mm, Count: 8}},
	})
	var columns []samples.Piece
	for range 4 {
		columns = append(columns, m.Rips(90*mm, m.Part(0), m.Part(0), m.Rest()))
	}
	m.Layout(0, 1, m.Crosscuts(0, append(columns, m.Rest())...))
	v := view(m.Finished(0), 0)
	const wide = 110 // of a phone: pieces are 6.4 mm, a number of two digits 4 mm
	written := 0
	picture := New(v, wide, 110)
	for _, text := range picture.Texts() {
		if text.Reversed {
			written++
		}
		if text.Reversed && strings.ContainsAny(text.String, ",–") {
			t.Errorf("cuts %s share a number", text.String)
		}
	}
	if written != len(v.Steps) {
		t.Errorf("%d numbers for %d cuts", written, len(v.Steps))
	}
	if err := drawing.CheckLegible(picture.Drawing); err != nil {
		t.Error(err)
	}
}
