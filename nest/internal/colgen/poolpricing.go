package colgen

import (
	"cmp"
	"slices"
)

// maxFromPool limits the patterns of each stock taken from the pool at a time.
const maxFromPool = 8

// priceFromPool prices the pool's patterns, which is much cheaper than to make new ones, and
// reports whether it added columns.
func (g *Generator) priceFromPool() bool {
	if g.pool == nil {
		return false
	}
	type good struct {
		pattern int
		gain    int64
	}
	found := make([][]good, len(g.round.pricers))
	least := make([]int64, len(g.round.pricers))
	for s := range least {
		least[s] = g.breakEven(s)
	}
	for n, p := range g.pool.Patterns {
		if n%patternAsks == 0 && g.stop.On() {
			return false
		}
		var worth int64
		for _, c := range p.Counts {
			worth += g.values[c.Kind] * int64(min(c.Times, g.in.Kinds[c.Kind].Demand))
		}
		g.work -= int64(len(p.Counts))
		if worth > least[p.Stock] {
			found[p.Stock] = append(found[p.Stock], good{n, worth})
		}
	}
	some := false
	for s, all := range found {
		slices.SortStableFunc(all, func(a, b good) int { return cmp.Compare(b.gain, a.gain) })
		for _, f := range all[:min(maxFromPool, len(all))] {
			some = g.columns.add(s, g.pool.Root(f.pattern)) || some
		}
	}
	return some
}
