package sellercuts

import (
	"slices"

	"sawbill/nest/cutplan"
	"sawbill/stock"
)

// addSellerCuts adds the purchases for the seller's cuts to p, as far as its
// layouts need them. It also adds the pieces that stay uncut, and restores the job as it
// was given.
func addSellerCuts(p *cutplan.Plan, job stock.Job, bought []cutplan.Division, bound stock.Money) {
	all := pieces(bought, job.Transport.CutTolerance)
	for k, n := range needed(bought, all, p.Layouts, true) {
		bought[k].Count = n
	}
	for i := range p.Layouts {
		if s := &p.Layouts[i].Stock; s.From != "" {
			s.OnHand, s.Count = false, 0
		}
	}
	var buy []cutplan.Purchase
	for _, s := range job.Stock {
		n := boughtOf(bought, s.Name)
		if s.OnHand {
			n = 0
		}
		for _, d := range bought {
			if d.Stock.Name == s.Name && d.Count > 0 {
				d.Cost = job.Transport.CutPrice.Times(d.Count * d.Cuts())
				p.AtSeller = append(p.AtSeller, d)
			}
		}
		if n > 0 && s.Price == 0 {
			p.Unpriced = append(p.Unpriced, cutplan.Unpriced{Stock: []stock.Stock{s}, OneSize: true, Area: int64(n)})
		}
		for _, b := range p.Buy {
			if b.Stock.Name == s.Name {
				n += b.Count
			}
		}
		if n > 0 {
			buy = append(buy, cutplan.Purchase{Stock: s, Count: n, Cost: s.Price.Times(n)})
		}
	}
	p.Buy, p.Job = buy, job
	p.Cost += paidFor(bought, job.Transport)
	p.Bound = bound
	for _, s := range all {
		uncut := s.count(bought) - s.used(p.Layouts)
		if uncut <= 0 {
			continue
		}
		n := cutplan.Node{Length: s.Length, Width: s.Width, Use: cutplan.Waste}
		if job.Offcut.Keeps(s.Length, s.Width) {
			n.Use = cutplan.Offcut
		}
		s.Trim, s.Sawn = 0, stock.Trims{} // the piece stays uncut
		p.Layouts = slices.Insert(p.Layouts, after(p, s.Material), cutplan.Layout{Stock: s.Stock, Repeat: uncut, Root: n})
	}
	for i, u := range p.Unplaced {
		p.Unplaced[i].Reason = tooLargeToCarry(job, p.Bill[u.Blank], u.Reason)
	}
	p.Recompute() // a piece that stays uncut covers nothing if it is too small to keep
}

// after returns the position behind the last layout of a material, or behind all.
func after(p *cutplan.Plan, material string) int {
	for i := len(p.Layouts); i > 0; i-- {
		if p.Layouts[i-1].Stock.Material == material {
			return i
		}
	}
	return len(p.Layouts)
}

// tooLargeToCarry explains an unplaced blank if all stock large enough for it is too large
// to carry. Otherwise it returns the reason given.
func tooLargeToCarry(job stock.Job, b cutplan.Blank, reason string) string {
	enough, large := false, job.TooLarge()
	for i, s := range job.Stock {
		if !s.Serves(b.Blank) || !s.HasRoom(b.Blank) {
			continue
		}
		if !slices.Contains(large, i) {
			return reason
		}
		enough = true
	}
	if !enough {
		return reason
	}
	return "larger than any " + b.Part.Material + " that can be carried home: make it smaller, or have the stock brought and leave [transport] out"
}
