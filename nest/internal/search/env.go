package search

import (
	"math"

	"sawbill/nest/internal/instance"
	"sawbill/nest/internal/pool"
)

// env is the instance in the form of the inner loop. All walks read it and none writes it.
// Lengths fit 32 bits, as presolve checks.
type env struct {
	in    *instance.Instance
	kinds []kind
	stock []stock
	// ranks holds the place of each kind for every order, and orders the kinds by place.
	ranks, orders [fixedOrders][]int32
	// unrestricted: stages, first cuts and narrowest rips do not limit cuts.
	unrestricted bool
	checked      bool  // some stock is; see instance.Checked
	pieces       int   // demand of all kinds
	asks         int64 // steps of a walk between questions whether to stop
	// polish: only offcuts have worth among leftovers.
	polish bool
}

type kind struct {
	l, w         int32
	area         int64
	orientations [][]orientation // per stock: those in which it fits an empty piece
	// No gap holds the kind with less area than exactArea, or shorter than minL, or narrower
	// than minW.
	exactArea  int64
	minL, minW int32
	key        uint64 // see pool
}

// orientation is the size of a part in one orientation.
type orientation struct {
	l, w   int32
	turned bool
}

type stock struct {
	checked            bool
	l, w, narrowestRip int32
	firstCut           instance.Dir
	area               int64
	cost               instance.Cost
	// forgone is the worth of an uncut piece on hand as a leftover; 0 for stock for sale.
	forgone int64
	// weight is the cost of a piece when stock is chosen: by price, then by area bought.
	weight float64
}

// manyParts is from where on a walk asks at every step, which takes longer the more parts
// there are.
const manyParts = 1 << 11

func newEnv(in *instance.Instance, polish bool) *env {
	e := &env{in: in, polish: polish, unrestricted: in.Stages == instance.NoLimit, checked: in.AnyChecked(), pieces: in.Parts()}
	var dearest, largest int64 = 1, 1
	for s, st := range in.Stock {
		one := stock{
			checked: in.Checked(s),
			l:       int32(st.L), w: int32(st.W), narrowestRip: int32(st.NarrowestRip), firstCut: st.FirstCut,
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
		// The conversions keep processors from fusing product and sum, which would round
		// differently.
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
	}
	e.asks = min(max(1, manyParts/int64(max(1, e.pieces))), 32)
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

// worth returns the square of a leftover's area, as a share of the largest stock's area. So one
// large leftover is worth more than two halves.
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

// offcutWorth returns the worth of a leftover in polish: 0 unless it is an offcut. Half of the
// minimum sides is subtracted, so that a narrow offcut is worth little beside a square of equal
// area.
func (e *env) offcutWorth(l, w int64) int64 {
	if l < e.in.KeepLength || w < e.in.KeepWidth {
		return 0
	}
	a := e.in.Area(l-e.in.KeepLength/2, w-e.in.KeepWidth/2)
	return a * a >> instance.AreaBits
}
