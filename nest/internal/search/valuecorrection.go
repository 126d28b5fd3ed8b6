package search

import (
	"cmp"
	"math"
	"slices"

	"sawbill/nest/internal/halt"
	"sawbill/nest/internal/instance"
)

// ValueCorrection makes whole plans by sequential value correction: it fills one piece of stock
// after another with the most valuable pattern of a [Filler]. Values then move towards the cost
// of the part's piece per area used. So parts of wasteful or expensive pieces come earlier in
// the next plan. Mukhacheva et al., Pesquisa Operacional 20, 2000; Belov and Scheithauer,
// INFORMS J. Comput. 19, 2007; from memory. Each plan takes twice as many steps as the one
// before.
//
// With many parts its plans are better than those of dives and walks. Elsewhere its patterns are
// good columns.
//
// It works in portions and takes the same course on every machine.
type ValueCorrection struct {
	instance.Queue // plans that lack parts only if there is too little stock

	e       *env
	fillers []*Filler // per stock
	byRate  []int     // stock by cost per area, the lowest first
	minRate float64   // lowest cost per area of stock for sale
	base    []float64 // per kind: before correction
	worths  []float64 // per kind: corrected
	values  []int64   // worths as integers
	steps   int       // per piece filled

	plan       *instance.Plan
	left       []int // demand left, per kind
	count      int   // demand left in all
	leftArea   int64
	used       []int // per stock
	nextStock  int   // index in byRate of the stock in progress
	stepsTaken int   // on that stock; 0 before the first
	top        filling
	best       filling // so far for this piece
	overdrawn  int64
}

// filling is one piece of stock filled; parts is 0 if there is none.
type filling struct {
	stock int
	tree  tree
	worth int64
	parts int
	area  int64 // of its parts
}

const (
	firstFilling = 64      // steps for each piece of the first plan
	maxFilling   = 1 << 16 // and the limit for later plans
	portion      = 64      // steps between questions whether to stop
	maxCost      = 8       // limits a part's cost, relative to its area
	valueScale   = 1 << 32 // integer value of what fills the largest stock
	kindWork     = 40      // comparisons of a step for each kind, beside FillStepWork
)

// NewValueCorrection returns one that has not begun.
func NewValueCorrection(in *instance.Instance, seed uint64) *ValueCorrection {
	e := newEnv(in, false)
	q := &ValueCorrection{
		e: e, fillers: newFillers(e, seed), steps: firstFilling, minRate: math.Inf(1), used: make([]int, len(e.stock)),
		values: make([]int64, len(e.kinds)),
	}
	for s := range e.stock {
		q.byRate = append(q.byRate, s)
		if !in.Stock[s].OnHand {
			q.minRate = min(q.minRate, q.rate(s))
		}
	}
	slices.SortStableFunc(q.byRate, func(a, b int) int { return cmp.Compare(q.rate(a), q.rate(b)) })
	for _, k := range e.kinds {
		// Large parts are worth a little more than their area, since small ones fit in leftover
		// room.
		area := float64(float64(k.area) / (1 << instance.AreaBits))
		q.base = append(q.base, area+float64(area*area))
	}
	q.worths = slices.Clone(q.base)
	q.begin()
	return q
}

// rate returns the cost of stock s per area.
func (v *ValueCorrection) rate(s int) float64 {
	return v.e.stock[s].weight / float64(v.e.stock[s].area)
}

// Work goes on for about so many comparisons, or fewer if stop is on.
func (v *ValueCorrection) Work(work int64, stop halt.Signal) {
	step := int64(FillStepWork + kindWork*len(v.e.kinds))
	work -= v.overdrawn
	for work > 0 && !stop.On() {
		if v.nextStock < len(v.byRate) {
			work -= step * int64(v.fill(min(int(work/step)+1, portion)))
		} else {
			v.take()
		}
	}
	v.overdrawn = max(0, -work) // the next call works that much less
}

// begin starts a plan.
func (v *ValueCorrection) begin() {
	v.plan = &instance.Plan{}
	v.left, v.count, v.leftArea = v.e.in.Demands(), v.e.pieces, 0
	for k, kd := range v.e.in.Kinds {
		v.leftArea += int64(kd.Demand) * v.e.kinds[k].area
	}
	clear(v.used)
	v.next()
}

// next starts a piece.
func (v *ValueCorrection) next() {
	for k, w := range v.worths {
		v.values[k] = int64(math.Round(w * valueScale))
	}
	v.nextStock, v.stepsTaken, v.best.parts = 0, 0, 0
}

// fill takes at most most steps on the stock in progress and returns how many it took.
func (v *ValueCorrection) fill(most int) (taken int) {
	s := v.byRate[v.nextStock]
	f := v.fillers[s]
	if v.stepsTaken == 0 {
		if !v.canImprove(s) {
			v.nextStock++
			return 1
		}
		f.start(v.left, v.values)
		v.top.worth = -1
	}
	for taken < most && v.stepsTaken < v.steps && (v.stepsTaken == 0 || v.top.parts < v.count) {
		taken++
		v.stepsTaken++
		worth := f.tryStep()
		if worth > v.top.worth {
			t := f.tree()
			v.top.worth, v.top.parts = worth, len(t.parts)
			v.top.tree.copyFrom(t)
		}
		f.accept(worth)
	}
	if v.stepsTaken == v.steps || v.top.parts == v.count {
		v.top.stock, v.top.area = s, v.e.stock[s].area-v.top.tree.freeArea
		if v.isBetter(&v.top) {
			v.top, v.best = v.best, v.top
		}
		v.nextStock++
		v.stepsTaken = 0
	}
	return taken
}

// canImprove reports whether stock s, as well used as the best filling so far, gives more worth
// for its cost.
func (v *ValueCorrection) canImprove(s int) bool {
	st := &v.e.stock[s]
	if v.used[s] >= v.e.in.Stock[s].Limit {
		return false
	}
	b := &v.best
	if b.parts == 0 {
		return true
	}
	worth := float64(b.worth) / float64(b.area) * float64(min(st.area, v.leftArea))
	return worth/st.weight > float64(b.worth)/v.e.stock[b.stock].weight
}

// isBetter reports whether filling c is better than the best so far. A filling that takes all
// parts left comes first; then the most worth for its cost.
func (v *ValueCorrection) isBetter(c *filling) bool {
	b := &v.best
	if c.parts == 0 || b.parts == 0 {
		return c.parts > 0
	}
	cost, least := v.e.stock[c.stock].weight, v.e.stock[b.stock].weight
	if all := c.parts == v.count; all != (b.parts == v.count) {
		return all
	}
	return float64(c.worth)/cost > float64(b.worth)/least
}

// take adds the best filling to the plan. Without one the plan ends.
func (v *ValueCorrection) take() {
	b := &v.best
	if b.parts > 0 {
		v.plan.Layouts = append(v.plan.Layouts, instance.Layout{Stock: b.stock, Root: instance.Normalize(b.tree.piece(0))})
		v.plan.Cost = v.plan.Cost.Plus(v.e.stock[b.stock].cost, 1)
		v.used[b.stock]++
		v.count -= b.parts
		v.leftArea -= b.area
		v.correctValues()
	}
	if b.parts == 0 || v.count == 0 {
		v.plan.Missing = slices.Clone(v.left)
		v.Put(v.plan)
		v.steps = min(2*v.steps, maxFilling)
		v.begin()
		return
	}
	v.next()
}

// correctValues removes the parts of the best filling from the demand, and moves their worths
// towards their cost in it. Kinds with few parts move further.
func (v *ValueCorrection) correctValues() {
	b := &v.best
	cost := float64(v.e.stock[b.stock].area) / float64(b.area)
	if !v.e.in.Stock[b.stock].OnHand {
		cost *= v.rate(b.stock) / v.minRate
	}
	cost = min(cost, maxCost)
	for _, n := range b.tree.parts {
		v.left[b.tree.nodes[n].kind]--
	}
	if v.count == 0 {
		return // the last piece's leftover is not the fault of its parts
	}
	for _, n := range b.tree.parts {
		k := b.tree.nodes[n].kind
		share := 1 / float64(1+v.e.in.Kinds[k].Demand+v.left[k])
		v.worths[k] += float64(share * (float64(v.base[k]*cost) - v.worths[k]))
	}
}
