package checks

import (
	"sawbill/stock"
	"sawbill/stock/casework/pieces"
	"sawbill/stock/casework/solid"
)

// The job file gives the weight of the contents of an opening, all together, and of a drawer's.
// Nothing else that stands in a case is weighed.
//
//	a row of contents = weight / rows        rounded up to the gram
//	load of a shelf   = its row / its face   of a divider: the lowest row above it

// pressure is a weight on the face of a piece, in N/mm2.
func pressure(p pieces.Piece, weight stock.Grams) float64 {
	const newton = 9.80665 / 1000 // a gram's weight
	return float64(weight) * newton / (inMillimeters(p.Length.Total()) * inMillimeters(p.Width.Total()))
}

// loadOf is the load that a shelf or a divider is checked for, in N/mm2, and its wording. It is the
// load of all shelves, or the contents if they weigh more. Contents count too if all are known and
// no load is given.
func (r *checker) loadOf(p pieces.Piece) (load float64, said string, byContents bool) {
	load, said = r.shelfLoad()
	of := pressure(p, p.Bears.Weight)
	if of > load || of > 0 && !p.Bears.Some && !r.In.Design.Shelf.Load.Set {
		return of, p.Bears.Weight.PrintUnit(r.In.From.Ruler.Units) + " of contents", true
	}
	return load, said, false
}

// contentsLoads are the rows of all contents whose weight is known, where they
// stand: in the middle of the height that they take, or else of their space, and at
// the front of the opening if their depth is known, or else in the middle of it.
func (r *checker) contentsLoads() (all []load) {
	for _, b := range r.Built.Bays {
		for _, o := range b.Openings {
			c := o.Contents
			if c.Row() == 0 {
				continue
			}
			front := r.Built.Origin()[solid.Y]
			front += r.Built.Doors.ShelfFront(o, front).Value
			deep, high := r.Sizes.Depth.Clear-front, o.Height
			if c.Shelves > 0 {
				front += r.Built.Shelf.SetBack
				high = (o.Height - stock.Length(c.Shelves)*r.Built.Shelf.Thickness) / stock.Length(c.Shelves+1)
			}
			step := high + r.Built.Shelf.Thickness
			if c.Depth.Set {
				deep = stock.Length(c.Deep) * c.Depth.Value
			}
			if rows := c.High / (c.Shelves + 1); c.Height.Set {
				high = stock.Length(rows) * c.Height.Value
			}
			for n := range stock.Length(c.Shelves + 1) {
				all = append(all, load{c.Row(), [3]float64{float64(b.Left) + float64(b.Width)/2, float64(front) + float64(deep)/2,
					float64(o.Floor+n*step) + float64(high)/2}})
			}
		}
	}
	return all
}
