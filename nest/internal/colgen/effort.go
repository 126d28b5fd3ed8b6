package colgen

import "sawbill/nest/internal/search"

// pricingDominates reports whether pricing all stock takes much longer than the LP does. Then
// one pricing adds several patterns.
func (g *Generator) pricingDominates() bool {
	const muchMore = 100 // comparisons for each number in the LP's inverse
	rows := int64(len(g.values) + len(g.round.pricers))
	var work int64
	for _, p := range g.round.pricers {
		work += p.effort()
	}
	return !g.round.proving && work > muchMore*rows*rows
}

// slowPricing reports whether bounded pricing of stock s took longer than fillers do. Then
// fillers price it first.
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

// pricingBudget is the work at which bounded pricing of stock s stops; its upper bound holds
// wherever it stops. The first pricing is a trial. So is each pricing of stock that is not in
// the counts. Its patterns cannot be used there, and any value of it excludes the counts.
func (g *Generator) pricingBudget(s int) int64 {
	if !g.round.trialDone || g.master.counts != nil && g.master.counts[s] == 0 {
		return trialBudget
	}
	return fullBudget
}

// endTrial ends the trial, and reports whether fillers are to price some stock first.
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
