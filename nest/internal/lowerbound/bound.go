package lowerbound

import (
	"container/heap"
	"math"
	"math/bits"
	"slices"

	"sawbill/nest/internal/instance"
)

// Bound is the least that a plan can cost by what is proven so far. It only
// rises.
type Bound struct {
	prices       []int64
	limits       []int
	inequalities []Inequality
	reserve      []Inequality // cuts that excluded nothing when they came
	excluded     [][]int      // counts within which there is no plan
	value        int64
	counts       []int // of the cheapest pieces that are not excluded; nil if not found
	order        []int // of the stock in which counts are settled: the dearest first
}

// New proves what follows from areas and from dual feasible functions.
func New(in *instance.Instance) *Bound {
	f := &Bound{inequalities: areaInequalities(in)}
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
	f.strengthen(dffInequalities(in))
	return f
}

// Value is proven: no plan costs less.
func (b *Bound) Value() int64 { return b.value }

// Counts is how many pieces of each stock cost Price and are not excluded: the
// plan to disprove if the floor is to rise. Nil where the search for it was
// given up; Price holds all the same.
func (b *Bound) Counts() []int { return b.counts }

// Add takes a cut into account and reports whether it excludes what Counts
// was.
func (b *Bound) Add(c Inequality) bool {
	if b.counts == nil {
		// Pieces divisible, the cut alone still says something.
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

// activate takes up the idle cuts that exclude what Counts is now.
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

// Exclude takes into account that no plan keeps within counts: every plan has
// more of some stock.
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

// maxReserve is how many cuts are kept that excluded nothing when they came: a
// later floor may run into them.
const maxReserve = 64

// maxChecks limits the search for the cheapest counts: how often some counts
// are held against a cut. It is some hundredths of a second.
const maxChecks = 1 << 18

// solve finds the cheapest counts by branch and bound, best first.
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

// enumerate yields counts that satisfy all that is proven, the cheapest first,
// until yield says that it is enough. It reports whether there were any; where
// they are too many to go through, the last one yielded has no counts, but a
// price that all others are not below.
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
		if checks > maxChecks {
			top.counts = nil
			yield(top)
			return true
		}
		b.branch(q, top, least, most)
	}
	return found
}

// Candidates lists counts below a price, the cheapest first and at most so many,
// that a plan may have by what is proven.
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

// dropLimits forgets how much there is of what is for sale, and reports whether that
// changes anything. It is called when there is too little for any plan: the
// floor then speaks of what would have to be had.
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

// countRange are the least and the greatest count of the next stock that can matter: some
// billions where a cut says very little of it.
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
		least = most // what is free is taken
	}
	return least, most
}

// branch settles the count of the next stock in every way from least to most.
func (b *Bound) branch(q *queue, n node, least, most int) {
	s := b.order[n.fixed]
	for count := least; count <= most; count++ {
		next := node{fixed: n.fixed + 1, counts: slices.Clone(n.counts), cost: n.cost + int64(count)*b.prices[s]}
		next.counts[s] = count
		b.push(q, next)
	}
}

// push bounds n from below by every cut, and by all counts within which there
// is no plan, each on its own, and queues it unless it cannot satisfy one.
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

// coverCost is the least price at which stock from open covers need of a cut,
// pieces divisible, rounded up.
func (b *Bound) coverCost(c Inequality, need int64, open []int) (price int64, ok bool) {
	if need <= 0 {
		return 0, true
	}
	// The best rate alone, limits aside: a bound that is quick to compute.
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

// exceedCost is the least price of more than a limit of some stock from open.
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

// less compares a/b with c/d.
func less(a, b, c, d int64) bool {
	h1, l1 := bits.Mul64(uint64(a), uint64(d))
	h2, l2 := bits.Mul64(uint64(c), uint64(b))
	return h1 < h2 || h1 == h2 && l1 < l2
}
