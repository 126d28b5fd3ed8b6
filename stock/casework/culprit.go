package casework

import "sawbill/stock"

// culprit is the place of what takes most off a size of which nothing is left: its
// key, where the design gives it; else the case.
func (r *reckoner) culprit(role Role, size stock.Sum) at {
	d := r.design
	drawer, base, shelf := r.place.under(d.Drawer.Line, "drawer"), r.place.under(d.Base.Line, "base"), r.place.under(d.Shelf.Line, "shelf")
	setBack, setBackAt := d.Shelf.SetBack, shelf
	if role.Base() {
		setBack, setBackAt = d.Base.SetBack, base
	}
	keys := map[string]struct {
		given Length
		at    at
		key   string
	}{
		"side clearance":  {d.Drawer.SideClearance, drawer, "side_clearance"},
		"hinge clearance": {d.Drawer.HingeClearance, drawer, "hinge_clearance"},
		"gap behind":      {d.Drawer.GapBehind, drawer, "gap_behind"},
		"set back":        {setBack, setBackAt, "set_back"},
	}
	found, most := r.place, stock.Length(0)
	for _, term := range size {
		if taken := -stock.Length(term.Times) * term.Value; taken > most {
			most, found = taken, r.place
			if k, known := keys[term.Label]; known && k.given.Set {
				found = k.at.under(k.given.Line, k.key)
			}
		}
	}
	return found
}
