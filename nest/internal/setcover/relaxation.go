package setcover

import (
	"cmp"
	"math"
	"slices"

	"sawbill/nest/internal/master"
)

// relaxation asks which share of a frame's pieces is enough in fractions. It has rows for
// kinds, stock and odd sets, in this order; the first pattern comes after the share. It
// begins without patterns and takes in those that better it most, a batch at a time.
type relaxation struct {
	*Search
	node        *node
	lp          *master.LP
	stockRow    int          // row of the first
	cutRow      int          // row of the first set
	cuts        zeroHalfCuts // of which an odd number is wanted
	firstColumn int          // column of the first pattern
	loaded      []int        // options, in the order of their columns
}

func (s *Search) newRelaxation(f *node, sets zeroHalfCuts) *relaxation {
	const muchMore = 4 // than all pieces, for a part left undone
	p := &relaxation{Search: s, node: f, cuts: sets}
	var wanted, penalty []float64
	for k, n := range f.demand {
		s.rows[k] = len(wanted)
		if n > 0 {
			wanted = append(wanted, float64(n))
			penalty = append(penalty, muchMore)
		}
	}
	share := master.Column{Cost: 1}
	p.stockRow = len(wanted)
	for t, n := range f.pieces {
		wanted = append(wanted, 0)
		penalty = append(penalty, muchMore)
		if n > 0 {
			share.Entries = append(share.Entries, master.Entry{Row: p.stockRow + t, Value: float64(n)})
		}
	}
	p.cutRow = len(wanted)
	of := sets.totals(f.demand)
	for n := range sets.size {
		wanted = append(wanted, float64((of[n]+1)/2))
		penalty = append(penalty, muchMore)
	}
	p.lp = master.New(wanted, nil, penalty)
	p.firstColumn = p.lp.Add(share) + 1
	return p
}

// loadSupport loads the options that the programme of the state before used: one pattern less
// changes little.
func (p *relaxation) loadSupport() (work int64) {
	f := p.node
	if len(f.support) == 0 {
		return 0
	}
	for _, u := range f.support {
		p.inSupport[u.pattern] = true
	}
	for i, o := range f.options {
		if p.inSupport[o.pattern] {
			p.addColumn(i)
		}
	}
	for _, u := range f.support {
		p.inSupport[u.pattern] = false
	}
	return int64(len(f.options))
}

// saveSupport keeps what the solution uses.
func (p *relaxation) saveSupport() {
	f := p.node
	f.support = f.support[:0]
	p.lp.Support(func(column int, times float64) {
		if column >= p.firstColumn {
			f.support = append(f.support, supportEntry{f.options[p.loaded[column-p.firstColumn]].pattern, times})
		}
	})
}

// pattern is that of a column.
func (p *relaxation) pattern(column int) *Pattern {
	return &p.patterns[p.node.options[p.loaded[column-p.firstColumn]].pattern]
}

func (p *relaxation) solve() (work int64) {
	m := int64(p.cutRow + p.cuts.size)
	before := p.lp.Work()
	p.lp.Solve(int(min(maxPivots, maxRelaxationWork/(m*m)+1)))
	return p.lp.Work() - before
}

// roundDuals makes whole prices of the programme's, and leaves only those sets that have one.
func (p *relaxation) roundDuals() {
	f := p.node
	own := &f.lpPrices
	own.Values = own.Values[:0]
	for k, n := range f.demand {
		v := int64(0)
		if n > 0 {
			v = p.roundedDual(p.rows[k])
		}
		own.Values = append(own.Values, v)
	}
	own.cutValues = own.cutValues[:0]
	for n := range p.cuts.size {
		if v := p.roundedDual(p.cutRow + n); v > 0 {
			own.cutValues = append(own.cutValues, v)
		}
	}
	own.cuts = p.cuts.clone()
	own.cuts.retain(p.activeCuts())
}

// activeCuts is a bit for each set that has a price.
func (p *relaxation) activeCuts() (sets uint64) {
	for n := range p.cuts.size {
		if p.roundedDual(p.cutRow+n) > 0 {
			sets |= 1 << n
		}
	}
	return sets
}

// roundedDual is the price of a row in whole numbers.
func (p *relaxation) roundedDual(row int) int64 {
	return max(0, int64(math.Round(p.lp.Duals()[row]*priceScale)))
}

// priceScale is what all pieces are worth together, in the whole numbers in which prices
// are exact.
const priceScale = 1 << 36

// price lists the options that better the programme most.
func (p *relaxation) price() (more []int, work int64) {
	most := max(minBatch, p.cutRow)
	p.entering = p.entering[:0]
	least := minGain
	for n, o := range p.node.options {
		t := &p.patterns[o.pattern]
		work += int64(len(t.Counts))
		if p.inLP[n] {
			continue
		}
		if gain := p.reducedProfit(t); gain > least {
			p.entering = append(p.entering, enteringOption{n, gain})
			if len(p.entering) == 2*most {
				p.entering = p.top(most)
				least = p.entering[most-1].gain
			}
		}
	}
	for _, b := range p.top(most) {
		more = append(more, b.option)
	}
	return more, work
}

// reducedProfit is by how much a pattern is worth more than its stock.
func (p *relaxation) reducedProfit(t *Pattern) float64 {
	f, prices := p.node, p.lp.Duals()
	gain := -prices[p.stockRow+t.Stock]
	for _, c := range t.Counts {
		if r := p.rows[c.Kind]; f.demand[c.Kind] > 0 {
			// The conversion keeps processors from fusing product and sum.
			gain += float64(prices[r] * float64(min(c.Times, f.demand[c.Kind])))
		}
	}
	if p.cuts.size > 0 {
		of := p.cuts.totalsOf(t, f.demand)
		for n := range p.cuts.size {
			gain += float64(prices[p.cutRow+n] * float64((of[n]+1)/2))
		}
	}
	return gain
}

// top are the most that better the programme most, in that order.
func (p *relaxation) top(most int) []enteringOption {
	slices.SortFunc(p.entering, func(a, b enteringOption) int {
		return cmp.Or(cmp.Compare(b.gain, a.gain), cmp.Compare(a.option, b.option))
	})
	return p.entering[:min(most, len(p.entering))]
}

// callback asks for patterns that better the programme, and lists them.
func (p *relaxation) callback() (more []int, work int64) {
	f := p.node
	values := make([]int64, len(f.demand))
	for k, n := range f.demand {
		if n > 0 {
			values[k] = p.roundedDual(p.rows[k])
		}
	}
	var premium *CutBonus
	if p.cuts.size > 0 {
		premium = &CutBonus{cuts: p.cuts.clone()}
		for n := range p.cuts.size {
			premium.values = append(premium.values, p.roundedDual(p.cutRow+n))
		}
	}
	for t, n := range f.pieces {
		if n == 0 {
			continue
		}
		above := int64(math.Round(p.lp.Duals()[p.stockRow+t]*priceScale*(1+1e-7))) + int64(len(f.demand))
		made, spent := p.randomized.price(t, f.demand, values, premium, above)
		work += spent
		for _, m := range made {
			more = append(more, p.addPattern(f, m))
		}
	}
	return more, work
}

// addPattern takes a pattern in and returns its place in the list.
func (s *Search) addPattern(f *node, p Pattern) (option int) {
	f.options = append(f.options, optionOf(len(s.patterns)))
	s.inLP = append(s.inLP, false)
	s.patterns = append(s.patterns, p)
	s.inSupport = append(s.inSupport, false)
	s.randomized.scores = append(s.randomized.scores, 0)
	if s.depth == 0 {
		s.randomized.rootPatterns = len(s.patterns) // it is on the list, and need not be told again
	}
	return len(f.options) - 1
}

// addColumn makes a column of an option.
func (p *relaxation) addColumn(option int) {
	f := p.node
	t := &p.patterns[f.options[option].pattern]
	c := master.Column{Entries: make([]master.Entry, 0, len(t.Counts)+1)}
	for _, n := range t.Counts {
		if held := min(n.Times, f.demand[n.Kind]); held > 0 {
			c.Entries = append(c.Entries, master.Entry{Row: p.rows[n.Kind], Value: float64(held)})
		}
	}
	c.Entries = append(c.Entries, master.Entry{Row: p.stockRow + t.Stock, Value: -1})
	if p.cuts.size > 0 {
		of := p.cuts.totalsOf(t, f.demand)
		for n := range p.cuts.size {
			if of[n] > 0 {
				c.Entries = append(c.Entries, master.Entry{Row: p.cutRow + n, Value: float64((of[n] + 1) / 2)})
			}
		}
	}
	p.lp.Add(c)
	p.inLP[option] = true
	p.loaded = append(p.loaded, option)
}

// enteringOption is an option that would better a programme.
type enteringOption struct {
	option int
	gain   float64
}
