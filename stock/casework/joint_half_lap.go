package casework

import (
	"slices"

	"sawbill/stock"
)

// halfLap is two members of a frame that cross, each cut to half of its thickness.
type halfLap struct{ basic }

func (halfLap) Name() string           { return "half-lap" }
func (halfLap) Sites() map[Site]string { return map[Site]string{FrameCorner: ""} }
func (halfLap) Reach(Site) Reach       { return Through }
func (halfLap) Close(Site) string      { return "at the half-laps, a clamp on each lap" }

// Mark marks where members cross: as wide as the other is. A mid rail ends in the middle of a mid
// stile.
func (h halfLap) Mark(m *marker, s seat) {
	if s.site != FrameCorner { // laps of the corners and the middle on one member are one mark
		return
	}
	uprights, levels := m.of("stile", "mid stile"), m.of("rail", "mid rail")
	for _, i := range uprights {
		h.on(m, i, levels, Z, Face{Rear, Broad})
	}
	for _, i := range levels {
		h.on(m, i, uprights, X, Face{Front, Broad})
	}
}

// on marks one member, along an axis. Laps as wide, and as far across it, are one mark.
func (halfLap) on(m *marker, i int, others []int, axis Axis, face Face) {
	s := m.solids[i]
	var marks []Mark
	for _, j := range others {
		room, meet := shared(s, m.solids[j])
		if !meet || room.Size[Y] == 0 || room.Size[axis] == 0 {
			continue
		}
		by, said := m.stops(s, room, s.Across)
		k := Mark{What: "half lap", Measure: Measure{s.near(axis), []stock.Length{room.At[axis] - s.At[axis]}},
			Width: room.Size[axis], Depth: m.frame.thickness / 2, Stops: by, Note: said}
		n := slices.IndexFunc(marks, func(l Mark) bool { return l.Width == k.Width && l.Note == k.Note })
		if n < 0 {
			marks = append(marks, k)
			continue
		}
		marks[n].At = append(marks[n].At, k.At...)
		slices.Sort(marks[n].At)
	}
	for _, k := range marks {
		m.add(Spot{Solid: i, Face: face}, k)
	}
}
