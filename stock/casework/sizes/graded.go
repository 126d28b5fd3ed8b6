package sizes

import (
	"fmt"

	"sawbill/stock"
	"sawbill/stock/casework/construction"
	"sawbill/stock/casework/internal/sums"
)

// grade finds the fronts of a stack that fill their opening, each a step higher
// than the one above:
//
//	top front = (opening - gaps - n (n - 1) / 2 steps) / n, down to a mark of the ruler
//
// so that all can be measured and the printed figures add up. The rest, less than a mark for every
// drawer, goes to the lowest.
func (r *Sizes) grade(name string, o *construction.Opening) bool {
	n := len(o.Stack)
	left := sums.Minus(sums.Of(o.Height, name+" height"), r.Built.Drawers.Gaps(*o))
	left = sums.Plus(left, stock.Term{Times: -n * (n - 1) / 2, Value: o.Graded.Value, Label: "step"})
	if left.Total() <= 0 {
		r.In.Fault(o.At.Under(o.Graded.Line, "graded"), fmt.Sprintf("nothing is left for %d fronts, each %s higher than the one above: %s",
			n, r.In.Print(o.Graded.Value), r.In.Explained(left)), "make the step smaller, or the opening higher")
		return false
	}
	r.Record(name+" fronts without their steps", left)
	share := r.frontShare(left.Total(), n, "without steps")
	rest := left.Total() - stock.Length(n)*share.Total()
	for i := range o.Stack {
		size := sums.Plus(share, o.Steps(i))
		if i == n-1 {
			size = sums.Plus(size, stock.Term{Times: 1, Value: rest, Label: "rest of rounding"})
		}
		r.Record(fmt.Sprint(name, " front ", i+1, " height"), size)
		o.Stack[i].Front.Value = size.Total()
	}
	return true
}

// frontShare is the equal share of n fronts, down to a mark of the ruler. A stack too low for marks
// is shared to the unit of Length.
func (r *Sizes) frontShare(left stock.Length, n int, of string) stock.Sum {
	exact := stock.Sum{{Times: 1, Value: left, Over: n, Label: of}}
	down := r.In.From.Ruler.Down(exact.Total())
	if down == 0 || down*stock.Length(n) == left {
		return exact
	}
	return stock.Sum{{Times: 1, Value: down, Label: fmt.Sprintf("%s / %d, rounded down", r.In.From.Ruler.Print(left), n)}}
}

// shareFronts finds the fronts of a stack that have no height of their own: equal, down
// to a mark of the ruler, but for the lowest of them, which takes the rest.
func (r *Sizes) shareFronts(name string, o *construction.Opening, fronts []member) bool {
	left, open, lowest := sums.Minus(sums.Of(o.Height, name+" height"), r.Built.Drawers.Gaps(*o)), 0, 0
	for i, m := range fronts {
		if m.settled {
			left = sums.Plus(left, stock.Term{Times: -1, Value: m.size.Total(), Label: m.name})
			continue
		}
		open, lowest = open+1, i
	}
	if open < 2 || left.Total() <= 0 {
		return r.share(o.At, sums.Of(o.Height, name+" height"), r.Built.Drawers.Gaps(*o), fronts)
	}
	share := r.frontShare(left.Total(), open, "left to share")
	for i := range fronts {
		if fronts[i].settled {
			continue
		}
		fronts[i].size, fronts[i].settled = share, true
		if i == lowest {
			rest := left.Total() - stock.Length(open)*share.Total()
			fronts[i].size = sums.Plus(share, stock.Term{Times: 1, Value: rest, Label: "rest of rounding"})
		}
	}
	return true
}
