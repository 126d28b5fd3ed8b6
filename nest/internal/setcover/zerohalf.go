package setcover

import (
	"math/bits"
	"slices"
)

// zeroHalfCuts are sets of kinds. Of the parts of a set every pattern holds at most so many
// halves, rounded up, and so do all patterns of a plan together: where an odd number is
// wanted that is half a part more than a programme asks for (Gomory and Chvatal's cuts
// with halves, Caprara and Fischetti, Math. Program. 74, 1996; from memory). What goes
// in pairs only is felt so.
type zeroHalfCuts struct {
	members []uint64 // per kind: the sets it belongs to, a bit for each
	size    int
	scratch [maxCuts]int // scratch
}

const maxCuts = 64

func (o *zeroHalfCuts) clone() zeroHalfCuts {
	return zeroHalfCuts{members: slices.Clone(o.members), size: o.size}
}

// parity is a bit for each set of which an odd number is wanted.
func (o *zeroHalfCuts) parity(demand []int) (parity uint64) {
	if o.size == 0 {
		return 0
	}
	for k, n := range demand {
		if n&1 == 1 {
			parity ^= o.members[k]
		}
	}
	return parity
}

// count counts n parts of a kind in each of its sets.
func (o *zeroHalfCuts) count(of []int, kind, n int) {
	for m := o.members[kind]; m != 0; m &= m - 1 {
		of[bits.TrailingZeros64(m)] += n
	}
}

// totals adds up how many parts of each set there are.
func (o *zeroHalfCuts) totals(counts []int) []int {
	of := make([]int, o.size)
	if o.size == 0 {
		return of
	}
	for k, n := range counts {
		o.count(of, k, n)
	}
	return of
}

// totalsOf adds up how many wanted parts of each set a pattern holds. What it returns is good
// until the next call.
func (o *zeroHalfCuts) totalsOf(p *Pattern, demand []int) []int {
	of := o.scratch[:o.size]
	clear(of)
	for _, c := range p.Counts {
		o.count(of, c.Kind, min(c.Times, demand[c.Kind]))
	}
	return of
}

// retain leaves only some of the sets, in their order.
func (o *zeroHalfCuts) retain(which uint64) {
	for k, m := range o.members {
		var kept uint64
		for n, w := 0, which; w != 0; n, w = n+1, w&(w-1) {
			kept |= m >> bits.TrailingZeros64(w) & 1 << n
		}
		o.members[k] = kept
	}
	o.size = bits.OnesCount64(which)
}

// add takes in another set, unless it is there or there are too many.
func (o *zeroHalfCuts) add(kinds []bool) bool {
	if o.size == maxCuts || o.has(kinds) {
		return false
	}
	for k, in := range kinds {
		if in {
			o.members[k] |= 1 << o.size
		}
	}
	o.size++
	return true
}

func (o *zeroHalfCuts) has(kinds []bool) bool {
	same := uint64(1)<<o.size - 1
	for k, in := range kinds {
		if in {
			same &= o.members[k]
		} else {
			same &^= o.members[k]
		}
	}
	return same != 0
}

// CutBonus is what odd sets are worth to a pattern beside its parts.
type CutBonus struct {
	cuts   zeroHalfCuts
	values []int64
}

// PartShare is a part's least share in it: half of what its sets are worth.
func (p *CutBonus) PartShare(kind int) (value int64) {
	for m := p.cuts.members[kind]; m != 0; m &= m - 1 {
		value += p.values[bits.TrailingZeros64(m)] / 2
	}
	return value
}

// Reset, Add and Sum reckon it for a pattern, part by part.
func (p *CutBonus) Reset() { clear(p.cuts.scratch[:p.cuts.size]) }

// Add counts a part.
func (p *CutBonus) Add(kind int) { p.cuts.count(p.cuts.scratch[:], kind, 1) }

// Value is the premium of the parts that were added.
func (p *CutBonus) Value() (value int64) {
	for n, v := range p.values {
		value += v * int64((p.cuts.scratch[n]+1)/2)
	}
	return value
}
