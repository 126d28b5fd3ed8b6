package instance

// Trim cuts part out of a piece l x w that is no smaller.
func Trim(part Piece, l, w int64) Piece {
	if part.W < w {
		part = Piece{L: part.L, W: w, Dir: Ripped, Kind: Rest, Children: []Piece{
			part, {L: part.L, W: w - part.W, Kind: Rest},
		}}
	}
	if part.L < l {
		part = Piece{L: l, W: w, Dir: Crosscut, Kind: Rest, Children: []Piece{
			part, {L: l - part.L, W: w, Kind: Rest},
		}}
	}
	return part
}
