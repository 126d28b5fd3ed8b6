package joints

import (
	"sawbill/stock"
	"sawbill/stock/casework/solid"
)

// halfLap is two members of a frame that cross, each cut to half of its thickness.
type halfLap struct{ traits }

var halfLapped = halfLap{traits{name: "half-lap", at: map[Site]Fit{
	FrameCorner: {Reach: Through, Close: "at the half-laps, a clamp on each lap"},
	FrameMiddle: {Reach: Through},
}}}

// Mark marks where members cross: as wide as the other is. A mid rail ends in the middle of a mid
// stile.
func (h halfLap) Mark(m *Marker, s Seat) {
	if s.Site != FrameCorner { // laps of the corners and the middle on one member are one mark
		return
	}
	uprights, levels := m.Of("stile", "mid stile"), m.Of("rail", "mid rail")
	for _, i := range uprights {
		h.on(m, i, levels, solid.Z, solid.Face{Side: solid.Rear, Extent: solid.Broad})
	}
	for _, i := range levels {
		h.on(m, i, uprights, solid.X, solid.Face{Side: solid.Front, Extent: solid.Broad})
	}
}

// on marks one member, along an axis. Laps as wide, and as far across it, are one mark.
func (halfLap) on(m *Marker, i int, others []int, axis solid.Axis, face solid.Face) {
	s := m.Solids[i]
	var marks []EndMark
	for _, j := range others {
		room, meet := solid.Shared(s, m.Solids[j])
		if !meet || room.Size[solid.Y] == 0 || room.Size[axis] == 0 {
			continue
		}
		by, said := m.stops(s, room, s.Across)
		marks = append(marks, EndMark{face, solid.Mark{What: "half lap", Measure: solid.Measure{From: s.Near(axis), At: []stock.Length{room.At[axis] - s.At[axis]}},
			Width: room.Size[axis], Depth: m.Frame.Thickness / 2, Stops: by, Note: said}})
	}
	m.addJoined(i, marks)
}
