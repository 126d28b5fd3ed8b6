package pieces

import (
	"slices"

	"sawbill/stock"
	"sawbill/stock/casework/internal/sums"
	"sawbill/stock/casework/solid"
)

// Notch is cut from the corner of a panel that is housed in another one and reaches as far forward.
// It makes room for the strip in front of that other panel:
//
//	 ____________________
//	|strip|               |
//	|_____|   dado        |   the panel that is edged
//	 _____|_______________|
//	|     notch           |
//	|   panel that enters |
type Notch struct {
	Panel, strip int // indices of solids
	Room         solid.Solid
}

// recordNotches records how far back the notches of each kind of panel reach.
func (r *Maker) recordNotches() {
	told := make(map[string]bool)
	for _, n := range Notches(r.Solids) {
		panel, strip := r.Solids[n.Panel], r.Solids[n.strip]
		reach := stock.Sum{{Times: 1, Value: strip.Size[solid.Y], Label: "edging"}}
		if back := panel.At[solid.Y] - strip.At[solid.Y]; back > 0 {
			reach = sums.Plus(reach, stock.Term{Times: -1, Value: back, Label: "stands back"})
		}
		if kind := string(panel.Role) + reach.Print(r.In.From.Ruler); !told[kind] {
			told[kind] = true
			r.Sizes.Record("notch of a "+string(panel.Role)+" behind edging", reach)
		}
	}
}

// Notched are the panels whose corners edging takes off.
func (r *Maker) Notched() []string {
	var panels []string
	for _, n := range Notches(r.Solids) {
		role := r.Solids[n.Panel].Role
		if name := map[solid.Role]string{"partition": "partitions", "divider": "dividers", "shelf": "shelves"}[role]; !slices.Contains(panels, name) {
			panels = append(panels, name)
		}
	}
	return panels
}

// Notches finds those of all pieces.
func Notches(solids []solid.Solid) []Notch {
	var strips []int
	for i, s := range solids {
		if s.Role.Strip() {
			strips = append(strips, i)
		}
	}
	var all []Notch
	for i, s := range solids {
		for _, k := range strips {
			room, meet := solid.Shared(s, solids[k])
			if meet && !s.Role.Strip() && min(room.Size[solid.X], room.Size[solid.Y], room.Size[solid.Z]) > 0 {
				all = append(all, Notch{i, k, room})
			}
		}
	}
	return all
}
