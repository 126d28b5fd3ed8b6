package casework

import (
	"slices"

	"sawbill/stock"
)

// notch is what a strip in front of one panel takes off the corner of another that is
// housed in that panel and reaches as far forward:
//
//	 ____________________
//	|strip|               |
//	|_____|   dado        |   the panel that is edged
//	 _____|_______________|
//	|     notch           |
//	|   panel that enters |
type notch struct {
	panel, strip int // indices of solids
	room         Solid
}

func notches(solids []Solid) []notch {
	var all []notch
	for i, s := range solids {
		for k, strip := range solids {
			room, meet := shared(s, strip)
			if strip.Role.Strip() && !s.Role.Strip() && meet && min(room.Size[X], room.Size[Y], room.Size[Z]) > 0 {
				all = append(all, notch{i, k, room})
			}
		}
	}
	return all
}

// recordNotches tells how far back the notches of each kind of panel reach.
func (r *reckoner) recordNotches(solids []Solid) {
	told := make(map[string]bool)
	for _, n := range notches(solids) {
		panel, strip := solids[n.panel], solids[n.strip]
		reach := stock.Sum{{Times: 1, Value: strip.Size[Y], Label: "edging"}}
		if back := panel.At[Y] - strip.At[Y]; back > 0 {
			reach = plus(reach, stock.Term{Times: -1, Value: back, Label: "stands back"})
		}
		if kind := string(panel.Role) + reach.Print(r.from.Ruler); !told[kind] {
			told[kind] = true
			r.record("notch of a "+string(panel.Role)+" behind edging", reach)
		}
	}
}

// notches marks the corners that are cut off, right through: as wide as the strip
// reaches back, and as deep as the joint.
func (m *marker) notches() {
	ends := make(map[int][]endMark)
	for _, n := range notches(m.solids) {
		s := m.solids[n.panel]
		ends[n.panel] = append(ends[n.panel], endMark{s.endAt(n.room), Mark{What: "notch", Note: "the corner makes room for the edging",
			Measure: Measure{s.near(Y), []stock.Length{n.room.At[Y] - s.At[Y]}}, Width: n.room.Size[Y], Depth: n.room.Size[s.Along]}})
	}
	for i := range m.solids {
		m.addAtEnds(i, ends[i])
	}
}

// notched are the panels whose corners edging takes off.
func (r *reckoner) notched() []string {
	var panels []string
	solids := r.solids()
	for _, n := range notches(solids) {
		role := solids[n.panel].Role
		if name := map[Role]string{"partition": "partitions", "divider": "dividers", "shelf": "shelves"}[role]; !slices.Contains(panels, name) {
			panels = append(panels, name)
		}
	}
	return panels
}
