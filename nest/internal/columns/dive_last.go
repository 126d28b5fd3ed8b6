package columns

// lastSteps fill the last piece.
const lastSteps = 1000

// last is the stock of the last piece that a dive within counts may take, if the
// area of what is left allows that it holds all.
func (d *dive) last() (stock int, ok bool) {
	if !d.within {
		return 0, false
	}
	pieces := 0
	for s, n := range d.stock {
		if n > 0 {
			stock = s
			pieces += n
		}
	}
	var left int64
	for k, n := range d.left {
		left += int64(n) * d.area(k)
	}
	st := &d.in.Stock[stock]
	return stock, pieces == 1 && left > 0 && left <= st.L*st.W
}

func (d *dive) area(k int) int64 { return d.in.Kinds[k].L * d.in.Kinds[k].W }

// closeWith ends the dive with a piece of stock s: either it is found to hold all that
// is left, of which a programme can say no more, or the search places what it can.
func (d *dive) closeWith(s int, work int64) (left int64) {
	areas := make([]int64, len(d.left))
	var all int64
	for k, n := range d.left {
		areas[k] = d.area(k)
		all += int64(n) * areas[k]
	}
	for _, root := range d.fillers[s].Fill(d.left, areas, nil, all-1, lastSteps, 1) {
		t := newPattern(d.in, s, root)
		d.take(&t, 1)
	}
	d.finish()
	return work - lastSteps*fillWork
}
