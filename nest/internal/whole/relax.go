package whole

import (
	"math"

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
	var entries int64
	for _, o := range f.list {
		p := &s.patterns[o.pattern]
		c := master.Column{Entries: make([]master.Entry, 0, len(p.Counts)+1)}
		for _, n := range p.Counts {
			if held := min(n.Times, f.wanted[n.Kind]); held > 0 {
				c.Entries = append(c.Entries, master.Entry{Row: rows[n.Kind], Value: float64(held)})
			}
		}
		c.Entries = append(c.Entries, master.Entry{Row: first + p.Stock, Value: -1})
		entries += int64(len(c.Entries))
		lp.Add(c)
	}
	lp.Solve(mostPivots)
	const scale = 1 << 36
	own := &f.own
	own.Values, own.Worth = own.Values[:0], own.Worth[:0]
	for k, n := range f.wanted {
		v := int64(0)
		if n > 0 {
			v = max(0, int64(math.Round(lp.Prices()[rows[k]]*scale)))
		}
		own.Values = append(own.Values, v)
	}
	for range f.pieces {
		own.Worth = append(own.Worth, 0)
	}
	for _, o := range f.list {
		p := &s.patterns[o.pattern]
		var worth int64
		for _, n := range p.Counts {
			worth += own.Values[n.Kind] * int64(min(n.Times, f.wanted[n.Kind]))
		}
		own.Worth[p.Stock] = max(own.Worth[p.Stock], worth)
	}
	f.prices = append(f.prices[:len(s.prices)], own)
	f.slack = append(f.slack[:len(s.prices)], own.Slack(f.wanted, f.pieces))
	m := int64(len(wanted))
	return 4*entries + int64(lp.Pivots()+1)*(m*m+2*entries)
}

const (
	// leastRelaxed is how long a list must be for the programme to be worth it.
	leastRelaxed = 24
	mostPivots   = 400
)
