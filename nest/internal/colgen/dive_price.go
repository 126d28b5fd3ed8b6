package colgen

import (
	"math"

	"sawbill/nest/internal/instance"
	"sawbill/nest/internal/knapsack"
)

// price looks for a pattern of the stock whose turn it is: by a heuristic once
// there are fillers, else one that may hold parts too often, and where that is worth
// too little without them, one that does not. Within counts there are many dives, and
// none of them waits for what a filler does not find.
func (d *dive) price(work int64) int64 {
	s := d.stock
	if d.stockLeft[s] <= 0 {
		d.stock++
		return work
	}
	p := d.pricers[s]
	if d.bounded != nil {
		p = d.bounded
	}
	above := d.threshold(s)
	if !d.started {
		values := make([]int64, len(d.items[s]))
		for i, it := range d.items[s] {
			values[i] = d.values[it.Kind]
		}
		if d.fillers != nil && d.bounded == nil {
			work -= diveFill * fillWork
			filled := d.priceByFilling(s, above)
			d.found = d.found || filled
			if filled || d.withinCounts {
				d.stock++
				return work
			}
		}
		p.setLimits(func(kind int) int { return d.residual[kind] })
		p.start(values, above)
		d.started = true
	}
	work, done := p.advance(work)
	if !done {
		return work
	}
	d.started = false
	root, ok := p.best()
	good := ok && d.worth(root) > above
	if good && d.columns.add(s, root) {
		d.found = true
	}
	if _, counts := p.(listingPricer); !counts && !good && ok {
		if d.bounded = d.boundedPricer(s); d.bounded != nil {
			return work
		}
	}
	d.stock, d.bounded = s+1, nil
	return work
}

// threshold is what a pattern of stock s must be worth more than.
func (d *dive) threshold(s int) int64 {
	above := float64(d.in.Stock[s].Price)
	if r := d.limits[s]; r >= 0 {
		above -= d.lp.Duals()[r]
	}
	return int64(math.Round(max(0, above) * d.scale() * (1 + 1e-6)))
}

// worth of what p holds of what is left.
func (d *dive) worth(p instance.Piece) (worth int64) {
	counts := make([]int, len(d.residual))
	p.CountParts(counts)
	for k, n := range counts {
		worth += int64(min(n, d.residual[k])) * d.values[k]
	}
	return worth
}

func (d *dive) boundedPricer(s int) *boundedPricer {
	var items []knapsack.Item
	for _, it := range d.items[s] {
		items = append(items, knapsack.Item{L: it.L, W: it.W, Orientations: it.Orientations, Count: d.residual[it.Kind], Kind: it.Kind})
	}
	return newBoundedPricer(d.in, s, items, diveTable, diveWork)
}
