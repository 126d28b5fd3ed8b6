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
	cuts := []Cut{areaCut(in, sets, string(all))}
	done := map[string]bool{string(all): true}
	for _, set := range sets {
		if !done[set] {
			done[set] = true
			cuts = append(cuts, areaCut(in, sets, set))
		}
	}
	return cuts
}

// areaCut is about the kinds that only stock in set can hold. Areas are
// shifted to a size that sums easily, the need rounded down and the worth up,
// so that the cut stays true.
func areaCut(in *instance.Instance, sets []string, set string) Cut {
	shift := uint(0)
	for _, s := range in.Stock {
		shift = max(shift, uint(max(0, bits.Len64(uint64(s.L*s.W))-30)))
	}
	c := Cut{Worth: make([]int64, len(in.Stock))}
	for s, st := range in.Stock {
		if set[s] == '1' {
			c.Worth[s] = (st.L*st.W-1)>>shift + 1
		}
	}
	total := new(big.Int)
	for k, kd := range in.Kinds {
		if within(sets[k], set) {
			a := big.NewInt(kd.L * kd.W)
			total.Add(total, a.Mul(a, big.NewInt(int64(kd.Count))))
		}
	}
	c.Need = total.Rsh(total, shift).Int64()
	return c
}

func within(set, of string) bool {
	for s := range set {
		if set[s] == '1' && of[s] == '0' {
			return false
		}
	}
	return true
}
