package sizes

import (
	"sawbill/stock"
	"sawbill/stock/casework/construction"
	"sawbill/stock/casework/internal/sums"
)

// fronts are the heights of a stack, as far as they are known.
func fronts(o construction.Opening) (members []member, settled bool) {
	settled = true
	for i, x := range o.Stack {
		m := member{name: "front", size: sums.Of(x.Front.Value, "given"), settled: x.Front.Set}
		if top := o.Stack[0].Front; o.Graded.Set && top.Set {
			m = member{name: "front", size: sums.Plus(sums.Of(top.Value, "top front"), o.Steps(i)), settled: true}
		}
		if x.Measured {
			m = member{name: "drawer", size: sums.Of(x.Height, "measured"), settled: true}
		}
		settled = settled && m.settled
		members = append(members, m)
	}
	return members, settled
}

// heightNeed is the height of an opening whose drawers settle it.
func heightNeed(s construction.Drawers, o construction.Opening) (stock.Sum, bool) {
	fronts, settled := fronts(o)
	if len(fronts) == 0 || !settled {
		return nil, false
	}
	terms := make([]stock.Term, len(fronts))
	for i, f := range fronts {
		terms[i] = stock.Term{Times: 1, Value: f.size.Total(), Label: f.name}
	}
	return sums.Plus(sums.Row(terms...), s.Gaps(o)...), true
}
