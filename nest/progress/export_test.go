package progress

import (
	"math/big"

	"sawbill/nest/cutplan"
	"sawbill/stock"
)

// Spent is the area that the cuts in one piece of stock turned into dust, trim and waste.
func Spent(s *State, layout, copy int) *big.Int {
	area := func(length, width stock.Length) *big.Int {
		return new(big.Int).Mul(big.NewInt(int64(length)), big.NewInt(int64(width)))
	}
	spent := new(big.Int)
	for i, st := range s.steps[layout] {
		if !s.copies[layout][copy].made[i] {
			continue
		}
		dust := new(big.Int).Sub(area(st.Piece.Length, st.Piece.Width), area(st.Off.Length, st.Off.Width))
		if !st.Trim {
			dust.Sub(dust, area(st.Left.Length, st.Left.Width))
		}
		spent.Add(spent, dust)
	}
	for _, l := range s.remnants(layout, copy) {
		if l.Freed && l.Root.Use == cutplan.Waste {
			spent.Add(spent, area(l.Root.Length, l.Root.Width))
		}
	}
	return spent
}

// Remnants lists the remnants of a sheet or board, with their places in it. Layout and
// copy are numbered from 1, as printed.
func (s *State) Remnants(layout, copy int) []Remnant { return s.remnants(layout-1, copy-1) }
