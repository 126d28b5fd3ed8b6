package cutplan

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"sawbill/stock"
)

// A sheet 2440 x 1220 that loses 5 on each side: 5 falls off the reference edge and end,
// then fence and stop are set to 1210 and 2430, the sawn side against them. The kerf has no
// say in it, whether it is nothing, less than the trim, as much or more.
func TestTrimIsSawnOffAndThenSetTo(t *testing.T) {
	for _, kerf := range []stock.Length{0, 3 * mm, 5 * mm, 8 * mm} {
		p := Plan{Job: stock.Job{Saw: stock.Saw{Kerf: kerf}}, Bill: make([]Blank, 1)}
		s := stock.Stock{Length: 2440 * mm, Width: 1220 * mm, Trim: 5 * mm}
		p.Layouts = []Layout{{Stock: s, Repeat: 2, Root: Node{X: 5 * mm, Y: 5 * mm, Length: 2430 * mm, Width: 1210 * mm, Use: Part}}}
		var got []string
		for _, r := range p.StepRows(0) {
			how := "set to"
			if r.SawOff {
				how = "saw off"
			}
			got = append(got, fmt.Sprintf("%v %v %d, waste %d, of %d x %d, part %v",
				r.Cut, how, r.Setting/mm, r.Waste, r.Pieces[0].Size.Length/mm, r.Pieces[0].Size.Width/mm, r.Off.Node != nil))
		}
		want := []string{
			"rip saw off 5, waste 0, of 2440 x 1220, part false",
			"crosscut saw off 5, waste 0, of 2440 x 1215, part false",
			"rip set to 1210, waste 1, of 2435 x 1215, part false",
			"crosscut set to 2430, waste 1, of 2435 x 1210, part true",
		}
		if !slices.Equal(got, want) {
			t.Errorf("kerf %d: %q, want %q", kerf/mm, got, want)
		}
		if rows := p.SetupRows(p.Setups()[0]); len(rows) != 4 || rows[3].Count != 2 || rows[3].Off.Node == nil {
			t.Errorf("kerf %d: setups %+v", kerf/mm, rows)
		}
	}
}

func TestEqualCutsShareARow(t *testing.T) {
	part := func(blank int) *Node { return &Node{Use: Part, Blank: blank} }
	strip := Size{900 * mm, 100 * mm}
	// chain cuts off blank 0 again and again from one piece.
	chain := func(number, inHand int) Step {
		return Step{Number: number, Level: 2, InHand: inHand, Remainder: inHand > 1, Cut: Rip, Setting: 20 * mm,
			Off: Size{900 * mm, 20 * mm}, OffNode: part(0)}
	}
	// each cuts blank 1 from a piece of its own.
	each := func(number, inHand int) Step {
		return Step{Number: number, Level: 2, InHand: inHand, Cut: Crosscut, Setting: 400 * mm, Piece: strip,
			Off: Size{400 * mm, 100 * mm}, OffNode: part(1), Left: strip}
	}
	other := chain(4, 3)
	other.OffNode = part(2)
	breakdown := chain(4, 3)
	breakdown.Guide = Marked
	longer := each(6, 3)
	longer.Piece.Length += mm
	afterChain := each(7, 6)
	afterChain.Remainder = true
	for _, tt := range []struct {
		reason string
		steps  []Step
		want   string // the numbers of the cuts: of a row's pieces, of rows
	}{
		{"one piece, cut after cut", []Step{chain(2, 1), chain(3, 2), chain(4, 3)}, "[[2 3 4]]"},
		{"another part at the same setting", []Step{chain(2, 1), chain(3, 2), other}, "[[2 3]] [[4]]"},
		{"a cut beyond the saw stands alone", []Step{chain(3, 2), breakdown}, "[[3]] [[4]]"},
		{"equal pieces of their own", []Step{each(5, 1), each(6, 2), each(7, 3), each(8, 9)}, "[[5] [6] [7] [8]]"},
		{"a longer piece is another matter", []Step{each(5, 2), longer}, "[[5]] [[6]]"},
		{"two kinds do not mix", []Step{each(5, 1), each(6, 2), afterChain}, "[[5] [6]] [[7]]"},
	} {
		p := Plan{Layouts: []Layout{{Repeat: 1, Printed: tt.steps}}}
		var got []string
		for _, r := range p.StepRows(0) {
			var of [][]int
			for _, h := range r.Pieces {
				var numbers []int
				for _, c := range h.Cuts {
					numbers = append(numbers, c.Number)
				}
				of = append(of, numbers)
			}
			got = append(got, fmt.Sprint(of))
		}
		if is := strings.Join(got, " "); is != tt.want {
			t.Errorf("%s: %s, want %s", tt.reason, is, tt.want)
		}
	}
}

// Marks are measured from the piece that the row has in hand: behind others of 122 and 60,
// or from the first of a run.
func TestARowMeasuresFromItsOwnPiece(t *testing.T) {
	cut := func(number int, setting, mark stock.Length) Step {
		return Step{Number: number, Level: 1, InHand: number - 1, Remainder: true, Cut: Rip, Guide: Marked,
			Setting: setting * mm, Mark: mark * mm, OffNode: &Node{Use: Part}}
	}
	for _, tt := range []struct {
		steps []Step
		want  []stock.Length
	}{
		{[]Step{cut(2, 300, 300), cut(3, 300, 603), cut(4, 300, 906)}, []stock.Length{300, 603, 906}},
		{[]Step{cut(9, 40, 225), cut(10, 40, 268)}, []stock.Length{40, 83}},
	} {
		p := Plan{Layouts: []Layout{{Repeat: 1, Printed: tt.steps}}}
		rows := p.StepRows(0)
		var got []stock.Length
		for _, c := range rows[0].Pieces[0].Cuts {
			got = append(got, c.Here/mm)
		}
		if len(rows) != 1 || !slices.Equal(got, tt.want) {
			t.Errorf("%d rows, marks at %v, want %v", len(rows), got, tt.want)
		}
	}
}
