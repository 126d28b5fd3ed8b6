package stock

import (
	"cmp"
	"math/big"
)

// Per is the measure that a price is for.
type Per int

const (
	PerPiece Per = iota
	PerMeter
	PerFoot
	PerSquareMeter
	PerSquareFoot
	PerBoardFoot
)

// Pers are the words of the job file, in the order of the constants.
var Pers = []string{"piece", "meter", "foot", "square meter", "square foot", "board foot"}

// PriceOf is the price of one piece of s at a price per some measure of it, to the
// nearest cent, a half upwards. Lengths and areas are those of the whole piece, trim
// included; board feet are by its nominal or rough size if it has one, else by
// its thickness, which counts as an inch if it is less.
func (s Stock) PriceOf(price Money, per Per) Money {
	measure := func(sizes ...int64) *big.Rat {
		return new(big.Rat).SetFrac(plus(nil, append(sizes, int64(price))...), big.NewInt(1))
	}
	over := func(r *big.Rat, units ...int64) Money {
		return Money(roundHalfUp(r.Quo(r, new(big.Rat).SetInt(plus(nil, units...)))))
	}
	switch per {
	case PerMeter:
		return over(measure(int64(s.Length)), int64(meter))
	case PerFoot:
		return over(measure(int64(s.Length)), int64(Foot))
	case PerSquareMeter:
		return over(measure(int64(s.Length), int64(s.Width)), int64(meter), int64(meter))
	case PerSquareFoot:
		return over(measure(int64(s.Length), int64(s.Width)), int64(Foot), int64(Foot))
	case PerBoardFoot:
		m := cmp.Or(s.Measure, Measure{Thickness: s.Thickness, Width: s.Width})
		feet := m.Volume(s.Length, 1).boardFeet(1)
		return Money(roundHalfUp(feet.Mul(feet, new(big.Rat).SetInt64(int64(price)))))
	}
	return price
}

// Share is a share of a price, in hundredths of a percent.
type Share int64

// Of returns the share of an amount, to the nearest cent, a half upwards.
func (s Share) Of(m Money) Money {
	return Money(roundHalfUp(new(big.Rat).SetFrac(plus(nil, int64(s), int64(m)), big.NewInt(100_00))))
}
