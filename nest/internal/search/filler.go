package search

import (
	"math"
	"slices"

	"sawbill/nest/internal/halt"
	"sawbill/nest/internal/instance"
	"sawbill/nest/internal/setcover"
)

// Filler prices heuristically: it seeks valuable patterns of one piece of stock by ruin and
// recreate. That is much quicker than exact pricing. Each call continues from the last pattern,
// with other values.
type Filler struct {
	// Halt makes Fill return soon.
	Halt halt.Signal

	walk       *walk
	stock      int
	demand     []int // per kind
	values     []int64
	bonus      *setcover.CutBonus // duals of cuts; or nil
	rates      []int64            // values and shares of the bonus
	kinds      []int32            // with demand
	left       []int              // demand left, per kind
	order      []uint64           // of insertion: rates of the kinds, with the kind in the low bits
	acceptance lateAcceptance     // of negated worths
}

// FillStepWork is about what a step takes, in comparisons.
const FillStepWork = 2000

const (
	fillerHistory = 10 // of late acceptance
	fillerAsks    = 32 // steps between questions to Halt
	kindBits      = 20 // low bits of a rate that hold the kind
)

// NewFillers makes a filler for each stock of an instance, with a Halt.
func NewFillers(in *instance.Instance, seed uint64, stop halt.Signal) []*Filler {
	all := newFillers(newEnv(in, false), seed)
	for _, f := range all {
		f.Halt = stop
	}
	return all
}

func newFillers(e *env, seed uint64) (all []*Filler) {
	for s := range e.stock {
		all = append(all, newFiller(e, s, seed))
	}
	return all
}

func newFiller(e *env, stock int, seed uint64) *Filler {
	f := &Filler{
		walk: newWalk(e, seed, uint64(stock)), stock: stock,
		left: make([]int, len(e.kinds)), acceptance: newLateAcceptance(fillerHistory),
	}
	s := f.walk.state
	s.missing = s.missing[:0]
	s.open(stock)
	f.walk.insertion.blinks = true
	return f
}

// Fill takes a number of steps, or fewer if it finds most patterns. It returns those worth more
// than above, by values and a bonus, or nil. They respect demand.
func (f *Filler) Fill(demand []int, values []int64, bonus *setcover.CutBonus, above int64, steps, most int) (found []instance.Piece) {
	f.bonus = bonus
	f.start(demand, values)
	known := map[uint64]bool{}
	for n := range steps {
		if n%fillerAsks == 0 && f.Halt.On() {
			break
		}
		worth := f.tryStep()
		if t := f.tree(); worth > above && !known[t.key] {
			known[t.key] = true
			root := instance.Normalize(t.piece(0))
			if f.walk.e.stock[f.stock].checked && !f.walk.e.in.Allows(f.stock, root) {
				continue
			}
			found = append(found, root)
			if len(found) == most {
				break
			}
		}
		f.accept(worth)
	}
	return found
}

func (f *Filler) tree() *tree { return f.walk.state.trees[0] }

// start prepares for steps with other values, or another demand.
func (f *Filler) start(demand []int, values []int64) {
	f.demand, f.values, f.rates = demand, values, values
	if f.bonus != nil {
		f.rates = slices.Clone(values)
		for k := range f.rates {
			f.rates[k] += f.bonus.PartShare(k)
		}
	}
	f.kinds = f.kinds[:0]
	for k, n := range demand {
		if n > 0 {
			f.kinds = append(f.kinds, int32(k))
		}
	}
	f.removeExcess()
	worth := f.worth()
	f.acceptance.reset(-worth, -worth)
}

// tryStep takes a step and returns the pattern's worth. accept then keeps the step or not.
func (f *Filler) tryStep() (worth int64) {
	f.walk.state.begin()
	f.ruin()
	f.recreate()
	return f.worth()
}

func (f *Filler) accept(worth int64) {
	if !f.acceptance.accept(-worth, false) {
		f.walk.state.undo()
	}
}

func (f *Filler) worth() (sum int64) {
	t := f.tree()
	for _, n := range t.parts {
		sum += f.values[t.nodes[n].kind]
	}
	if f.bonus != nil {
		f.bonus.Reset()
		for _, n := range t.parts {
			f.bonus.Add(int(t.nodes[n].kind))
		}
		sum += f.bonus.Value()
	}
	return sum
}

// ruin removes some parts, or the regions around them, and keeps the piece open.
func (f *Filler) ruin() {
	w := f.walk
	s := w.state
	t := s.touch(0)
	scattered := w.below(8) == 0
	for range 1 + w.below(3) {
		if len(t.parts) == 0 {
			return
		}
		x := t.parts[w.below(len(t.parts))]
		for up := w.below(6); !scattered && up > 0 && t.nodes[x].parent != none; up-- {
			x = t.nodes[x].parent
		}
		f.remove(x)
	}
}

// remove takes node n out.
func (f *Filler) remove(n int32) {
	s := f.walk.state
	t := s.touch(0)
	before := t.value
	s.missing = t.remove(n, s.missing, f.walk.e)[:0]
	s.value += t.value - before
	s.heads[0] = t.gapSummary()
}

// removeExcess removes parts beyond the demand.
func (f *Filler) removeExcess() {
	s := f.walk.state
	s.begin()
	f.count()
	t := f.tree()
	for i := 0; i < len(t.parts); {
		n := t.parts[i]
		k := t.nodes[n].kind
		if f.left[k] >= 0 {
			i++
			continue
		}
		f.left[k]++
		f.remove(n) // the last part takes its place in the list
	}
}

// count updates the demand left.
func (f *Filler) count() {
	copy(f.left, f.demand)
	t := f.tree()
	for _, n := range t.parts {
		f.left[t.nodes[n].kind]--
	}
}

// recreate inserts parts by value per area, or by value, with noise.
func (f *Filler) recreate() {
	w := f.walk
	s := w.state
	f.count()
	byArea := w.below(3) == 0
	h := &s.heads[0]
	f.order = f.order[:0]
	for _, k := range f.kinds {
		kd := &w.e.kinds[k]
		if f.left[k] <= 0 || !h.holds(kd) {
			continue // there is no more room later
		}
		rate := float64(f.rates[k])
		if !byArea {
			rate /= float64(kd.area)
		}
		noise := 1 + float64(float64(w.random()>>40)/(1<<25)) // up to one half more
		f.order = append(f.order, math.Float64bits(float64(rate*noise))>>kindBits<<kindBits|uint64(k))
	}
	slices.Sort(f.order)
	for _, o := range slices.Backward(f.order) {
		k := int32(o & (1<<kindBits - 1))
		for f.left[k] > 0 {
			var at placement
			best := int64(-1 << 62)
			if !h.holds(&w.e.kinds[k]) || !w.searchTree(k, 0, &at, &best, true) {
				break
			}
			s.place(at, k)
			f.left[k]--
		}
	}
}
