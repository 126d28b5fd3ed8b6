package casework

// butt is two pieces that meet and have nothing cut: on dowels or screws where the maker puts them.
// Of pieces between others it marks the line of their lower or left face.
type butt struct{ basic }

func (butt) Name() string { return "butt" }

func (butt) Sites() map[Site]string {
	return map[Site]string{CarcassCorner: "", DividerEnd: "", ShelfEnd: "the shelf is fixed", FrameCorner: "stiles run through", DrawerCorner: "front and back stand between the sides"}
}

func (butt) Mark(m *marker, s seat) {
	switch s.site {
	case DividerEnd, ShelfEnd, FrameMiddle:
		m.line(s)
	}
}

func (butt) Close(s Site) string {
	if s == DrawerCorner {
		return "between the sides, on screws or dowels"
	}
	return "on dowels or screws at the butt joints"
}
