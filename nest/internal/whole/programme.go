package whole

import (
	"cmp"
	"math"
	"slices"

	"sawbill/nest/internal/master"
)

// programme asks which share of a frame's pieces is enough in fractions. It has rows for
// kinds, stock and odd sets, in this order; the first pattern comes after the share. It
// begins without patterns and takes in those that better it most, a batch at a time.
type programme struct {
	*Search
	frame  *frame
	lp     *master.LP
	stock  int     // row of the first
	odd    int     // row of the first set
	sets   oddSets // of which an odd number is wanted
	first  int     // column of the first pattern
	loaded []int   // options, in the order of their columns
}

func (s *Search) programme(f *frame, sets oddSets) *programme {
	const muchMore = 4 // than all pieces, for a part left undone
	p := &programme{Search: s, frame: f, sets: sets}
	var wanted, penalty []float64
	for k, n := range f.wanted {
		s.rows[k] = len(wanted)
		if n > 0 {
			wanted = append(wanted, float64(n))
			penalty = append(penalty, muchMore)
		}
	}
	share := master.Column{Cost: 1}
	p.stock = len(wanted)
	for t, n := range f.pieces {
		wanted = append(wanted, 0)
		penalty = append(penalty, muchMore)
		if n > 0 {
			share.Entries = append(share.Entries, master.Entry{Row: p.stock + t, Value: float64(n)})
		}
	}
	p.odd = len(wanted)
	of := sets.tally(f.wanted)
	for n := range sets.count {
		wanted = append(wanted, float64((of[n]+1)/2))
		penalty = append(penalty, muchMore)
	}
	p.lp = master.New(wanted, nil, penalty)
	p.first = p.lp.Add(share) + 1
	return p
}

// resume loads the options that the programme of the state before used: one pattern less
// changes little.
func (p *programme) resume() (work int64) {
	f := p.frame
	if len(f.support) == 0 {
		return 0
	}
	for _, u := range f.support {
		p.supports[u.pattern] = true
	}
	for i, o := range f.list {
		if p.supports[o.pattern] {
			p.load(i)
		}
	}
	for _, u := range f.support {
		p.supports[u.pattern] = false
	}
	return int64(len(f.list))
}

// note keeps what the solution uses.
func (p *programme) note() {
	f := p.frame
	f.support = f.support[:0]
	p.lp.Used(func(column int, times float64) {
		if column >= p.first {
			f.support = append(f.support, used{f.list[p.loaded[column-p.first]].pattern, times})
		}
	})
}

// pattern is that of a column.
func (p *programme) pattern(column int) *Pattern {
	return &p.patterns[p.frame.list[p.loaded[column-p.first]].pattern]
}

func (p *programme) solve() (work int64) {
	m := int64(p.odd + p.sets.count)
	before := p.lp.Work()
	p.lp.Solve(int(min(mostPivots, mostRelaxing/(m*m)+1)))
	return p.lp.Work() - before
}

// value makes whole prices of the programme's, and leaves only those sets that have one.
func (p *programme) value() {
	f := p.frame
	own := &f.own
	own.Values = own.Values[:0]
	for k, n := range f.wanted {
		v := int64(0)
		if n > 0 {
			v = p.whole(p.rows[k])
		}
		own.Values = append(own.Values, v)
	}
	own.odd = own.odd[:0]
	for n := range p.sets.count {
		if v := p.whole(p.odd + n); v > 0 {
			own.odd = append(own.odd, v)
		}
	}
	own.sets = p.sets.clone()
	own.sets.keep(p.priced())
}

// priced is a bit for each set that has a price.
func (p *programme) priced() (sets uint64) {
	for n := range p.sets.count {
		if p.whole(p.odd+n) > 0 {
			sets |= 1 << n
		}
	}
	return sets
}

// whole is the price of a row in whole numbers.
func (p *programme) whole(row int) int64 {
	return max(0, int64(math.Round(p.lp.Prices()[row]*priceScale)))
}

// priceScale is what all pieces are worth together, in the whole numbers in which prices
// are exact.
const priceScale = 1 << 36

// price lists the options that better the programme most.
func (p *programme) price() (more []int, work int64) {
	most := max(leastBatch, p.odd)
	p.better = p.better[:0]
	least := leastGain
	for n, o := range p.frame.list {
		t := &p.patterns[o.pattern]
		work += int64(len(t.Counts))
		if p.column[n] {
			continue
		}
		if gain := p.gain(t); gain > least {
			p.better = append(p.better, bettering{n, gain})
			if len(p.better) == 2*most {
				p.better = p.best(most)
				least = p.better[most-1].gain
			}
		}
	}
	for _, b := range p.best(most) {
		more = append(more, b.option)
	}
	return more, work
}

// gain is by how much a pattern is worth more than its stock.
func (p *programme) gain(t *Pattern) float64 {
	f, prices := p.frame, p.lp.Prices()
	gain := -prices[p.stock+t.Stock]
	for _, c := range t.Counts {
		if r := p.rows[c.Kind]; f.wanted[c.Kind] > 0 {
			// The conversion keeps processors from fusing product and sum.
			gain += float64(prices[r] * float64(min(c.Times, f.wanted[c.Kind])))
		}
	}
	if p.sets.count > 0 {
		of := p.sets.hold(t, f.wanted)
		for n := range p.sets.count {
			gain += float64(prices[p.odd+n] * float64((of[n]+1)/2))
		}
	}
	return gain
}

// best are the most that better the programme most, in that order.
func (p *programme) best(most int) []bettering {
	slices.SortFunc(p.better, func(a, b bettering) int {
		return cmp.Or(cmp.Compare(b.gain, a.gain), cmp.Compare(a.option, b.option))
	})
	return p.better[:min(most, len(p.better))]
}

// supply asks for patterns that better the programme, and lists them.
func (p *programme) supply() (more []int, work int64) {
	f := p.frame
	values := make([]int64, len(f.wanted))
	for k, n := range f.wanted {
		if n > 0 {
			values[k] = p.whole(p.rows[k])
		}
	}
	var premium *Premium
	if p.sets.count > 0 {
		premium = &Premium{sets: p.sets.clone()}
		for n := range p.sets.count {
			premium.values = append(premium.values, p.whole(p.odd+n))
		}
	}
	for t, n := range f.pieces {
		if n == 0 {
			continue
		}
		above := int64(math.Round(p.lp.Prices()[p.stock+t]*priceScale*(1+1e-7))) + int64(len(f.wanted))
		made, spent := p.roaming.more(t, f.wanted, values, premium, above)
		work += spent
		for _, m := range made {
			more = append(more, p.learn(f, m))
		}
	}
	return more, work
}

// learn takes a pattern in and returns its place in the list.
func (s *Search) learn(f *frame, p Pattern) (option int) {
	f.list = append(f.list, optionOf(len(s.patterns)))
	s.column = append(s.column, false)
	s.patterns = append(s.patterns, p)
	s.supports = append(s.supports, false)
	s.roaming.sure = append(s.roaming.sure, 0)
	if s.depth == 0 {
		s.roaming.told = len(s.patterns) // it is on the list, and need not be told again
	}
	return len(f.list) - 1
}

// load makes a column of an option.
func (p *programme) load(option int) {
	f := p.frame
	t := &p.patterns[f.list[option].pattern]
	c := master.Column{Entries: make([]master.Entry, 0, len(t.Counts)+1)}
	for _, n := range t.Counts {
		if held := min(n.Times, f.wanted[n.Kind]); held > 0 {
			c.Entries = append(c.Entries, master.Entry{Row: p.rows[n.Kind], Value: float64(held)})
		}
	}
	c.Entries = append(c.Entries, master.Entry{Row: p.stock + t.Stock, Value: -1})
	if p.sets.count > 0 {
		of := p.sets.hold(t, f.wanted)
		for n := range p.sets.count {
			if of[n] > 0 {
				c.Entries = append(c.Entries, master.Entry{Row: p.odd + n, Value: float64((of[n] + 1) / 2)})
			}
		}
	}
	p.lp.Add(c)
	p.column[option] = true
	p.loaded = append(p.loaded, option)
}

// bettering is an option that would better a programme.
type bettering struct {
	option int
	gain   float64
}
