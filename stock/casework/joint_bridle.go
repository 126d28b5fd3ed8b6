package casework

import (
	"fmt"

	"sawbill/stock"
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
type bridle struct{ basic }

func (bridle) Name() string { return "bridle" }

func (bridle) Sites() map[Site]string {
	return map[Site]string{FrameCorner: "open mortises in the stiles' ends, tenons on the rails as long as the stiles are wide"}
}

func (bridle) Reach(s Site) Reach {
	if s == FrameMiddle {
		return Between
	}
	return Through
}

func (bridle) Cut(Site) string { return "the bridle joints of the frames" }

func (bridle) Close(Site) string {
	return "at the bridle joints, glue on all cheeks, a clamp along each member and one across the cheeks of each joint"
}

func (j bridle) Mark(m *marker, s seat) {
	if s.site == FrameMiddle {
		m.line(s)
		return
	}
	f, cheeks := m.frame, m.frame.cheeks()
	third := cheeks.At[1] - cheeks.At[0]
	if third < m.from.Kerf {
		d := m.design.Frame
		m.fault(m.place.under(d.Line, "frame").under(d.Thickness.Line, "thickness"),
			fmt.Sprintf("an open mortise a third of %s wide, %s, is narrower than the kerf, %s", m.print(f.thickness), m.print(third), m.print(m.from.Kerf)),
			"make the frame thicker, or take another corner")
		return
	}
	for _, i := range m.of(s.enters...) {
		m.tenon(i, f.stile)
	}
	for _, i := range m.of(s.into...) {
		m.add(Spot{Solid: i, Face: bothEnds}, Mark{What: "open mortise", Measure: Measure{cheeks.From, []stock.Length{cheeks.At[0]}}, Width: third, Depth: f.rail})
	}
}
