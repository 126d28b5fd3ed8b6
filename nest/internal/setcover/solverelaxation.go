package setcover

// solveRelaxation asks which share of the pieces is enough in fractions, by the patterns
// of the list.
func (s *Search) solveRelaxation(f *node) (p *relaxation, work int64) {
	s.relaxations++
	s.inLP = append(s.inLP[:0], make([]bool, len(f.options))...)
	p = s.newRelaxation(f, s.inheritedCuts(f))
	return p, s.generateColumns(p)
}

// generateColumns solves a programme over all that is on the list, and what may be had
// beside it.
func (s *Search) generateColumns(p *relaxation) (work int64) {
	work = p.loadSupport()
	fills, vain := maxCalls, maxVainCalls
	if s.depth == 0 && p.cuts.size > 0 {
		fills, vain = rootCalls, rootVainCalls
	}
	left := vain
	for rounds := 0; rounds < maxRounds && work < maxRelaxationWork; {
		work += p.solve()
		more, entries := p.price()
		work += entries
		rounds++
		for len(more) == 0 && s.hasCallback() && left > 0 && fills > 0 {
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

// reusePrices tries the prices of the last state with as many patterns cut: where those
// ruled it out, they often rule out this one as well, without a programme.
func (s *Search) reusePrices(f *node) (work int64) {
	if len(f.lpPrices.Values) == 0 {
		return 0
	}
	return s.evaluatePrices(f)
}

// pruned reports whether the last prices rule the state out.
func (s *Search) pruned(f *node) bool {
	return len(f.slack) > len(s.prices) && f.slack[len(s.prices)] < 0
}

// evaluatePrices takes the frame's own values for prices: what the patterns of the list
// are worth at them, and the slack.
func (s *Search) evaluatePrices(f *node) (work int64) {
	own := &f.lpPrices
	own.Capacity = append(own.Capacity[:0], make([]int64, len(f.pieces))...)
	for _, o := range f.options {
		p := &s.patterns[o.pattern]
		var worth int64
		for _, n := range p.Counts {
			worth += own.Values[n.Kind] * int64(min(n.Times, f.demand[n.Kind]))
		}
		if own.cuts.size > 0 {
			of := own.cuts.totalsOf(p, f.demand)
			for n, v := range own.cutValues {
				worth += v * int64((of[n]+1)/2)
			}
		}
		own.Capacity[p.Stock] = max(own.Capacity[p.Stock], worth)
		work += int64(len(p.Counts))
	}
	f.prices = append(f.prices[:len(s.prices)], own)
	f.slack = append(f.slack[:len(s.prices)], own.Slack(f.demand, f.pieces))
	f.parity = own.cuts.parity(f.demand)
	return work
}

const (
	// minRelaxed is how long a list must be for the programme to be worth it.
	minRelaxed = 24
	maxPivots  = 400
	// maxRelaxationWork ends a programme before its optimum, some hundredths of a second
	// on: nobody can stop it meanwhile, and its prices hold all the same.
	maxRelaxationWork = 1 << 26
	// A programme begins without patterns and takes in those that better it most,
	// a batch at a time.
	maxRounds = 60
	minBatch  = 16
	minGain   = 1e-9
	// More patterns are asked for so often at a state, and so often in vain; at the first
	// one oftener where it keeps to odd sets, for there all hangs on a few patterns.
	maxCalls      = 20
	maxVainCalls  = 2
	rootCalls     = 200
	rootVainCalls = 100
)
