package cutplan

import "sawbill/nest"

// Cover tells how much of the job could be cut again from what is kept: one
// replacement for one spoiled part, without another trip.
type Cover struct {
	Parts   int // parts in the blanks that the plan cuts
	Covered int // those of them of which a replacement could be cut
	// Uncovered are the others, in the order of the bill.
	Uncovered []Uncovered
	// Offcuts and Rack tell where replacements come from: offcuts of the plan,
	// and pieces on hand that it does not cut.
	Offcuts, Rack bool
}

// Uncovered is a part whose blank fits nothing that is kept.
type Uncovered struct {
	Blank int // index into Plan.Bill: the first such blank of the part
	Count int // parts in the blanks of this kind that are cut
}

// cover counts what p cuts by where a replacement would come from: another
// blank like it, so that for a part of a gang there must be room for a gang.
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

// addUncovered notes that count parts of a blank are not covered, in one with those in
// the part's blank before it.
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
