// Package cutplan plans a whole job: it turns the cutting bill and the stock of
// a stock.Job into a nest.Problem, has it solved and verified, and tells the
// answer in the words of the workshop: what to buy, how each sheet and board is
// divided, in which order and at which fence settings.
package cutplan

import "sawbill/stock"

// Plan is the plan of a whole job. It has passed nest.Verify.
type Plan struct {
	Job  stock.Job
	Bill []Blank // the cutting bill, in the order of Job.Parts: one blank for each, or several
	Buy  []Purchase
	// AtSeller is what is cut before it is carried home. Layouts are then of its
	// pieces, those that stay whole too.
	AtSeller []Division
	Layouts  []Layout
	Unplaced []Unplaced
	// Estimates are of blanks that are neither cut nor unplaced: their lumber is
	// sold by the board foot, and Cost and Bound leave it out.
	Estimates []Estimate
	Cost      stock.Money // of everything bought
	Bound     stock.Money // no plan whatever costs less
	Unpriced  []Unpriced  // stock that Cost and Bound leave out
	// Seconds is the time the solver took; 0 when an iteration budget ruled,
	// so that equal runs give equal bytes.
	Seconds float64
	Totals  Totals
	Cover   Cover
	// Numbered lists the leftovers with the numbers that were printed; nil for a new plan.
	// Offcuts returns them.
	Numbered []NumberedOffcut
}

// Complete reports whether every blank is cut, but for those of Estimates.
func (p Plan) Complete() bool { return len(p.Unplaced) == 0 }

// Proven reports whether no plan can cost less.
func (p Plan) Proven() bool { return p.Complete() && p.Cost == p.Bound }

// Blank is a line of the cutting bill.
type Blank struct {
	stock.Blank
	Mark string // "A" to "Z", then "AA": what is written on the piece
	// Turnable: it may lie either way in all stock it can come from.
	Turnable bool
}

// Purchase is a line of the shopping list. What is on hand is not in it.
type Purchase struct {
	Stock stock.Stock
	Count int
	Cost  stock.Money
}

// Measured is the volume as which the pieces are reckoned in board feet; false
// where they are not.
func (p Purchase) Measured() (stock.Volume, bool) {
	if p.Stock.Measure == (stock.Measure{}) {
		return stock.Volume{}, false
	}
	return p.Stock.Measure.Volume(p.Stock.Length, p.Count), true
}

// Unpriced is stock for sale that serves the same blanks and has no price: the
// least area was sought of it.
type Unpriced struct {
	Stock   []stock.Stock
	OneSize bool // all of it, so that Area and Bound count pieces
	// Area is what is bought, Bound what any plan buys at least, in a unit of
	// area of their own. Bound is 0 where nothing is proven.
	Area, Bound int64
}

// Layout is how Repeat pieces of one stock are divided. Lengths are those of
// the workpiece; the root is the stock less its trim.
type Layout struct {
	Stock  stock.Stock
	Repeat int
	Root   Node
	// Printed lists the steps as they were printed; nil for a new layout. Plan.Steps
	// returns them, so a layout that is changed must drop them.
	Printed []Step
}

// Unplaced is a blank that could not be cut, Count times.
type Unplaced struct {
	Blank  int // index into Plan.Bill
	Count  int
	Reason string
}

// Totals are shares of what was cut: by area where the plan has only sheets,
// else by volume. They add up to 1.
type Totals struct {
	All            Shares
	Sheets, Boards Shares // by area and by volume; zero where there are none
}

// Shares divide the stock cut: finished parts, offcuts kept, and the rest
// (waste, kerf, trim and allowances).
type Shares struct {
	Yield, Offcut, Waste float64
}
