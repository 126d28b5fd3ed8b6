package stock

// Trims is cut off each side of a piece of stock before anything else. The
// near end and edge are those of the reference corner.
type Trims struct {
	NearEnd, FarEnd, NearEdge, FarEdge Length
}

// Trims is what s loses: Trim all round, of a board off both ends, and at a side that
// the seller cut no less than Sawn.
func (s Stock) Trims() Trims {
	ends, edges := s.Trim, s.Trim
	if s.Kind == Board {
		edges = 0 // a board keeps its full width
	}
	return Trims{
		NearEnd: max(ends, s.Sawn.NearEnd), FarEnd: max(ends, s.Sawn.FarEnd),
		NearEdge: max(edges, s.Sawn.NearEdge), FarEdge: max(edges, s.Sawn.FarEdge),
	}
}

// Least is the smallest of all that are not 0; 0 where nothing is cut off.
func (t Trims) Least() Length {
	least := Length(0)
	for _, l := range []Length{t.NearEnd, t.FarEnd, t.NearEdge, t.FarEdge} {
		if l > 0 && (least == 0 || l < least) {
			least = l
		}
	}
	return least
}
