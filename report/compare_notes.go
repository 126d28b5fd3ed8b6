package report

import (
	"fmt"
	"slices"

	"sawbill/nest/choice"
	"sawbill/nest/cutplan"
	"sawbill/stock"
)

// What is said below the choices of a material.

// leftOut tells of the choices that do not give every blank, which are not listed
// unless none does: of those that cannot, and of those where none was found.
func leftOut(m choice.Material) []string {
	cannot, may := 0, 0
	for _, c := range m.Choices[1:] {
		switch {
		case c.Plan.Complete():
		case slices.ContainsFunc(c.Plan.Unplaced, func(u cutplan.Unplaced) bool { return hasNoRoom(c.Plan, u) }):
			cannot++
		default:
			may++
		}
	}
	var said []string
	if cannot > 0 {
		said = append(said, fmt.Sprintf("%s cannot give every blank.", counted(cannot, "more choice")))
	}
	if may > 0 {
		said = append(said, fmt.Sprintf("Of %s no plan was found that gives every blank.", counted(may, "more choice")))
	}
	return said
}

// hasNoRoom reports whether no stock that may serve a blank is large enough for it.
func hasNoRoom(p *cutplan.Plan, u cutplan.Unplaced) bool {
	b := p.Bill[u.Blank].Blank
	return !slices.ContainsFunc(p.Job.Stock, func(s stock.Stock) bool { return s.Serves(b) && s.HasRoom(b) })
}

// substitutes says what to take where something of the best choice is sold out.
func substitutes(m choice.Material) []string {
	best := m.Best()
	if !best.Plan.Complete() || !best.Priced() {
		return nil
	}
	var all []string
	for _, b := range best.Plan.Buy {
		said := "no other choice here gives every blank"
		for _, s := range m.Substitutes {
			if s.Offer == b.Stock {
				other := m.Choices[s.Choice]
				said = insteadOf(other, s.Extra)
			}
		}
		all = append(all, ifOut(b.Stock, said))
	}
	return all
}

// ifOut says what to take where an offer is sold out.
func ifOut(offer stock.Stock, said string) string {
	return fmt.Sprintf("If %s is out: %s.", offerName(offer), said)
}

// insteadOf is what another choice buys, and how much more it costs.
func insteadOf(other choice.Choice, extra stock.Money) string {
	said := "in all " + purchases(other) + ", " + dearer(extra)
	if other.RelaxedSources {
		said += ", " + morePlaning
	}
	return said
}

func dearer(extra stock.Money) string {
	switch {
	case extra == 0:
		return "at the same cost"
	case extra < 0:
		return (-extra).String() + " less"
	}
	return extra.String() + " more"
}

// breakEvens says, of each choice that buys one offer alone and more of it than
// the best, at which price it would be as good.
func breakEvens(m choice.Material) []string {
	var all []string
	best := m.Best()
	numbers, again := numbersOf(m)
	for i, c := range m.Choices {
		if i == 0 || again[i] || len(c.Plan.Buy) != 1 || !c.Plan.Complete() || !c.Priced() || !best.Priced() || c.OnHand != best.OnHand {
			continue
		}
		offer := c.Plan.Buy[0].Stock
		price, can := choice.BreakEven(c, best, offer)
		if can && price > 0 && price < offer.Price {
			all = append(all, fmt.Sprintf("Choice %d costs no more than choice 1 where %s costs %s or less (it is %s).",
				numbers[i], offerName(offer), price, offer.Price))
		}
	}
	return all
}
