package columns

import "sawbill/nest/internal/search"

// fill looks for patterns that better the programme by a heuristic, which takes
// some milliseconds where exact pricing takes tenths of a second, and reports
// whether there are any.
func (g *Generator) fill() (some bool) {
	for s, f := range g.layFillers() {
		if g.counts != nil && g.counts[s] == 0 || !g.slow(s) {
			continue
		}
		for _, root := range f.Fill(g.demands, g.values, nil, g.betters(s), fillSteps, reaped) {
			some = g.pool.add(s, root) || some
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

// layFillers makes one for each stock when they are first asked for.
func (g *Generator) layFillers() []*search.Filler {
	if g.fillers != nil {
		return g.fillers
	}
	for s := range g.in.Stock {
		g.fillers = append(g.fillers, search.NewFiller(g.in, s, g.seed))
	}
	for _, kd := range g.in.Kinds {
		g.demands = append(g.demands, kd.Count)
	}
	return g.fillers
}

// fill does the same for what is left of a dive.
func (d *dive) fill(s int, above int64) (some bool) {
	for _, root := range d.fillers[s].Fill(d.left, d.values, nil, above, diveFill, reaped/2) {
		some = d.pool.add(s, root) || some
	}
	return some
}
