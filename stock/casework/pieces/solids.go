package pieces

import (
	"slices"

	"sawbill/stock/casework/solid"
)

// solids are the pieces one by one, and the drawers that were measured.
func (r *Maker) solids() []solid.Solid {
	var all []solid.Solid
	for i, p := range r.Pieces {
		for _, s := range p.solids() {
			s.Part = i
			all = append(all, s)
		}
	}
	return append(all, r.finished...)
}

// solids are the boxes of one piece where it stands.
func (p Piece) solids() []solid.Solid {
	all := slices.Clone(p.Stands)
	for i := range all {
		s := &all[i]
		if s.Role == "" {
			s.Role = p.Role
		}
		s.Along, s.Across, s.Through = p.way[0], p.way[1], p.way[2]
		s.Size[s.Along], s.Size[s.Across], s.Size[s.Through] = p.Length.Total(), p.Width.Total(), p.Panel.Thickness
	}
	return all
}
