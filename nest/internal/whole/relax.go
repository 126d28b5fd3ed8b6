package whole

// relax asks which share of the pieces is enough in fractions, by the patterns
// of the list.
func (s *Search) relax(f *frame) (p *programme, work int64) {
	s.relaxed++
	s.column = append(s.column[:0], make([]bool, len(f.list))...)
	p = s.programme(f, s.setsOf(f))
	return p, s.optimise(p)
}

// optimise solves a programme over all that is on the list, and what may be had
// beside it.
func (s *Search) optimise(p *programme) (work int64) {
	work = p.resume()
	fills, vain := mostFills, mostVain
	if s.depth == 0 && p.sets.count > 0 {
		fills, vain = firstFills, firstVain
	}
	left := vain
	for rounds := 0; rounds < mostRounds && work < mostRelaxing; {
		work += p.solve()
		more, entries := p.price()
		work += entries
		rounds++
		for len(more) == 0 && s.supplied() && left > 0 && fills > 0 {
			more, entries = p.supply()
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
			p.load(n)
		}
	}
	return work
}

// recall tries the prices of the last state with as many patterns cut: where those
// ruled it out, they often rule out this one as well, without a programme.
func (s *Search) recall(f *frame) (work int64) {
	if len(f.own.Values) == 0 {
		return 0
	}
	return s.reckon(f)
}

// hopeless reports whether the last prices rule the state out.
func (s *Search) hopeless(f *frame) bool {
	return len(f.slack) > len(s.prices) && f.slack[len(s.prices)] < 0
}

// reckon takes the frame's own values for prices: what the patterns of the list
// are worth at them, and the slack.
func (s *Search) reckon(f *frame) (work int64) {
	own := &f.own
	own.Worth = append(own.Worth[:0], make([]int64, len(f.pieces))...)
	for _, o := range f.list {
		p := &s.patterns[o.pattern]
		var worth int64
		for _, n := range p.Counts {
			worth += own.Values[n.Kind] * int64(min(n.Times, f.wanted[n.Kind]))
		}
		if own.sets.count > 0 {
			of := own.sets.hold(p, f.wanted)
			for n, v := range own.odd {
				worth += v * int64((of[n]+1)/2)
			}
		}
		own.Worth[p.Stock] = max(own.Worth[p.Stock], worth)
		work += int64(len(p.Counts))
	}
	f.prices = append(f.prices[:len(s.prices)], own)
	f.slack = append(f.slack[:len(s.prices)], own.Slack(f.wanted, f.pieces))
	f.odd = own.sets.odd(f.wanted)
	return work
}

const (
	// leastRelaxed is how long a list must be for the programme to be worth it.
	leastRelaxed = 24
	mostPivots   = 400
	// mostRelaxing ends a programme before its optimum, some hundredths of a second
	// on: nobody can stop it meanwhile, and its prices hold all the same.
	mostRelaxing = 1 << 26
	// A programme begins without patterns and takes in those that better it most,
	// a batch at a time.
	mostRounds = 60
	leastBatch = 16
	leastGain  = 1e-9
	// More patterns are asked for so often at a state, and so often in vain; at the first
	// one oftener where it keeps to odd sets, for there all hangs on a few patterns.
	mostFills  = 20
	mostVain   = 2
	firstFills = 200
	firstVain  = 100
)
