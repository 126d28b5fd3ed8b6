package setcover

// solveRelaxation sets up and solves the relaxation of a node.
func (s *Search) solveRelaxation(nd *node) (p *relaxation, work int64) {
	s.relaxations++
	s.inLP = append(s.inLP[:0], make([]bool, len(nd.options))...)
	p = s.newRelaxation(nd, s.inheritedCuts(nd))
	return p, s.generateColumns(p)
}

// generateColumns solves a relaxation by column generation over the node's options, and over
// the patterns of the pricing callback.
func (s *Search) generateColumns(p *relaxation) (work int64) {
	work = p.loadSupport()
	fills, vain := maxCalls, maxVainCalls
	if s.depth == 0 && p.cuts.size > 0 {
		fills, vain = rootCalls, rootVainCalls
	}
	left := vain
	for rounds := 0; rounds < maxRounds && work < maxRelaxationWork && !s.Halt.On(); {
		work += p.solve()
		more, entries := p.price()
		work += entries
		rounds++
		for len(more) == 0 && s.hasCallback() && left > 0 && fills > 0 && !s.Halt.On() {
			more, entries = p.callback()
			work += entries
			fills--
			if left--; len(more) > 0 {
				left = vain
				rounds--
			}
		}
		if len(more) == 0 {
			break
		}
		for _, n := range more {
			p.addColumn(n)
		}
	}
	return work
}

// reusePrices evaluates the prices of the last node at this depth. Where those pruned it, they
// often prune this node too, without a relaxation.
func (s *Search) reusePrices(nd *node) (work int64) {
	if len(nd.lpPrices.Values) == 0 {
		return 0
	}
	return s.evaluatePrices(nd)
}

// pruned reports whether the last prices prune the node.
func (s *Search) pruned(nd *node) bool {
	return len(nd.slack) > len(s.prices) && nd.slack[len(s.prices)] < 0
}

// evaluatePrices makes prices of the node's own values: their capacities over the options, and
// the slack.
func (s *Search) evaluatePrices(nd *node) (work int64) {
	own := &nd.lpPrices
	own.Capacity = append(own.Capacity[:0], make([]int64, len(nd.pieces))...)
	for _, o := range nd.options {
		p := &s.patterns[o.pattern]
		var worth int64
		for _, n := range p.Counts {
			worth += own.Values[n.Kind] * int64(min(n.Times, nd.demand[n.Kind]))
		}
		if own.cuts.size > 0 {
			of := own.cuts.totalsOf(p, nd.demand)
			for n, v := range own.cutValues {
				worth += v * int64((of[n]+1)/2)
			}
		}
		own.Capacity[p.Stock] = max(own.Capacity[p.Stock], worth)
		work += int64(len(p.Counts))
	}
	nd.prices = append(nd.prices[:len(s.prices)], own)
	nd.slack = append(nd.slack[:len(s.prices)], own.Slack(nd.demand, nd.pieces))
	nd.parity = own.cuts.parity(nd.demand)
	return work
}

const (
	// options for which a relaxation is worth its time
	minRelaxed = 24
	maxPivots  = 400
	// maxRelaxationWork stops a relaxation before its optimum, after some hundredths of a
	// second. Its duals are valid anyway.
	maxRelaxationWork = 1 << 26
	// Rounds and columns added in each. A relaxation begins without columns.
	maxRounds = 60
	minBatch  = 16
	minGain   = 1e-9
	// Calls of the pricing callback at a node, and calls in a row without a pattern. The root
	// has more with cuts, where a few patterns decide.
	maxCalls      = 20
	maxVainCalls  = 2
	rootCalls     = 200
	rootVainCalls = 100
)
