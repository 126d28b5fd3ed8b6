package lowerbound

import (
	"math/bits"
	"slices"
)

// dff is a dual feasible function f. For sizes x, y, ... side by side within a size z of at
// most full,
//
//	f(x) + f(y) + ... <= f(z)
//
// It raises sizes that pack badly into full. There are two families:
//
//   - threshold: sizes below step become 0, sizes that leave less than step beside them become
//     full, all others stay (f_0 of Fekete and Schepers, Math. Program. 91, 2001);
//   - stepwise: sizes are counted in whole steps, and sizes over half of full as full less the
//     steps left beside them (f_2 of Carlier, Clautiaux and Moukrim, Comput. Oper. Res. 34,
//     2007).
//
// Citations from memory.
type dff struct {
	full, step int64
	stepwise   bool
}

// at returns f of a size. Beyond full it is proportional to the size; see capacity.
func (d dff) at(x int64) int64 {
	switch {
	case d.stepwise && x <= d.full:
		return d.stepped(x)
	case d.stepwise:
		return mulDiv(x, 2*(d.full/d.step), d.full)
	case x < d.step:
		return 0
	case x > d.full-d.step && x <= d.full:
		return d.full
	}
	return x
}

// capacity returns the maximum of f summed over given sizes side by side within z. Beyond full
// it is the best of their ratios.
func (d dff) capacity(z int64, sizes []int64) int64 {
	if z <= d.full {
		return d.at(z)
	}
	most := int64(0)
	for _, x := range sizes {
		most = max(most, mulDiv(z, d.at(x), x))
	}
	return most
}

// mulDiv returns a times b over c, rounded down, for b of at most about 2 c.
func mulDiv(a, b, c int64) int64 {
	hi, lo := bits.Mul64(uint64(a), uint64(b))
	q, _ := bits.Div64(hi, lo, uint64(c))
	return int64(q)
}

func (d dff) stepped(x int64) int64 {
	switch {
	case 2*x > d.full:
		return 2 * (d.full/d.step - (d.full-x)/d.step)
	case 2*x == d.full:
		return d.full / d.step
	}
	return 2 * (x / d.step)
}

// dffs lists about most functions for full, each of which treats some of the sizes unlike their
// neighbors. The first is the identity.
func dffs(full int64, sizes []int64, most int) []dff {
	steps := []int64{}
	for _, x := range sizes {
		steps = append(steps, x, full-x+1)
	}
	for parts := int64(3); parts <= 6; parts++ {
		steps = append(steps, full/parts+1) // one more than fits
	}
	slices.Sort(steps)
	steps = slices.Compact(steps)
	steps = slices.DeleteFunc(steps, func(s int64) bool { return s < 1 || 2*s > full })
	list := []dff{{full: full}}
	for n := range min(len(steps), most/2) {
		// If there are too many, take some that are spread evenly.
		s := steps[n*len(steps)/min(len(steps), most/2)]
		list = append(list, dff{full, s, false}, dff{full, s, true})
	}
	return list
}
