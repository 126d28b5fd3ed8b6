package restrictedmaster

import (
	"sawbill/nest/internal/instance"
	"sawbill/nest/internal/search"
	"sawbill/nest/internal/setcover"
)

// patternPricer makes patterns by a heuristic, for a search that roams.
type patternPricer struct {
	in         *instance.Instance
	seed       uint64
	fillers    []*search.Filler // per stock; nil before they are asked for patterns
	made       []made           // for the present search
	unreported []made           // not told yet
}

type made struct {
	stock int
	root  instance.Piece
}

const (
	fillSteps = 200
	fillWork  = 2000 // of a step, in comparisons
	maxMade   = 8    // of one filling
)

// reset turns to another search.
func (m *patternPricer) reset() { m.made = nil }

// price is a whole.Supply.
func (m *patternPricer) price(stock int, wanted []int, values []int64, premium *setcover.CutBonus, above int64) (patterns []setcover.Pattern, work int64) {
	if m.fillers == nil {
		for s := range m.in.Stock {
			m.fillers = append(m.fillers, search.NewFiller(m.in, s, m.seed))
		}
	}
	counts := make([]int, len(wanted))
	for _, root := range m.fillers[stock].Fill(wanted, values, premium, above, fillSteps, maxMade) {
		clear(counts)
		root.CountParts(counts)
		p := setcover.Pattern{Stock: stock}
		for k, n := range counts {
			if n > 0 {
				p.Counts = append(p.Counts, setcover.Count{Kind: k, Times: n})
			}
		}
		patterns = append(patterns, p)
		m.made = append(m.made, made{stock, root})
		m.unreported = append(m.unreported, made{stock, root})
	}
	return patterns, fillSteps * fillWork
}

// NewPatterns calls f with every pattern made since the last call.
func (m *patternPricer) NewPatterns(f func(stock int, root instance.Piece)) {
	for _, p := range m.unreported {
		f(p.stock, p.root)
	}
	m.unreported = nil
}
