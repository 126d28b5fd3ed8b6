package setcover

import (
	"cmp"
	"math"
	"slices"

	"sawbill/nest/internal/master"
)

// relaxation is the LP relaxation of a node: the smallest share of its pieces that is enough
// for a fractional cover. Its rows are kinds, stock and cuts, in this order. Its columns are
// the share, then patterns, which are added by column generation.
type relaxation struct {
	*Search
	node        *node
	lp          *master.LP
	stockRow    int          // of the first stock
	cutRow      int          // of the first cut
	cuts        zeroHalfCuts // those with odd demand
	firstColumn int          // of the patterns
	loaded      []int        // options, in the order of their columns
}

func (s *Search) newRelaxation(nd *node, cuts zeroHalfCuts) *relaxation {
	const muchMore = 4 // than all pieces, as the penalty of unmet demand
	p := &relaxation{Search: s, node: nd, cuts: cuts}
	var rhs, penalty []float64
	for k, n := range nd.demand {
		s.rows[k] = len(rhs)
		if n > 0 {
			rhs = append(rhs, float64(n))
			penalty = append(penalty, muchMore)
		}
	}
	share := master.Column{Cost: 1}
	p.stockRow = len(rhs)
	for t, n := range nd.pieces {
		rhs = append(rhs, 0)
		penalty = append(penalty, muchMore)
		if n > 0 {
			share.Entries = append(share.Entries, master.Entry{Row: p.stockRow + t, Value: float64(n)})
		}
	}
	p.cutRow = len(rhs)
	of := cuts.totals(nd.demand)
	for n := range cuts.size {
		rhs = append(rhs, float64((of[n]+1)/2))
		penalty = append(penalty, muchMore)
	}
	p.lp = master.New(rhs, nil, penalty)
	p.lp.Halt = s.Halt
	p.firstColumn = p.lp.Add(share) + 1
	return p
}

// loadSupport adds the columns of the parent's solution, since one pattern less changes little.
func (r *relaxation) loadSupport() (work int64) {
	nd := r.node
	if len(nd.support) == 0 {
		return 0
	}
	for _, u := range nd.support {
		r.inSupport[u.pattern] = true
	}
	for i, o := range nd.options {
		if r.inSupport[o.pattern] {
			r.addColumn(i)
		}
	}
	for _, u := range nd.support {
		r.inSupport[u.pattern] = false
	}
	return int64(len(nd.options))
}

// saveSupport keeps the solution.
func (r *relaxation) saveSupport() {
	nd := r.node
	nd.support = nd.support[:0]
	r.lp.Support(func(column int, times float64) {
		if column >= r.firstColumn {
			nd.support = append(nd.support, supportEntry{nd.options[r.loaded[column-r.firstColumn]].pattern, times})
		}
	})
}

// pattern returns the pattern of a column.
func (r *relaxation) pattern(column int) *Pattern {
	return &r.patterns[r.node.options[r.loaded[column-r.firstColumn]].pattern]
}

func (r *relaxation) solve() (work int64) {
	m := int64(r.cutRow + r.cuts.size)
	before := r.lp.Work()
	r.lp.Solve(int(min(maxPivots, maxRelaxationWork/(m*m)+1)))
	return r.lp.Work() - before
}

// roundDuals makes integer prices of the duals, and keeps the cuts that have one.
func (r *relaxation) roundDuals() {
	nd := r.node
	own := &nd.lpPrices
	own.Values = own.Values[:0]
	for k, n := range nd.demand {
		v := int64(0)
		if n > 0 {
			v = r.roundedDual(r.rows[k])
		}
		own.Values = append(own.Values, v)
	}
	own.cutValues = own.cutValues[:0]
	for n := range r.cuts.size {
		if v := r.roundedDual(r.cutRow + n); v > 0 {
			own.cutValues = append(own.cutValues, v)
		}
	}
	own.cuts = r.cuts.clone()
	own.cuts.retain(r.activeCuts())
}

// activeCuts returns a bit for each cut with a dual.
func (r *relaxation) activeCuts() (cuts uint64) {
	for n := range r.cuts.size {
		if r.roundedDual(r.cutRow+n) > 0 {
			cuts |= 1 << n
		}
	}
	return cuts
}

// roundedDual returns the dual of a row as an integer.
func (r *relaxation) roundedDual(row int) int64 {
	return max(0, int64(math.Round(r.lp.Duals()[row]*priceScale)))
}

// priceScale is the integer value of all pieces together.
const priceScale = 1 << 36

// price returns the options with the best reduced profits.
func (r *relaxation) price() (more []int, work int64) {
	most := max(minBatch, r.cutRow)
	r.entering = r.entering[:0]
	least := minGain
	for n, o := range r.node.options {
		t := &r.patterns[o.pattern]
		work += int64(len(t.Counts))
		if r.inLP[n] {
			continue
		}
		if gain := r.reducedProfit(t); gain > least {
			r.entering = append(r.entering, enteringOption{n, gain})
			if len(r.entering) == 2*most {
				r.entering = r.top(most)
				least = r.entering[most-1].gain
			}
		}
	}
	for _, b := range r.top(most) {
		more = append(more, b.option)
	}
	return more, work
}

// reducedProfit returns the value of a pattern less that of its stock, by the duals.
func (r *relaxation) reducedProfit(t *Pattern) float64 {
	nd, prices := r.node, r.lp.Duals()
	gain := -prices[r.stockRow+t.Stock]
	for _, c := range t.Counts {
		if row := r.rows[c.Kind]; nd.demand[c.Kind] > 0 {
			// The conversion keeps processors from fusing product and sum.
			gain += float64(prices[row] * float64(min(c.Times, nd.demand[c.Kind])))
		}
	}
	if r.cuts.size > 0 {
		of := r.cuts.totalsOf(t, nd.demand)
		for n := range r.cuts.size {
			gain += float64(prices[r.cutRow+n] * float64((of[n]+1)/2))
		}
	}
	return gain
}

// top returns the most best entering options, in order.
func (r *relaxation) top(most int) []enteringOption {
	slices.SortFunc(r.entering, func(a, b enteringOption) int {
		return cmp.Or(cmp.Compare(b.gain, a.gain), cmp.Compare(a.option, b.option))
	})
	return r.entering[:min(most, len(r.entering))]
}

// callback prices by the callback, and adds its patterns to the options.
func (r *relaxation) callback() (more []int, work int64) {
	nd := r.node
	values := make([]int64, len(nd.demand))
	for k, n := range nd.demand {
		if n > 0 {
			values[k] = r.roundedDual(r.rows[k])
		}
	}
	var bonus *CutBonus
	if r.cuts.size > 0 {
		bonus = &CutBonus{cuts: r.cuts.clone()}
		for n := range r.cuts.size {
			bonus.values = append(bonus.values, r.roundedDual(r.cutRow+n))
		}
	}
	for t, n := range nd.pieces {
		if n == 0 {
			continue
		}
		above := int64(math.Round(r.lp.Duals()[r.stockRow+t]*priceScale*(1+1e-7))) + int64(len(nd.demand))
		made, spent := r.randomized.price(t, nd.demand, values, bonus, above)
		work += spent
		for _, m := range made {
			more = append(more, r.addPattern(nd, m))
		}
	}
	return more, work
}

// addPattern adds a pattern and returns its option.
func (s *Search) addPattern(nd *node, p Pattern) (option int) {
	nd.options = append(nd.options, optionOf(len(s.patterns)))
	s.inLP = append(s.inLP, false)
	s.patterns = append(s.patterns, p)
	s.inSupport = append(s.inSupport, false)
	s.randomized.scores = append(s.randomized.scores, 0)
	if s.depth == 0 {
		s.randomized.rootPatterns = len(s.patterns) // the root's list has it
	}
	return len(nd.options) - 1
}

// addColumn makes a column of an option.
func (r *relaxation) addColumn(option int) {
	nd := r.node
	t := &r.patterns[nd.options[option].pattern]
	c := master.Column{Entries: make([]master.Entry, 0, len(t.Counts)+1)}
	for _, n := range t.Counts {
		if held := min(n.Times, nd.demand[n.Kind]); held > 0 {
			c.Entries = append(c.Entries, master.Entry{Row: r.rows[n.Kind], Value: float64(held)})
		}
	}
	c.Entries = append(c.Entries, master.Entry{Row: r.stockRow + t.Stock, Value: -1})
	if r.cuts.size > 0 {
		of := r.cuts.totalsOf(t, nd.demand)
		for n := range r.cuts.size {
			if of[n] > 0 {
				c.Entries = append(c.Entries, master.Entry{Row: r.cutRow + n, Value: float64((of[n] + 1) / 2)})
			}
		}
	}
	r.lp.Add(c)
	r.inLP[option] = true
	r.loaded = append(r.loaded, option)
}

// enteringOption is an option with a positive reduced profit.
type enteringOption struct {
	option int
	gain   float64
}
