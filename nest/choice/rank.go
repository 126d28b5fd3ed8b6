package choice

import (
	"cmp"
	"slices"

	"sawbill/stock"
)

// rank sorts the choices, says which are dominated, and looks for substitutes.
func (m *Material) rank() {
	slices.SortStableFunc(m.Choices, func(a, b Choice) int {
		return cmp.Or(cmp.Compare(a.Missing(), b.Missing()), trueFirst(a.Priced(), b.Priced()), trueFirst(!a.RelaxedSources, !b.RelaxedSources),
			cmp.Compare(a.Net(), b.Net()), cmp.Compare(a.Pieces, b.Pieces),
			cmp.Compare(len(a.Sellers), len(b.Sellers)), cmp.Compare(a.Setups, b.Setups))
	})
	for i := range m.Choices {
		m.Choices[i].DominatedBy = slices.IndexFunc(m.Choices, func(o Choice) bool { return o.dominates(m.Choices[i]) })
	}
	best := m.Best()
	if !best.Plan.Complete() || !best.Priced() {
		return
	}
	for _, b := range best.Plan.Buy {
		at := slices.IndexFunc(m.Choices, func(c Choice) bool {
			return !slices.Contains(c.Plan.Job.Stock, b.Stock) && c.Plan.Complete() && c.Priced()
		})
		if at >= 0 {
			m.Substitutes = append(m.Substitutes, Substitute{b.Stock, at, m.Choices[at].Plan.Cost - best.Plan.Cost})
		}
	}
}

// trueFirst sorts what is so before what is not.
func trueFirst(a, b bool) int {
	switch {
	case a == b:
		return 0
	case a:
		return -1
	}
	return 1
}

// dominates reports whether c is no worse than d in anything that counts before
// the trip, and better in something.
func (c Choice) dominates(d Choice) bool {
	if !c.Plan.Complete() || !d.Plan.Complete() || !c.Priced() || !d.Priced() {
		return false
	}
	mine := [...]int64{int64(c.Net()), int64(c.Pieces), int64(len(c.Sellers)), int64(c.Setups)}
	theirs := [...]int64{int64(d.Net()), int64(d.Pieces), int64(len(d.Sellers)), int64(d.Setups)}
	for i := range mine {
		if mine[i] > theirs[i] {
			return false
		}
	}
	return mine != theirs
}

// BreakEven is the price of offer at which c would cost no more than other, as
// the two plans stand: the highest one where c buys more pieces of it than other
// does, else the lowest. It returns false where no price of offer makes c win, or
// where both buy as many. What is kept does not count.
func BreakEven(c, other Choice, offer stock.Stock) (stock.Money, bool) {
	mine, theirs := c.bought(offer), other.bought(offer)
	more := stock.Money(mine - theirs)
	// The costs of all else.
	room := (other.Plan.Cost - offer.Price.Times(theirs)) - (c.Plan.Cost - offer.Price.Times(mine))
	if more < 0 {
		more, room = -more, -room
		if room < 0 {
			return 0, true // c wins at any price
		}
		return (room + more - 1) / more, true
	}
	if more == 0 || room < 0 {
		return 0, false
	}
	return room / more, true
}
