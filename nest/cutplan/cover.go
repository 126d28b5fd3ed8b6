package cutplan

import "sawbill/nest"

// Cover counts the parts that could be cut again from leftovers and stock on hand: one
// replacement for one spoiled part, without another trip.
type Cover struct {
	Parts   int // parts in the blanks that the plan cuts
	Covered int // parts with a replacement
	// Uncovered lists the other parts, in the order of the bill.
	Uncovered []Uncovered
	// Offcuts and Rack report where replacements come from: offcuts of the plan, and stock
	// on hand that it does not cut.
	Offcuts, Rack bool
}

// Uncovered is a part without a replacement.
type Uncovered struct {
	Blank int // index into Plan.Bill: the first such blank of the part
	Count int // parts in the blanks of this kind that are cut
}

// cover counts the parts that p cuts by the source of a replacement. A replacement is
// another blank like the first, so a part of a gang needs room for a whole gang.
func cover(p *Plan, of []nest.Cover) Cover {
	var c Cover
	for i, b := range p.Bill {
		count := b.Count
		for _, u := range p.Unplaced {
			if u.Blank == i {
				count -= u.Count
			}
		}
		for _, e := range p.Estimates {
			for _, w := range e.Blanks {
				if w.Blank == i {
					count -= w.Count
				}
			}
		}
		if count == 0 {
			continue
		}
		count *= b.Holds()
		c.Parts += count
		if of[i] == nest.Uncovered {
			c.addUncovered(p, i, count)
			continue
		}
		c.Covered += count
		c.Offcuts = c.Offcuts || of[i] == nest.FromOffcut
		c.Rack = c.Rack || of[i] == nest.FromStock
	}
	return c
}

// addUncovered adds count parts of a blank that are not covered. Blanks of one part share
// an entry.
func (c *Cover) addUncovered(p *Plan, blank, count int) {
	if last := len(c.Uncovered) - 1; last >= 0 {
		u := &c.Uncovered[last]
		if p.Bill[u.Blank].Part.Name == p.Bill[blank].Part.Name {
			u.Count += count
			return
		}
	}
	c.Uncovered = append(c.Uncovered, Uncovered{blank, count})
}
