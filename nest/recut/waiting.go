package recut

import (
	"fmt"
	"slices"

	"sawbill/nest/cutplan"
	"sawbill/nest/progress"
	"sawbill/stock"
)

// Waiting lists the work that needs stock missing now.
type Waiting struct {
	// Blanks lists the waiting blanks of the plan's bill; the plan lists them as unplaced.
	Blanks []cutplan.Unplaced
	// Buy lists the missing purchases. Cost is their cost with the cuts of the seller.
	Buy  []cutplan.Purchase
	Cost stock.Money
}

// matchesAny reports whether s goes by one of the names.
func matchesAny(s stock.Stock, names []string) bool {
	return slices.ContainsFunc(names, func(name string) bool { return progress.GoesBy(s, name) })
}

// postpone removes missing stock from a plan, so that the plan has only the work possible
// now.
func postpone(p *cutplan.Plan, missing []string) (*Waiting, error) {
	w := &Waiting{}
	later := func(s stock.Stock) bool { return !s.OnHand && matchesAny(s, missing) }
	lacking := make([]int, len(p.Bill))
	for _, l := range p.Layouts {
		if later(l.Stock) {
			for _, n := range l.Leaves() {
				if n.Use == cutplan.Part {
					lacking[n.Blank] += l.Repeat
				}
			}
		}
	}
	for _, b := range p.Buy {
		if later(b.Stock) {
			w.Buy = append(w.Buy, b)
			w.Cost += b.Cost
		}
	}
	for _, d := range p.AtSeller {
		if later(d.Stock) {
			w.Cost += d.Cost
		}
	}
	for i, n := range lacking {
		if n > 0 {
			w.Blanks = append(w.Blanks, cutplan.Unplaced{Blank: i, Count: n, Reason: "waits for " + p.Bill[i].Part.Material})
		}
	}
	p.Layouts = slices.DeleteFunc(slices.Clone(p.Layouts), func(l cutplan.Layout) bool { return later(l.Stock) })
	p.Buy = slices.DeleteFunc(slices.Clone(p.Buy), func(b cutplan.Purchase) bool { return later(b.Stock) })
	p.AtSeller = slices.DeleteFunc(slices.Clone(p.AtSeller), func(d cutplan.Division) bool { return later(d.Stock) })
	p.Unplaced = append(slices.Clone(p.Unplaced), w.Blanks...)
	p.Cost -= w.Cost
	p.Recompute()
	if err := p.Check(); err != nil {
		return nil, fmt.Errorf("what can be cut now does not add up, which is a fault of this program, not of the job: %w", err)
	}
	return w, nil
}
