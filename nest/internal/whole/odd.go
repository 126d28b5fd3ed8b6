package whole

import (
	"math/bits"
	"slices"
)

// oddSets are sets of kinds. Of the parts of a set every pattern holds at most so many
// halves, rounded up, and so do all patterns of a plan together: where an odd number is
// wanted that is half a part more than a programme asks for (Gomory and Chvatal's cuts
// with halves, Caprara and Fischetti, Math. Program. 74, 1996; from memory). What goes
// in pairs only is felt so.
type oddSets struct {
	marks []uint64 // per kind: the sets it belongs to, a bit for each
	count int
	of    [mostSets]int // scratch
}

const mostSets = 64

func (o *oddSets) clone() oddSets { return oddSets{marks: slices.Clone(o.marks), count: o.count} }

// odd is a bit for each set of which an odd number is wanted.
func (o *oddSets) odd(wanted []int) (odd uint64) {
	if o.count == 0 {
		return 0
	}
	for k, n := range wanted {
		if n&1 == 1 {
			odd ^= o.marks[k]
		}
	}
	return odd
}

// put counts n parts of a kind in each of its sets.
func (o *oddSets) put(of []int, kind, n int) {
	for m := o.marks[kind]; m != 0; m &= m - 1 {
		of[bits.TrailingZeros64(m)] += n
	}
}

// tally adds up how many parts of each set there are.
func (o *oddSets) tally(counts []int) []int {
	of := make([]int, o.count)
	if o.count == 0 {
		return of
	}
	for k, n := range counts {
		o.put(of, k, n)
	}
	return of
}

// hold adds up how many wanted parts of each set a pattern holds. What it returns is good
// until the next call.
func (o *oddSets) hold(p *Pattern, wanted []int) []int {
	of := o.of[:o.count]
	clear(of)
	for _, c := range p.Counts {
		o.put(of, c.Kind, min(c.Times, wanted[c.Kind]))
	}
	return of
}

// keep leaves only some of the sets, in their order.
func (o *oddSets) keep(which uint64) {
	for k, m := range o.marks {
		var kept uint64
		for n, w := 0, which; w != 0; n, w = n+1, w&(w-1) {
			kept |= m >> bits.TrailingZeros64(w) & 1 << n
		}
		o.marks[k] = kept
	}
	o.count = bits.OnesCount64(which)
}

// add takes in another set, unless it is there or there are too many.
func (o *oddSets) add(kinds []bool) bool {
	if o.count == mostSets || o.has(kinds) {
		return false
	}
	for k, in := range kinds {
		if in {
			o.marks[k] |= 1 << o.count
		}
	}
	o.count++
	return true
}

func (o *oddSets) has(kinds []bool) bool {
	same := uint64(1)<<o.count - 1
	for k, in := range kinds {
		if in {
			same &= o.marks[k]
		} else {
			same &^= o.marks[k]
		}
	}
	return same != 0
}

// Premium is what odd sets are worth to a pattern beside its parts.
type Premium struct {
	sets   oddSets
	values []int64
}

// Of is a part's least share in it: half of what its sets are worth.
func (p *Premium) Of(kind int) (value int64) {
	for m := p.sets.marks[kind]; m != 0; m &= m - 1 {
		value += p.values[bits.TrailingZeros64(m)] / 2
	}
	return value
}

// Begin, Add and Sum reckon it for a pattern, part by part.
func (p *Premium) Begin() { clear(p.sets.of[:p.sets.count]) }

// Add counts a part.
func (p *Premium) Add(kind int) { p.sets.put(p.sets.of[:], kind, 1) }

// Sum is the premium of the parts that were added.
func (p *Premium) Sum() (value int64) {
	for n, v := range p.values {
		value += v * int64((p.sets.of[n]+1)/2)
	}
	return value
}
