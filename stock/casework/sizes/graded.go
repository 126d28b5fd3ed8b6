package sizes

import (
	"fmt"

	"sawbill/stock"
	"sawbill/stock/casework/construction"
	"sawbill/stock/casework/internal/sums"
)

// grade finds the fronts of a stack that fill their opening, each higher than the one above:
//
//	top front = (opening - gaps - n (n - 1) / 2 x graded) / n, down to the step
//
// What that leaves goes to the gaps.
func (r *Sizes) grade(name string, o *construction.Opening) bool {
	n := len(o.Stack)
	left := sums.Minus(sums.Of(o.Shared, name+" height"), r.Built.Drawers.Gaps(*o))
	left = sums.Plus(left, stock.Term{Times: -n * (n - 1) / 2, Value: o.Graded.Value, Label: "graded"})
	if left.Total() <= 0 {
		r.In.Fault(o.At.Under(o.Graded.Line, "graded"), fmt.Sprintf("nothing is left for %d fronts, each %s higher than the one above: %s",
			n, r.In.Print(o.Graded.Value), r.In.Explained(left)), "make graded smaller, or the opening higher")
		return false
	}
	r.Record(name+" fronts without grading", left)
	share := r.frontShare(*o, left, n, "without grading")
	for i := range o.Stack {
		size := sums.Plus(share, o.Steps(i))
		r.Record(fmt.Sprint(name, " front ", i+1, " height"), size)
		o.Stack[i].Front.Value = size.Total()
	}
	return true
}

// frontShare is the equal share of n fronts, down to the step where there are gaps to take the rest.
func (r *Sizes) frontShare(o construction.Opening, left stock.Sum, n int, of string) stock.Sum {
	share := left
	if n > 1 {
		share = stock.Sum{{Times: 1, Value: left.Total(), Over: n, Label: of}}
	}
	if gaps := r.Built.Drawers.GapsOf(o); gaps > 0 {
		down := r.In.Down(share.Total())
		wider := r.In.From.Ruler.Print(r.Built.Drawers.Gap + (left.Total()-stock.Length(n)*down)/stock.Length(gaps))
		if rest := share.Total() - down; rest > 0 {
			share = append(share, stock.Term{Times: -1, Value: rest, Label: "rounded down, gap " + wider})
		}
	}
	return share
}

// shareFronts finds the fronts of a stack that have no height of their own: equal, down to the step.
// What that leaves goes to the gaps.
func (r *Sizes) shareFronts(name string, o *construction.Opening, fronts []member) bool {
	left, open := sums.Minus(sums.Of(o.Shared, name+" height"), r.Built.Drawers.Gaps(*o)), 0
	for _, m := range fronts {
		if m.settled {
			left = sums.Plus(left, stock.Term{Times: -1, Value: m.size.Total(), Label: m.name})
			continue
		}
		open++
	}
	if left.Total() <= 0 {
		return r.share(o.At, sums.Of(o.Shared, name+" height"), r.Built.Drawers.Gaps(*o), fronts)
	}
	share := r.frontShare(*o, left, open, "left to share")
	for i := range fronts {
		if !fronts[i].settled {
			fronts[i].size, fronts[i].settled = share, true
		}
	}
	return true
}
