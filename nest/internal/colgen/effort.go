package colgen

import "sawbill/nest/internal/search"

// pricingDominates reports whether pricing all stock takes much longer than the programme
// does: then a pricing gives more patterns than one.
func (g *Generator) pricingDominates() bool {
	const muchMore = 100 // comparisons for each number in the programme's inverse
	rows := int64(len(g.values) + len(g.round.pricers))
	var work int64
	for _, p := range g.round.pricers {
		work += p.effort()
	}
	return !g.round.proving && work > muchMore*rows*rows
}

// slowPricing reports whether pricing stock s with true counts took longer than filling it
// does: then it is filled first.
func (g *Generator) slowPricing(s int) bool {
	return g.round.bounded && g.round.pricers[s].effort() > fillSteps*search.FillStepWork
}

func (g *Generator) anySlowPricing() bool {
	for s := range g.in.Stock {
		if g.slowPricing(s) {
			return true
		}
	}
	return false
}

// trialBudget is the work of a pricing that shows whether it is slow.
const trialBudget = fillSteps*search.FillStepWork + 1

// pricingBudget is the work after which a pricing of stock s with true counts ends; its
// bound holds wherever that is. The first is a trial. So is each of
// stock of which the counts have none: its patterns are of no use within them, and they
// can be excluded whatever it is worth.
func (g *Generator) pricingBudget(s int) int64 {
	if !g.round.trialDone || g.master.counts != nil && g.master.counts[s] == 0 {
		return trialBudget
	}
	return fullBudget
}

// endTrial ends the trial, and reports whether some stock is to be filled before it is
// priced in earnest.
func (g *Generator) endTrial() (slow bool) {
	if !g.round.bounded || g.round.trialDone {
		return false
	}
	g.round.trialDone = true
	for s, p := range g.round.pricers {
		if p, ok := p.(*boundedPricer); ok {
			slow = slow || g.slowPricing(s) && p.Found() == 0
		}
	}
	return slow
}
