package report

import (
	"fmt"
	"strings"

	"sawbill/nest/cutplan"
	"sawbill/stock"
)

// What the seller cuts, so that it can be carried home.

// piecesOf are the sizes along the cut direction, in their order: "1658 + 838".
func piecesOf(d cutplan.Division, r stock.Ruler) string {
	var pieces []string
	for _, size := range d.Pieces {
		pieces = append(pieces, r.Print(size))
	}
	return strings.Join(pieces, " + ")
}

// cutsAtSeller counts them.
func cutsAtSeller(p *cutplan.Plan) int {
	cuts := 0
	for _, d := range p.AtSeller {
		cuts += d.Count * d.Cuts()
	}
	return cuts
}

// aboutAtSeller names the kerf and the tolerance that the plan allows for.
func aboutAtSeller(p *cutplan.Plan, r stock.Ruler) string {
	said := "Have the cuts made by the seller: a kerf of " + r.Print(p.AtSeller[0].Kerf) + " lies between the pieces."
	if t := p.Job.Transport.CutTolerance; t > 0 {
		said += " Each may be up to " + r.Print(t) + " smaller at a side so cut, which is trimmed at home. Lay the piece with the seller's cut away from the reference corner, and measure it before the first cut."
	}
	return said
}

func divisionOf(d cutplan.Division) divisionFile {
	f := divisionFile{Stock: d.Stock.Name, Count: d.Count, Cut: d.Cut.String(), Kerf: mm(d.Kerf), Cuts: d.Count * d.Cuts(), Cost: money(d.Cost)}
	for _, size := range d.Pieces {
		f.Pieces = append(f.Pieces, mm(size))
	}
	return f
}

// haulOf is nil where no weight is asked for.
func haulOf(p *cutplan.Plan) *haulFile {
	if p.Job.Transport.Heaviest == 0 {
		return nil
	}
	h := p.Haul()
	f := haulFile{Grams: int64(h.Grams), Trips: h.Trips, TooHeavy: []string{}, Unknown: append([]string{}, h.Unknown...)}
	for _, s := range h.TooHeavy {
		f.TooHeavy = append(f.TooHeavy, s.Name)
	}
	return &f
}

// haul says what is to be carried home, and how often; empty where the job does not
// ask and not all can be weighed.
func haul(p *cutplan.Plan, r stock.Ruler) string {
	t, h := p.Job.Transport, p.Haul()
	switch {
	case len(p.Buy) == 0 || t.Heaviest == 0 && (h.Grams == 0 || len(h.Unknown) > 0):
		return ""
	case t.Heaviest == 0:
		return fmt.Sprintf("Some %s to carry home, an estimate.", load(h.Grams, r))
	}
	if h.Grams == 0 {
		return fmt.Sprintf("What is to be carried home cannot be weighed: give the density of %s under [[material]].", strings.Join(h.Unknown, ", "))
	}
	said := fmt.Sprintf("Some %s to carry home, at %s a trip: %s.", load(h.Grams, r), load(t.Heaviest, r), counted(h.Trips, "trip"))
	for _, s := range h.TooHeavy {
		said += fmt.Sprintf(" One piece of %s weighs more than that alone: have it brought.", s.Name)
	}
	if len(h.Unknown) > 0 {
		said += fmt.Sprintf(" Not counted, their density not being known: %s.", strings.Join(h.Unknown, ", "))
	}
	return said + " An estimate; keep to what the vehicle is allowed to carry."
}

// load is a weight in whole kg, or pounds where lengths are in inches.
func load(g stock.Grams, r stock.Ruler) string {
	if r.Units == stock.Inches {
		return fmt.Sprintf("%.0f lb", g.Pounds())
	}
	return fmt.Sprintf("%.0f kg", float64(g)/1000)
}
