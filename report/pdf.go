package report

import (
	"fmt"
	"slices"

	"sawbill/nest/cutplan"
	"sawbill/report/internal/drawing"
	"sawbill/report/internal/marksheet"
	"sawbill/report/internal/paper"
	"sawbill/stock"
)

// PDF is the plan to take along, in the order of the work: what to buy on the
// first page, the cutting bill, labels, cautions, a diagram and its steps for
// every layout, the setups of them all, the milling, and what a case design tells.
//
// The warnings name characters that the page's fonts lack. The error is the PDF
// writer's own; no plan should cause one.
func PDF(p *cutplan.Plan, o Options) ([]byte, []string, error) {
	laid := lay(p, o)
	data, err := drawing.PDF(laid)
	if err != nil {
		return nil, nil, fmt.Errorf("writing the PDF: %w", err)
	}
	return data, warnings(laid.Pages), nil
}

func title(p *cutplan.Plan) string {
	if p.Job.Title == "" {
		return "Cutting plan"
	}
	return p.Job.Title
}

// aboutSizes says how sizes are to be read.
func aboutSizes(r stock.Ruler) string {
	return "Sizes in " + unitName(r) + ": length x width x thickness. ≈ marks a rounded figure."
}

// lay lays out the whole document.
func lay(p *cutplan.Plan, o Options) drawing.Document {
	r := o.Ruler
	names := namesOf(p, Identity(p, o))
	b := paper.New(o.Paper.size(), title(p), names.code, aboutSizes(r))
	b.Note(whatIf(o))
	frontPage(b, p, names, o)
	lieFor(b, billTable(p, r))
	billPage(b, p, r)
	b.Lie(false)
	b.Part("Labels")
	labelPages(b, p, names, o)
	b.Part("")
	cautionPage(b, p, o)
	b.Part("Layouts")
	layoutPages(b, p, names, r)
	b.Part("")
	setupPage(b, p, names, r)
	millingPage(b, p, r)
	if o.Rest == nil {
		casePages(b, p, o)
		takeoffPage(b, o)
	} else if o.Case != nil {
		paperMarks(b, p, o.remaining(p))
	}
	laid := b.Close()
	laid.Title = withWhatIf(laid.Title, o)
	laid.Keywords = keywords(p)
	return laid
}

// keywords are what the document is looked for by: its kind, and the materials.
func keywords(p *cutplan.Plan) []string {
	words := []string{"cutting plan"}
	for _, l := range p.Layouts {
		if !slices.Contains(words, l.Stock.Material) {
			words = append(words, l.Stock.Material)
		}
	}
	return words
}

// billPage lists the blanks.
func billPage(b document, p *cutplan.Plan, r stock.Ruler) {
	b.Page("cutting bill")
	b.Heading("Cutting bill")
	b.Table(billTable(p, r))
}

func billTable(p *cutplan.Plan, r stock.Ruler) paper.Table {
	bill := cuttingBill(p, r).table()
	bill.Size = 8.5 // it has many columns
	return bill
}

// casePages show a case design, and how it is put together.
func casePages(b *paper.Book, p *cutplan.Plan, o Options) {
	if o.Case == nil {
		return
	}
	elevationPage(b, p.Bill, o)
	paperMarks(b, p, o)
	caseTables(b, p, o)
}

// paperMarks draw what is laid out on the parts.
func paperMarks(b *paper.Book, p *cutplan.Plan, o Options) {
	markPages(b, p.Bill, o, func(row marksheet.Row) {
		b.Picture(row.Drawing)
		b.Space(marksheet.RowGap)
	})
}

// caseTables tell how a case is put together, and what led to its sizes.
func caseTables(b document, p *cutplan.Plan, o Options) {
	b.Page("the case")
	assemblyPage(b, o.Case, p.Bill, o.Ruler)
	b.Heading("Sizes of the case")
	b.Table(caseOpenings(o.Case, o.Ruler).table())
	b.Table(caseSizes(o.Case, o.Ruler).table())
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
