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
//	top front = (opening - gaps - n (n - 1) / 2 steps) / n, down to a mark of the ruler
//
// so that all can be measured and the printed figures add up. What is left goes to the
// lowest: less than a mark for every drawer.
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
	share := r.frontShare(left.Total(), n, "without steps")
	rest := left.Total() - stock.Length(n)*share.Total()
	for i := range o.stack {
		size := plus(share, o.steps(i))
		if i == n-1 {
			size = plus(size, stock.Term{Times: 1, Value: rest, Label: "rest of rounding"})
		}
		r.record(fmt.Sprint(name, " front ", i+1, " height"), size)
		o.stack[i].front.Value = size.Total()
	}
	return true
}

// frontShare is what each of n fronts has of what is left, down to a mark of the ruler.
// A stack too low for marks is shared to the unit of Length.
func (r *reckoner) frontShare(left stock.Length, n int, of string) stock.Sum {
	exact := stock.Sum{{Times: 1, Value: left, Over: n, Label: of}}
	down := r.from.Ruler.Down(exact.Total())
	if down == 0 || down*stock.Length(n) == left {
		return exact
	}
	return stock.Sum{{Times: 1, Value: down, Label: fmt.Sprintf("%s / %d, rounded down", r.from.Ruler.Print(left), n)}}
}

// shareFronts finds the fronts of a stack that have no height of their own: equal, down
// to a mark of the ruler, but for the lowest of them, which takes the rest.
func (r *reckoner) shareFronts(name string, o *opening, fronts []member) bool {
	left, open, lowest := minus(given(o.height, name+" height"), r.made.drawers.gaps(*o)), 0, 0
	for i, m := range fronts {
		if m.settled {
			left = plus(left, stock.Term{Times: -1, Value: m.size.Total(), Label: m.name})
			continue
		}
		open, lowest = open+1, i
	}
	if open < 2 || left.Total() <= 0 {
		return r.share(o.at, given(o.height, name+" height"), r.made.drawers.gaps(*o), fronts)
	}
	share := r.frontShare(left.Total(), open, "left to share")
	for i := range fronts {
		if fronts[i].settled {
			continue
		}
		fronts[i].size, fronts[i].settled = share, true
		if i == lowest {
			rest := left.Total() - stock.Length(open)*share.Total()
			fronts[i].size = plus(share, stock.Term{Times: 1, Value: rest, Label: "rest of rounding"})
		}
	}
	return true
}
