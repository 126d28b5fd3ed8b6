package report

import (
	"sawbill/nest/cutplan"
	"sawbill/report/internal/diagram"
	"sawbill/report/internal/paper"
	"sawbill/stock"
)

// manySheets is how many sheets a job cuts at least where the shop goes by setups: each
// setting of the fence then serves several sheets. Common practice, no source.
const manySheets = 8

// setupsLead reports whether the pages for the saw are the setups, with a diagram of each
// layout behind them. With few sheets they are the layouts, with their steps.
func setupsLead(p *cutplan.Plan) bool {
	sheets := 0
	for _, l := range p.Layouts {
		if l.Stock.Kind == stock.Sheet && !staysWhole(l) {
			sheets += l.Repeat
		}
	}
	return sheets >= manySheets
}

const aboutLead = "This job cuts many sheets, so the setups before this page lead: each serves all layouts that it names. The diagrams show the cuts by their numbers. With --pages layouts each layout has steps of its own."

// halfDiagram is the share of a page's height that a diagram takes where two share a page.
const halfDiagram = 0.3

// diagramPages draw the layouts without their steps, several to a page.
func diagramPages(b *paper.Book, p *cutplan.Plan, names offcutNames, o Options) {
	r, lie := o.Ruler, liesOf(p, o.Case)
	b.Lie(false)
	b.Page("diagrams")
	b.Heading("Diagrams")
	b.Paragraph(aboutLead)
	b.Paragraph(aboutLines(o.Case) + " " + pencil)
	if boards := boardViews(p, names, lie, r); boards != nil {
		b.Picture(diagram.BoardSigns(boards, b.Width()))
	}
	for i, l := range p.Layouts {
		if staysWhole(l) {
			continue
		}
		v := view(p, i, names, lie, r)
		picture := diagram.New(v, b.Width(), halfDiagram*b.Height())
		parts := key(p, picture.Short, r)
		mind := stepCautions(p, l, v.Steps, r)
		high := picture.Height
		m, mapped := boardMap(p, i, r)
		whole := m.Draw(b.Width())
		if mapped {
			high += whole.Height
		}
		b.Space(4)
		b.Keep(boardRoom + high + b.TableHeight(parts) + heightOf(b, mind))
		if mapped {
			b.Heading(mapName(l.Stock))
			b.Picture(whole)
			b.Paragraph(aboutMap)
		}
		b.Heading(layoutHeading(l, i, r))
		b.Paragraph(layoutFacts(p, l, r))
		say(b, afterwards(p, l, r))
		if l.Stock.Kind == stock.Board {
			for _, row := range picture.Rows {
				b.Picture(row)
			}
		} else {
			b.Picture(picture.Drawing)
		}
		b.Space(2)
		b.Table(parts)
		say(b, mind)
	}
	untouched(b, p, names, r, true)
}
