package progress

import (
	"slices"

	"sawbill/nest/cutplan"
	"sawbill/stock"
)

// State is the progress of a plan. The zero value belongs to no plan; begin with [Begin].
type State struct {
	plan   *cutplan.Plan
	bill   []cutplan.Blank  // blanks of the plan, then of earlier plans
	before []Made           // blanks of earlier plans
	steps  [][]cutplan.Step // by layout
	copies [][]*copied      // by layout; copy n is the (n+1)th piece cut by it
	blanks []tally          // by blank of the bill
	// Spoiled lists the blanks that were cut and cannot be used as planned.
	Spoiled    []Spoiled
	losses     losses
	remeasured remeasured
	// missing counts missing pieces of stock, by layout, among those not begun.
	missing []int
	// missingUnplanned counts missing stock on hand that no layout cuts, by name.
	missingUnplanned map[string]int
	// Code is the plan's code, which begins the names of its leftovers. If it is empty,
	// names with any code are accepted.
	Code string
}

// copied is one piece of stock that a layout divides.
type copied struct {
	inHand bool   // cut, or a piece that needs no cut
	made   []bool // cuts, by number - 1
}

// tally counts the spoiled, lost and extra blanks of a line.
type tally struct {
	spoiled, lost, good int
	bad                 int // parts, in blanks that are good
}

// Size is the usable size of a piece; Thickness may be 0.
type Size struct{ Length, Width, Thickness stock.Length }

// Begin returns the state of a plan without any cut. Blanks made by earlier plans count as
// good, each Count times.
func Begin(p *cutplan.Plan, before ...Made) *State {
	s := &State{plan: p, bill: slices.Clone(p.Bill), missing: make([]int, len(p.Layouts)), missingUnplanned: map[string]int{}}
	for _, m := range before {
		s.bill, s.before = append(s.bill, m.Blank), append(s.before, m)
	}
	s.blanks, s.losses = make([]tally, len(s.bill)), losses{known: make([]map[origin]int, len(s.bill)), unknown: map[string]int{}}
	for i := range s.losses.known {
		s.losses.known[i] = map[origin]int{}
	}
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

// Plan returns the plan that the state belongs to.
func (s *State) Plan() *cutplan.Plan { return s.plan }

// Bill returns the blanks of the plan, by their index in its bill, and behind them the
// blanks of earlier plans.
func (s *State) Bill() []cutplan.Blank { return s.bill }

// Parts lists the parts of the whole job, in the plan and in blanks made before.
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

// begun reports whether any work was done on a piece of stock.
func (c *copied) begun() bool { return c.inHand || slices.Contains(c.made, true) }

// done reports whether a piece of stock is cut as planned.
func (c *copied) done() bool { return c.inHand && !slices.Contains(c.made, false) }

// make records a cut, and the earlier cuts that it depends on.
func (c *copied) make(steps []cutplan.Step, number int) {
	for number > 0 && !c.made[number-1] {
		c.made[number-1] = true
		number = steps[number-1].InHand
	}
	c.inHand = true
}
