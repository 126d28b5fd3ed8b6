package search

import (
	"cmp"
	"math"
	"slices"

	"sawbill/nest/internal/instance"
)

// ValueCorrection makes whole plans one piece of stock after another, each filled by a
// [Filler] with what is worth most. What a piece is worth to a plan shows when all are
// filled: parts that went into pieces that waste much, or are dear, are worth more
// from then on, and so come earlier in the next plan (sequential value correction,
// Mukhacheva et al., Pesquisa Operacional 20, 2000; Belov and Scheithauer, INFORMS J.
// Comput. 19, 2007; from memory). Each plan takes twice as many steps as the one before.
//
// It works in portions and takes the same course on every machine.
type ValueCorrection struct {
	e       *env
	fillers []*Filler // per stock
	byRate  []int     // the stock, what costs least for its area first
	minRate float64   // what that of the stock that is bought costs
	base    []float64 // per kind: values before correction
	worths  []float64 // corrected
	values  []int64   // the same for fillers
	steps   int       // of a filling

	plan       *instance.Plan
	left       []int // per kind
	count      int   // of parts left
	leftArea   int64
	used       []int // per stock
	nextStock  int   // of dear: being filled
	stepsTaken int   // steps of that filling; 0 before it
	top        filling
	best       filling // of those filled for this piece
	plans      []*instance.Plan
	overdrawn  int64
}

// filling is one piece of stock filled; without parts where there is none.
type filling struct {
	stock int
	tree  tree
	worth int64
	parts int
	area  int64 // of its parts
}

const (
	firstFilling = 64      // steps for each piece of the first plan
	maxFilling   = 1 << 16 // and of later ones
	portion      = 64      // steps without looking whether to stop
	maxCost      = 8       // times its first value that a part may have cost
	valueScale   = 1 << 32 // of values in whole numbers: what fills the largest stock
	kindWork     = 40      // comparisons of a step for each kind, beside FillStepWork
)

// NewValueCorrection makes one that has not begun.
func NewValueCorrection(in *instance.Instance, seed uint64) *ValueCorrection {
	e := newEnv(in, false)
	q := &ValueCorrection{
		e: e, fillers: newFillers(e, seed), steps: firstFilling, minRate: math.Inf(1), left: make([]int, len(e.kinds)), used: make([]int, len(e.stock)),
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
		// Large parts are worth somewhat more than their area: small ones find room
		// where others leave it.
		area := float64(float64(k.area) / (1 << instance.AreaBits))
		q.base = append(q.base, area+float64(area*area))
	}
	q.worths = slices.Clone(q.base)
	q.begin()
	return q
}

// rate is how dear stock s is for its area.
func (q *ValueCorrection) rate(s int) float64 {
	return q.e.stock[s].weight / float64(q.e.stock[s].area)
}

// NewPlans returns the plans made since the last call; they lack parts only where
// there is too little stock.
func (q *ValueCorrection) NewPlans() []*instance.Plan {
	plans := q.plans
	q.plans = nil
	return plans
}

// Work carries on for about so many comparisons, or fewer when stop says so.
func (q *ValueCorrection) Work(work int64, stop func() bool) {
	step := int64(FillStepWork + kindWork*len(q.e.kinds))
	work -= q.overdrawn
	for work > 0 && !stop() {
		if q.nextStock < len(q.byRate) {
			work -= step * int64(q.fill(min(int(work/step)+1, portion)))
		} else {
			q.take()
		}
	}
	q.overdrawn = max(0, -work) // what was overdrawn is paid back next time
}

// begin starts a plan.
func (q *ValueCorrection) begin() {
	q.plan = &instance.Plan{}
	q.count, q.leftArea = 0, 0
	for k, kd := range q.e.in.Kinds {
		q.left[k] = kd.Demand
		q.count += kd.Demand
		q.leftArea += int64(kd.Demand) * q.e.kinds[k].area
	}
	clear(q.used)
	q.next()
}

// next starts a piece.
func (q *ValueCorrection) next() {
	for k, w := range q.worths {
		q.values[k] = int64(math.Round(w * valueScale))
	}
	q.nextStock, q.stepsTaken, q.best.parts = 0, 0, 0
}

// fill takes at most so many steps with the stock whose turn it is and returns how
// many it took.
func (q *ValueCorrection) fill(most int) (taken int) {
	s := q.byRate[q.nextStock]
	f := q.fillers[s]
	if q.stepsTaken == 0 {
		if !q.canImprove(s) {
			q.nextStock++
			return 1
		}
		f.start(q.left, q.values)
		q.top.worth = -1
	}
	for taken < most && q.stepsTaken < q.steps && (q.stepsTaken == 0 || q.top.parts < q.count) {
		taken++
		q.stepsTaken++
		worth := f.tryStep()
		if worth > q.top.worth {
			t := f.tree()
			q.top.worth, q.top.parts = worth, len(t.parts)
			q.top.tree.copyFrom(t)
		}
		f.accept(worth)
	}
	if q.stepsTaken == q.steps || q.top.parts == q.count {
		q.top.stock, q.top.area = s, q.e.stock[s].area-q.top.tree.freeArea
		if q.isBetter(&q.top) {
			q.top, q.best = q.best, q.top
		}
		q.nextStock++
		q.stepsTaken = 0
	}
	return taken
}

// canImprove reports whether stock s may give more for what it costs than the best
// filling so far, if all of it were used as well.
func (q *ValueCorrection) canImprove(s int) bool {
	st := &q.e.stock[s]
	if q.used[s] >= q.e.in.Stock[s].Limit {
		return false
	}
	b := &q.best
	if b.parts == 0 {
		return true
	}
	worth := float64(b.worth) / float64(b.area) * float64(min(st.area, q.leftArea))
	return worth/st.weight > float64(b.worth)/q.e.stock[b.stock].weight
}

// isBetter reports whether filling c is to be preferred to the best so far: what takes
// all that is left, at least cost; else what is worth most for what it costs.
func (q *ValueCorrection) isBetter(c *filling) bool {
	b := &q.best
	if c.parts == 0 || b.parts == 0 {
		return c.parts > 0
	}
	cost, least := q.e.stock[c.stock].weight, q.e.stock[b.stock].weight
	if all := c.parts == q.count; all != (b.parts == q.count) {
		return all
	}
	return float64(c.worth)/cost > float64(b.worth)/least
}

// take brings the best filling into the plan; without one the plan is done.
func (q *ValueCorrection) take() {
	b := &q.best
	if b.parts > 0 {
		q.plan.Layouts = append(q.plan.Layouts, instance.Layout{Stock: b.stock, Root: instance.Normalize(b.tree.piece(0))})
		q.plan.Cost = q.plan.Cost.Plus(q.e.stock[b.stock].cost, 1)
		q.used[b.stock]++
		q.count -= b.parts
		q.leftArea -= b.area
		q.correctValues()
	}
	if b.parts == 0 || q.count == 0 {
		q.plan.Missing = slices.Clone(q.left)
		q.plans = append(q.plans, q.plan)
		q.steps = min(2*q.steps, maxFilling)
		q.begin()
		return
	}
	q.next()
}

// correctValues takes the parts of the best filling from what is left, and brings their
// values towards what they cost in it, the more of all there are of them in it the
// further.
func (q *ValueCorrection) correctValues() {
	b := &q.best
	cost := float64(q.e.stock[b.stock].area) / float64(b.area)
	if !q.e.in.Stock[b.stock].OnHand {
		cost *= q.rate(b.stock) / q.minRate
	}
	cost = min(cost, maxCost)
	for _, n := range b.tree.parts {
		q.left[b.tree.nodes[n].kind]--
	}
	if q.count == 0 {
		return // what the last piece has left over is no fault of its parts
	}
	for _, n := range b.tree.parts {
		k := b.tree.nodes[n].kind
		share := 1 / float64(1+q.e.in.Kinds[k].Demand+q.left[k])
		q.worths[k] += float64(share * (float64(q.base[k]*cost) - q.worths[k]))
	}
}
