package assemble

import (
	"sawbill/nest/internal/instance"
	"sawbill/nest/internal/search"
	"sawbill/nest/internal/whole"
)

// maker makes patterns by a heuristic, for a search that roams.
type maker struct {
	in      *instance.Instance
	seed    uint64
	fillers []*search.Filler // per stock; nil before they are asked for patterns
	made    []made           // for the present search
	fresh   []made           // not told yet
}

type made struct {
	stock int
	root  instance.Piece
}

const (
	fillSteps = 200
	fillWork  = 2000 // of a step, in comparisons
	mostMade  = 8    // of one filling
)

// begin turns to another search.
func (m *maker) begin() { m.made = nil }

// supply is a whole.Supply.
func (m *maker) supply(stock int, wanted []int, values []int64, premium *whole.Premium, above int64) (patterns []whole.Pattern, work int64) {
	if m.fillers == nil {
		for s := range m.in.Stock {
			m.fillers = append(m.fillers, search.NewFiller(m.in, s, m.seed))
		}
	}
	counts := make([]int, len(wanted))
	for _, root := range m.fillers[stock].Fill(wanted, values, premium, above, fillSteps, mostMade) {
		clear(counts)
		root.CountParts(counts)
		p := whole.Pattern{Stock: stock}
		for k, n := range counts {
			if n > 0 {
				p.Counts = append(p.Counts, whole.Count{Kind: k, Times: n})
			}
		}
		patterns = append(patterns, p)
		m.made = append(m.made, made{stock, root})
		m.fresh = append(m.fresh, made{stock, root})
	}
	return patterns, fillSteps * fillWork
}

// Patterns calls f with every pattern made since the last call.
func (m *maker) Patterns(f func(stock int, root instance.Piece)) {
	for _, p := range m.fresh {
		f(p.stock, p.root)
	}
	m.fresh = nil
}
