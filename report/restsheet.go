package report

import (
	"fmt"

	"sawbill/nest/cutplan"
	"sawbill/report/internal/paper"
	"sawbill/stock"
)

// sheetPages are the sets of which a sheet of the rest is made.
const sheetPages = StorePages | SawPages | BenchPages

// sheetOf is one sheet of paper with all that the rest of a plan takes: one side for the
// saw, the other for the bench if the parts are milled or marked. It is nil if that takes
// more. The diagrams leave as much of the page as what follows them needs.
func sheetOf(p *cutplan.Plan, names offcutNames, o Options, begin func() *paper.Book) *paper.Book {
	if o.Rest == nil || !o.Pages.has(StorePages) || !o.Pages.has(SawPages) || !o.Pages.has(BenchPages) {
		return nil
	}
	layouts := layoutSectionsOf(p)
	for behind := range 4 {
		b := begin()
		frontPage(b, p, names, o)
		restBill(b, p, o)
		b.Share(layouts + behind)
		layoutPages(b, p, names, o)
		b.Share(0)
		b.Join(func(on *paper.Book) { restCautions(on, p, o) })
		if b.Pages() > 1 {
			continue
		}
		restBench(b, p, o)
		if b.Pages() <= 2 {
			return b
		}
	}
	return nil
}

// restBill lists the blanks that are still to be cut, below what they are cut from.
func restBill(b *paper.Book, p *cutplan.Plan, o Options) {
	b.Heading(billHeading)
	b.Table(paperBill(p, o.Ruler))
}

// restCautions tells what to mind at the cuts; the pages of the plan before say the rest.
func restCautions(b *paper.Book, p *cutplan.Plan, o Options) {
	b.Page("cautions")
	b.Heading(cautionsHeading)
	b.Items(inThisPlan(p))
	b.Paragraph(fmt.Sprintf("The cautions of plan %s hold for these cuts too. %s", o.Rest.Of, deferral))
}

// restBench tells what is milled, and what is laid out on the parts of a case.
func restBench(b *paper.Book, p *cutplan.Plan, o Options) {
	b.Join(func(on *paper.Book) { millingPage(on, p, o.Ruler) })
	if o.Case != nil {
		b.Join(func(on *paper.Book) { paperMarks(on, p, o.remaining(p)) })
	}
}

// layoutSectionsOf counts the sections that the layouts of a plan begin: one for each
// sheet that is cut, one for the boards and one for the stock that stays whole.
func layoutSectionsOf(p *cutplan.Plan) int {
	sheets, boards, kept := 0, 0, 0
	for _, l := range p.Layouts {
		switch {
		case staysWhole(l):
			kept = 1
		case l.Stock.Kind == stock.Board:
			boards = 1
		default:
			sheets++
		}
	}
	return sheets + boards + kept
}
