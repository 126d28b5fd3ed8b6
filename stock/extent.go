package stock

import "math/big"

// Volume is an exact total of volumes; a sheet's alone does not fit into 64
// bits. The zero Volume is nothing.
type Volume struct{ cubes *big.Int }

// Add returns v plus the volume of count pieces; v itself stays as it is.
func (v Volume) Add(length, width, thickness Length, count int) Volume {
	return Volume{plus(v.cubes, int64(length), int64(width), int64(thickness), int64(count))}
}

// Plus is v and w together.
func (v Volume) Plus(w Volume) Volume {
	return Volume{new(big.Int).Add(v.count(), w.count())}
}

// count is how many cubes of one Length v is.
func (v Volume) count() *big.Int {
	if v.cubes == nil {
		return new(big.Int)
	}
	return v.cubes
}

// Compare is -1 where v is less than w, 1 where it is more, else 0.
func (v Volume) Compare(w Volume) int { return v.count().Cmp(w.count()) }

// Ratio is v as a share of whole; 0 when whole is nothing.
func (v Volume) Ratio(whole Volume) float64 { return share(v.cubes, whole.cubes) }

// plus returns total plus the product of the factors.
func plus(total *big.Int, factors ...int64) *big.Int {
	sum := big.NewInt(1)
	for _, f := range factors {
		sum.Mul(sum, big.NewInt(f))
	}
	if total != nil {
		sum.Add(sum, total)
	}
	return sum
}

// share divides at the very end, to the nearest float64.
func share(part, whole *big.Int) float64 {
	if part == nil || whole == nil || whole.Sign() == 0 {
		return 0
	}
	ratio, _ := new(big.Rat).SetFrac(part, whole).Float64()
	return ratio
}
