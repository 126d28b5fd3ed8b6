package progress

import (
	"slices"

	"sawbill/nest/cutplan"
	"sawbill/stock"
)

// State is how far a plan has come. The zero value is of no plan; begin with [Begin].
type State struct {
	plan   *cutplan.Plan
	steps  [][]cutplan.Step // by layout
	copies [][]*copied      // by layout; copy n is the (n+1)th piece cut by it
	blanks []tally          // by blank of the bill
	// Spoiled are the pieces that were cut and cannot be used as they were meant.
	Spoiled []Spoiled
	// gone counts stock that was not there, by layout, of those not begun.
	gone []int
	// absent counts stock on hand that no layout cuts and that was not there.
	absent map[string]int
}

// copied is one piece of stock that a layout divides.
type copied struct {
	taken bool   // in hand: cut, or a piece that needs no cut
	made  []bool // cuts, by number - 1
}

// tally counts what became of a blank.
type tally struct {
	spoiled, lost, good int
	bad                 int // parts, in blanks that are good
}

// Spoiled is a blank that was cut and is no good.
type Spoiled struct {
	Blank int // index into the plan's bill
	// From is the stock that it came from; Turned tells that its length lies along
	// the width of that.
	From   stock.Stock
	Turned bool
	// Left is what of it can still be used, as the blank's length and width run, and
	// its thickness if that is no longer the stock's; zero where nothing was said.
	Left Size
}

// Size of what is left; Thickness may be 0.
type Size struct{ Length, Width, Thickness stock.Length }

// Begin is the state of a plan of which nothing is done.
func Begin(p *cutplan.Plan) *State {
	s := &State{plan: p, blanks: make([]tally, len(p.Bill)), gone: make([]int, len(p.Layouts)), absent: map[string]int{}}
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

// begun reports whether anything was done with a piece of stock.
func (c *copied) begun() bool { return c.taken || slices.Contains(c.made, true) }

// done reports whether a piece of stock is cut as planned.
func (c *copied) done() bool { return c.taken && !slices.Contains(c.made, false) }

// make notes that a cut was made, and those before it that it takes.
func (c *copied) make(steps []cutplan.Step, number int) {
	for number > 0 && !c.made[number-1] {
		c.made[number-1] = true
		number = steps[number-1].InHand
	}
	c.taken = true
}
