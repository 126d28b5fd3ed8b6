package restrictedmaster

import (
	"sawbill/nest/internal/halt"
	"sawbill/nest/internal/instance"
	"sawbill/nest/internal/search"
	"sawbill/nest/internal/setcover"
)

// patternPricer is a heuristic pricing callback for a randomized set covering search.
type patternPricer struct {
	in         *instance.Instance
	stop       halt.Signal
	seed       uint64
	fillers    []*search.Filler // per stock; nil before the first use
	made       []made           // in the present search
	unreported []made
}

type made struct {
	stock int
	root  instance.Piece
}

const (
	fillSteps = 200
	maxMade   = 8 // patterns of one call
)

// reset prepares for another search.
func (p *patternPricer) reset() { p.made = nil }

// price is a [setcover.PricingCallback].
func (p *patternPricer) price(stock int, demand []int, values []int64, bonus *setcover.CutBonus, above int64) (patterns []setcover.Pattern, work int64) {
	if p.fillers == nil {
		p.fillers = search.NewFillers(p.in, p.seed, p.stop)
	}
	counts := make([]int, len(demand))
	for _, root := range p.fillers[stock].Fill(demand, values, bonus, above, fillSteps, maxMade) {
		clear(counts)
		root.CountParts(counts)
		patterns = append(patterns, setcover.NewPattern(stock, counts))
		p.made = append(p.made, made{stock, root})
		p.unreported = append(p.unreported, made{stock, root})
	}
	return patterns, fillSteps * search.FillStepWork
}

// NewPatterns calls f with every pattern made since the last call.
func (p *patternPricer) NewPatterns(f func(stock int, root instance.Piece)) {
	for _, m := range p.unreported {
		f(m.stock, m.root)
	}
	p.unreported = nil
}
