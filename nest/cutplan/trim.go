package cutplan

import "sawbill/stock"

// trimmedSide is a side of the stock that is trimmed.
type trimmedSide struct {
	cut  Cut
	side Side
}

// The reference edge and end are trimmed first, since all else is measured from them. The
// far edge and end are then cut to a size.
var trimOrder = []trimmedSide{{Rip, Near}, {Crosscut, Near}, {Rip, Far}, {Crosscut, Far}}

// formerTrimOrder is the order of programs whose plan files keep no steps.
func formerTrimOrder(k stock.Kind) []trimmedSide {
	if k == stock.Board {
		return []trimmedSide{{Rip, Far}, {Rip, Near}, {Crosscut, Near}, {Crosscut, Far}}
	}
	return []trimmedSide{{Rip, Far}, {Rip, Near}, {Crosscut, Far}, {Crosscut, Near}}
}

// trim squares the stock's edges and ends and returns the last step's number. The diagram
// shows each cut in its place.
func (w *work) trim(s stock.Stock, order []trimmedSide) int {
	t := s.Trims()
	x, y, size := stock.Length(0), stock.Length(0), Size{s.Length, s.Width} // of the piece in hand
	for _, of := range order {
		st := Step{Number: len(w.steps) + 1, InHand: len(w.steps), Trim: true, Cut: of.cut, X: x, Y: y, Piece: size}
		var off stock.Length
		if of.cut == Rip {
			off = t.NearEdge
			if of.side == Far {
				off = t.FarEdge
			}
			size.Width -= off
			st.Run, st.Setting = size.Length, size.Width
			st.Left = Size{size.Length, off - w.saw.Kerf}
			if st.Y = s.Width - off; of.side == Near {
				st.Y, y = off-w.saw.Kerf, off
			}
		} else {
			off = t.NearEnd
			if of.side == Far {
				off = t.FarEnd
			}
			size.Length -= off
			st.Run, st.Setting = size.Width, size.Length
			st.Left = Size{off - w.saw.Kerf, size.Width}
			if st.X = s.Length - off; of.side == Near {
				st.X, x = off-w.saw.Kerf, off
			}
		}
		if off == 0 {
			continue
		}
		if off <= w.saw.Kerf {
			st.Left = Size{}
		}
		st.Off = size
		st.Guide = w.guide(st)
		w.steps = append(w.steps, st)
	}
	return len(w.steps)
}
