package columns

import (
	"cmp"
	"slices"
)

// reaped are the patterns of each stock that are taken from the harvest at a time.
const reaped = 8

// reap looks through the harvest for patterns that better the programme, before
// others are sought at much greater expense, and reports whether there are any.
func (g *Generator) reap() bool {
	if g.harvest == nil {
		return false
	}
	type good struct {
		pattern int
		gain    int64
	}
	found := make([][]good, len(g.pricers))
	least := make([]int64, len(g.pricers))
	for s := range least {
		least[s] = g.betters(s)
	}
	for n, p := range g.harvest.Patterns {
		var worth int64
		for _, c := range p.Counts {
			worth += g.values[c.Kind] * int64(min(c.Times, g.in.Kinds[c.Kind].Count))
		}
		g.work -= int64(len(p.Counts))
		if worth > least[p.Stock] {
			found[p.Stock] = append(found[p.Stock], good{n, worth})
		}
	}
	some := false
	for s, all := range found {
		slices.SortStableFunc(all, func(a, b good) int { return cmp.Compare(b.gain, a.gain) })
		for _, f := range all[:min(reaped, len(all))] {
			some = g.pool.add(s, g.harvest.Root(f.pattern)) || some
		}
	}
	return some
}
