package nest_test

import (
	"fmt"
	"testing"

	"sawbill/nest"
)

// Plans from outside the project, and sums that can be done by hand.

// Lengths 45, 36, 31 and 14 from a length of 100, 97, 610, 395 and 211 times:
// V. Chvátal, Linear Programming (1983), chapter 13 (the data from memory). The
// linear bound is 452.25, re-derived by exact arithmetic, so that 453 pieces,
// which the patterns below need, are the fewest.
func TestVerifyAcceptsTheTextbookPlanOf453Pieces(t *testing.T) {
	p := nest.Problem{
		Stock:  []nest.Stock{{Length: 100, Width: 1, Price: 1}},
		Blanks: []nest.Blank{want(97, 45, 1, 0), want(610, 36, 1, 0), want(395, 31, 1, 0), want(211, 14, 1, 0)},
		Stages: 1,
	}
	pattern := func(repeat int, pieces ...nest.Node) nest.Layout {
		return nest.Layout{Repeat: repeat, Root: crosscut(100, 1, pieces...)}
	}
	a, b, c, d := upright(0, 45, 1), upright(1, 36, 1), upright(2, 31, 1), upright(3, 14, 1)
	plan := nest.Plan{
		Layouts: []nest.Layout{
			pattern(97, a, b, d, offcut(5, 1)),
			pattern(57, b, b, d, d),
			pattern(101, b, b, offcut(28, 1)),
			pattern(197, b, c, c, offcut(2, 1)),
			pattern(1, c, offcut(69, 1)),
		},
		Cost:  453,
		Bound: 453,
	}
	if err := nest.Verify(p, plan); err != nil {
		t.Error(err)
	}
	plan.Layouts[4].Repeat, plan.Cost = 0, 452
	if nest.Verify(p, plan) == nil {
		t.Error("a plan of 452 pieces was accepted")
	}
}

// n equal parts a from a length with kerf k between them need
// n a + (n-1) k <= length, so that n = floor((length + k) / (a + k)): arithmetic
// that anyone can repeat. Lengths are in 1/8 in or in 0.1 mm; left is what the
// last part leaves, kerf included.
func TestVerifyAgreesOnHowManyPartsAKerfLeavesRoomFor(t *testing.T) {
	const eighths, tenths = 1, 32 // the kerfs: 1/8 in, 3.2 mm
	tests := []struct {
		length, part, kerf int64
		most               int
		left               int64
	}{
		{96 * 8, 12 * 8, eighths, 7, 90},
		{96 * 8, 24 * 8, eighths, 3, 190},
		{96 * 8, 24*8 - 1, eighths, 4, 1},
		{96 * 8, 22*8 + 4, eighths, 4, 45},
		{48 * 8, 24 * 8, eighths, 1, 192},
		{48 * 8, 16 * 8, eighths, 2, 127},
		{48 * 8, 16*8 - 1, eighths, 3, 1},
		{24400, 6000, tenths, 4, 304},
		{24384, 6000, tenths, 4, 288},
		{12200, 3050, tenths, 3, 2986},
		{12200, 3026, tenths, 4, 0},
		{12200, 3000, tenths, 4, 104},
		{24400, 2400, 22, 10, 202},
	}
	for _, test := range tests {
		t.Run(fmt.Sprintf("%dx%d of %d", test.most, test.part, test.length), func(t *testing.T) {
			row := func(n int) error {
				root := crosscut(test.length, 1)
				for range n {
					root.Children = append(root.Children, upright(0, test.part, 1))
				}
				if left := test.left - test.kerf; left > 0 && n == test.most {
					root.Children = append(root.Children, offcut(left, 1))
				}
				p := nest.Problem{
					Stock:  []nest.Stock{{Length: test.length, Width: 1}},
					Blanks: []nest.Blank{want(n, test.part, 1, 0)},
					Kerf:   test.kerf,
				}
				return nest.Verify(p, nest.Plan{Layouts: []nest.Layout{{Repeat: 1, Root: root}}})
			}
			if err := row(test.most); err != nil {
				t.Errorf("%d parts, %d left: %v", test.most, test.left, err)
			}
			if row(test.most+1) == nil {
				t.Errorf("%d parts were accepted", test.most+1)
			}
		})
	}
}

// Sheets of 96 x 48 in, kerf 1/8 in, in eighths of an inch. Eight parts of
// 24 x 16 in are the most that an exact search finds; the layout is done by
// hand. Twelve of 23 7/8 x 15 7/8 in fit with the blade running off both edges.
func TestVerifyAcceptsLayoutsOfASheetDoneByHand(t *testing.T) {
	const in = 8
	sheet := nest.Problem{Stock: []nest.Stock{{Length: 96 * in, Width: 48 * in, Price: 1}}, Kerf: 1, Stages: 2}

	eight := sheet
	eight.Blanks = []nest.Blank{either(want(8, 24*in, 16*in, 0))}
	up, across := upright(0, 24*in, 16*in), turned(0, 16*in, 24*in)
	root := rip(96*in, 48*in,
		crosscut(96*in, 16*in, up, up, up, offcut(23*in+5, 16*in)),
		crosscut(96*in, 24*in, across, across, across, across, across, offcut(15*in+3, 24*in)),
		offcut(96*in, 7*in+6),
	)
	if err := nest.Verify(eight, nest.Plan{Layouts: []nest.Layout{{Repeat: 1, Root: root}}, Cost: 1}); err != nil {
		t.Errorf("eight: %v", err)
	}

	twelve := sheet
	twelve.Blanks = []nest.Blank{want(12, 24*in-1, 16*in-1, 0)}
	part := upright(0, 24*in-1, 16*in-1)
	strip := crosscut(96*in, 16*in-1, part, part, part, part)
	root = rip(96*in, 48*in, strip, strip, strip)
	if err := nest.Verify(twelve, nest.Plan{Layouts: []nest.Layout{{Repeat: 1, Root: root}}, Cost: 1}); err != nil {
		t.Errorf("twelve: %v", err)
	}
}
