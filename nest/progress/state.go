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
	Blank int // index into the state's bill
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

// Begin is the state of a plan of which nothing is done. What plans before it made is
// there: each blank as often as its Count says.
func Begin(p *cutplan.Plan, before ...cutplan.Blank) *State {
	bill := slices.Concat(p.Bill, before)
	s := &State{plan: p, bill: bill, blanks: make([]tally, len(bill)), gone: make([]int, len(p.Layouts)), absent: map[string]int{}}
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

// Made are the blanks that are good, for a plan of the rest to begin with, and none more
// than the job wants. One of which parts are no good holds fewer.
func (s *State) Made() []cutplan.Blank {
	wanted := map[string]int{}
	for _, p := range s.Parts() {
		wanted[p.Name] = p.Count
	}
	var all []cutplan.Blank
	for _, b := range s.Blanks() {
		for n := range b.Good {
			one := b.Blank
			one.Count = 1
			bad := (b.Bad + b.Good - 1 - n) / b.Good // shared out
			one.Spare = max(one.Spare, bad, one.Gang*one.Layers-wanted[b.Part.Name])
			if one.Holds() <= 0 {
				continue
			}
			wanted[b.Part.Name] -= one.Holds()
			if last := len(all) - 1; last >= 0 && all[last].Mark == one.Mark && all[last].Spare == one.Spare {
				all[last].Count++
				continue
			}
			all = append(all, one)
		}
	}
	return all
}

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
