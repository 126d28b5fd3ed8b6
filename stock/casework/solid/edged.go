package solid

// Edged lists the edges and ends of a piece that a strip of edging lies against, in the
// order of the axes, the near one first.
func Edged(piece Solid, all []Solid) []Face {
	var edges []Face
	for a := X; a <= Z; a++ {
		if a == piece.Through {
			continue
		}
		near, far := false, false
		for _, s := range all {
			if !s.Role.On(piece.Role) || !beside(s, piece, a) {
				continue
			}
			near = near || s.End()[a] == piece.At[a]
			far = far || s.At[a] == piece.End()[a]
		}
		if near {
			edges = append(edges, piece.Near(a))
		}
		if far {
			edges = append(edges, piece.Far(a))
		}
	}
	return edges
}

// beside reports whether two solids overlap along every axis but one.
func beside(s, other Solid, but Axis) bool {
	for a := range s.At {
		if Axis(a) != but && (s.End()[a] <= other.At[a] || other.End()[a] <= s.At[a]) {
			return false
		}
	}
	return true
}
