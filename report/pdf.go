package report

import (
	"fmt"

	"sawbill/nest/cutplan"
	"sawbill/report/internal/drawing"
	"sawbill/report/internal/paper"
)

// PDF is the plan to take along: what to buy on the first page, the cutting
// bill, a diagram and its steps for every layout, the setups of them all, and the
// cautions.
//
// The warnings name characters that the page's fonts lack. The error is the PDF
// writer's own; no plan should cause one.
func PDF(p *cutplan.Plan, o Options) ([]byte, []string, error) {
	pages := pages(p, o)
	data, err := drawing.PDF(title(p), pages)
	if err != nil {
		return nil, nil, fmt.Errorf("writing the PDF: %w", err)
	}
	return data, warnings(pages), nil
}

func title(p *cutplan.Plan) string {
	if p.Job.Title == "" {
		return "Cutting plan"
	}
	return p.Job.Title
}

// pages lays out the whole document.
func pages(p *cutplan.Plan, o Options) []drawing.Drawing {
	r := o.Ruler
	b := paper.New(o.Paper.size(), title(p), "Sizes in "+unitName(r)+": length x width x thickness. ≈ marks a rounded figure.")
	names := namesOf(p, "")
	frontPage(b, p, names, o)
	b.Page("cutting bill")
	b.Heading("Cutting bill")
	bill := cuttingBill(p, r).table()
	bill.Size = 8.5 // it has many columns
	b.Table(bill)
	millingPage(b, p, r)
	casePages(b, p, o)
	layoutPages(b, p, names, r)
	setupPage(b, p, names, r)
	takeoffPage(b, o)
	cautionPage(b, p, o)
	return b.Pages()
}

// frontPage answers what to buy and what it costs.
func frontPage(b *paper.Book, p *cutplan.Plan, names offcutNames, o Options) {
	r := o.Ruler
	b.Page("what to buy")
	b.Title(title(p))
	if !p.Complete() {
		b.Strong(missing(p))
		b.Table(unplaced(p, r).table())
	}
	if len(p.Buy) > 0 || len(p.Estimates) == 0 {
		b.Heading("Buy")
	}
	if len(p.Buy) > 0 {
		t := shoppingList(p, r).table()
		t.Size = 11
		t.Columns[0].Size, t.Columns[0].Face = 16, drawing.Bold
		b.Table(t)
	}
	b.Strong(proof(p))
	for _, line := range shares(p.Totals) {
		b.Paragraph(line)
	}
	if c := cover(p); c != "" {
		b.Paragraph(c)
	}
	if len(p.Estimates) > 0 {
		b.Heading(estimatesHeading)
		b.Table(estimates(p).table())
		for _, n := range estimateNotes(p, r) {
			b.Paragraph(n)
		}
	}
	if rack := fromTheRack(p, r); len(rack.rows) > 0 {
		b.Heading("Take from what is on hand")
		b.Table(rack.table())
	}
	if offcuts := kept(p, names, r); len(offcuts.rows) > 0 {
		b.Heading("Keep")
		b.Table(offcuts.table())
	}
}

// casePages shows the sizes of a case design and what led to them, and how it is
// put together.
func casePages(b *paper.Book, p *cutplan.Plan, o Options) {
	if o.Case == nil {
		return
	}
	b.Heading("The case")
	b.Table(caseSizes(o.Case, o.Ruler).table())
	b.Table(caseOpenings(o.Case, o.Ruler).table())
	elevationPage(b, p.Bill, o)
	assemblyPage(b, o.Case, p.Bill, o.Ruler)
	markPages(b, o)
}

// warnings names what the fonts lack.
func warnings(pages []drawing.Drawing) []string {
	var all drawing.Drawing
	for _, p := range pages {
		all.Place(drawing.Drawing{Missing: p.Missing}, drawing.Point{})
	}
	if len(all.Missing) == 0 {
		return nil
	}
	return []string{fmt.Sprintf("plan.pdf: the font lacks the characters %q; %q is printed for each", string(all.Missing), drawing.Replacement)}
}
