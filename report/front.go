package report

import (
	"fmt"
	"strings"

	"sawbill/nest/cutplan"
	"sawbill/report/internal/drawing"
	"sawbill/report/internal/paper"
	"sawbill/stock"
	"sawbill/stock/casework"
)

// frontPage answers what to buy and what it costs, in type to read at the yard;
// then what becomes of it.
func frontPage(b document, p *cutplan.Plan, names offcutNames, o Options) {
	r := o.Ruler
	b.Page("what to buy")
	b.Title(title(p))
	for _, said := range restNotes(o) {
		b.Paragraph(said)
	}
	if !p.Complete() {
		b.Strong(missing(p))
	}
	for _, said := range waiting(p, o) {
		b.Paragraph(said)
	}
	if len(p.Buy) > 0 || len(p.Estimates) == 0 {
		b.Heading("Buy")
	}
	if len(p.Buy) > 0 {
		t := large(b, shoppingList(p, r).table())
		t.Times = 1
		b.Table(t)
	}
	if cuts := atSeller(p, r); len(cuts.rows) > 0 {
		b.Heading(atSellerHeading)
		b.Table(cuts.table())
		b.Paragraph(aboutAtSeller(p, r))
	}
	b.Strong(proof(p))
	if said := haul(p, r); said != "" {
		b.Paragraph(said)
	}
	if len(p.Estimates) > 0 {
		b.Heading(estimatesHeading)
		b.Table(large(b, estimates(p.Estimates).table()))
		for _, n := range estimateNotes(p, r) {
			b.Paragraph(n)
		}
	}
	if more := alsoToBuy(o.Case, r); more != "" && o.Rest == nil {
		b.Paragraph(more)
	}
	if ways := waysToSave(o); len(ways) > 0 {
		b.Heading(waysHeading)
		for _, said := range ways {
			b.Paragraph(said)
		}
	}
	if said := tipping(o); said != "" {
		b.Strong(said)
	}
	if rack := fromTheRack(p, r); len(rack.rows) > 0 {
		b.Heading("Take from what is on hand")
		b.Table(large(b, rack.table()))
	}
	if !p.Complete() {
		b.Heading("Not cut")
		b.Table(unplaced(p, r).table())
	}
	if where := sharesTable(p.Totals); len(where.rows) > 0 {
		b.Heading("Where the material goes")
		b.Table(in(where.table(), 11))
	}
	if offcuts := kept(p, names, r); len(offcuts.rows) > 0 {
		b.Heading("Keep")
		t := in(offcuts.table(), 11)
		if len(t.Rows) > manyKept {
			t = offcuts.table() // so that all of it stays on the page
		}
		b.Table(t)
	}
	if c := cover(p); c != "" {
		b.Paragraph(c)
	}
}

// manyKept is how many kinds of offcuts are listed in large type at the most.
const manyKept = 6

// in sets a table in a size of type.
func in(t paper.Table, size float64) paper.Table {
	t.Size = size
	return t
}

// large sets a table in the largest type at which no cell wraps, its first column
// larger still and bold.
func large(b document, t paper.Table) paper.Table {
	for _, t.Size = range []float64{14, 13, 12, 11, 10} {
		t.Columns[0].Size, t.Columns[0].Face = t.Size+5, drawing.Bold
		if b.Natural(t) {
			break
		}
	}
	return t
}

// sharesTable is where the material goes, a row for sheets and for boards.
func sharesTable(t cutplan.Totals) listing {
	l := listing{columns: []heading{
		{"of the", words}, {"yield (%)", figures}, {"kept as offcuts", figures}, {"waste with kerf, trim and allowances", figures},
	}}
	percent := func(share float64) string { return fmt.Sprintf("%.1f", 100*share) }
	for _, of := range []struct {
		kind string
		cutplan.Shares
	}{{"sheets", t.Sheets}, {"boards", t.Boards}} {
		if of.Shares != (cutplan.Shares{}) {
			l.add(of.kind, percent(of.Yield), percent(of.Offcut), percent(of.Waste))
		}
	}
	return l
}

// alsoToBuy names what a case takes besides its parts, and is bought; where each
// comes from is told further back.
func alsoToBuy(c *casework.Case, r stock.Ruler) string {
	if c == nil || len(c.Parts) == 0 {
		return ""
	}
	t := c.TakeOff()
	all := []string{fmt.Sprintf("finish %s %ss", finishVolume(c, t), c.Finish.Unit())}
	if t.Edging > 0 {
		all = append(all, "edging "+runLength(t.Edging, r))
	}
	for _, h := range c.Hardware {
		all = append(all, fmt.Sprintf("%d %s", h.Count, h.Name))
	}
	return "Also: " + strings.Join(all, ", ") + "; see " + takeoffHeading + "."
}

// tipping is a warning where a case may tip.
func tipping(o Options) string {
	if o.Case == nil || o.Rest != nil {
		return ""
	}
	for _, k := range o.Case.Checks {
		switch {
		case k.Subject != "tipping":
		case k.Verdict == casework.Tips:
			return "IT TIPS in states that were reckoned: anchor it to the wall; see " + checksHeading + "."
		default:
			return "It can tip: anchor it to the wall; see " + checksHeading + "."
		}
	}
	for _, c := range o.Case.Cautions {
		if c.Subject == "tipping" {
			return "It may tip, which was not reckoned: anchor it to the wall; see the cautions."
		}
	}
	return ""
}
