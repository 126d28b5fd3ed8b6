package progress

import (
	"slices"

	"sawbill/nest/cutplan"
	"sawbill/stock"
)

// State is how far a plan has come. The zero value is of no plan; begin with [Begin].
type State struct {
	plan   *cutplan.Plan
	bill   []cutplan.Blank  // of the plan, and what was there before
	before []Made           // the latter
	steps  [][]cutplan.Step // by layout
	copies [][]*copied      // by layout; copy n is the (n+1)th piece cut by it
	blanks []tally          // by blank of the bill
	// Spoiled are the pieces that were cut and cannot be used as they were meant.
	Spoiled    []Spoiled
	losses     losses
	remeasured remeasured
	// missing counts stock that was not there, by layout, of those not begun.
	missing []int
	// missingUnplanned counts stock on hand that no layout cuts and that was not there.
	missingUnplanned map[string]int
	// Code is the plan's code, which the names of its leftovers begin with. If it is empty,
	// names with any code are accepted.
	Code string
}

// copied is one piece of stock that a layout divides.
type copied struct {
	inHand bool   // in hand: cut, or a piece that needs no cut
	made   []bool // cuts, by number - 1
}

// tally counts what became of a blank.
type tally struct {
	spoiled, lost, good int
	bad                 int // parts, in blanks that are good
}

// Size of what is left; Thickness may be 0.
type Size struct{ Length, Width, Thickness stock.Length }

// Begin is the state of a plan of which nothing is done. Blanks that plans before it made
// are there: each as often as its Count says.
func Begin(p *cutplan.Plan, before ...Made) *State {
	s := &State{plan: p, bill: slices.Clone(p.Bill), missing: make([]int, len(p.Layouts)), missingUnplanned: map[string]int{}}
	for _, m := range before {
		s.bill, s.before = append(s.bill, m.Blank), append(s.before, m)
	}
	s.blanks, s.losses = make([]tally, len(s.bill)), losses{known: make([]map[origin]int, len(s.bill)), unknown: map[string]int{}}
	s.remeasured.byLayout = make([]int, len(p.Layouts))
	for _, l := range p.Layouts {
		steps := p.Steps(l)
		copies := make([]*copied, l.Repeat)
		for i := range copies {
			copies[i] = &copied{made: make([]bool, len(steps))}
		}
		s.steps, s.copies = append(s.steps, steps), append(s.copies, copies)
	}
	return s
}

// Plan is the plan whose state it is.
func (s *State) Plan() *cutplan.Plan { return s.plan }

// Bill are the blanks of the plan, by their index in its own bill, and behind them those
// that plans before it made.
func (s *State) Bill() []cutplan.Blank { return s.bill }

// Parts are those of the whole job, the plan's and what was made before.
func (s *State) Parts() []stock.Part {
	all := slices.Clone(s.plan.Job.Parts)
	for _, b := range s.bill[len(s.plan.Bill):] {
		i := slices.IndexFunc(all, func(p stock.Part) bool { return p.Name == b.Part.Name })
		if i < 0 {
			i = len(all)
			all = append(all, b.Part)
			all[i].Count = 0
		}
		all[i].Count += b.Count * b.Holds()
	}
	return all
}

// begun reports whether anything was done with a piece of stock.
func (c *copied) begun() bool { return c.inHand || slices.Contains(c.made, true) }

// done reports whether a piece of stock is cut as planned.
func (c *copied) done() bool { return c.inHand && !slices.Contains(c.made, false) }

// make notes that a cut was made, and those before it that it takes.
func (c *copied) make(steps []cutplan.Step, number int) {
	for number > 0 && !c.made[number-1] {
		c.made[number-1] = true
		number = steps[number-1].InHand
	}
	c.inHand = true
}
