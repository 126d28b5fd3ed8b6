package cutplan

import (
	"slices"

	"sawbill/stock"
)

// trim squares the stock's edges and ends and returns the last step's number. The far edge
// is cut first, then the piece is turned end for end; the ends follow. The diagram shows
// each cut in its place. The reference end of a board comes first, since all marks are
// measured from it.
func (w *work) trim(s stock.Stock) int {
	t := s.Trims()
	size := Size{s.Length, s.Width}
	side := func(st Step, off stock.Length) {
		if off == 0 {
			return
		}
		st.Piece = size
		if st.Cut == Rip {
			st.Run = size.Length
			size.Width -= off
			st.Setting = size.Width
		} else {
			st.Run = size.Width
			size.Length -= off
			st.Setting = size.Length
		}
		w.addTrim(st, size)
	}
	side(Step{Cut: Rip, Y: s.Width - t.FarEdge}, t.FarEdge)
	side(Step{Cut: Rip, Y: t.NearEdge - w.saw.Kerf}, t.NearEdge)
	ends := []func(){
		func() { side(Step{Cut: Crosscut, X: s.Length - t.FarEnd, Y: t.NearEdge}, t.FarEnd) },
		func() { side(Step{Cut: Crosscut, X: t.NearEnd - w.saw.Kerf, Y: t.NearEdge}, t.NearEnd) },
	}
	if s.Kind == stock.Board {
		slices.Reverse(ends)
	}
	for _, end := range ends {
		end()
	}
	return len(w.steps)
}

func (w *work) addTrim(st Step, off Size) {
	st.Number, st.InHand = len(w.steps)+1, len(w.steps)
	st.Trim, st.Off = true, off
	scrap := max(0, along(st.Cut, Node{Length: st.Piece.Length, Width: st.Piece.Width})-st.Setting-w.saw.Kerf)
	if scrap > 0 {
		if st.Cut == Rip {
			st.Left = Size{st.Piece.Length, scrap}
		} else {
			st.Left = Size{scrap, st.Piece.Width}
		}
	}
	st.Guide = w.guide(st)
	w.steps = append(w.steps, st)
}
