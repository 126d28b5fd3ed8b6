package progress

import "sawbill/stock"

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
