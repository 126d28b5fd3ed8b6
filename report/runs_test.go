package report

import (
	"testing"

	"sawbill/nest/cutplan"
	"sawbill/stock"
)

func TestEqualCutsShareALine(t *testing.T) {
	const mm = stock.Millimeter
	part := func(blank int) *cutplan.Node { return &cutplan.Node{Use: cutplan.Part, Blank: blank} }
	strip := cutplan.Size{Length: 900 * mm, Width: 100 * mm}
	// chain cuts off blank 0 again and again from one piece.
	chain := func(number, inHand int) cutplan.Step {
		return cutplan.Step{Number: number, InHand: inHand, Remainder: inHand > 1, Cut: cutplan.Rip, Setting: 20 * mm,
			Off: cutplan.Size{Length: 900 * mm, Width: 20 * mm}, OffNode: part(0)}
	}
	// each cuts blank 1 from a piece of its own.
	each := func(number, inHand int) cutplan.Step {
		return cutplan.Step{Number: number, InHand: inHand, Cut: cutplan.Crosscut, Setting: 400 * mm, Piece: strip,
			Off: cutplan.Size{Length: 400 * mm, Width: 100 * mm}, OffNode: part(1), Left: strip}
	}
	other := chain(4, 3)
	other.OffNode = part(2)
	breakdown := chain(4, 3)
	breakdown.Guide = cutplan.Marked
	trim := chain(2, 1)
	trim.Trim, trim.Remainder = true, true
	longer := each(6, 3)
	longer.Piece.Length += mm
	tests := []struct {
		reason string
		steps  []cutplan.Step
		want   []string // numbers, then what is in hand
	}{
		{"one piece, cut after cut", []cutplan.Step{chain(2, 1), chain(3, 2), chain(4, 3)}, []string{"2–4 piece from 1: 0 x 0"}},
		{"another part at the same setting", []cutplan.Step{chain(2, 1), chain(3, 2), other}, []string{"2–3 piece from 1: 0 x 0", "4 rest of 3: 0 x 0"}},
		{"a cut beyond the saw stands alone", []cutplan.Step{chain(3, 2), breakdown}, []string{"3 rest of 2: 0 x 0", "4 rest of 3: 0 x 0"}},
		{"trim cuts are one run of their own", []cutplan.Step{trim, trim, chain(4, 2)}, []string{"2–2 rest of 1: 0 x 0", "4 rest of 2: 0 x 0"}},
		{"equal pieces of their own", []cutplan.Step{each(5, 1), each(6, 2), each(7, 3), each(8, 9)}, []string{"5–8 pieces from 1–3, 9: 900 x 100 each"}},
		{"a longer piece is another matter", []cutplan.Step{each(5, 2), longer}, []string{"5 piece from 2: 900 x 100", "6 piece from 3: 901 x 100"}},
		{"two kinds of run do not mix", []cutplan.Step{each(5, 1), each(6, 2), func() cutplan.Step { s := each(7, 6); s.Remainder = true; return s }()},
			[]string{"5–6 pieces from 1, 2: 900 x 100 each", "7 rest of 6: 900 x 100"}},
	}
	for _, tt := range tests {
		var got []string
		for _, r := range runsOf(tt.steps) {
			got = append(got, r.numbers()+" "+r.inHand("sheet", stock.Ruler{}))
		}
		if len(got) != len(tt.want) {
			t.Errorf("%s: %q, want %q", tt.reason, got, tt.want)
			continue
		}
		for i := range got {
			if got[i] != tt.want[i] {
				t.Errorf("%s: %q, want %q", tt.reason, got[i], tt.want[i])
			}
		}
	}
}

// Where there is no fence, marks are measured from the piece that the row has in
// hand, all of a row from its one edge.
func TestBreakdownCutsTellTheirMarks(t *testing.T) {
	const mm = stock.Millimeter
	cut := func(number int, setting, mark stock.Length) cutplan.Step {
		return cutplan.Step{Number: number, InHand: number - 1, Remainder: true, Cut: cutplan.Rip, Guide: cutplan.Marked,
			Setting: setting * mm, Mark: mark * mm, OffNode: &cutplan.Node{Use: cutplan.Part}}
	}
	for _, tt := range []struct {
		steps []cutplan.Step
		want  string
	}{
		{[]cutplan.Step{cut(2, 300, 300), cut(3, 300, 603), cut(4, 300, 906)}, "mark 300, 603, 906"},
		{[]cutplan.Step{cut(9, 40, 225), cut(10, 40, 268)}, "mark 40, 83"}, // behind others of 122 and 60
	} {
		runs := runsOf(tt.steps)
		if got := runs[0].setting(cutplan.Layout{}, stock.Ruler{}); len(runs) != 1 || got != tt.want {
			t.Errorf("%d rows, %q, want %q", len(runs), got, tt.want)
		}
	}
}
