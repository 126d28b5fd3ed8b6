package report

import (
	"slices"

	"sawbill/nest/cutplan"
	"sawbill/report/internal/diagram"
	"sawbill/report/internal/elevation"
	"sawbill/report/internal/marksheet"
	"sawbill/report/internal/webpage"
	"sawbill/stock"
)

// HTML is the plan as one page for a screen in the shop, which asks for no other
// file: the words, tables and pictures of [PDF], with boxes to tick off what is
// done. The identity tells the plan from others of the same title, on the page
// and where its ticks are kept.
func HTML(p *cutplan.Plan, o Options) []byte {
	r := o.Ruler
	names := namesOf(p, Identity(p, o))
	b := webpage.New(title(p), names.code, aboutSizes(r))
	b.Note(whatIf(o))
	frontPage(b, p, names, o)
	billPage(b, p, r)
	cautionPage(b, p, o)
	layoutSections(b, p, names, r)
	setupPage(b, p, names, r)
	millingPage(b, p, r)
	switch {
	case o.Rest != nil && o.Case != nil:
		screenMarks(b, p, o.remaining(p))
	case o.Rest == nil:
		if o.Case != nil {
			elevationFigures(b, p, o)
			screenMarks(b, p, o)
			caseTables(b, p, o)
		}
		takeoffPage(b, o)
	}
	return b.Bytes()
}

// screenMarks draw what is laid out on the parts.
func screenMarks(b *webpage.Page, p *cutplan.Plan, o Options) {
	markPages(b, p.Bill, o, func(row marksheet.Row) {
		b.Figure(webpage.Figure{
			Name:   title(p) + ", " + marksHeading,
			Wide:   row.Drawing,
			Narrow: marksheet.Column(marksheet.Endless(webpage.Narrow).Rows(row.Figures)),
		})
	})
}

var _ document = (*webpage.Page)(nil)

// Height of pictures on the page, in mm. All are as wide as a printed page allows
// at most, so that their scale is true there.
const (
	elevationHigh = 115 // two of them on a printed page
	layoutHigh    = 150 // with room for steps below
	narrowHigh    = 200 // on a narrow screen
)

// elevationFigures show the case from each side in a picture of its own.
func elevationFigures(b *webpage.Page, p *cutplan.Plan, o Options) {
	s := drawn(p.Bill, o)
	if !s.Drawable() {
		return
	}
	b.Page("elevations")
	b.Heading("Elevations")
	b.Paragraph(aboutElevations)
	for _, v := range elevation.Views {
		wide, scale := s.Fit(v, b.Width(), elevationHigh)
		narrow, _ := s.Fit(v, webpage.Narrow, narrowHigh)
		b.Figure(webpage.Figure{
			Name:        title(p) + ", " + v.Name() + ", " + elevation.ScaleText(scale),
			Description: aboutElevations,
			Wide:        wide,
			Narrow:      narrow,
		})
	}
}

// layoutSections show each layout with its steps.
func layoutSections(b *webpage.Page, p *cutplan.Plan, names offcutNames, r stock.Ruler) {
	boards := boardScale(p, names, r, b.Width(), layoutHigh)
	afterBoard := false
	for i, l := range p.Layouts {
		board := l.Stock.Kind == stock.Board
		if !board || !afterBoard {
			b.Page("layouts")
		}
		b.Heading(layoutHeading(l, i, r))
		b.Paragraph(layoutFacts(p, l, r))
		for _, said := range afterwards(p, l, r) {
			b.Paragraph(said)
		}
		if board && !afterBoard {
			b.Paragraph(aboutMarks)
		}
		afterBoard = board
		layoutFigure(b, p, i, boards, names, r)
		steps := p.Steps(l)
		if len(steps) == 0 {
			b.Paragraph("No cut is needed.")
		}
		b.Table(stepTable(p, i, steps, names, r))
		for _, said := range heed(p, l, steps, r) {
			b.Paragraph(said)
		}
	}
}

// layoutFigure draws layout i and tells what the drawings leave out; boards all at
// one scale.
func layoutFigure(b *webpage.Page, p *cutplan.Plan, i, boards int, names offcutNames, r stock.Ruler) {
	l, v := p.Layouts[i], view(p, i, names, r)
	narrow := diagram.New(v, webpage.Narrow, narrowHigh)
	if l.Stock.Kind == stock.Board {
		v.Scale = boards
	}
	picture := diagram.New(v, b.Width(), layoutHigh)
	b.Figure(webpage.Figure{
		Name:        layoutName(l, i, r),
		Description: layoutFacts(p, l, r),
		Wide:        picture.Drawing,
		Narrow:      narrow.Drawing,
	})
	picture.Unnamed = max(picture.Unnamed, narrow.Unnamed)
	notes(b, picture, v.Steps)
	short := append(slices.Clone(picture.Short), narrow.Short...)
	slices.Sort(short)
	b.Table(key(p, slices.Compact(short), r))
}
