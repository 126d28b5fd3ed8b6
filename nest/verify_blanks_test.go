package nest_test

import (
	"testing"

	"sawbill/nest"
)

// A blank that a whole piece can be cut down to must not be listed as unplaced
// while there is a piece. Where it cannot be cut so, the saw's rules may be why.
func TestVerifyCutsAPieceDownToAnUnplacedBlank(t *testing.T) {
	none := func(*nest.Problem) {}
	kerf := func(k int64) func(*nest.Problem) { return func(p *nest.Problem) { p.Kerf = k } }
	first := func(c nest.Cut) func(*nest.Problem) { return func(p *nest.Problem) { p.Stock[0].FirstCut = c } }
	stages := func(n int) func(*nest.Problem) { return func(p *nest.Problem) { p.Stages = n } }
	narrowest := func(w int64) func(*nest.Problem) {
		return func(p *nest.Problem) { p.Stock[0].NarrowestRip = w }
	}
	tests := []struct {
		reason        string
		length, width int64 // of the blank; the trimmed sheet is 96 x 56
		change        func(*nest.Problem)
		canBeCut      bool
	}{
		{"the whole sheet", 96, 56, stages(1), true},
		{"behind it just an offcut", 84, 56, none, true},
		{"beside it just an offcut", 96, 44, none, true},
		{"a rip and a crosscut", 50, 30, stages(2), true},
		{"ripped first", 50, 30, first(nest.Rip), true},
		{"crosscut first", 50, 30, first(nest.Crosscut), true},
		{"one rip", 96, 30, stages(1), true},
		{"one crosscut", 50, 56, stages(1), true},
		{"two cuts where one is allowed", 50, 30, stages(1), false},
		{"a rip where a crosscut must come first", 96, 30, first(nest.Crosscut), false},
		{"a crosscut where a rip must come first", 50, 56, first(nest.Rip), false},
		{"the blade runs off the end by a whole kerf", 94, 30, kerf(2), true},
		{"the blade runs off the end by less", 95, 30, kerf(2), true},
		{"the blade leaves a sliver of 1 at the end", 93, 30, kerf(2), true},
		{"the blade leaves a sliver of 1 at the edge", 50, 53, kerf(2), true},
		{"without a kerf the sliver is the rest", 95, 55, kerf(0), true},
		{"as narrow as the narrowest rip", 50, 30, narrowest(24), true},
		{"narrower than the narrowest rip", 50, 30, narrowest(31), false},
		{"waste beside it, narrower than the narrowest rip", 96, 45, narrowest(11), true},
		{"an offcut beside it, narrower than the narrowest rip", 96, 44, narrowest(11), false},
		{"crosscut first, so short that what is ripped off is waste", 9, 44, narrowest(11), true},
	}
	for _, test := range tests {
		t.Run(test.reason, func(t *testing.T) {
			p := task(want(1, test.length, test.width, 0))
			test.change(&p)
			plan := nest.Plan{Unplaced: []nest.Unplaced{{Blank: 0, Count: 1, Reason: nest.AgainstRules}}}
			err := nest.Verify(p, plan)
			if refused := err != nil; refused != test.canBeCut {
				t.Errorf("refused %v, want %v: %v", refused, test.canBeCut, err)
			}
		})
	}
}

func TestVerifyIgnoresSourcesThatAreNotThere(t *testing.T) {
	p := task(want(1, 96, 56, -1, 1))
	plan := nest.Plan{Unplaced: []nest.Unplaced{{Blank: 0, Count: 1, Reason: nest.TooLarge}}}
	if err := nest.Verify(p, plan); err != nil {
		t.Error(err)
	}
}
