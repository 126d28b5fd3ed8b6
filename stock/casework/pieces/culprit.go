package pieces

import (
	"sawbill/stock"
	"sawbill/stock/casework/design"
	"sawbill/stock/casework/solid"
)

// culprit is the place of what takes most off a size of which nothing is left: its
// key, where the design gives it; else the case.
func (r *Maker) culprit(role solid.Role, size stock.Sum) design.Place {
	d := r.In.Design
	drawer, base, shelf := r.In.Root.Under(d.Drawer.Line, "drawer"), r.In.Root.Under(d.Base.Line, "base"), r.In.Root.Under(d.Shelf.Line, "shelf")
	setBack, setBackAt := d.Shelf.SetBack, shelf
	if role.Base() {
		setBack, setBackAt = d.Base.SetBack, base
	}
	keys := map[string]struct {
		given design.Length
		at    design.Place
		key   string
	}{
		"side clearance":  {d.Drawer.SideClearance, drawer, "side_clearance"},
		"hinge clearance": {d.Drawer.HingeClearance, drawer, "hinge_clearance"},
		"gap behind":      {d.Drawer.GapBehind, drawer, "gap_behind"},
		"set back":        {setBack, setBackAt, "set_back"},
	}
	found, most := r.In.Root, stock.Length(0)
	for _, term := range size {
		if taken := -stock.Length(term.Times) * term.Value; taken > most {
			most, found = taken, r.In.Root
			if k, known := keys[term.Label]; known && k.given.Set {
				found = k.at.Under(k.given.Line, k.key)
			}
		}
	}
	return found
}
