package lowerbound

import (
	"container/heap"
	"math"
	"math/bits"
	"slices"

	"sawbill/nest/internal/halt"
	"sawbill/nest/internal/instance"
)

// Bound is the best lower bound proven so far. It only rises.
type Bound struct {
	stop         halt.Signal
	prices       []int64
	limits       []int
	inequalities []Inequality
	reserve      []Inequality // inequalities that were satisfied when they came
	excluded     [][]int      // counts within which there is no plan
	value        int64
	counts       []int // the cheapest that are not excluded; nil if not found
	order        []int // of stock in the branching, the dearest first
}

// New returns the bound from areas and dual feasible functions. Once stop is on, it leaves
// out what is not there yet, as do Add and Exclude. The bound is then lower and holds.
func New(in *instance.Instance, stop halt.Signal) *Bound {
	f := &Bound{inequalities: areaInequalities(in), stop: stop}
	for _, s := range in.Stock {
		f.order = append(f.order, len(f.order))
		f.prices = append(f.prices, s.Price)
		f.limits = append(f.limits, s.Limit)
	}
	slices.SortStableFunc(f.order, func(a, b int) int {
		switch {
		case f.prices[a] > f.prices[b]:
			return -1
		case f.prices[a] < f.prices[b]:
			return 1
		}
		return 0
	})
	f.solve()
	f.strengthen(dffInequalities(in, stop), stop)
	return f
}

// Value is proven: no plan costs less.
func (b *Bound) Value() int64 { return b.value }

// Counts returns pieces per stock that cost Value and are not excluded. A proof that no plan
// has them raises the bound. It is nil if the search for them gave up; Value still holds.
func (b *Bound) Counts() []int { return b.counts }

// Proof returns what others have proven: the inequalities by values of the kinds, and the
// excluded counts.
func (b *Bound) Proof() (byValues []Inequality, excluded [][]int) {
	for _, list := range [][]Inequality{b.inequalities, b.reserve} {
		for _, c := range list {
			if c.Values != nil {
				byValues = append(byValues, c)
			}
		}
	}
	return byValues, slices.Clone(b.excluded)
}

// Add takes an inequality into account and reports whether it excludes the present Counts.
func (b *Bound) Add(c Inequality) bool {
	if b.counts == nil {
		// The inequality alone still gives a bound, with fractional pieces.
		if price, ok := b.coverCost(c, c.RHS, b.order); ok {
			b.value = max(b.value, price)
		}
		return false
	}
	if c.holds(b.counts) {
		if b.reserve = append(b.reserve, c); len(b.reserve) > maxReserve {
			b.reserve = b.reserve[1:]
		}
		return false
	}
	b.inequalities = append(b.inequalities, c)
	b.solve()
	b.activate()
	return true
}

// activate moves inequalities that Counts violates out of the reserve.
func (b *Bound) activate() {
	for i := 0; i < len(b.reserve) && b.counts != nil; {
		if b.reserve[i].holds(b.counts) {
			i++
			continue
		}
		b.inequalities = append(b.inequalities, b.reserve[i])
		b.reserve = slices.Delete(b.reserve, i, i+1)
		b.solve()
		i = 0
	}
}

// Exclude takes into account that no plan stays within counts.
func (b *Bound) Exclude(counts []int) {
	b.excluded = append(b.excluded, slices.Clone(counts))
	if b.counts != nil && atMost(b.counts, counts) {
		b.solve()
		b.activate()
	}
}

// atMost reports whether no count exceeds its limit.
func atMost(counts, limits []int) bool {
	for s, n := range counts {
		if n > limits[s] {
			return false
		}
	}
	return true
}

// maxReserve is the number of satisfied inequalities kept: later counts may violate them.
const maxReserve = 64

// maxChecks limits the search for the cheapest counts, in comparisons of counts with an
// inequality. It is some hundredths of a second.
const maxChecks = 1 << 18

// maxSteps limits the same in counts of one stock, of which each comparison takes one for each
// stock. It is the narrower limit with more than 64 of them.
const maxSteps = 64 * maxChecks

// solve finds the cheapest counts by best-first branch and bound.
func (b *Bound) solve() {
	b.counts = nil
	found := b.enumerate(func(n node) bool {
		b.value, b.counts = max(b.value, n.lower), n.counts
		return false
	})
	if found {
		return
	}
	if b.dropLimits() {
		b.solve()
	}
}

// enumerate yields counts that satisfy everything proven, the cheapest first, until yield
// returns false. It reports whether there were any. If there are too many to go through, the
// last node yielded has no counts, and all others cost at least its lower bound.
func (b *Bound) enumerate(yield func(node) bool) (found bool) {
	q := &queue{}
	b.push(q, node{counts: make([]int, len(b.prices))})
	for checks := 0; q.Len() > 0; {
		top := heap.Pop(q).(node)
		if top.fixed == len(b.order) {
			found = true
			if !yield(top) {
				return true
			}
			continue
		}
		least, most := b.countRange(top)
		checks += max(0, most-least+1) * (len(b.inequalities) + len(b.excluded))
		if checks > min(maxChecks, maxSteps/len(b.prices)) || !b.branch(q, top, least, most) {
			top.counts = nil
			yield(top)
			return true
		}
	}
	return found
}

// Candidates lists at most most counts that cost less than below and are not excluded, the
// cheapest first.
func (b *Bound) Candidates(below int64, most int) (all [][]int) {
	b.enumerate(func(n node) bool {
		if n.counts == nil || n.cost >= below {
			return false
		}
		all = append(all, n.counts)
		return len(all) < most
	})
	return all
}

// dropLimits removes the limits of stock for sale, and reports whether there were any. It is
// called if there is too little stock for any plan. The bound is then for enough stock.
func (b *Bound) dropLimits() bool {
	changed := false
	for s := range b.limits {
		if b.prices[s] > 0 && b.limits[s] < instance.NoLimit {
			b.limits[s] = instance.NoLimit
			changed = true
		}
	}
	return changed
}

// countRange returns the smallest and greatest count worth trying for the next stock. The
// greatest is some billions if an inequality has a tiny coefficient.
func (b *Bound) countRange(n node) (least, most int) {
	s := b.order[n.fixed]
	for _, c := range b.inequalities {
		if need := c.shortfall(n.counts); need > 0 && c.Coef[s] > 0 {
			most = max(most, int(min((need-1)/c.Coef[s]+1, math.MaxInt32)))
		}
	}
	for _, limits := range b.excluded {
		if most <= limits[s] && atMost(n.counts, limits) {
			most = limits[s] + 1
		}
	}
	most = min(most, b.limits[s])
	if b.prices[s] == 0 {
		least = most // free stock is taken
	}
	return least, most
}

// branch tries every count of the next stock from least to most; not ok if stopped.
func (b *Bound) branch(q *queue, n node, least, most int) (ok bool) {
	s := b.order[n.fixed]
	for count := least; count <= most; count++ {
		if (count-least)%branchAsks == 0 && b.stop.On() {
			return false
		}
		next := node{fixed: n.fixed + 1, counts: slices.Clone(n.counts), cost: n.cost + int64(count)*b.prices[s]}
		next.counts[s] = count
		b.push(q, next)
	}
	return true
}

// branchAsks is how many counts branch tries before it asks again whether to stop.
const branchAsks = 1 << 6

// push computes a node's lower bound and queues it, unless it cannot satisfy everything proven.
// The bound is the best of those by each inequality, and by each excluded vector.
func (b *Bound) push(q *queue, n node) {
	n.lower = n.cost
	for _, c := range b.inequalities {
		more, ok := b.coverCost(c, c.shortfall(n.counts), b.order[n.fixed:])
		if !ok {
			return
		}
		n.lower = max(n.lower, n.cost+more)
	}
	for _, limits := range b.excluded {
		if !atMost(n.counts, limits) {
			continue
		}
		more, ok := b.exceedCost(limits, b.order[n.fixed:])
		if !ok {
			return
		}
		n.lower = max(n.lower, n.cost+more)
	}
	heap.Push(q, n)
}

// coverCost returns the least price, with fractional pieces and rounded up, at which stock from
// open covers need of an inequality.
func (b *Bound) coverCost(c Inequality, need int64, open []int) (price int64, ok bool) {
	if need <= 0 {
		return 0, true
	}
	// The best rate alone, ignoring limits, is a bound that is quick to compute.
	best := -1
	var supply uint64
	for _, s := range open {
		w := c.Coef[s]
		if w == 0 {
			continue
		}
		hi, lo := bits.Mul64(uint64(w), uint64(b.limits[s]))
		if hi > 0 {
			lo = math.MaxUint64 / 2
		}
		supply = min(supply+min(lo, math.MaxUint64/4), math.MaxUint64/2)
		if best < 0 || less(b.prices[s], w, b.prices[best], c.Coef[best]) {
			best = s
		}
	}
	if supply < uint64(need) {
		return 0, false
	}
	hi, lo := bits.Mul64(uint64(need), uint64(b.prices[best]))
	if hi >= uint64(c.Coef[best]) {
		return math.MaxInt64 / 4, true
	}
	q, r := bits.Div64(hi, lo, uint64(c.Coef[best]))
	if r > 0 {
		q++
	}
	return int64(min(q, math.MaxInt64/4)), true
}

// exceedCost returns the least price of more pieces of some stock from open than its limit.
func (b *Bound) exceedCost(limits, open []int) (price int64, ok bool) {
	for _, s := range open {
		if limits[s] >= b.limits[s] {
			continue
		}
		hi, lo := bits.Mul64(uint64(b.prices[s]), uint64(limits[s]+1))
		if hi > 0 {
			lo = math.MaxInt64 / 4
		}
		if more := int64(min(lo, math.MaxInt64/4)); !ok || more < price {
			price, ok = more, true
		}
	}
	return price, ok
}

// less reports whether a/b < c/d.
func less(a, b, c, d int64) bool {
	h1, l1 := bits.Mul64(uint64(a), uint64(d))
	h2, l2 := bits.Mul64(uint64(c), uint64(b))
	return h1 < h2 || h1 == h2 && l1 < l2
}
