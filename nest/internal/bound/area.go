// Package bound proves that no plan can cost less than some amount.
package bound

import (
	"math/big"
	"math/bits"

	"sawbill/nest/internal/instance"
)

// Price is the least price of whole pieces of stock that have room for the
// blanks' area and cost at least as much as floor, which is proven already.
//
// It asks the same of every group of blanks that only some of the stock can
// hold: those blanks' area must come from that stock. The greatest answer
// holds for the whole.
func Price(in *instance.Instance, floor *big.Rat) int64 {
	sets := make([]uint64, len(in.Kinds)) // of stock that can hold a kind
	for k, kd := range in.Kinds {
		for s, lies := range kd.Lies {
			if lies != 0 {
				sets[k] |= 1 << min(s, 63)
			}
		}
	}
	var best int64
	tried := map[uint64]bool{}
	for _, set := range sets {
		if tried[set] {
			continue
		}
		tried[set] = true
		best = max(best, coverSet(in, sets, set, 0))
	}
	return coverSet(in, sets, ^uint64(0), max(best, ceil(floor)))
}

// coverSet covers the area of the kinds that only stock in set can hold. Areas
// are shifted to a size that sums easily, the demand rounded down and the
// supply up, so that the bound stays one.
func coverSet(in *instance.Instance, sets []uint64, set uint64, floor int64) int64 {
	shift := uint(0)
	for _, s := range in.Stock {
		shift = max(shift, uint(max(0, bits.Len64(uint64(s.L*s.W))-30)))
	}
	total := new(big.Int)
	for k, kd := range in.Kinds {
		if sets[k]&^set == 0 {
			a := big.NewInt(kd.L * kd.W)
			total.Add(total, a.Mul(a, big.NewInt(int64(kd.Count))))
		}
	}
	demand := total.Rsh(total, shift).Int64()
	var offers []offer
	for s, st := range in.Stock {
		if set&(1<<min(s, 63)) != 0 {
			offers = append(offers, offer{price: st.Price, area: (st.L*st.W-1)>>shift + 1, limit: int64(st.Limit)})
		}
	}
	return cover(demand, floor, offers)
}

type offer struct{ price, area, limit int64 }

// cover is the least price, not below floor, of whole pieces with an area of
// at least demand in all; floor or the price of everything, if that is more,
// where there is not enough.
func cover(demand, floor int64, offers []offer) int64 {
	var priced []offer
	var all, supply int64
	for _, o := range offers {
		if o.price == 0 && demand > 0 {
			demand -= min(o.limit, (demand-1)/o.area+1) * o.area
		}
	}
	demand = max(demand, 0)
	for _, o := range offers {
		if o.price == 0 {
			continue
		}
		// No more than this is ever needed, for the area or for the price.
		o.limit = min(o.limit, max(ceilDiv(demand, o.area), ceilDiv(floor, o.price)))
		if o.limit > 0 {
			priced = append(priced, o)
			all += o.limit * o.price
			supply += o.limit * o.area
		}
	}
	if demand == 0 && floor <= 0 {
		return 0
	}
	if supply <= demand || all <= floor {
		return max(all, floor)
	}
	step := priced[0].price
	for _, o := range priced {
		step = gcd(step, o.price)
	}
	least := ceilDiv(max(floor, relaxed(demand, priced)), step)
	most := ceilDiv(all, step)
	if greedy := greedyCover(demand, priced) / step; greedy >= least {
		most = min(most, greedy)
	}
	if most > maxStates {
		return least * step
	}
	// room[c] is the greatest area that costs exactly c steps.
	room := make([]int64, most+1)
	for c := 1; c < len(room); c++ {
		room[c] = -1
	}
	for _, o := range priced {
		for n, left := int64(1), o.limit; left > 0; n *= 2 {
			n = min(n, left)
			left -= n
			price, area := n*o.price/step, n*o.area
			for c := most; c >= price; c-- {
				if r := room[c-price]; r >= 0 && r+area > room[c] {
					room[c] = r + area
				}
			}
		}
	}
	for c := least; c <= most; c++ {
		if room[c] >= demand {
			return c * step
		}
	}
	return most * step
}

// maxStates limits the table of cover; beyond it the relaxed bound has to do.
const maxStates = 1 << 18

// relaxed is the price when pieces can be bought in parts, rounded down.
func relaxed(demand int64, offers []offer) int64 {
	price := new(big.Rat)
	for _, o := range byRate(offers) {
		part := min(demand, o.limit*o.area)
		price.Add(price, new(big.Rat).Mul(big.NewRat(o.price, o.area), big.NewRat(part, 1)))
		if demand -= part; demand == 0 {
			break
		}
	}
	return new(big.Int).Div(price.Num(), price.Denom()).Int64()
}

// greedyCover buys whole pieces, the cheapest by area first.
func greedyCover(demand int64, offers []offer) int64 {
	var price int64
	for _, o := range byRate(offers) {
		n := min(o.limit, max(0, (demand-1)/o.area+1))
		price += n * o.price
		if demand -= n * o.area; demand <= 0 {
			break
		}
	}
	return price
}
