package report

import (
	"sawbill/nest/cutplan"
	"sawbill/report/internal/elevation"
	"sawbill/report/internal/webpage"
	"sawbill/stock"
)

// HTML is the plan as one page for a screen in the shop, which asks for no other
// file: the words, tables and pictures of [PDF], with boxes to tick off what is
// done. The identity tells the plan from others of the same title, on the page
// and where its ticks are kept.
func HTML(p *cutplan.Plan, o Options, identity string) []byte {
	r := o.Ruler
	b := webpage.New(title(p), identity, aboutSizes(r))
	frontPage(b, p, o)
	billPage(b, p, r)
	millingPage(b, p, r)
	if o.Case != nil {
		caseTables(b, o)
		elevationFigures(b, p, o)
		assemblyPage(b, o.Case, p.Bill, r)
		markPages(b, o)
	}
	layoutSections(b, p, r)
	takeoffPage(b, o)
	cautionPage(b, p, o)
	return b.Bytes()
}

var _ document = (*webpage.Page)(nil)

// elevationFigures show the case from each side in a picture of its own, as large
// as it goes.
func elevationFigures(b *webpage.Page, p *cutplan.Plan, o Options) {
	s := drawn(p.Bill, o)
	if !s.Drawable() {
		return
	}
	b.Page("elevations")
	b.Heading("Elevations")
	b.Paragraph(aboutElevations)
	for _, v := range elevation.Views {
		d, scale := s.Fit(v, elevationWidth, elevationHeight)
		b.Figure(d, title(p)+", "+v.Name()+", "+elevation.ScaleText(scale), aboutElevations)
	}
}

// layoutSections show each layout with its steps.
func layoutSections(b *webpage.Page, p *cutplan.Plan, r stock.Ruler) {
	afterBoard := false
	last := lastBoard(p)
	for i, l := range p.Layouts {
		board := l.Stock.Kind == stock.Board
		if !board || !afterBoard {
			b.Page("layouts")
		}
		b.Heading(layoutHeading(l, i, r))
		facts := layoutFacts(p, l, r)
		b.Paragraph(facts)
		for _, said := range []string{planing(p, l, r), cutLater(p, l)} {
			if said != "" {
				b.Paragraph(said)
			}
		}
		if board && !afterBoard {
			b.Paragraph(aboutMarks)
		}
		afterBoard = board
		picture := layoutPicture(p, i, r)
		b.Figure(picture.Drawing, layoutName(l, i, r), facts)
		steps := p.Steps(l)
		notes(b, picture, steps)
		b.Table(key(p, picture.Short, r))
		if len(steps) == 0 {
			b.Paragraph("No cut is needed.")
		}
		b.Table(stepTable(p, l, steps, r))
		if stops := stopTable(p, r); i == last && len(stops.Rows) > 0 {
			writeStops(b, stops)
		}
	}
}
