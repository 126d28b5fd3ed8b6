// Package cutplan plans a whole job. It turns the cutting bill and the stock of a
// stock.Job into a nest.Problem, solves and verifies it, and translates the answer into
// workshop terms: the shopping list, the layouts, the order of cuts and the fence
// settings.
package cutplan

import "sawbill/stock"

// Plan is the plan of a whole job. It has passed nest.Verify.
type Plan struct {
	Job  stock.Job
	Bill []Blank // the cutting bill, in the order of Job.Parts: one blank for each, or several
	Buy  []Purchase
	// AtSeller lists the cuts that the seller makes before the stock is carried home.
	// Layouts then divide its pieces; pieces that stay uncut have layouts too.
	AtSeller []Division
	Layouts  []Layout
	Unplaced []Unplaced
	// Estimates hold blanks that are neither cut nor unplaced. Their lumber is sold by the
	// board foot, and Cost and Bound leave it out.
	Estimates []Estimate
	Cost      stock.Money // of everything bought
	Bound     stock.Money // no plan whatever costs less
	Unpriced  []Unpriced  // stock that Cost and Bound leave out
	// Seconds is the time that the solver took. It is 0 if the number of iterations was
	// limited, so that equal runs give equal bytes.
	Seconds float64
	Totals  Totals
	Cover   Cover
	// Numbered lists the leftovers with their printed numbers; nil for a new plan. Offcuts
	// returns them.
	Numbered []NumberedOffcut
}

// Complete reports whether every blank outside Estimates is cut.
func (p Plan) Complete() bool { return len(p.Unplaced) == 0 }

// Proven reports whether no plan can cost less.
func (p Plan) Proven() bool { return p.Complete() && p.Cost == p.Bound }

// Blank is a line of the cutting bill.
type Blank struct {
	stock.Blank
	Mark string // "A" to "Z", then "AA": written on the piece
	// Turnable: the blank may lie either way in all stock that it can come from.
	Turnable bool
}

// Purchase is a line of the shopping list. Stock on hand is not listed.
type Purchase struct {
	Stock stock.Stock
	Count int
	Cost  stock.Money
}

// Measured returns the volume for which the pieces are charged in board feet. It returns
// false if they are not sold by volume.
func (p Purchase) Measured() (stock.Volume, bool) {
	if p.Stock.Measure == (stock.Measure{}) {
		return stock.Volume{}, false
	}
	return p.Stock.Measure.Volume(p.Stock.Length, p.Count), true
}

// Unpriced is stock for sale that serves the same blanks and has no price. The plan
// minimizes its area.
type Unpriced struct {
	Stock   []stock.Stock
	OneSize bool // Area and Bound count pieces
	// Area is the area bought, Bound the least area that any plan buys, both in a private
	// unit. Bound is 0 if nothing is proven.
	Area, Bound int64
}

// Layout divides Repeat pieces of one stock. Lengths are measured on the workpiece; the
// root is the stock less its trim.
type Layout struct {
	Stock  stock.Stock
	Repeat int
	Root   Node
	// Printed lists the steps as printed; nil for a new layout. Plan.Steps returns them,
	// so drop them when the layout changes.
	Printed []Step
}

// Unplaced is a blank that could not be cut, Count times.
type Unplaced struct {
	Blank  int // index into Plan.Bill
	Count  int
	Reason string
}

// Totals are shares of the stock cut, by area if the plan has only sheets, else by volume.
// They add up to 1.
type Totals struct {
	All            Shares
	Sheets, Boards Shares // by area and by volume; zero where there are none
}

// Shares divide the stock cut into finished parts, offcuts kept, and waste. Waste includes
// kerf, trim and allowances.
type Shares struct {
	Yield, Offcut, Waste float64
}
