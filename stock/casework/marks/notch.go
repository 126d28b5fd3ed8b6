package marks

import (
	"sawbill/stock"
	"sawbill/stock/casework/joints"
	"sawbill/stock/casework/pieces"
	"sawbill/stock/casework/solid"
)

// notches marks the corners that are cut off, right through: as wide as the strip
// reaches back, and as deep as the joint.
func notches(m *joints.Marker) {
	ends := make(map[int][]joints.EndMark)
	for _, n := range pieces.Notches(m.Solids) {
		s := m.Solids[n.Panel]
		ends[n.Panel] = append(ends[n.Panel], joints.EndMark{End: s.EndAt(n.Room), Mark: solid.Mark{What: "notch", Note: "the corner makes room for the edging",
			Measure: solid.Measure{From: s.Near(solid.Y), At: []stock.Length{n.Room.At[solid.Y] - s.At[solid.Y]}}, Width: n.Room.Size[solid.Y], Depth: n.Room.Size[s.Along]}})
	}
	for i := range m.Solids {
		m.AddAtEnds(i, ends[i])
	}
}
