package solid

import "sawbill/stock"

// Around is the least box that holds two.
func Around(a, b Solid) Solid {
	for axis := range a.At {
		from, to := min(a.At[axis], b.At[axis]), max(a.End()[axis], b.End()[axis])
		a.At[axis], a.Size[axis] = from, to-from
	}
	return a
}

// Grown is a panel with its clearance given back, half of it at each edge.
func Grown(s Solid, clearance stock.Length) Solid {
	for _, a := range []Axis{s.Along, s.Across} {
		s.At[a] -= clearance / 2
		s.Size[a] += clearance
	}
	return s
}

// MeasuredFrom measures places of the case from the edge of a piece.
func MeasuredFrom(edge stock.Length, places ...stock.Length) []stock.Length {
	at := make([]stock.Length, len(places))
	for i, p := range places {
		at[i] = p - edge
	}
	return at
}

// Distance is how far two places lie apart.
func Distance(a, b stock.Length) stock.Length { return max(a-b, b-a) }

// Shared is the room that two solids both take up. They meet if they touch;
// its size may be 0 in one direction then.
func Shared(a, b Solid) (room Solid, meet bool) {
	touching := 0
	for axis := range a.At {
		from, to := max(a.At[axis], b.At[axis]), min(a.End()[axis], b.End()[axis])
		if to < from {
			return Solid{}, false
		}
		if to == from {
			touching++
		}
		room.At[axis], room.Size[axis] = from, to-from
	}
	return room, touching < 2
}

// Middle of a room along an axis.
func Middle(room Solid, a Axis) stock.Length { return room.At[a] + room.Size[a]/2 }
