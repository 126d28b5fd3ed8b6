package search

import "sawbill/nest/internal/instance"

// env is what all lanes read and none writes: the instance laid out for the
// inner loop.
type env struct {
	in    *instance.Instance
	kinds []kind
	costs []instance.Cost // per stock, as are the following
	areas []int64
	// spent is what an uncut piece on hand is worth as a leftover: cutting it
	// forgoes that. 0 for what is bought.
	spent []int64
	// weights say how dear a piece of each stock is when one is chosen for
	// what is missing: by price, then by area bought.
	weights []float64
	pieces  int // of all kinds together
	// tidy: only leftovers that are offcuts have worth. Set while a plan that
	// cannot be made cheaper is made tidier.
	tidy bool
}

type kind struct {
	l, w, area int64
	lies       []instance.Lie // per stock
}

func newEnv(in *instance.Instance, tidy bool) *env {
	e := &env{in: in, tidy: tidy}
	for _, k := range in.Kinds {
		e.kinds = append(e.kinds, kind{k.L, k.W, in.Area(k.L, k.W), k.Lies})
		e.pieces += k.Count
	}
	for s, st := range in.Stock {
		e.costs = append(e.costs, in.CostOf(s))
		e.areas = append(e.areas, in.Area(st.L, st.W))
		e.spent = append(e.spent, 0)
		if st.OnHand {
			e.spent[s] = e.worth(st.L, st.W)
		}
	}
	var dearest, largest int64 = 1, 1
	for s, c := range e.costs {
		dearest, largest = max(dearest, c.Price), max(largest, e.areas[s])
	}
	for s, c := range e.costs {
		price, bought, used := float64(c.Price)/float64(dearest), float64(c.Bought)/float64(largest), float64(e.areas[s])/float64(largest)
		// The conversions keep processors from fusing product and sum, which
		// would round otherwise on each.
		e.weights = append(e.weights, float64(price*1e6)+float64(bought*1e3)+used)
	}
	return e
}

// worth of a leftover: the square of its area, so that one large piece is
// worth more than two halves, as a share of the largest stock's area.
func (e *env) worth(l, w int64) int64 {
	if l <= 0 || w <= 0 {
		return 0
	}
	if e.tidy {
		return e.worthKept(l, w)
	}
	a := e.in.Area(l, w)
	return a * a >> instance.AreaBits
}

// worthKept of a leftover while tidying: nothing but for an offcut, of which
// half the least sides do not count, so that a sliver just large enough to be
// kept is worth little beside a square of the same area.
func (e *env) worthKept(l, w int64) int64 {
	if l < e.in.KeepLength || w < e.in.KeepWidth {
		return 0
	}
	a := e.in.Area(l-e.in.KeepLength/2, w-e.in.KeepWidth/2)
	return a * a >> instance.AreaBits
}
