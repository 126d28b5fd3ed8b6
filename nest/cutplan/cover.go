package cutplan

import "sawbill/nest"

// Cover tells how much of the job could be cut again from what is kept: one
// replacement for one spoiled part, without another trip.
type Cover struct {
	Parts   int // pieces that the plan cuts
	Covered int // those of them of which a replacement could be cut
	// Uncovered are the others, in the order of the bill.
	Uncovered []Uncovered
	// Offcuts and Rack tell where replacements come from: offcuts of the plan,
	// and pieces on hand that it does not cut.
	Offcuts, Rack bool
}

// Uncovered is a blank that is cut Count times and fits nothing that is kept.
type Uncovered struct {
	Blank int // index into Plan.Bill
	Count int
}

// cover counts what p cuts by where a replacement would come from.
func cover(p *Plan, of []nest.Cover) Cover {
	var c Cover
	for i, b := range p.Bill {
		count := b.Part.Count
		for _, u := range p.Unplaced {
			if u.Blank == i {
				count -= u.Count
			}
		}
		if count == 0 {
			continue
		}
		c.Parts += count
		if of[i] == nest.Uncovered {
			c.Uncovered = append(c.Uncovered, Uncovered{i, count})
			continue
		}
		c.Covered += count
		c.Offcuts = c.Offcuts || of[i] == nest.FromOffcut
		c.Rack = c.Rack || of[i] == nest.FromRack
	}
	return c
}
