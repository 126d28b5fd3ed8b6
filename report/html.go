package report

import (
	"slices"
	"strings"

	"sawbill/nest/cutplan"
	"sawbill/report/internal/diagram"
	"sawbill/report/internal/drawing"
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
	if o.Folder != "" {
		b.Reports("sawbill progress " + shellWord(o.Folder))
	}
	frontPage(b, p, names, o)
	whatIsLeft(b, p, names, r)
	billPage(b, p, r)
	cautionPage(b, p, o)
	layoutSections(b, p, names, o)
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
func layoutSections(b *webpage.Page, p *cutplan.Plan, names offcutNames, o Options) {
	r, lie := o.Ruler, liesOf(p, o.Case)
	afterBoard := false
	for i, l := range p.Layouts {
		board := l.Stock.Kind == stock.Board
		if !board || !afterBoard {
			b.Page("layouts")
		}
		if m, ok := boardMap(p, i, r); ok {
			b.Heading(mapName(l.Stock))
			b.Figure(webpage.Figure{Name: mapName(l.Stock), Description: aboutMap, Wide: m.Draw(b.Width()), Narrow: m.Draw(webpage.Narrow)})
			b.Paragraph(aboutMap)
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
		layoutFigure(b, p, i, names, lie, r)
		steps := p.Steps(l)
		if len(steps) == 0 {
			b.Paragraph("No cut is needed.")
		}
		b.Table(stepTable(p, i, names, r))
		for _, said := range heed(p, l, steps, r) {
			b.Paragraph(said)
		}
	}
}

// layoutFigure draws layout i and tells what the drawings leave out.
func layoutFigure(b *webpage.Page, p *cutplan.Plan, i int, names offcutNames, lie lies, r stock.Ruler) {
	l, v := p.Layouts[i], view(p, i, names, lie, r)
	v.Brief = true
	narrow := diagram.New(v, webpage.Narrow, narrowHigh)
	v.Brief = false
	picture := diagram.New(v, b.Width(), layoutHigh)
	b.Figure(webpage.Figure{
		Name:        layoutName(l, i, r),
		Description: layoutFacts(p, l, r),
		Wide:        picture.Drawing,
		Narrow:      narrow.Drawing,
		Stays:       len(v.Steps) > 0,
		WideShapes:  shapes(p, i, picture.Stock), NarrowShapes: shapes(p, i, narrow.Stock),
	})
	picture.Unnamed = max(picture.Unnamed, narrow.Unnamed)
	notes(b, picture, v.Steps)
	short := append(slices.Clone(picture.Short), narrow.Short...)
	slices.Sort(short)
	b.Table(key(p, slices.Compact(short), r))
}

// shapes are the pieces and the cuts of layout i on a drawing of its stock.
func shapes(p *cutplan.Plan, i int, on drawing.Rect) []webpage.Shape {
	const lineWide = 1.2 // mm
	l := p.Layouts[i]
	x := func(at stock.Length) float64 { return on.X + on.W*float64(at)/float64(l.Stock.Length) }
	y := func(at stock.Length) float64 { return on.Bottom() - on.H*float64(at)/float64(l.Stock.Width) }
	var all []webpage.Shape
	for _, n := range freedIn(p, i) {
		if n.cut > 0 {
			place := drawing.Rect{X: x(n.X), Y: y(n.Y + n.Width), W: x(n.X+n.Length) - x(n.X), H: y(n.Y) - y(n.Y+n.Width)}
			all = append(all, webpage.Shape{Rect: place, Keys: keysOf(p, cutOf{i, n.cut})})
		}
	}
	kerf := p.Job.Saw.Kerf
	for _, s := range p.Steps(l) {
		line := webpage.Shape{Line: true, Keys: keysOf(p, cutOf{i, s.Number})}
		if s.Cut == cutplan.Rip {
			at := min(max(y(s.Y+kerf/2), on.Y), on.Bottom())
			line.Rect = drawing.Rect{X: x(s.X), Y: at - lineWide/2, W: x(s.X+s.Run) - x(s.X), H: lineWide}
		} else {
			at := min(max(x(s.X+kerf/2), on.X), on.Right())
			line.Rect = drawing.Rect{X: at - lineWide/2, Y: y(s.Y + s.Run), W: lineWide, H: y(s.Y) - y(s.Y+s.Run)}
		}
		all = append(all, line)
	}
	return all
}

// shellWord is s as one word of a command line.
func shellWord(s string) string {
	plain := func(r rune) bool {
		return r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r >= '0' && r <= '9' || strings.ContainsRune("-_./:\\~", r) || r > 127
	}
	if strings.IndexFunc(s, func(r rune) bool { return !plain(r) }) < 0 {
		return s
	}
	if !strings.ContainsAny(s, "\"$`!") {
		return `"` + s + `"` // all shells take these quotes
	}
	return "'" + strings.ReplaceAll(s, "'", `'\''`) + "'"
}
