package joints

// Butt is two pieces that meet and have nothing cut: on dowels or screws where the maker puts them.
// Of pieces between others it marks the line of their lower or left face.
type Butt struct{ basic }

func (Butt) Name() string { return "butt" }

func (Butt) Sites() map[Site]string {
	return map[Site]string{CarcassCorner: "", DividerEnd: "", ShelfEnd: "the shelf is fixed", FrameCorner: "stiles run through", DrawerCorner: "front and back stand between the sides"}
}

func (Butt) Mark(m *Marker, s Seat) {
	switch s.Site {
	case DividerEnd, ShelfEnd, FrameMiddle:
		m.line(s)
	}
}

func (Butt) Close(s Site) string {
	if s == DrawerCorner {
		return "between the sides, on screws or dowels"
	}
	return "on dowels or screws at the butt joints"
}
