package joints

// butt is two pieces that meet and have nothing cut: on dowels or screws where the maker puts them.
// Where pieces stand between others it marks the line of their lower or left face.
type butt struct{ traits }

const screwed = "on dowels or screws at the butt joints"

// Butted is the butt joint, which is made where a word names no joint.
var Butted = butt{traits{name: "butt", at: map[Site]Fit{
	CarcassCorner: {Close: screwed},
	DividerEnd:    {Close: screwed},
	ShelfEnd:      {Says: "the shelf is fixed", Close: screwed},
	FrameCorner:   {Says: "stiles run through", Close: screwed},
	DrawerCorner:  {Says: "front and back stand between the sides", Close: "between the sides, on screws or dowels"},
}}}

func (butt) Mark(m *Marker, s Seat) {
	switch s.Site {
	case DividerEnd, ShelfEnd, FrameMiddle:
		m.line(s)
	}
}
