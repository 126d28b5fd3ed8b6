package nest

import "math/big"

// unpriced checks that such stock has no price, and that the area bought is right. An entry
// with area 0 and bound 0 claims nothing.
func (v *verifier) unpriced(plan Plan) {
	for i, u := range plan.Unpriced {
		area, unit := new(big.Int), new(big.Int)
		for _, s := range u.Stock {
			if s < 0 || s >= len(v.problem.Stock) {
				v.report("unpriced %d: stock %d, there are %d", i, s, len(v.problem.Stock))
				continue
			}
			st := v.problem.Stock[s]
			if st.OnHand || st.Price != 0 {
				v.report("unpriced %d: stock %d has a price or is on hand", i, s)
			}
			each := exact(st.Length, st.Width)
			unit.GCD(nil, nil, unit, each)
			area.Add(area, each.Mul(each, &v.taken[s]))
		}
		said := new(big.Int).Mul(exact(u.Area), unit)
		if (u.Area != 0 || u.Bound != 0) && said.Cmp(area) != 0 {
			v.report("unpriced %d: area %d of %v, but %v is bought", i, u.Area, unit, area)
		}
		if u.Bound < 0 || plan.Complete() && u.Bound > u.Area {
			v.report("unpriced %d: bound %d of area %d", i, u.Bound, u.Area)
		}
	}
}
