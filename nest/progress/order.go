package progress

import (
	"fmt"
	"slices"

	"sawbill/nest/cutplan"
)

// Cut is one cut or a run of cuts in one piece of stock; all numbers are as printed, from
// 1. Without From and To the piece is taken in hand and needs no cut.
type Cut struct{ Layout, Copy, From, To int }

// Event returns the event that reports the cut.
func (c Cut) Event() Event {
	switch {
	case c.From == 0:
		return Event{"cut", fmt.Sprintf("%d/%d", c.Layout, c.Copy)}
	case c.From == c.To:
		return Event{"cut", fmt.Sprintf("%d/%d:%d", c.Layout, c.Copy, c.From)}
	}
	return Event{"cut", fmt.Sprintf("%d/%d:%d-%d", c.Layout, c.Copy, c.From, c.To)}
}

// By is an order of cuts.
type By int

const (
	ByLayout By = iota // one piece of stock after another
	BySetup            // all cuts at one setting of the saw together
)

// Order lists the remaining cuts, one by one, in an order in which they can be made.
func (s *State) Order(by By) []Cut {
	var all []Cut
	left := func(layout, number int) {
		for _, copy := range s.presentCopies(layout) {
			c := s.copies[layout][copy]
			if number == 0 && !c.inHand || number > 0 && !c.made[number-1] && s.cuttable(layout, copy, number) {
				all = append(all, Cut{layout + 1, copy + 1, number, number})
			}
		}
	}
	for i, steps := range s.steps {
		if len(steps) == 0 && s.plan.Layouts[i].Root.Use == cutplan.Part {
			left(i, 0)
		}
	}
	if by == BySetup {
		for _, g := range s.plan.Setups() {
			for _, setup := range g.Setups {
				for _, c := range setup.Cuts {
					left(c.Layout, c.Step.Number)
				}
			}
		}
		return all
	}
	for i := range s.copies {
		for _, copy := range s.presentCopies(i) {
			for _, st := range s.steps[i] {
				if !s.copies[i][copy].made[st.Number-1] && s.cuttable(i, copy, st.Number) {
					all = append(all, Cut{i + 1, copy + 1, st.Number, st.Number})
				}
			}
		}
	}
	return all
}

// Next returns the first cut of an order; false if none is left.
func (s *State) Next(by By) (Cut, bool) {
	all := s.Order(by)
	if len(all) == 0 {
		return Cut{}, false
	}
	return all[0], true
}

// Steps lists the cuts of a layout, which is numbered from 1, as printed.
func (s *State) Steps(layout int) []cutplan.Step { return s.steps[layout-1] }

// IsMade reports whether a cut is made; all numbers are as printed. For cut 0, it reports
// whether the piece of stock is in hand.
func (s *State) IsMade(layout, copy, cut int) bool {
	c := s.copies[layout-1][copy-1]
	return cut == 0 && c.inHand || cut > 0 && c.made[cut-1]
}

// presentCopies lists the indices of a layout's pieces of stock that are not missing.
func (s *State) presentCopies(layout int) []int {
	var all []int
	uncut := s.uncutPiece(layout).Stock.Count
	for i, c := range s.copies[layout] {
		if !c.begun() {
			if uncut == 0 {
				continue
			}
			uncut--
		}
		all = append(all, i)
	}
	return all
}

// cuttable reports whether a cut can be made as planned. A piece with a changed size is
// not cut further.
func (s *State) cuttable(layout, copy, number int) bool {
	if len(s.remeasured.cut) == 0 {
		return true
	}
	c := s.copies[layout][copy]
	before := copied{c.inHand, slices.Clone(c.made)}
	c.make(s.steps[layout], number)
	err := s.checkRemeasured()
	*c = before
	return err == nil
}
