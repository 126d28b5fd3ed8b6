package choice

import (
	"cmp"
	"slices"

	"sawbill/stock"
)

// rank sorts the choices, finds dominated ones, and looks for substitutes.
func (m *Material) rank() {
	slices.SortStableFunc(m.Choices, func(a, b Choice) int {
		return cmp.Or(cmp.Compare(a.Unplaced(), b.Unplaced()), trueFirst(a.Priced(), b.Priced()), trueFirst(!a.RelaxedSources, !b.RelaxedSources),
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

// trueFirst sorts true before false.
func trueFirst(a, b bool) int {
	switch {
	case a == b:
		return 0
	case a:
		return -1
	}
	return 1
}

// dominates reports whether c is better than d in one objective and no worse in the
// others.
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

// BreakEven returns the price of offer at which c costs no more than other, both plans
// unchanged. It is the highest such price if c buys more pieces of the offer, else the
// lowest. It returns false if no price makes c win, or if both buy equal numbers. The
// worth of offcuts is ignored.
func BreakEven(c, other Choice, offer stock.Stock) (stock.Money, bool) {
	mine, theirs := c.bought(offer), other.bought(offer)
	difference := stock.Money(mine - theirs)
	// The difference in the cost of everything else.
	room := (other.Plan.Cost - offer.Price.Times(theirs)) - (c.Plan.Cost - offer.Price.Times(mine))
	if difference < 0 {
		difference, room = -difference, -room
		if room < 0 {
			return 0, true // c wins at any price
		}
		return (room + difference - 1) / difference, true
	}
	if difference == 0 || room < 0 {
		return 0, false
	}
	return room / difference, true
}
