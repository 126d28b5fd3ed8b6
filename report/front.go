package report

import (
	"slices"
	"strconv"

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
	b.Title(frontTitle(p, o))
	if o.standIns {
		b.Paragraph(aboutStandIns)
	}
	for _, said := range restNotes(o) {
		b.Paragraph(said)
	}
	if !p.Complete() {
		b.Strong(missing(p))
	}
	for _, said := range waiting(p, o) {
		b.Paragraph(said)
	}
	lists := planLists(p, o)
	if len(lists) == 0 && len(p.Estimates) == 0 {
		b.Heading("Buy")
	}
	for _, list := range lists {
		toBuy(b, list, r)
	}
	if said := paid(lists); said != "" {
		b.Strong(said)
	}
	if len(p.AtSeller) > 0 {
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
	if more := alsoToBuy(o, r); len(more.rows) > 0 {
		b.Heading("Also for the case")
		t := in(more.table(), 11)
		t.Times = 1
		b.Table(t)
	}
	if ways := waysToSave(o); len(ways) > 0 {
		b.Heading(waysHeading)
		for _, said := range ways {
			b.Paragraph(said)
		}
	}
	for _, said := range warningsOf(o) {
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
}

// frontTitle tells the rest of a plan from the plan at a glance.
func frontTitle(p *cutplan.Plan, o Options) string {
	if o.Rest != nil {
		return "REST: " + title(p)
	}
	return title(p)
}

// whatIsLeft tells which offcuts to keep, and what they are good for.
func whatIsLeft(b document, p *cutplan.Plan, names offcutNames, r stock.Ruler) {
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
	for _, said := range shares(p.Totals) {
		b.Paragraph(said)
	}
}

// toBuy is what is bought from one seller, with what to take where something is sold out.
func toBuy(b document, list sellerList, r stock.Ruler) {
	b.Heading(list.heading())
	t := large(b, list.list(r).table())
	t.Times = 1
	b.Table(t)
	for _, said := range list.instead {
		if said != "" {
			b.Paragraph(said)
		}
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
	first := slices.IndexFunc(t.Columns, func(c paper.Column) bool { return !c.Tick })
	for _, t.Size = range []float64{14, 13, 12, 11, 10} {
		t.Columns[first].Size, t.Columns[first].Face = t.Size+5, drawing.Bold
		if b.Natural(t) {
			break
		}
	}
	return t
}

// alsoToBuy lists what a case takes besides its parts, and is bought, with boxes to tick;
// what it rests on is told further back. The plan of a rest has been bought.
func alsoToBuy(o Options, r stock.Ruler) listing {
	l := listing{columns: []heading{{"", ticks}, {"buy", figures}, {"what", words}}}
	c := o.Case
	if c == nil || len(c.Parts) == 0 || o.Rest != nil {
		return l
	}
	for _, h := range c.Hardware {
		l.add(tickBox, strconv.Itoa(h.Count), h.Name)
	}
	t := c.TakeOff()
	if t.Edging > 0 {
		l.add(tickBox, runLength(t.Edging, r), "edging, 10 % to spare")
	}
	l.add(tickBox, finishVolume(c, t)+" "+c.Finish.Unit()+"s", "finish")
	return l
}

// warningsOf tells what a case must not be built without heeding: loads beyond their limits,
// and that it may tip. The checks have the figures.
func warningsOf(o Options) []string {
	if o.Case == nil || o.Rest != nil {
		return nil
	}
	var said []string
	for _, k := range o.Case.Checks {
		if is := outcome(k); k.Verdict == casework.Beyond && !slices.Contains(said, is) {
			said = append(said, is)
		}
	}
	if tips := tipping(o.Case); tips != "" {
		said = append(said, tips)
	}
	return said
}

// tipping is a warning where a case may tip.
func tipping(c *casework.Case) string {
	const see = "; see " + checksHeading + ", which --pages checks prints."
	for _, k := range c.Checks {
		switch {
		case k.Subject != "tipping":
		case k.Verdict == casework.Tips:
			return "It tips in a state that was checked: anchor it to the wall" + see
		default:
			return "It can tip: anchor it to the wall" + see
		}
	}
	for _, c := range c.Cautions {
		if c.Subject == "tipping" {
			return "It may tip, which was not checked: anchor it to the wall; see the cautions."
		}
	}
	return ""
}
