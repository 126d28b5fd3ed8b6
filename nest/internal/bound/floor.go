package bound

import (
	"container/heap"
	"math"
	"math/bits"
	"slices"

	"sawbill/nest/internal/instance"
)

// Floor is the least that a plan can cost by what is proven so far. It only
// rises.
type Floor struct {
	prices []int64
	limits []int
	cuts   []Cut
	idle   []Cut   // cuts that excluded nothing when they came
	short  [][]int // counts within which there is no plan
	price  int64
	counts []int // of the cheapest pieces that are not excluded; nil if not found
	order  []int // of the stock in which counts are settled: the dearest first
}

// New proves what follows from areas and from dual feasible functions.
func New(in *instance.Instance) *Floor {
	f := &Floor{cuts: areaCuts(in)}
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
	f.raise()
	f.strengthen(dualCuts(in))
	return f
}

// Price is proven: no plan costs less.
func (f *Floor) Price() int64 { return f.price }

// Counts is how many pieces of each stock cost Price and are not excluded: the
// plan to disprove if the floor is to rise. Nil where the search for it was
// given up; Price holds all the same.
func (f *Floor) Counts() []int { return f.counts }

// Add takes a cut into account and reports whether it excludes what Counts
// was.
func (f *Floor) Add(c Cut) bool {
	if f.counts == nil {
		// Pieces divisible, the cut alone still says something.
		if price, ok := f.coverage(c, c.Need, f.order); ok {
			f.price = max(f.price, price)
		}
		return false
	}
	if c.holds(f.counts) {
		if f.idle = append(f.idle, c); len(f.idle) > mostIdle {
			f.idle = f.idle[1:]
		}
		return false
	}
	f.cuts = append(f.cuts, c)
	f.raise()
	f.recall()
	return true
}

// recall takes up the idle cuts that exclude what Counts is now.
func (f *Floor) recall() {
	for i := 0; i < len(f.idle) && f.counts != nil; {
		if f.idle[i].holds(f.counts) {
			i++
			continue
		}
		f.cuts = append(f.cuts, f.idle[i])
		f.idle = slices.Delete(f.idle, i, i+1)
		f.raise()
		i = 0
	}
}

// Exclude takes into account that no plan keeps within counts: every plan has
// more of some stock.
func (f *Floor) Exclude(counts []int) {
	f.short = append(f.short, slices.Clone(counts))
	if f.counts != nil && atMost(f.counts, counts) {
		f.raise()
		f.recall()
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

// mostIdle is how many cuts are kept that excluded nothing when they came: a
// later floor may run into them.
const mostIdle = 64

// mostChecks limits the search for the cheapest counts: how often some counts
// are held against a cut. It is some hundredths of a second.
const mostChecks = 1 << 18

// raise finds the cheapest counts by branch and bound, best first.
func (f *Floor) raise() {
	f.counts = nil
	found := f.cheapest(func(n node) bool {
		f.price, f.counts = max(f.price, n.least), n.counts
		return false
	})
	if found {
		return
	}
	if f.lift() {
		f.raise()
	}
}

// cheapest yields counts that satisfy all that is proven, the cheapest first,
// until yield says that it is enough. It reports whether there were any; where
// they are too many to go through, the last one yielded has no counts, but a
// price that all others are not below.
func (f *Floor) cheapest(yield func(node) bool) (found bool) {
	q := &queue{}
	f.push(q, node{counts: make([]int, len(f.prices))})
	for checks := 0; q.Len() > 0; {
		top := heap.Pop(q).(node)
		if top.settled == len(f.order) {
			found = true
			if !yield(top) {
				return true
			}
			continue
		}
		least, most := f.ways(top)
		checks += max(0, most-least+1) * (len(f.cuts) + len(f.short))
		if checks > mostChecks {
			top.counts = nil
			yield(top)
			return true
		}
		f.branch(q, top, least, most)
	}
	return found
}

// Candidates lists counts below a price, the cheapest first and at most so many,
// that a plan may have by what is proven.
func (f *Floor) Candidates(below int64, most int) (all [][]int) {
	f.cheapest(func(n node) bool {
		if n.counts == nil || n.spent >= below {
			return false
		}
		all = append(all, n.counts)
		return len(all) < most
	})
	return all
}

// lift forgets how much there is of what is for sale, and reports whether that
// changes anything. It is called when there is too little for any plan: the
// floor then speaks of what would have to be had.
func (f *Floor) lift() bool {
	lifted := false
	for s := range f.limits {
		if f.prices[s] > 0 && f.limits[s] < instance.NoLimit {
			f.limits[s] = instance.NoLimit
			lifted = true
		}
	}
	return lifted
}

// ways are the least and the greatest count of the next stock that can matter: some
// billions where a cut says very little of it.
func (f *Floor) ways(n node) (least, most int) {
	s := f.order[n.settled]
	for _, c := range f.cuts {
		if need := c.missing(n.counts); need > 0 && c.Worth[s] > 0 {
			most = max(most, int(min((need-1)/c.Worth[s]+1, math.MaxInt32)))
		}
	}
	for _, limits := range f.short {
		if most <= limits[s] && atMost(n.counts, limits) {
			most = limits[s] + 1
		}
	}
	most = min(most, f.limits[s])
	if f.prices[s] == 0 {
		least = most // what is free is taken
	}
	return least, most
}

// branch settles the count of the next stock in every way from least to most.
func (f *Floor) branch(q *queue, n node, least, most int) {
	s := f.order[n.settled]
	for count := least; count <= most; count++ {
		next := node{settled: n.settled + 1, counts: slices.Clone(n.counts), spent: n.spent + int64(count)*f.prices[s]}
		next.counts[s] = count
		f.push(q, next)
	}
}

// push bounds n from below by every cut, and by all counts within which there
// is no plan, each on its own, and queues it unless it cannot satisfy one.
func (f *Floor) push(q *queue, n node) {
	n.least = n.spent
	for _, c := range f.cuts {
		more, ok := f.coverage(c, c.missing(n.counts), f.order[n.settled:])
		if !ok {
			return
		}
		n.least = max(n.least, n.spent+more)
	}
	for _, limits := range f.short {
		if !atMost(n.counts, limits) {
			continue
		}
		more, ok := f.excess(limits, f.order[n.settled:])
		if !ok {
			return
		}
		n.least = max(n.least, n.spent+more)
	}
	heap.Push(q, n)
}

// coverage is the least price at which stock from open covers need of a cut,
// pieces divisible, rounded up.
func (f *Floor) coverage(c Cut, need int64, open []int) (price int64, ok bool) {
	if need <= 0 {
		return 0, true
	}
	// The best rate alone, limits aside: a bound that is quick to compute.
	best := -1
	var supply uint64
	for _, s := range open {
		w := c.Worth[s]
		if w == 0 {
			continue
		}
		hi, lo := bits.Mul64(uint64(w), uint64(f.limits[s]))
		if hi > 0 {
			lo = math.MaxUint64 / 2
		}
		supply = min(supply+min(lo, math.MaxUint64/4), math.MaxUint64/2)
		if best < 0 || less(f.prices[s], w, f.prices[best], c.Worth[best]) {
			best = s
		}
	}
	if supply < uint64(need) {
		return 0, false
	}
	hi, lo := bits.Mul64(uint64(need), uint64(f.prices[best]))
	if hi >= uint64(c.Worth[best]) {
		return math.MaxInt64 / 4, true
	}
	q, r := bits.Div64(hi, lo, uint64(c.Worth[best]))
	if r > 0 {
		q++
	}
	return int64(min(q, math.MaxInt64/4)), true
}

// excess is the least price of more than a limit of some stock from open.
func (f *Floor) excess(limits, open []int) (price int64, ok bool) {
	for _, s := range open {
		if limits[s] >= f.limits[s] {
			continue
		}
		hi, lo := bits.Mul64(uint64(f.prices[s]), uint64(limits[s]+1))
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
