package colgen

import "sawbill/nest/internal/search"

// lastSteps is how many steps fill the last piece.
const lastSteps = 1000

// lastPiece returns the stock of the only piece left to a dive within counts, if the area of
// the residual demand fits in it.
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

// fillLastPiece ends the dive with a piece of stock s. A filler finds that it holds the whole
// residual demand, or the search places what it can. An LP helps no further there.
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
