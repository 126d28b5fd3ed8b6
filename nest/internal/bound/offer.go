package bound

import (
	"cmp"
	"math/big"
	"math/bits"
	"slices"
)

// byRate sorts offers by price per area.
func byRate(offers []offer) []offer {
	sorted := slices.Clone(offers)
	slices.SortStableFunc(sorted, func(a, b offer) int {
		ah, al := bits.Mul64(uint64(a.price), uint64(b.area))
		bh, bl := bits.Mul64(uint64(b.price), uint64(a.area))
		return cmp.Or(cmp.Compare(ah, bh), cmp.Compare(al, bl))
	})
	return sorted
}

func gcd(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

func ceilDiv(a, b int64) int64 { return (a + b - 1) / b }

// ceil rounds r up to a whole number.
func ceil(r *big.Rat) int64 {
	q, m := new(big.Int).DivMod(r.Num(), r.Denom(), new(big.Int))
	if m.Sign() != 0 {
		q.Add(q, big.NewInt(1))
	}
	return q.Int64()
}
