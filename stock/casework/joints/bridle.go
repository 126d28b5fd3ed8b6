package joints

import (
	"fmt"

	"sawbill/stock"
	"sawbill/stock/casework/solid"
)

// bridle is the corner bridle joint, an open mortise and tenon. The tenon is a third of the thickness,
// as wide as the rail and as long as the stile is wide; the mortise is open at the end of the stile
// and at both its edges:
//
//	 ______ ____________
//	|stile |    rail     |
//	|      |_____________|   | third | third | third |
//	|      |                   cheek  mortise  cheek
//
// Mid stiles and mid rails are butted. A third for the tenon is the rule for tenons; that the tenon
// of a bridle joint takes the whole corner is common practice, no source.
type bridle struct{ traits }

var bridled = bridle{traits{name: "bridle", at: map[Site]Fit{
	FrameCorner: {
		Says:  "open mortises in the stiles' ends, tenons on the rails as long as the stiles are wide",
		Reach: Through,
		Cut:   "the bridle joints of the frames",
		Close: "at the bridle joints, glue on all cheeks, a clamp along each member and one across the cheeks of each joint",
	},
	FrameMiddle: {Reach: Between},
}}}

func (bridle) Mark(m *Marker, s Seat) {
	if s.Site == FrameMiddle {
		m.line(s)
		return
	}
	f, cheeks := m.Frame, m.cheeks()
	third := cheeks.At[1] - cheeks.At[0]
	if third < m.In.From.Kerf {
		d := m.In.Design.Frame
		m.In.Fault(m.In.Root.Under(d.Line, "frame").Under(d.Thickness.Line, "thickness"),
			fmt.Sprintf("an open mortise of a third of %s, %s wide, is narrower than the kerf, %s", m.In.Print(f.Thickness), m.In.Print(third), m.In.Print(m.In.From.Kerf)),
			"make the frame thicker, or take another corner")
		return
	}
	for _, i := range m.Of(s.Enters...) {
		m.tenon(i, f.Stile)
	}
	for _, i := range m.Of(s.Into...) {
		m.Add(solid.Spot{Solid: i, Face: solid.BothEnds}, solid.Mark{What: "open mortise", Measure: solid.Measure{From: cheeks.From, At: []stock.Length{cheeks.At[0]}}, Width: third, Depth: f.Rail})
	}
}
