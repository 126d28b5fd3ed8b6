package search

import (
	"cmp"
	"slices"

	"sawbill/nest/internal/instance"
)

// Filler looks for valuable patterns of one piece of stock by the moves of a
// lane: pricing by a heuristic, before exact pricing is tried at greater expense.
// It goes on from where it was with other prices.
type Filler struct {
	lane    *lane
	stock   int
	wanted  []int // per kind
	values  []int64
	left    []int // per kind
	order   []int32
	rates   []float64 // by which kinds are in order
	history []int64
	turn    int
}

// fillerHistory is of worths, for late acceptance.
const fillerHistory = 50

// NewFiller makes one for a stock of an instance.
func NewFiller(in *instance.Instance, stock int, seed uint64) *Filler {
	f := &Filler{
		lane: newLane(newEnv(in, false), seed, uint64(stock)), stock: stock,
		left: make([]int, len(in.Kinds)), rates: make([]float64, len(in.Kinds)), history: make([]int64, fillerHistory),
	}
	for k := range in.Kinds {
		f.order = append(f.order, int32(k))
	}
	s := f.lane.state
	s.missing = s.missing[:0]
	s.open(stock)
	f.lane.blinks = true
	return f
}

// Fill takes so many steps, or fewer where it finds most patterns that are worth
// more than above, and returns what it found: no kind more often than it is
// wanted. Values are those of the kinds.
func (f *Filler) Fill(wanted []int, values []int64, above int64, steps, most int) (found []instance.Piece) {
	f.wanted, f.values = wanted, values
	f.shed()
	s := f.lane.state
	current := f.worth()
	for i := range f.history {
		f.history[i] = current
	}
	known := map[uint64]bool{}
	for range steps {
		s.begin()
		f.ruin()
		f.recreate()
		t := s.trees[0]
		worth := f.worth()
		if worth > above && !known[t.key] {
			known[t.key] = true
			found = append(found, instance.Compact(t.piece(0)))
			if len(found) == most {
				break
			}
		}
		slot := &f.history[f.turn]
		f.turn = (f.turn + 1) % len(f.history)
		if worth >= current || worth >= *slot {
			current = worth
		} else {
			s.undo()
		}
		*slot = max(*slot, current)
	}
	return found
}

func (f *Filler) worth() (sum int64) {
	t := f.lane.state.trees[0]
	for _, n := range t.parts {
		sum += f.values[t.nodes[n].kind]
	}
	return sum
}

// ruin takes some parts out, or what lies around some of them, but leaves the
// piece open.
func (f *Filler) ruin() {
	l := f.lane
	s := l.state
	t := s.touch(0)
	scattered := l.below(3) == 0
	for range 1 + l.below(3) {
		if len(t.parts) == 0 {
			return
		}
		x := t.parts[l.below(len(t.parts))]
		for up := l.below(4); !scattered && up > 0 && t.nodes[x].parent != none; up-- {
			x = t.nodes[x].parent
		}
		f.remove(x)
	}
}

// remove takes node n out.
func (f *Filler) remove(n int32) {
	s := f.lane.state
	t := s.touch(0)
	before := t.value
	s.missing = t.remove(n, s.missing, f.lane.e)[:0]
	s.value += t.value - before
	s.heads[0] = t.head()
}

// shed takes out what is no longer wanted.
func (f *Filler) shed() {
	s := f.lane.state
	s.begin()
	f.count()
	t := s.trees[0]
	for i := 0; i < len(t.parts); {
		n := t.parts[i]
		k := t.nodes[n].kind
		if f.left[k] >= 0 {
			i++
			continue
		}
		f.left[k]++
		f.remove(n) // the last part takes its place
	}
}

// count brings up to date what is still wanted.
func (f *Filler) count() {
	copy(f.left, f.wanted)
	t := f.lane.state.trees[0]
	for _, n := range t.parts {
		f.left[t.nodes[n].kind]--
	}
}

// recreate places what there is room for, what is worth most for its area first,
// more or less.
func (f *Filler) recreate() {
	l := f.lane
	s := l.state
	f.count()
	byArea := l.below(3) == 0
	for k := range f.rates {
		noise := 1 + float64(float64(l.random()>>40)/(1<<25)) // up to one half more
		f.rates[k] = float64(float64(f.values[k]) * noise)
		if !byArea {
			f.rates[k] /= float64(l.e.kinds[k].area)
		}
	}
	slices.SortFunc(f.order, func(a, b int32) int {
		return cmp.Or(cmp.Compare(f.rates[b], f.rates[a]), cmp.Compare(a, b))
	})
	for _, k := range f.order {
		kd := &l.e.kinds[k]
		for f.left[k] > 0 {
			h := &s.heads[0]
			var at spot
			best := int64(-1 << 62)
			if h.room < kd.area || h.l < kd.minL || h.w < kd.minW || !l.searchTree(k, 0, &at, &best, true) {
				break
			}
			s.place(at, k)
			f.left[k]--
		}
	}
}
