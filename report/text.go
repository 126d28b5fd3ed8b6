package report

import (
	"fmt"
	"io"
	"slices"
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
// what will be left, what is missing, which layouts hold the parts, and in which
// order and at which settings and marks all is cut. The error is that of w.
func Summary(to io.Writer, p *cutplan.Plan, o Options) error {
	w, names := &writer{w: to}, namesOf(p, Identity(p, o))
	w.line("%s", captionStart(p, names.code, o))
	for _, said := range restNotes(o) {
		w.line("%s", said)
	}
	if !p.Complete() {
		w.line("\n%s", missing(p))
	}
	for _, said := range waiting(p, o) {
		w.line("%s", said)
	}
	lists := planLists(p, o)
	for _, list := range lists {
		w.listing(list.heading(), list.list(o.Ruler))
		w.instead(list)
	}
	if said := paid(lists); said != "" {
		w.line("\n%s", said)
	}
	if len(p.AtSeller) > 0 {
		w.line("\n%s", aboutAtSeller(p, o.Ruler))
	}
	w.line("\n%s", proof(p))
	if said := haul(p, o.Ruler); said != "" {
		w.line("%s", said)
	}
	for _, s := range shares(p.Totals) {
		w.line("%s", s)
	}
	if c := cover(p); c != "" {
		w.line("%s", c)
	}
	for _, said := range warningsOf(o) {
		w.line("%s", said)
	}
	w.listing(estimatesHeading, estimates(p.Estimates))
	for _, n := range estimateNotes(p, o.Ruler) {
		w.line("  %s", n)
	}
	if ways := waysToSave(o); len(ways) > 0 {
		w.line("\n%s", waysHeading)
		for _, said := range ways {
			w.line("  %s", said)
		}
	}
	w.listing("Take from what is on hand", fromTheRack(p, o.Ruler))
	w.listing("Keep", kept(p, names, o.Ruler))
	w.listing("Could not be cut", unplaced(p, o.Ruler))
	w.listing("Where each part is cut", whereCut(p, o.Ruler))
	w.listing("Setups", setupList(p, names, o.Ruler))
	if said := savings(p); said != "" {
		w.line("  %s", said)
	}
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
	w.line("%s", withWhatIf(name, o))
	var bill []cutplan.Blank
	for _, b := range j.Blanks() {
		bill = append(bill, cutplan.Blank{Blank: b})
	}
	w.listing("Parts", partList(bill, o.Ruler))
	if o.Case != nil {
		w.listing("The case", caseSizes(o.Case, o.Ruler))
		w.listing("Openings", caseOpenings(o.Case, o.Ruler))
		w.listing("Storage above the drawers' bottoms", storage(o.Case.Storage, o.Ruler))
		assemblyText(w, o.Case, bill, o.Ruler)
	}
	w.listing("How the sizes came about", derivations(j.Parts, o.Ruler))
	w.listing("How the blanks came about", blankDerivations(bill, o.Ruler))
	if o.Case != nil {
		w.listing(marksHeading, caseMarks(o.Case, o.Ruler))
	}
	from := sourcesOf(j, bill)
	if l := milling(bill, from, o.Ruler).withoutMarks(); len(l.rows) > 0 {
		w.listing("Milling", l)
		for _, caution := range millingCautions(bill, from) {
			w.line("  %s", caution)
		}
		w.line("  %s", deferral)
	}
	w.caseTakes(o)
	w.caseChecks(o)
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
// grain and origin. It counts parts, and tells in how many blanks they are cut
// where these hold several.
func partList(bill []cutplan.Blank, r stock.Ruler) listing {
	unit := unit(r)
	l := listing{columns: []heading{
		{"part", words}, {"count", figures}, {"finished" + unit, sizes}, {"cut to" + unit, sizes},
		{"material", words}, {"grain", words}, {"allowances", words}, {"from", words},
	}}
	for _, b := range bill {
		l.add(b.Part.Name, strconv.Itoa(b.Count*b.Holds()), partSize(b.Part, r), blankSize(b, r),
			b.Part.Material, b.Part.Grain.String(), allowances(b, r), b.Part.From)
	}
	l = l.withNotes(bill)
	if !slices.ContainsFunc(bill, func(b cutplan.Blank) bool { return b.Gang*b.Layers > 1 }) {
		return l
	}
	at := 3 // before "cut to"
	l.columns = slices.Insert(l.columns, at, heading{"blanks", words})
	for i, b := range bill {
		l.rows[i] = slices.Insert(l.rows[i], at, inBlanks(b))
	}
	return l
}

// inBlanks tells in how many pieces parts are cut: "2 gangs of 3".
func inBlanks(b cutplan.Blank) string {
	said := counted(b.Count, "blank")
	if b.Gang > 1 {
		said = fmt.Sprintf("%s of %d", counted(b.Count, "gang"), b.Gang)
	}
	if b.Layers > 1 {
		said += fmt.Sprintf(" to resaw into %d", b.Layers)
	}
	if b.Spare > 0 {
		said += fmt.Sprintf(", %d spare", b.Spare)
	}
	return said
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

// blankDerivations tells of the blanks that are more than a part with what its
// edges, faces and ends need.
func blankDerivations(bill []cutplan.Blank, r stock.Ruler) listing {
	l := listing{columns: []heading{{"blank", words}, {"size", words}, {"how" + unit(r), words}}}
	for _, b := range bill {
		plain := b.Part.Blank(stock.Board)
		if b.Gang*b.Layers == 1 && b.Length == plain.Length && b.Part.Allowance.Miters == 0 {
			continue
		}
		for _, d := range b.How {
			l.add(b.Name(), d.Dimension, d.Sum.Print(r))
			if n := len(l.rows); slices.ContainsFunc(l.rows[:n-1], func(row []string) bool { return slices.Equal(row, l.rows[n-1]) }) {
				l.rows = l.rows[:n-1] // alike but for what is spare
			}
		}
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
