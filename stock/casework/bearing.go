package casework

import "sawbill/stock"

// What stands in a case weighs as the job file says, and only then: the contents of
// an opening, all together, and what is in a drawer.
//
//	a row of contents = weight / rows        rounded up to the gram
//	load of a shelf   = its row / its face   of a divider: the lowest row above it

// row is the weight of one of the rows that stand on shelves of their own; without
// shelves all of them stand on one another.
func (c *contents) row() stock.Grams {
	if c == nil {
		return 0
	}
	rows := stock.Grams(c.shelves + 1)
	return (c.weight + rows - 1) / rows
}

// bears is the greatest load on a piece, 0 where none is known; some is true where
// on others of its like something stands that has no weight.
type bears struct {
	weight stock.Grams
	some   bool
}

func bearing(row stock.Grams) bears { return bears{row, row == 0} }

func (b bears) and(c bears) bears { return bears{max(b.weight, c.weight), b.some || c.some} }

// pressure is a weight on the face of a piece, in N/mm2.
func (p piece) pressure(weight stock.Grams) float64 {
	const newton = 9.80665 / 1000 // a gram's weight
	return float64(weight) * newton / (inMillimetres(p.length.Total()) * inMillimetres(p.width.Total()))
}

// loadOf is what a shelf or a divider is checked for, in N/mm2, and how it is said:
// the load of all shelves, or that of its contents where they weigh more, or where
// the contents are known of all and no load was given.
func (r *reckoner) loadOf(p piece) (load float64, said string, byContents bool) {
	load, said = r.shelfLoad()
	of := p.pressure(p.bears.weight)
	if of > load || of > 0 && !p.bears.some && !r.design.Shelf.Load.Set {
		return of, p.bears.weight.PrintUnit(r.from.Ruler.Units) + " of contents", true
	}
	return load, said, false
}

// contentsLoads are the rows of all contents whose weight is known, where they
// stand: in the middle of the height that they take, or else of their space, and at
// the front of the opening if their depth is known, or else in the middle of it.
func (r *reckoner) contentsLoads() (all []load) {
	for _, b := range r.bays {
		for _, o := range b.openings {
			c := o.contents
			if c.row() == 0 {
				continue
			}
			front := r.origin()[Y]
			front += r.made.doors.shelfFront(o, front).Value
			deep, high := r.depth.clear-front, o.height
			if c.shelves > 0 {
				front += r.made.shelf.setBack
				high = (o.height - stock.Length(c.shelves)*r.made.shelf.thickness) / stock.Length(c.shelves+1)
			}
			step := high + r.made.shelf.thickness
			if c.depth.Set {
				deep = stock.Length(c.deep) * c.depth.Value
			}
			if rows := c.high / (c.shelves + 1); c.height.Set {
				high = stock.Length(rows) * c.height.Value
			}
			for n := range stock.Length(c.shelves + 1) {
				all = append(all, load{c.row(), [3]float64{float64(b.left) + float64(b.width)/2, float64(front) + float64(deep)/2,
					float64(o.floor+n*step) + float64(high)/2}})
			}
		}
	}
	return all
}
