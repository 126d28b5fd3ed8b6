package progress

import (
	"math/big"

	"sawbill/nest/cutplan"
	"sawbill/stock"
)

// Rectangle of a piece, what is still to be trimmed off counted in.
type Rectangle struct{ Length, Width stock.Length }

// Lying are the pieces of one piece of stock.
func Lying(s *State, layout, copy int) []Rectangle {
	var all []Rectangle
	for _, l := range s.apart(layout, copy) {
		t := l.Trims
		all = append(all, Rectangle{l.Root.Length + t.NearEnd + t.FarEnd, l.Root.Width + t.NearEdge + t.FarEdge})
	}
	return all
}

// Spent is what the cuts made in one piece of stock have taken: dust, what was trimmed
// off, and waste.
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
	for _, l := range s.apart(layout, copy) {
		if l.Freed && l.Root.Use == cutplan.Waste {
			spent.Add(spent, area(l.Root.Length, l.Root.Width))
		}
	}
	return spent
}
