// Package bound proves that no plan can cost less than some amount.
//
// What is proven is a list of cuts, inequalities that the numbers of pieces of
// each stock satisfy in every plan. The cheapest whole numbers that satisfy
// them are the bound: so it is an amount that some number of pieces does cost.
package bound

import (
	"math/big"
	"math/bits"

	"sawbill/nest/internal/instance"
)

// Cut says: in every plan the sum of Worth[s] times the pieces of stock s is at
// least Need. Nothing in it is negative.
type Cut struct {
	Worth []int64
	Need  int64
}

// holds reports whether counts satisfy c.
func (c Cut) holds(counts []int) bool { return c.missing(counts) <= 0 }

// areaCuts: the blanks' area must come from the stock's, and that of blanks
// which only some of the stock can hold from that stock.
func areaCuts(in *instance.Instance) []Cut {
	var cuts []Cut
	for _, g := range groups(in) {
		cuts = append(cuts, areaCut(in, g))
	}
	return cuts
}

// group is kinds that only some of the stock can hold.
type group struct {
	stock []bool
	kinds []int
}

// groups lists the group of all kinds, then that of each set of stock.
func groups(in *instance.Instance) []group {
	sets := make([]string, len(in.Kinds)) // of stock that can hold a kind
	for k, kd := range in.Kinds {
		set := make([]byte, len(kd.Lies))
		for s, lies := range kd.Lies {
			set[s] = '0' + min(byte(lies), 1)
		}
		sets[k] = string(set)
	}
	all := make([]byte, len(in.Stock))
	for s := range all {
		all[s] = '1'
	}
	var list []group
	done := map[string]bool{}
	for _, set := range append([]string{string(all)}, sets...) {
		if done[set] {
			continue
		}
		done[set] = true
		g := group{stock: make([]bool, len(set))}
		for s := range set {
			g.stock[s] = set[s] == '1'
		}
		for k := range sets {
			if within(sets[k], set) {
				g.kinds = append(g.kinds, k)
			}
		}
		list = append(list, g)
	}
	return list
}

func within(set, of string) bool {
	for s := range set {
		if set[s] == '1' && of[s] == '0' {
			return false
		}
	}
	return true
}

// areaCut is about one group. Areas are shifted to a size that sums easily, the
// need rounded down and the worth up, so that the cut stays true.
func areaCut(in *instance.Instance, g group) Cut {
	shift := uint(0)
	for _, s := range in.Stock {
		shift = max(shift, uint(max(0, bits.Len64(uint64(s.L*s.W))-30)))
	}
	c := Cut{Worth: make([]int64, len(in.Stock))}
	for s, st := range in.Stock {
		if g.stock[s] {
			c.Worth[s] = (st.L*st.W-1)>>shift + 1
		}
	}
	total := new(big.Int)
	for _, k := range g.kinds {
		kd := in.Kinds[k]
		a := big.NewInt(kd.L * kd.W)
		total.Add(total, a.Mul(a, big.NewInt(int64(kd.Count))))
	}
	c.Need = total.Rsh(total, shift).Int64()
	return c
}

// missing is what counts lack of the need.
func (c Cut) missing(counts []int) int64 {
	left := c.Need
	for s, n := range counts {
		if n > 0 && c.Worth[s] > 0 {
			hi, lo := bits.Mul64(uint64(c.Worth[s]), uint64(n))
			if hi > 0 || lo >= uint64(left) {
				return 0
			}
			left -= int64(lo)
		}
	}
	return left
}
