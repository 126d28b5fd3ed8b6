package whole

import (
	"cmp"
	"math"
	"slices"

	"sawbill/nest/internal/master"
)

// relax asks which share of the pieces is enough in fractions, by the patterns
// of the list, and makes whole prices of the answer's: what no pattern of the
// list is worth more than holds exactly, whatever rounding the simplex suffers.
// They are the best to rule patterns out by from here on.
func (s *Search) relax(f *frame) (work int64) {
	const muchMore = 4 // than all pieces, for a part left undone
	s.relaxed++
	var wanted, penalty []float64
	rows := s.rows
	for k, n := range f.wanted {
		rows[k] = len(wanted)
		if n > 0 {
			wanted = append(wanted, float64(n))
			penalty = append(penalty, muchMore)
		}
	}
	share := master.Column{Cost: 1}
	first := len(wanted)
	for t, n := range f.pieces {
		wanted = append(wanted, 0)
		penalty = append(penalty, muchMore)
		if n > 0 {
			share.Entries = append(share.Entries, master.Entry{Row: first + t, Value: float64(n)})
		}
	}
	lp := master.New(wanted, nil, penalty)
	lp.Add(share)
	m := int64(len(wanted))
	s.column = append(s.column[:0], make([]bool, len(f.list))...)
	var loaded []int // options, in the order of their columns
	load := func(n int) {
		s.column[n] = true
		lp.Add(s.asColumn(f, n, first))
		loaded = append(loaded, n)
	}
	patternsFrom := lp.Columns()
	work += s.resume(f, load)
	for rounds := 0; rounds < mostRounds && work < mostRelaxing; rounds++ {
		before := lp.Work()
		lp.Solve(int(min(mostPivots, mostRelaxing/(m*m)+1)))
		work += lp.Work() - before
		more, entries := s.price(f, lp.Prices(), first, max(leastBatch, len(wanted)))
		work += entries
		if len(more) == 0 {
			break
		}
		for _, n := range more {
			load(n)
		}
	}
	f.support = f.support[:0]
	lp.Used(func(column int, _ float64) {
		if column >= patternsFrom {
			f.support = append(f.support, f.list[loaded[column-patternsFrom]].pattern)
		}
	})
	const scale = 1 << 36
	f.own.Values = f.own.Values[:0]
	for k, n := range f.wanted {
		v := int64(0)
		if n > 0 {
			v = max(0, int64(math.Round(lp.Prices()[rows[k]]*scale)))
		}
		f.own.Values = append(f.own.Values, v)
	}
	return work + s.reckon(f)
}

// resume loads the options that the programme of the state before used: one pattern less
// changes little.
func (s *Search) resume(f *frame, load func(option int)) (work int64) {
	if len(f.support) == 0 {
		return 0
	}
	for _, n := range f.support {
		s.supports[n] = true
	}
	for i, o := range f.list {
		if s.supports[o.pattern] {
			load(i)
		}
	}
	for _, n := range f.support {
		s.supports[n] = false
	}
	return int64(len(f.list))
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
		own.Worth[p.Stock] = max(own.Worth[p.Stock], worth)
		work += int64(len(p.Counts))
	}
	f.prices = append(f.prices[:len(s.prices)], own)
	f.slack = append(f.slack[:len(s.prices)], own.Slack(f.wanted, f.pieces))
	return work
}

// price lists those of the list that better the programme most, at most so many.
func (s *Search) price(f *frame, prices []float64, first, most int) (more []int, work int64) {
	s.better = s.better[:0]
	least := leastGain
	for n, o := range f.list {
		p := &s.patterns[o.pattern]
		work += int64(len(p.Counts))
		if s.column[n] {
			continue
		}
		gain := -prices[first+p.Stock]
		for _, c := range p.Counts {
			if r := s.rows[c.Kind]; f.wanted[c.Kind] > 0 {
				// The conversion keeps processors from fusing product and sum.
				gain += float64(prices[r] * float64(min(c.Times, f.wanted[c.Kind])))
			}
		}
		if gain > least {
			s.better = append(s.better, bettering{n, gain})
			if len(s.better) == 2*most {
				s.better = s.best(most)
				least = s.better[most-1].gain
			}
		}
	}
	for _, b := range s.best(most) {
		more = append(more, b.option)
	}
	return more, work
}

// best are the most that better the programme most, in that order.
func (s *Search) best(most int) []bettering {
	slices.SortFunc(s.better, func(a, b bettering) int {
		return cmp.Or(cmp.Compare(b.gain, a.gain), cmp.Compare(a.option, b.option))
	})
	return s.better[:min(most, len(s.better))]
}

// asColumn is option n of the list in a programme.
func (s *Search) asColumn(f *frame, n, first int) master.Column {
	p := &s.patterns[f.list[n].pattern]
	c := master.Column{Entries: make([]master.Entry, 0, len(p.Counts)+1)}
	for _, n := range p.Counts {
		if held := min(n.Times, f.wanted[n.Kind]); held > 0 {
			c.Entries = append(c.Entries, master.Entry{Row: s.rows[n.Kind], Value: float64(held)})
		}
	}
	c.Entries = append(c.Entries, master.Entry{Row: first + p.Stock, Value: -1})
	return c
}

// bettering is an option that would better a programme.
type bettering struct {
	option int
	gain   float64
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
)
