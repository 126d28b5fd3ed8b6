package instance

// CutFrom cuts part out of a piece l x w that is at least as large.
func CutFrom(part Piece, l, w int64) Piece {
	if part.W < w {
		part = Piece{L: part.L, W: w, Dir: Rip, Kind: Leftover, Children: []Piece{
			part, {L: part.L, W: w - part.W, Kind: Leftover},
		}}
	}
	if part.L < l {
		part = Piece{L: l, W: w, Dir: Crosscut, Kind: Leftover, Children: []Piece{
			part, {L: l - part.L, W: w, Kind: Leftover},
		}}
	}
	return part
}
