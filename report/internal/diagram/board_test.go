package diagram

import (
	"slices"
	"strings"
	"testing"

	"sawbill/nest/cutplan"
	"sawbill/report/internal/drawing"
	"sawbill/report/internal/samples"
	"sawbill/stock"
)

const mm1 = stock.Millimeter

// boards are random plans with boards only.
func boards(seeds uint64, visit func(seed uint64, p cutplan.Plan, i int)) {
	for seed := range seeds {
		p := samples.Random(seed)
		for i, l := range p.Layouts {
			if l.Stock.Kind == stock.Board {
				visit(seed, p, i)
			}
		}
	}
}

// Whatever is cut out of a board, in inches or millimeters, large or small.
func TestWritingOnBoardsNeverOverlaps(t *testing.T) {
	boards(250, func(seed uint64, p cutplan.Plan, i int) {
		for _, width := range []float64{186, 240} {
			v := view(p, i)
			v.Ruler.Units = stock.Units(seed % 2)
			picture := New(v, width, 150)
			if err := drawing.CheckLegible(picture.Drawing); err != nil {
				t.Fatalf("seed %d layout %d: %v", seed, i, err)
			}
			high := 0.0
			for _, r := range picture.Rows {
				if high += r.Height; r.Height > 200 {
					t.Errorf("seed %d layout %d: a row is %v mm high, more than a page has", seed, i, r.Height)
				}
			}
			if high != picture.Height {
				t.Errorf("seed %d layout %d: the rows are %v mm high, the picture %v", seed, i, high, picture.Height)
			}
		}
	})
}

// Each cut is numbered once, or its piece is said to have no label.
func TestEveryCutOfABoardIsNumberedOnce(t *testing.T) {
	boards(250, func(seed uint64, p cutplan.Plan, i int) {
		if idle(p.Layouts[i].Root) {
			return
		}
		v := view(p, i)
		picture := New(v, 186, 150)
		written, missing := numbersWritten(picture), 0
		for _, s := range v.Steps {
			switch written[s.Number] {
			case 0:
				missing++
			case 1:
			default:
				t.Errorf("seed %d layout %d: cut %d is numbered %d times", seed, i, s.Number, written[s.Number])
			}
		}
		if missing > 0 && picture.Unnamed == 0 {
			t.Errorf("seed %d layout %d: %d cuts have no number, and nothing says so", seed, i, missing)
		}
	})
}

// idle reports whether a split below n divides nothing. Random plans have such,
// the solver's never.
func idle(n cutplan.Node) bool {
	return len(n.Children) == 1 && n.Children[0].Length == n.Length && n.Children[0].Width == n.Width ||
		slices.ContainsFunc(n.Children, idle)
}

// The marks on the paper are those of the tree: each lies below the cut it is
// about, and its figure is the distance from the origin of its line.
func TestMarksAreDistancesFromTheReferenceEnd(t *testing.T) {
	p := samples.Bench()
	got := map[string]bool{}
	picture := New(view(p, 4), 190, 150)
	for _, text := range picture.Texts() {
		got[text.String] = true
	}
	root := p.Layouts[4].Root
	for _, c := range root.Children[:len(root.Children)-1] {
		want := stock.Ruler{}.Print(c.X + c.Length - root.X)
		if !got[want] {
			t.Errorf("no mark at %s; there are %v", want, got)
		}
	}
}

func TestEqualPiecesAreDrawnOnce(t *testing.T) {
	p := samples.Bench()
	picture := New(view(p, 4), 190, 150)
	var titles []string
	for _, text := range picture.Texts() {
		if strings.Contains(text.String, "scale") {
			titles = append(titles, text.String)
		}
	}
	if len(titles) != 2 || !strings.HasPrefix(titles[1], "pieces from 4, 5: 520 x 89 each, scale 1:") {
		t.Errorf("drawn: %q", titles)
	}
}

// piece is a node of its own size; pieces stand along the length or across it.
func piece(x, y, length, width int, children ...cutplan.Node) cutplan.Node {
	n := cutplan.Node{X: stock.Length(x) * mm1, Y: stock.Length(y) * mm1,
		Length: stock.Length(length) * mm1, Width: stock.Length(width) * mm1, Use: cutplan.Waste, Children: children}
	if len(children) > 0 {
		n.Use, n.Cut = cutplan.Split, cutplan.Crosscut
		if children[0].Length == n.Length {
			n.Cut = cutplan.Rip
		}
	}
	return n
}

func TestStripsCutAtTheSameMarksShareALine(t *testing.T) {
	strip := func(y int, at ...int) cutplan.Node {
		x := 0
		var children []cutplan.Node
		for _, to := range at {
			children = append(children, piece(x, y, to-x, 30))
			x = to + 3
		}
		return piece(0, y, 1000, 30, append(children, piece(x, y, 1000-x, 30))...)
	}
	p := cutplan.Plan{Job: stock.Job{Saw: stock.Saw{Kerf: 3 * mm1}}}
	l := cutplan.Layout{
		Stock: stock.Stock{Kind: stock.Board, Length: 1000 * mm1, Width: 129 * mm1},
		Root:  piece(0, 0, 1000, 129, strip(0, 300, 700), strip(33, 300, 700), strip(66, 400), strip(99, 300)),
	}
	saw := sawnBy(p.Steps(l))
	none := func(cutplan.Node) bool { return false }
	lines := runningLines(saw.partings([]cutplan.Node{l.Root}, 0, none))
	var got []string
	for _, line := range lines {
		said := ""
		for _, m := range line.marks {
			said += ranges(m.numbers, 3) + " at " + stock.Ruler{}.Print(m.at) + "; "
		}
		got = append(got, said)
	}
	// Rips are 1 to 3. Then the widest next stop: 400; 300 of three strips; 397 of two.
	want := []string{"5, 6 at 300; 8, 9 at 700; ", "4 at 400; ", "7 at 300; "}
	if !slices.Equal(got, want) {
		t.Errorf("lines %q, want %q", got, want)
	}
	if levels := levels(lines); len(levels) != 3 {
		t.Errorf("%d levels for three lines from one end", len(levels))
	}
}

func TestNumbersAreSaidShortly(t *testing.T) {
	for _, tt := range []struct {
		numbers []int
		least   int
		want    string
	}{{[]int{4}, 2, "4"}, {[]int{5, 4}, 2, "4–5"}, {[]int{5, 4}, 3, "4, 5"}, {[]int{6, 7, 8}, 3, "6–8"},
		{[]int{1, 3, 4, 5, 9, 9}, 2, "1, 3–5, 9"}} {
		if got := ranges(tt.numbers, tt.least); got != tt.want {
			t.Errorf("%v is said %q, want %q", tt.numbers, got, tt.want)
		}
	}
}
