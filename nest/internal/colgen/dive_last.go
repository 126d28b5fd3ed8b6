package colgen

import "sawbill/nest/internal/search"

// lastSteps fill the last piece.
const lastSteps = 1000

// lastPiece is the stock of the last piece that a dive within counts may take, if the
// area of what is left allows that it holds all.
func (d *dive) lastPiece() (stock int, ok bool) {
	if !d.withinCounts {
		return 0, false
	}
	pieces := 0
	for s, n := range d.partial.stock {
		if n > 0 {
			stock = s
			pieces += n
		}
	}
	var left int64
	for k, n := range d.partial.residual {
		left += int64(n) * d.area(k)
	}
	st := &d.in.Stock[stock]
	return stock, pieces == 1 && left > 0 && left <= st.L*st.W
}

func (d *dive) area(k int) int64 { return d.in.Kinds[k].L * d.in.Kinds[k].W }

// fillLastPiece ends the dive with a piece of stock s: either it is found to hold all that
// is left, of which a programme can say no more, or the search places what it can.
func (d *dive) fillLastPiece(s int, work int64) (left int64) {
	areas := make([]int64, len(d.partial.residual))
	var all int64
	for k, n := range d.partial.residual {
		areas[k] = d.area(k)
		all += int64(n) * areas[k]
	}
	for _, root := range d.fillers[s].Fill(d.partial.residual, areas, nil, all-1, lastSteps, 1) {
		t := patternOf(d.in, s, root)
		d.take(&t, 1)
	}
	d.finish()
	return work - lastSteps*search.FillStepWork
}
