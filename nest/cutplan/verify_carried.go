package cutplan

import (
	"fmt"

	"sawbill/stock"
)

// verifyCarried checks by sums of its own that everything that a plan divides is
// bought, carried and paid for: the pieces of each offer with the kerfs between make
// up the offer, all of them are divided or kept, as often as it is bought, each fits
// the limits, and the cost is that of the stock and the cuts.
func verifyCarried(job stock.Job, p *Plan) error {
	cost := stock.Money(0)
	for _, b := range p.Buy {
		cost += b.Stock.Price * stock.Money(b.Count)
	}
	for _, d := range p.AtSeller {
		along, across := d.Stock.Length, d.Stock.Width
		if d.Cut == Rip {
			along, across = across, along
		}
		sum := stock.Length(len(d.Pieces)-1) * d.Kerf
		for _, size := range d.Pieces {
			sum += size
			if !job.Transport.Carries(size, across) {
				return fmt.Errorf("a piece %d x %d of %q cannot be carried", size, across, d.Stock.Name)
			}
		}
		if sum != along || d.Kerf < job.Transport.CutKerf || len(d.Pieces)-1 > job.Transport.Cuts {
			return fmt.Errorf("pieces and kerfs of %q add up to %d, it measures %d", d.Stock.Name, sum, along)
		}
		if bought(p.Buy, d.Stock.Name) != d.Count {
			return fmt.Errorf("%d of %q are cut, not those bought", d.Count, d.Stock.Name)
		}
		used := 0
		for _, l := range p.Layouts {
			if l.Stock.From == d.Stock.Name {
				used += l.Repeat
			}
		}
		if used != d.Count*len(d.Pieces) {
			return fmt.Errorf("%d pieces of %q are told of, there are %d", used, d.Stock.Name, d.Count*len(d.Pieces))
		}
		cost += job.Transport.CutPrice * stock.Money(d.Count*(len(d.Pieces)-1))
	}
	if cost != p.Cost {
		return fmt.Errorf("stock and cuts cost %v, the plan says %v", cost, p.Cost)
	}
	for _, l := range p.Layouts {
		if l.Stock.From == "" && !l.Stock.OnHand && !job.Transport.Carries(l.Stock.Length, l.Stock.Width) {
			return fmt.Errorf("%q cannot be carried whole", l.Stock.Name)
		}
	}
	return nil
}
