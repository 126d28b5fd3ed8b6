package progress

import "sawbill/nest/cutplan"

// Blank is how a line of the cutting bill stands.
type Blank struct {
	cutplan.Blank
	Cut     int // off the saw, whatever became of them
	Spoiled int
	Lost    int
	Good    int // those that are there and can be used
	Open    int // still wanted
	// Bad are parts that are no good, of blanks that hold several and are good but for
	// them; Parts are those wanted that the good blanks give.
	Bad, Parts int
}

// Blanks tells how each blank stands, in the order of the state's bill.
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

// Layout is how far one layout has come.
type Layout struct {
	Pieces  int // of stock that it divides
	Whole   int // of them not begun
	Done    int
	Missing int // that were not there
	Cuts    int // in one of them
	Made    int // in all of them
	// Remeasured are those not begun that have another size, and are not cut as planned.
	Remeasured int
}

// Layouts tells how far each layout has come.
func (s *State) Layouts() []Layout {
	all := make([]Layout, len(s.plan.Layouts))
	for i := range all {
		l := Layout{Pieces: len(s.copies[i]), Cuts: len(s.steps[i]), Missing: s.missing[i] - s.remeasured.byLayout[i], Remeasured: s.remeasured.byLayout[i]}
		for _, c := range s.copies[i] {
			if !c.begun() {
				l.Whole++
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
		l.Whole -= s.missing[i]
		all[i] = l
	}
	return all
}

// Lacks reports whether some blank is open that no uncut piece is to give.
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
	for _, n := range open {
		if n > 0 {
			return true
		}
	}
	return false
}

// Done reports whether everything of the plan is cut and good.
func (s *State) Done() bool {
	for _, b := range s.Blanks() {
		if b.Parts < b.Count*b.Holds() {
			return false
		}
	}
	return true
}

func (s *State) eachCopy(do func(layout, copy int)) {
	for i := range s.copies {
		for k := range s.copies[i] {
			do(i, k)
		}
	}
}
