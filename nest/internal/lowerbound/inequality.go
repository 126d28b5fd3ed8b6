// Package lowerbound proves lower bounds on the cost of a plan.
//
// The proof is a list of valid inequalities: every plan's numbers of pieces per stock satisfy
// them. The cheapest integer counts that satisfy all of them give the bound. So the bound is a
// cost that some number of pieces does have.
//
// Inequalities come from areas, from dual feasible functions (see dff) and from column
// generation (package colgen). Best-first branch and bound finds the cheapest counts.
package lowerbound

import (
	"math/big"
	"math/bits"

	"sawbill/nest/internal/instance"
)

// Inequality is valid: in every plan, the sum of Coef[s] times the pieces of stock s is at
// least RHS. Nothing in it is negative.
type Inequality struct {
	Coef []int64
	RHS  int64
	// Values of the kinds, if that is how it came about, else nil. A kind counts at most
	// Counted[k] times, its demand or less. So often it is worth Values[k] each, and no pattern
	// of stock s is worth more than Coef[s]; RHS is the worth of all that counts.
	Values  []int64
	Counted []int
}

// holds reports whether counts satisfy c.
func (c Inequality) holds(counts []int) bool { return c.shortfall(counts) <= 0 }

// areaInequalities returns the area bound of each group.
func areaInequalities(in *instance.Instance) []Inequality {
	var cuts []Inequality
	for _, g := range groups(in) {
		cuts = append(cuts, areaInequality(in, g))
	}
	return cuts
}

// group is a set of stock, and the kinds that only this stock can hold.
type group struct {
	stock []bool
	kinds []int
}

// maxCompared limits the work to group kinds, in pieces of stock compared, and fewestGroups is
// listed in any case. It takes thousands of kinds and stocks to exceed it.
const (
	maxCompared  = 1 << 26
	fewestGroups = 16
)

// groups lists the group of all kinds, then the group of each set of stock, as many as
// maxCompared allows.
func groups(in *instance.Instance) []group {
	sets := make([]string, len(in.Kinds)) // per kind: the set of stock that can hold it
	for k, kd := range in.Kinds {
		set := make([]byte, len(kd.Orientations))
		for s, orientations := range kd.Orientations {
			set[s] = '0' + min(byte(orientations), 1)
		}
		sets[k] = string(set)
	}
	all := make([]byte, len(in.Stock))
	for s := range all {
		all[s] = '1'
	}
	var list []group
	most := max(fewestGroups, maxCompared/max(1, len(in.Kinds)*len(in.Stock)))
	done := map[string]bool{}
	for _, set := range append([]string{string(all)}, sets...) {
		if done[set] {
			continue
		}
		if len(list) == most {
			break
		}
		done[set] = true
		g := group{stock: make([]bool, len(set))}
		for s := range set {
			g.stock[s] = set[s] == '1'
		}
		for k := range sets {
			if subset(sets[k], set) {
				g.kinds = append(g.kinds, k)
			}
		}
		list = append(list, g)
	}
	return list
}

func subset(set, of string) bool {
	for s := range set {
		if set[s] == '1' && of[s] == '0' {
			return false
		}
	}
	return true
}

// areaInequality says that the area of a group's kinds comes from its stock. Areas are shifted
// so that sums fit; the right side is rounded down and the left side up, so that the inequality
// stays valid.
func areaInequality(in *instance.Instance, g group) Inequality {
	shift := uint(0)
	for _, s := range in.Stock {
		shift = max(shift, uint(max(0, bits.Len64(uint64(s.L*s.W))-30)))
	}
	c := Inequality{Coef: make([]int64, len(in.Stock))}
	for s, st := range in.Stock {
		if g.stock[s] {
			c.Coef[s] = (st.L*st.W-1)>>shift + 1
		}
	}
	total := new(big.Int)
	for _, k := range g.kinds {
		kd := in.Kinds[k]
		a := big.NewInt(kd.L * kd.W)
		total.Add(total, a.Mul(a, big.NewInt(int64(kd.Demand))))
	}
	c.RHS = total.Rsh(total, shift).Int64()
	return c
}

// shortfall returns how far counts are below the right side.
func (c Inequality) shortfall(counts []int) int64 {
	left := c.RHS
	for s, n := range counts {
		if n > 0 && c.Coef[s] > 0 {
			hi, lo := bits.Mul64(uint64(c.Coef[s]), uint64(n))
			if hi > 0 || lo >= uint64(left) {
				return 0
			}
			left -= int64(lo)
		}
	}
	return left
}
