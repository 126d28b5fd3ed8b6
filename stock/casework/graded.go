package casework

import (
	"fmt"

	"sawbill/stock"
)

// checkGraded refuses a progression that the drawers of a stack cannot follow.
func (r *reckoner) checkGraded(o opening, measured int) {
	if !o.graded.Set || r.doubtfulWithin(o.at.path+".drawer") {
		return
	}
	at := o.at.under(o.graded.Line, "graded")
	switch {
	case len(o.stack) < 2:
		r.fault(at, "graded tells by how much each front is higher than the one above, and there are no two drawers", "leave it out")
	case measured > 0:
		r.fault(at, "measured drawers have their heights already", "leave graded out")
	}
	for _, x := range o.stack[min(1, len(o.stack)):] {
		if x.front.Set {
			r.fault(x.at.under(x.front.Line, "front_height"), "graded settles every front but the top one",
				"give front_height to the top drawer alone, or to none, or leave out graded")
			return
		}
	}
}

// steps is what front i, from the top, is higher than the first.
func (o opening) steps(i int) stock.Term {
	return stock.Term{Times: i, Value: o.graded.Value, Label: "step"}
}

// grade finds the fronts of a stack that fill their opening, each a step higher
// than the one above:
//
//	top front = (opening - gaps - n (n - 1) / 2 steps) / n, rounded down
//
// What the rounding leaves, fewer units of Length than there are drawers, goes to
// the lowest.
func (r *reckoner) grade(name string, o *opening) bool {
	n := len(o.stack)
	left := minus(given(o.height, name+" height"), r.made.drawers.gaps(*o))
	left = plus(left, stock.Term{Times: -n * (n - 1) / 2, Value: o.graded.Value, Label: "step"})
	if left.Total() <= 0 {
		r.fault(o.at.under(o.graded.Line, "graded"), fmt.Sprintf("nothing is left for %d fronts, each %s higher than the one above: %s",
			n, r.print(o.graded.Value), r.reckoned(left)), "make the step smaller, or the opening higher")
		return false
	}
	r.record(name+" fronts without their steps", left)
	rest := left.Total() % stock.Length(n)
	for i := range o.stack {
		size := plus(stock.Sum{{Times: 1, Value: left.Total(), Over: n, Label: "without steps"}}, o.steps(i))
		if i == n-1 {
			size = plus(size, stock.Term{Times: 1, Value: rest, Label: "rest of rounding"})
		}
		r.record(fmt.Sprint(name, " front ", i+1, " height"), size)
		o.stack[i].front.Value = size.Total()
	}
	return true
}
