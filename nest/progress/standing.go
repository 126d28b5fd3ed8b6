package progress

import (
	"slices"

	"sawbill/nest/cutplan"
)

// Blank is the progress of a line of the cutting bill.
type Blank struct {
	cutplan.Blank
	Cut     int // off the saw, good or not
	Spoiled int
	Lost    int
	Good    int // present and usable
	Open    int // still wanted
	// Bad counts bad parts in blanks that hold several and are otherwise good. Parts
	// counts wanted parts in good blanks.
	Bad, Parts int
}

// Blanks returns the progress of each blank, in the order of the state's bill.
func (s *State) Blanks() []Blank {
	cut := make([]int, len(s.bill))
	for i := len(s.plan.Bill); i < len(cut); i++ {
		cut[i] = s.bill[i].Count // made before
	}
	s.eachCopy(func(layout, copy int) {
		for _, p := range s.remnants(layout, copy) {
			if p.Root.Use == cutplan.Part && p.Freed {
				cut[p.Root.Blank]++
			}
		}
	})
	all := make([]Blank, len(s.bill))
	for i, b := range s.bill {
		t := s.blanks[i]
		good := cut[i] - t.spoiled - t.lost + t.good
		all[i] = Blank{
			Blank: b, Cut: cut[i], Spoiled: t.spoiled, Lost: t.lost, Good: good, Open: max(0, b.Count-good),
			Bad: t.bad, Parts: min(good*b.Holds(), good*b.Gang*b.Layers-t.bad),
		}
	}
	return all
}

// Layout is the progress of one layout.
type Layout struct {
	Pieces  int // pieces of stock that it divides
	Uncut   int // pieces not begun
	Done    int
	Missing int // pieces that were missing
	Cuts    int // cuts in one piece
	Made    int // cuts made in all pieces
	// Remeasured counts pieces not begun whose size changed, so that they are not cut as
	// planned.
	Remeasured int
}

// Layouts returns the progress of each layout.
func (s *State) Layouts() []Layout {
	all := make([]Layout, len(s.plan.Layouts))
	for i := range all {
		l := Layout{Pieces: len(s.copies[i]), Cuts: len(s.steps[i]), Missing: s.missing[i] - s.remeasured.byLayout[i], Remeasured: s.remeasured.byLayout[i]}
		for _, c := range s.copies[i] {
			if !c.begun() {
				l.Uncut++
			}
			if c.done() {
				l.Done++
			}
			for _, made := range c.made {
				if made {
					l.Made++
				}
			}
		}
		l.Uncut -= s.missing[i]
		all[i] = l
	}
	return all
}

// Lacks reports whether an open blank has no uncut piece that is planned to give it.
func (s *State) Lacks() bool {
	open := make([]int, len(s.bill))
	for i, b := range s.Blanks() {
		open[i] = b.Open
		if b.Parts+b.Open*b.Holds() < b.Count*b.Holds() {
			return true
		}
	}
	for _, p := range s.Pieces("") {
		for _, n := range p.Root.Leaves() {
			if n.Use == cutplan.Part {
				open[n.Blank] -= p.Stock.Count
			}
		}
	}
	return slices.ContainsFunc(open, func(n int) bool { return n > 0 })
}

// Done reports whether everything in the plan is cut and good.
func (s *State) Done() bool {
	return !slices.ContainsFunc(s.Blanks(), func(b Blank) bool { return b.Parts < b.Count*b.Holds() })
}

func (s *State) eachCopy(do func(layout, copy int)) {
	for i := range s.copies {
		for k := range s.copies[i] {
			do(i, k)
		}
	}
}
