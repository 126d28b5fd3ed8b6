package nest

import (
	"math/bits"

	"sawbill/nest/internal/instance"
)

// Unpriced describes stock for sale that serves the same blanks and has no price. The solver
// minimizes its area.
type Unpriced struct {
	Stock []int // indices into Problem.Stock
	// Area is bought by the plan. Bound is proven: no plan that cuts every blank buys less; 0
	// if nothing is proven. Both are multiples of the greatest common divisor of the untrimmed
	// areas of Stock, so they count pieces if all are of one size.
	Area, Bound int64
}

// priceByArea makes areas the prices of stock for sale if none has a price.
func (d *subproblem) priceByArea() {
	for _, s := range d.in.Stock {
		if s.Price > 0 {
			return
		}
	}
	d.minimizesArea, d.areaExact = true, true
	areas := make([]int64, len(d.stock))
	var unit int64
	for i, s := range d.stock {
		if st := d.problem.Stock[s]; !st.OnHand {
			hi, lo := bits.Mul64(uint64(st.Length), uint64(st.Width))
			d.areaExact = d.areaExact && hi == 0 && lo>>63 == 0
			areas[i] = int64(lo)
			unit = gcd(unit, areas[i])
		}
	}
	for i := range areas {
		if areas[i] > 0 && d.areaExact {
			areas[i] /= unit
			d.areaExact = areas[i] < 1<<instance.AreaBits
		}
	}
	for i, s := range d.in.Stock {
		switch {
		case s.OnHand:
		case d.areaExact:
			d.in.Stock[i].Price = areas[i]
		default:
			d.in.Stock[i].Price = d.in.Area(s.L, s.W)
		}
	}
}

// cost converts an instance's price.
func (d *subproblem) cost(price int64) int64 {
	if d.minimizesArea {
		return 0
	}
	return price
}

// unpriced describes the subproblem's stock without prices; not ok if it has prices, or if none
// of it is for sale.
func (d *subproblem) unpriced(price, bound int64) (u Unpriced, ok bool) {
	for i, s := range d.in.Stock {
		if !s.OnHand {
			u.Stock = append(u.Stock, d.stock[i])
		}
	}
	if d.areaExact {
		u.Area, u.Bound = price, bound
	}
	return u, d.minimizesArea && len(u.Stock) > 0
}
