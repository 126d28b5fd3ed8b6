package colgen

import "sawbill/nest/internal/search"

// priceByFilling prices heuristically: that takes milliseconds where exact pricing takes tenths
// of a second. It reports whether it added columns.
func (g *Generator) priceByFilling() (some bool) {
	for s, f := range g.makeFillers() {
		if g.master.counts != nil && g.master.counts[s] == 0 || !g.slowPricing(s) {
			continue
		}
		for _, root := range f.Fill(g.demand, g.values, nil, g.breakEven(s), fillSteps, maxFromPool) {
			some = g.columns.add(s, root) || some
		}
		g.work -= fillSteps * search.FillStepWork
	}
	return some
}

const (
	fillSteps = 1000
	diveFill  = 200 // steps in a dive, which has many masters
)

// makeFillers makes the fillers on first use.
func (g *Generator) makeFillers() []*search.Filler {
	if g.fillers == nil {
		g.fillers = search.NewFillers(g.in, g.seed, g.stop)
	}
	return g.fillers
}

// priceByFilling prices heuristically for the residual problem.
func (d *dive) priceByFilling(s int, above int64) (some bool) {
	for _, root := range d.fillers[s].Fill(d.partial.residual, d.round.values, nil, above, diveFill, maxFromPool/2) {
		some = d.columns.add(s, root) || some
	}
	return some
}
