package search

import (
	"math"

	"sawbill/nest/internal/instance"
	"sawbill/nest/internal/pool"
)

// env is what all lanes read and none writes: the instance laid out for the
// inner loop. Lengths fit 32 bits: the door sees to that.
type env struct {
	in    *instance.Instance
	kinds []kind
	stock []stock
	// ranks holds for every order the place of each kind in it, and orders the
	// kinds by place.
	ranks, orders [fixedOrders][]int32
	// unrestricted: neither stages nor first cuts nor narrowest rips limit what may be
	// cut.
	unrestricted bool
	pieces       int // of all kinds together
	// polish: only leftovers that are offcuts have worth. Set while a plan that
	// cannot be made cheaper is made tidier.
	polish bool
}

type kind struct {
	l, w         int32
	area         int64
	orientations [][]orientation // per stock: the ways in which it fits an empty piece
	// A gap of less than space, or shorter than minL, or narrower than minW, holds
	// none however it lies.
	exactArea  int64
	minL, minW int32
	key        uint64 // see harvest
}

// orientation is a part as it lies in a stock.
type orientation struct {
	l, w   int32
	turned bool
}

type stock struct {
	l, w, narrowestRip int32
	firstCut           instance.Dir
	area               int64
	cost               instance.Cost
	// forgone is what an uncut piece on hand is worth as a leftover: cutting it
	// forgoes that. 0 for what is bought.
	forgone int64
	// weight says how dear a piece is when one is chosen for what is missing: by
	// price, then by area bought.
	weight float64
}

func newEnv(in *instance.Instance, polish bool) *env {
	e := &env{in: in, polish: polish, unrestricted: in.Stages == instance.NoLimit}
	var dearest, largest int64 = 1, 1
	for s, st := range in.Stock {
		one := stock{
			l: int32(st.L), w: int32(st.W), narrowestRip: int32(st.NarrowestRip), firstCut: st.FirstCut,
			area: in.Area(st.L, st.W), cost: in.CostOf(s),
		}
		if st.OnHand {
			one.forgone = e.worth(one.l, one.w)
		}
		if st.FirstCut != instance.None || st.NarrowestRip > 0 {
			e.unrestricted = false
		}
		dearest, largest = max(dearest, one.cost.Price), max(largest, one.area)
		e.stock = append(e.stock, one)
	}
	for s := range e.stock {
		st := &e.stock[s]
		price, bought, used := float64(st.cost.Price)/float64(dearest), float64(st.cost.Bought)/float64(largest), float64(st.area)/float64(largest)
		// The conversions keep processors from fusing product and sum, which
		// would round otherwise on each.
		st.weight = float64(price*1e6) + float64(bought*1e3) + used
	}
	for n, k := range in.Kinds {
		one := kind{key: pool.PartKey(n), l: int32(k.L), w: int32(k.W), area: in.Area(k.L, k.W), exactArea: k.L * k.W, orientations: orientationsOf(in, k), minL: math.MaxInt32, minW: math.MaxInt32}
		for _, orientations := range one.orientations {
			for _, as := range orientations {
				one.minL, one.minW = min(one.minL, as.l), min(one.minW, as.w)
			}
		}
		e.kinds = append(e.kinds, one)
		e.pieces += k.Demand
	}
	e.rankKinds()
	return e
}

func orientationsOf(in *instance.Instance, k instance.Kind) [][]orientation {
	all := make([][]orientation, len(in.Stock))
	for s, st := range in.Stock {
		may := k.Orientations[s]
		if may&instance.Upright != 0 && k.L <= st.L && k.W <= st.W {
			all[s] = append(all[s], orientation{int32(k.L), int32(k.W), false})
		}
		square := k.L == k.W && len(all[s]) > 0
		if may&instance.Turned != 0 && k.W <= st.L && k.L <= st.W && !square {
			all[s] = append(all[s], orientation{int32(k.W), int32(k.L), true})
		}
	}
	return all
}

// worth of a leftover: the square of its area, so that one large piece is
// worth more than two halves, as a share of the largest stock's area.
func (e *env) worth(l, w int32) int64 {
	if l <= 0 || w <= 0 {
		return 0
	}
	if e.polish {
		return e.offcutWorth(int64(l), int64(w))
	}
	a := e.in.Area(int64(l), int64(w))
	return a * a >> instance.AreaBits
}

// offcutWorth of a leftover while tidying: nothing but for an offcut, of which
// half the least sides do not count, so that a sliver just large enough to be
// kept is worth little beside a square of the same area.
func (e *env) offcutWorth(l, w int64) int64 {
	if l < e.in.KeepLength || w < e.in.KeepWidth {
		return 0
	}
	a := e.in.Area(l-e.in.KeepLength/2, w-e.in.KeepWidth/2)
	return a * a >> instance.AreaBits
}
