package checks

import (
	"math/big"

	"sawbill/stock"
	"sawbill/stock/casework/design"
)

// Finish is how many coats a case gets, and how far they reach. All defaults are
// common practice, no source: clear finishes claim 300 to 500 ft2 per gallon and
// coat, 7 to 12 m2 per liter.
type Finish struct {
	Outside, Inside, Wear int // coats
	Coverage              int // of a coat: m2 per liter, or ft2 per US gallon
	Units                 stock.Units
}

// FinishOf fills in what the design leaves out.
func FinishOf(in *design.Reader) Finish {
	d := in.Design.Finish
	or := func(given design.Count, usual int) int {
		if given.Set {
			return given.Value
		}
		return usual
	}
	f := Finish{Outside: or(d.CoatsOutside, 2), Inside: or(d.CoatsInside, 1), Wear: or(d.CoatsWear, 3), Units: in.From.Ruler.Units}
	f.Coverage = or(d.Coverage, 10)
	if f.Units == stock.Inches {
		f.Coverage = or(d.Coverage, 400)
	}
	return f
}

// Tenths is the finish that surfaces take, in tenths of a liter or of a US gallon, rounded up.
func (f Finish) Tenths(s Surfaces) int64 {
	side := 1000 * stock.Millimeter
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

// Unit is the unit of Tenths: "liter" or "US gallon".
func (f Finish) Unit() string {
	if f.Units == stock.Inches {
		return "US gallon"
	}
	return "liter"
}
