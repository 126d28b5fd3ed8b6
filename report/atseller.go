package report

import (
	"strconv"
	"strings"

	"sawbill/nest/cutplan"
	"sawbill/stock"
)

// What the seller cuts, so that it can be carried home.

const atSellerHeading = "Have cut by the seller"

// atSeller lists the cuts to ask for.
func atSeller(p *cutplan.Plan, r stock.Ruler) listing {
	l := listing{columns: []heading{
		{"of each", figures}, {"stock", words}, {"cut", words}, {"pieces" + unit(r), words}, {"cuts", figures}, {"cost", figures},
	}}
	for _, d := range p.AtSeller {
		var pieces []string
		for _, size := range d.Pieces {
			pieces = append(pieces, r.Print(size))
		}
		l.add(strconv.Itoa(d.Count), d.Stock.Name, d.Cut.String(), strings.Join(pieces, " + "), strconv.Itoa(d.Count*d.Cuts()), price(d.Cost))
	}
	return l
}

// cutsAtSeller counts them.
func cutsAtSeller(p *cutplan.Plan) int {
	cuts := 0
	for _, d := range p.AtSeller {
		cuts += d.Count * d.Cuts()
	}
	return cuts
}

// aboutAtSeller says what is reckoned with.
func aboutAtSeller(p *cutplan.Plan, r stock.Ruler) string {
	said := "A kerf of " + r.Print(p.AtSeller[0].Kerf) + " lies between the pieces."
	if t := p.Job.Transport.CutTolerance; t > 0 {
		said += " Each may be up to " + r.Print(t) + " smaller at an edge so cut; measure it before the first cut at home."
	}
	return said
}

// divisionFile tells how the seller cuts an offer: what lies in order along it, a
// kerf between.
type divisionFile struct {
	Stock  string   `json:"stock"`
	Count  int      `json:"count"`
	Cut    string   `json:"cut"`
	Pieces []number `json:"pieces"`
	Kerf   number   `json:"kerf"`
	Cuts   int      `json:"cuts"`
	Cost   number   `json:"cost"`
}

func divisionOf(d cutplan.Division) divisionFile {
	f := divisionFile{Stock: d.Stock.Name, Count: d.Count, Cut: d.Cut.String(), Kerf: mm(d.Kerf), Cuts: d.Count * d.Cuts(), Cost: money(d.Cost)}
	for _, size := range d.Pieces {
		f.Pieces = append(f.Pieces, mm(size))
	}
	return f
}
