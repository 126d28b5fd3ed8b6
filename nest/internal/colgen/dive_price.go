package colgen

import (
	"math"

	"sawbill/nest/internal/instance"
	"sawbill/nest/internal/search"
)

// price prices the stock in progress: by fillers if there are any, then on a grid. If the
// grid's pattern exceeds the residual demand and is worth too little without the excess,
// bounded pricing follows. Dives within counts are many, so they use fillers only.
func (d *dive) price(work int64) int64 {
	s := d.round.stock
	if d.partial.stock[s] <= 0 {
		d.round.stock++
		return work
	}
	p := d.pricers[s]
	if d.round.bounded != nil {
		p = d.round.bounded
	}
	above := d.threshold(s)
	if !d.round.started {
		values := make([]int64, len(d.items[s]))
		for i, it := range d.items[s] {
			values[i] = d.round.values[it.Kind]
		}
		if d.fillers != nil && d.round.bounded == nil {
			work -= diveFill * search.FillStepWork
			filled := d.priceByFilling(s, above)
			d.round.found = d.round.found || filled
			if filled || d.withinCounts {
				d.round.stock++
				return work
			}
		}
		p.setLimits(d.partial.residual)
		p.start(values, above)
		d.round.started = true
	}
	work, done := p.advance(work)
	if !done {
		return work
	}
	d.round.started = false
	root, ok := p.best()
	good := ok && d.worth(root) > above
	if good && d.columns.add(s, root) {
		d.round.found = true
	}
	if _, counts := p.(listingPricer); !counts && !good && ok {
		if d.round.bounded = newBoundedPricer(d.in, s, d.items[s], d.partial.residual, diveTable, diveWork, d.stop); d.round.bounded != nil {
			return work
		}
	}
	d.round.stock, d.round.bounded = s+1, nil
	return work
}

// threshold returns what a pattern of stock s must be worth more than.
func (d *dive) threshold(s int) int64 {
	above := float64(d.in.Stock[s].Price)
	if r := d.master.limits[s]; r >= 0 {
		above -= d.master.lp.Duals()[r]
	}
	return int64(math.Round(max(0, above) * d.scale() * (1 + 1e-6)))
}

// worth returns the value of p for the residual demand.
func (d *dive) worth(p instance.Piece) (worth int64) {
	counts := make([]int, len(d.partial.residual))
	p.CountParts(counts)
	for k, n := range counts {
		worth += int64(min(n, d.partial.residual[k])) * d.round.values[k]
	}
	return worth
}
