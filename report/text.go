package report

import (
	"fmt"
	"io"
	"strconv"

	"sawbill/nest/cutplan"
	"sawbill/stock"
	"sawbill/stock/casework"
)

// writer keeps the first error, so that a report reads as what it writes.
type writer struct {
	w   io.Writer
	err error
}

func (w *writer) line(format string, args ...any) {
	if w.err == nil {
		_, w.err = fmt.Fprintf(w.w, format+"\n", args...)
	}
}

func (w *writer) listing(heading string, l listing) {
	if len(l.rows) == 0 {
		return
	}
	w.line("\n%s", heading)
	if w.err == nil {
		w.err = l.text(w.w)
	}
}

// Summary writes what matters before the trip: what to buy, what it costs,
// what will be left, what is missing, and at which stops or marks the boards are
// crosscut. The error is that of w.
func Summary(to io.Writer, p *cutplan.Plan, o Options) error {
	w := &writer{w: to}
	w.line("%s", title(p))
	if !p.Complete() {
		w.line("\n%s", missing(p))
	}
	if len(p.Buy) > 0 {
		w.listing("Buy", shoppingList(p, o.Ruler))
	}
	w.line("\n%s", proof(p))
	for _, s := range shares(p.Totals) {
		w.line("%s", s)
	}
	if c := cover(p); c != "" {
		w.line("%s", c)
	}
	w.listing("Take from what is on hand", fromTheRack(p, o.Ruler))
	w.listing("Keep", kept(p, o.Ruler))
	w.listing("Could not be cut", unplaced(p, o.Ruler))
	w.listing("Stops for the boards", stopList(p, o.Ruler))
	w.listing("Marks on the boards", markList(p, o.Ruler))
	return w.err
}

// PartList writes the parts of a job, the cutting bill, and for derived parts
// how each size came about. The error is that of to.
func PartList(to io.Writer, j stock.Job, o Options) error {
	w := &writer{w: to}
	name := j.Title
	if name == "" {
		name = "Part list"
	}
	w.line("%s", name)
	bill := make([]cutplan.Blank, len(j.Parts))
	for i, b := range j.Blanks() {
		bill[i] = cutplan.Blank{Blank: b}
	}
	w.listing("Parts", partList(bill, o.Ruler))
	if o.Case != nil {
		w.listing("The case", caseSizes(o.Case, o.Ruler))
		w.listing("Openings", caseOpenings(o.Case, o.Ruler))
	}
	w.listing("How the sizes came about", derivations(j.Parts, o.Ruler))
	if o.Case != nil && len(o.Case.Cautions) > 0 {
		w.line("\nCautions")
		for _, c := range o.Case.Cautions {
			w.line("  %s: %s", c.Subject, c.Text)
		}
		w.line("  %s", deferral)
	}
	return w.err
}

// partList is the cutting bill without marks, which only a plan gives, but with
// grain and origin.
func partList(bill []cutplan.Blank, r stock.Ruler) listing {
	unit := unit(r)
	l := listing{columns: []heading{
		{"part", words}, {"count", figures}, {"finished" + unit, sizes}, {"cut to" + unit, sizes},
		{"material", words}, {"grain", words}, {"allowances", words}, {"from", words},
	}}
	for _, b := range bill {
		l.add(b.Part.Name, strconv.Itoa(b.Part.Count), partSize(b.Part, r), blankSize(b, r),
			b.Part.Material, b.Part.Grain.String(), allowances(b, r), b.Part.From)
	}
	return l.withNotes(bill)
}

func caseSizes(c *casework.Case, r stock.Ruler) listing {
	l := listing{columns: []heading{{"size", words}, {"how" + unit(r), words}}}
	for _, s := range c.Sizes {
		l.add(s.Dimension, s.Sum.Print(r))
	}
	return l
}

func caseOpenings(c *casework.Case, r stock.Ruler) listing {
	l := listing{columns: []heading{
		{"bay", figures}, {"opening", figures}, {"width", figures}, {"height", figures}, {"depth", figures}, {"holds", words},
	}}
	for _, s := range c.Openings {
		l.add(strconv.Itoa(s.Bay), strconv.Itoa(s.Number), r.Print(s.Width), r.Print(s.Height), r.Print(s.Depth), s.Holds)
	}
	return l
}

func derivations(parts []stock.Part, r stock.Ruler) listing {
	l := listing{columns: []heading{{"part", words}, {"size", words}, {"how" + unit(r), words}}}
	for _, p := range parts {
		for _, d := range p.How {
			l.add(p.Name, d.Dimension, d.Sum.Print(r))
		}
	}
	return l
}
