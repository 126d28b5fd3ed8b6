package construction

import "sawbill/stock"

// checkGraded refuses a progression that the drawers of a stack cannot follow.
func (r *Construction) checkGraded(o Opening, measured int) {
	if !o.Graded.Set || r.In.DoubtfulWithin(o.At.Path+".drawer") {
		return
	}
	at := o.At.Under(o.Graded.Line, "graded")
	switch {
	case len(o.Stack) < 2:
		r.In.Fault(at, "graded tells by how much each front is higher than the one above, and there are no two drawers", "leave it out")
	case measured > 0:
		r.In.Fault(at, "measured drawers have their heights already", "leave graded out")
	}
	for _, x := range o.Stack[min(1, len(o.Stack)):] {
		if x.Front.Set {
			r.In.Fault(x.At.Under(x.Front.Line, "front_height"), "graded settles every front but the top one",
				"give front_height to the top drawer alone, or to none, or leave out graded")
			return
		}
	}
}

// Steps is how much higher front i, from the top, is than the first.
func (o Opening) Steps(i int) stock.Term {
	return stock.Term{Times: i, Value: o.Graded.Value, Label: "graded"}
}
