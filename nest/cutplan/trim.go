package cutplan

import (
	"slices"

	"sawbill/stock"
)

// trim squares the stock's edges and ends and returns the last step's number.
// The piece lies with the far edge to the blade, is turned end for end, and
// the same again for the other two; the diagram shows each cut where it falls. Of
// a board the reference end comes first, since all marks are measured from it.
func (w *work) trim(s stock.Stock) int {
	if s.Trim == 0 {
		return 0
	}
	size := Size{s.Length, s.Width}
	if s.TrimWidth() > 0 {
		for i := range 2 {
			st := Step{Cut: Rip, Piece: size, Run: size.Length}
			size.Width -= s.Trim
			st.Setting = size.Width
			if i == 0 {
				st.Y = size.Width
			} else {
				st.Y = s.Trim - w.saw.Kerf
			}
			w.addTrim(st, size)
		}
	}
	ends := []stock.Length{s.Length - s.Trim, s.Trim - w.saw.Kerf}
	if s.Kind == stock.Board {
		slices.Reverse(ends)
	}
	for _, x := range ends {
		st := Step{Cut: Crosscut, Piece: size, Run: size.Width, X: x, Y: s.TrimWidth()}
		size.Length -= s.Trim
		st.Setting = size.Length
		w.addTrim(st, size)
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
