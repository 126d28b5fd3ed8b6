package choice

import (
	"math/big"
	"slices"

	"sawbill/nest/cutplan"
	"sawbill/stock"
)

// evaluate computes the figures that the comparison shows for a plan.
func (o Options) evaluate(s set, p *cutplan.Plan, material string) Choice {
	c := Choice{Offers: s.offers, OnHand: s.onHand, All: s.all, Plan: p, DominatedBy: -1}
	density := 0.0
	if o.Density != nil {
		density = o.Density(material)
	}
	for _, b := range p.Buy {
		c.Pieces += b.Count
		if b.Stock.Seller != "" {
			c.Sellers = append(c.Sellers, b.Stock.Seller)
		}
		c.Weight += float64(float64(b.Count) * meters(b.Stock.Length) * meters(b.Stock.Width) * meters(b.Stock.Thickness) * density)
	}
	slices.Sort(c.Sellers)
	c.Sellers = slices.Compact(c.Sellers)
	for _, k := range p.Offcuts() {
		c.Offcuts += k.Count
		c.Worth += o.worth(offerOf(p, p.Layouts[k.Layout].Stock), k.Node) * stock.Money(k.Count)
	}
	for i := range p.Layouts {
		c.Cuts += p.Layouts[i].Repeat * len(p.Steps(p.Layouts[i]))
	}
	_, c.Setups = p.Settings()
	return c
}

func meters(l stock.Length) float64 { return float64(l) / float64(1000*stock.Millimeter) }

// offerOf returns s as it was bought: a piece cut by its seller has no price of its own.
func offerOf(p *cutplan.Plan, s stock.Stock) stock.Stock {
	if i := slices.IndexFunc(p.Job.Stock, func(o stock.Stock) bool { return o.Name == s.From }); s.From != "" && i >= 0 {
		return p.Job.Stock[i]
	}
	return s
}

// worth returns the offcut's share of its stock's price by area, times o.Worth, rounded
// down to the cent.
func (o Options) worth(s stock.Stock, n cutplan.Node) stock.Money {
	if s.OnHand {
		return 0
	}
	product := func(factors ...int64) *big.Int {
		p := big.NewInt(1)
		for _, f := range factors {
			p.Mul(p, big.NewInt(f))
		}
		return p
	}
	const all = 100_00 // hundredths of a percent
	share := product(int64(s.Price), o.Worth, int64(n.Length), int64(n.Width))
	return stock.Money(share.Quo(share, product(all, int64(s.Length), int64(s.Width))).Int64())
}
