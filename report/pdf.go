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
// first page, and of the others those sets that the options ask for.
//
// The warnings name characters that the page's fonts lack. The error is the PDF
// writer's own; no plan should cause one.
func PDF(p *cutplan.Plan, o Options) ([]byte, []string, error) {
	laid := lay(p, o)
	data, err := drawing.PDF(laid)
	if err != nil {
		return nil, nil, fmt.Errorf("writing the PDF: %w", err)
	}
	return data, append(standInWarnings(p), warnings(laid.Pages)...), nil
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
	p, o = writable(p, o)
	names := namesOf(p, Identity(p, o))
	begin := func() *paper.Book {
		b := paper.New(o.Paper.size(), title(p), names.code, aboutSizes(o.Ruler))
		b.Note(whatIf(o))
		return b
	}
	b, told := sheetOf(p, names, o, begin), sheetPages
	if b == nil {
		b, told = begin(), 0
	}
	leftTold := false
	for _, of := range sections {
		if o.Pages.has(of.in) && of.in&told == 0 {
			of.lay(book{b, p, names, o, &leftTold})
		}
	}
	if b.Pages() == 0 {
		frontPage(b, p, names, o) // nothing of what was asked for is in this plan
	}
	laid := b.Close()
	laid.Title = withWhatIf(laid.Title, o)
	laid.Keywords = keywords(p)
	return laid
}

// book is what the sections are laid out from.
type book struct {
	*paper.Book
	plan  *cutplan.Plan
	names offcutNames
	Options
	leftTold *bool // what is left is told already
}

// left tells what is left, on the first page or where there is room.
func (b book) left(on *paper.Book) {
	if len(b.plan.Offcuts()) > 0 || b.plan.Cover.Parts > 0 {
		on.Page("what is left")
		whatIsLeft(on, b.plan, b.names, b.Ruler)
	}
}

// setups are the pages of the setups, where they lead or are asked for.
func (b book) setups() {
	if setupsLead(b.plan) && b.Options.Pages.has(SawPages) || b.Options.Pages.has(SetupPages) {
		setupPage(b, b.plan, b.names, b.Ruler)
	}
}

// layouts are the pages of the layouts; where setups lead, of their diagrams alone.
func (b book) layouts() {
	switch {
	case b.Options.Pages.has(LayoutPages) || b.Options.Pages.has(SawPages) && !setupsLead(b.plan):
		b.Part("Layouts")
		layoutPages(b.Book, b.plan, b.names, b.Options)
		b.Part("")
	case b.Options.Pages.has(SawPages):
		diagramPages(b.Book, b.plan, b.names, b.Options)
	}
}

// section is pages that go together.
type section struct {
	in  Pages // the sets that it is in
	lay func(book)
}

// sections are all pages, in the order of the work.
var sections = []section{
	{StorePages, func(b book) {
		frontPage(b, b.plan, b.names, b.Options)
		if *b.leftTold = b.Joins(b.left); *b.leftTold {
			b.Join(b.left)
		}
	}},
	{CasePages, func(b book) {
		if b.Case != nil && b.Rest == nil {
			elevationPage(b.Book, b.plan.Bill, b.Options)
		}
	}},
	{SawPages, func(b book) {
		if b.Rest != nil {
			b.Join(func(on *paper.Book) {
				on.Page("cutting bill")
				restBill(on, b.plan, b.Options)
			})
			b.Join(func(on *paper.Book) { restCautions(on, b.plan, b.Options) })
			if !*b.leftTold {
				b.Join(b.left)
			}
			return
		}
		bill := paperBill(b.plan, b.Ruler)
		orientFor(b.Book, bill)
		b.Page("cutting bill")
		b.Heading(billHeading)
		b.Table(bill)
		b.Lie(false)
		if !*b.leftTold {
			b.Join(b.left)
		}
		b.Join(func(on *paper.Book) { paperCautions(on, b.plan, b.Options) })
	}},
	{SawPages | LayoutPages | SetupPages, func(b book) {
		if setupsLead(b.plan) {
			b.setups()
			b.layouts()
		} else {
			b.layouts()
			b.setups()
		}
	}},
	{BenchPages, func(b book) {
		if b.Rest != nil {
			restBench(b.Book, b.plan, b.Options)
			return
		}
		b.Join(func(on *paper.Book) { millingPage(on, b.plan, b.Ruler) })
		if b.Case != nil {
			paperMarks(b.Book, b.plan, b.Options)
			b.Join(func(on *paper.Book) {
				on.Page("assembly")
				assemblyPage(on, b.Case, b.plan.Bill, b.Ruler)
			})
		}
	}},
	{StickPages, func(b book) {
		if b.Case != nil && b.Rest == nil {
			stickPages(b.Book, b.plan.Bill, b.Options)
		}
	}},
	{LabelPages, func(b book) {
		b.Part("Labels")
		labelPages(b.Book, b.plan, b.names, b.Options)
		b.Part("")
	}},
	{CheckPages, func(b book) {
		if b.Case != nil && b.Rest == nil {
			b.Page("checks")
			sizeTables(b, b.Options)
			takeoffPage(b, b.Options)
		}
	}},
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
	b.Heading(billHeading)
	b.Table(billTable(p, r))
}

const billHeading = "Cutting bill"

func billTable(p *cutplan.Plan, r stock.Ruler) paper.Table {
	bill := cuttingBill(p, r).table()
	bill.Size = 8.5 // it has many columns
	return bill
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
	sizeTables(b, o)
}

// sizeTables tell what led to the sizes of a case.
func sizeTables(b document, o Options) {
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
