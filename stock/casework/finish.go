package casework

import (
	"math/big"

	"sawbill/stock"
)

// Coating is how the case is finished: [case.finish].
type Coating struct {
	Line int `toml:"-"`

	// Coats of each class of surface; see [Surfaces]. Default 2 outside, 1
	// inside, 3 where it wears.
	CoatsOutside Count `toml:"coats_outside" zero:"allowed"`
	CoatsInside  Count `toml:"coats_inside" zero:"allowed"`
	CoatsWear    Count `toml:"coats_wear" zero:"allowed"`
	// Coverage of one coat in m2 per litre, in a job in inches in ft2 per US
	// gallon. Default 10 m2 (400 ft2).
	Coverage Count `toml:"coverage"`
}

// Finish is how many coats a case gets, and how far they reach. All defaults are
// common practice, no source: clear finishes claim 300 to 500 ft2 per gallon and
// coat, 7 to 12 m2 per litre.
type Finish struct {
	Outside, Inside, Wear int // coats
	Coverage              int // of a coat: m2 per litre, or ft2 per US gallon
	Units                 stock.Units
}

func (r *reckoner) finish() Finish {
	d := r.design.Finish
	or := func(given Count, usual int) int {
		if given.Set {
			return given.Value
		}
		return usual
	}
	f := Finish{Outside: or(d.CoatsOutside, 2), Inside: or(d.CoatsInside, 1), Wear: or(d.CoatsWear, 3), Units: r.from.Ruler.Units}
	f.Coverage = or(d.Coverage, 10)
	if f.Units == stock.Inches {
		f.Coverage = or(d.Coverage, 400)
	}
	return f
}

// Tenths is what surfaces take, in tenths of a litre or of a US gallon, rounded
// up.
func (f Finish) Tenths(s Surfaces) int64 {
	side := 1000 * stock.Millimetre
	if f.Units == stock.Inches {
		side = stock.Foot
	}
	coated := new(big.Int)
	for _, class := range []struct {
		Area
		coats int
	}{{s.Outside, f.Outside}, {s.Inside, f.Inside}, {s.Wear, f.Wear}} {
		if class.squares != nil {
			coated.Add(coated, new(big.Int).Mul(class.squares, big.NewInt(int64(10*class.coats))))
		}
	}
	reach := new(big.Int).Mul(big.NewInt(int64(side)), big.NewInt(int64(side)))
	reach.Mul(reach, big.NewInt(int64(max(f.Coverage, 1))))
	tenths, rest := new(big.Int).QuoRem(coated, reach, new(big.Int))
	if rest.Sign() > 0 {
		return tenths.Int64() + 1
	}
	return tenths.Int64()
}

// Unit is what Tenths counts: "litre" or "US gallon".
func (f Finish) Unit() string {
	if f.Units == stock.Inches {
		return "US gallon"
	}
	return "litre"
}
