package colgen

import "sawbill/nest/internal/search"

// priceByFilling looks for patterns that better the programme by a heuristic, which takes
// some milliseconds where exact pricing takes tenths of a second, and reports
// whether there are any.
func (g *Generator) priceByFilling() (some bool) {
	for s, f := range g.makeFillers() {
		if g.counts != nil && g.counts[s] == 0 || !g.slowPricing(s) {
			continue
		}
		for _, root := range f.Fill(g.demands, g.values, nil, g.breakEven(s), fillSteps, maxFromPool) {
			some = g.columns.add(s, root) || some
		}
		g.work -= fillSteps * fillWork
	}
	return some
}

const (
	fillSteps = 1000
	diveFill  = 200  // steps in a dive, whose programmes are many
	fillWork  = 2000 // of a step, in comparisons
)

// makeFillers makes one for each stock when they are first asked for.
func (g *Generator) makeFillers() []*search.Filler {
	if g.fillers != nil {
		return g.fillers
	}
	for s := range g.in.Stock {
		g.fillers = append(g.fillers, search.NewFiller(g.in, s, g.seed))
	}
	for _, kd := range g.in.Kinds {
		g.demands = append(g.demands, kd.Demand)
	}
	return g.fillers
}

// priceByFilling does the same for what is left of a dive.
func (d *dive) priceByFilling(s int, above int64) (some bool) {
	for _, root := range d.fillers[s].Fill(d.residual, d.values, nil, above, diveFill, maxFromPool/2) {
		some = d.columns.add(s, root) || some
	}
	return some
}
