package report

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"sawbill/nest/cutplan"
	"sawbill/report/internal/label"
	"sawbill/report/internal/paper"
	"sawbill/stock"
)

// aboutLabels stands over each page of them.
const aboutLabels = "Print these pages on one side only. Cut them apart along the lines. Fix each label to its piece with the arrow along the grain, " +
	"clear of the edges that are milled. The bold line of the small picture is the edge named there; a second line beside an edge is edging."

// labelPages are labels for all pieces, in the order in which they are cut, and
// then for the offcuts to keep.
func labelPages(b *paper.Book, p *cutplan.Plan, names offcutNames, o Options) {
	all := labels(p, names, o)
	if len(all) == 0 {
		return
	}
	for i := range all {
		all[i].Job, all[i].Plan = title(p), names.code
		if len(o.WhatIf) > 0 {
			all[i].Job = "what if: " + all[i].Job
		}
	}
	if g := o.Labels; g.Columns > 0 {
		size := o.Paper.size()
		of := func(l stock.Length) float64 { return float64(l) / float64(stock.Millimeter) }
		grid := label.Grid{Columns: g.Columns, Rows: g.Rows, Width: size.Width, Height: size.Height, Sides: of(g.SideMargin), Top: of(g.TopMargin),
			ColumnGap: of(g.ColumnGap), RowGap: of(g.RowGap), Sheet: true}
		for _, page := range grid.Pages(all) {
			b.Sheet(page)
		}
		return
	}
	b.Page("labels")
	b.Paragraph(aboutLabels)
	for i, page := range label.New(b.Width(), b.Room()-hair).Pages(all) {
		if i > 0 {
			b.Need(b.Height()) // a full page: the last one may leave room
			b.Paragraph(aboutLabels)
		}
		b.Picture(page)
	}
}

// hair keeps a full page from being turned by rounding, mm.
const hair = 0.1

// labels are those of the parts and those of the offcuts.
func labels(p *cutplan.Plan, names offcutNames, o Options) []label.Label {
	w := labelWriter{plan: p, names: names, ruler: o.Ruler, places: newPlaces(o.Case, p.Bill), told: make([]int, len(p.Bill))}
	eachPiece(p, w.add)
	for _, e := range p.Estimates {
		for _, wanted := range e.Blanks {
			for range wanted.Count {
				across := p.Bill[wanted.Blank].Part.Grain == stock.GrainWidth
				w.part(wanted.Blank, roughThickness(p, wanted.Blank), "from "+lumber(e.Rough), grainOf(stock.GrainLength, across))
			}
		}
	}
	return append(w.parts, w.offcuts...)
}

// roughThickness is the least thickness that a blank comes from, where it is of lumber
// whose boards are not known.
func roughThickness(p *cutplan.Plan, blank int) stock.Length {
	if all := p.Thicknesses()[blank]; len(all) > 0 {
		return all[0]
	}
	return p.Bill[blank].Thickness
}

// freed is a piece of a layout and the number of the cut that frees it, 0 where
// none does.
type freed struct {
	cutplan.Node
	cut int
}

// freedIn lists the parts and offcuts of a layout in the order in which they come
// off.
func freedIn(p *cutplan.Plan, layout int) []freed {
	type corner struct{ x, y stock.Length }
	cut := make(map[corner]int)
	for _, r := range p.StepRows(layout) {
		for _, h := range r.Pieces {
			for _, c := range h.Cuts {
				for _, n := range []*cutplan.Node{c.Off.Node, c.Left.Node} {
					if n != nil && n.Use != cutplan.Split {
						cut[corner{n.X, n.Y}] = c.Number
					}
				}
			}
		}
	}
	var all []freed
	for _, n := range p.Layouts[layout].Leaves() {
		if n.Use == cutplan.Part || n.Use == cutplan.Offcut {
			all = append(all, freed{n, cut[corner{n.X, n.Y}]})
		}
	}
	slices.SortStableFunc(all, func(a, b freed) int { return cmp.Compare(a.cut, b.cut) })
	return all
}

// origin is where a piece comes from: of a layout that is cut several times, from
// which of the copies.
type origin struct {
	layout, copy int
	freed
}

// words are "layout 2, sheet 1 of 3, cut 7".
func (o origin) words(l cutplan.Layout) string {
	said := "layout " + strconv.Itoa(o.layout+1)
	if l.Repeat > 1 {
		said += fmt.Sprintf(", %s %d of %d", kindWord(l.Stock), o.copy+1, l.Repeat)
	}
	if o.cut > 0 {
		said += ", cut " + strconv.Itoa(o.cut)
	}
	return said
}

// labelWriter words labels.
type labelWriter struct {
	plan           *cutplan.Plan
	names          offcutNames
	ruler          stock.Ruler
	places         *places
	told           []int // labels so far, by blank
	parts, offcuts []label.Label
}

func (w *labelWriter) add(o origin) {
	n, l := o.freed, w.plan.Layouts[o.layout]
	where := o.words(l)
	if n.Use == cutplan.Part {
		w.part(n.Blank, l.Stock.Thickness, where, grainOf(l.Stock.Grain, n.Turned))
		return
	}
	w.offcuts = append(w.offcuts, label.Label{
		Mark: "keep", Name: w.names.each(located{o.layout, &n.Node})[o.copy], Where: where, Fill: "date",
		Cut:   w.ruler.Size(n.Length, n.Width) + " x " + w.ruler.Print(l.Stock.Thickness),
		Lines: []string{l.Stock.Material}, Piece: label.Piece{Grain: grainOf(l.Stock.Grain, false)},
	})
}

// grainOf is how the grain runs along a piece that is cut from stock, its length
// across that of the stock if it is turned.
func grainOf(in stock.Grain, turned bool) label.Grain {
	switch {
	case in == stock.GrainAny || in == stock.GrainUnknown:
		return label.NoGrain
	case (in == stock.GrainLength) != turned:
		return label.Along
	}
	return label.Across
}

// part adds the label of the next piece of a blank, from stock of a thickness.
func (w *labelWriter) part(blank int, thickness stock.Length, where string, grain label.Grain) {
	b := w.plan.Bill[blank]
	w.told[blank]++
	at := w.places.next(b)
	sawn := sawnSize(b, []stock.Length{thickness}, w.ruler)
	l := label.Label{
		Mark: b.Mark, Name: b.Name(), Of: fmt.Sprintf("%d of %d", w.told[blank], b.Count), Where: where,
		Cut: "cut to " + sawn, Finished: "finished " + partSize(b.Part, w.ruler),
		Piece: label.Piece{Grain: grain, Edge: at.edge, End: at.end, Inside: at.inside, Edged: at.edged},
		Next:  w.next(b, thickness, at),
	}
	if b.Gang*b.Layers > 1 {
		l.Finished += " each"
	}
	if b.Length == b.Part.Length && b.Width == b.Part.Width && b.Thickness == b.Part.Thickness {
		l.Cut, l.Finished = sawn, ""
	}
	l.Lines = w.remarks(b, at, l.Finished == "")
	w.parts = append(w.parts, l)
}

// next is what is done with a blank after it is cut: the first step of its milling, or what
// is laid out on it first.
func (w *labelWriter) next(b cutplan.Blank, thickness stock.Length, at place) string {
	said := ""
	if steps := b.Milling(thickness); len(steps) > 0 {
		first := 0
		if steps[0].Operation == stock.SquareEnd && len(steps) > 1 { // which has no setting
			first = 1
		}
		said = millingSteps(steps[first:first+1], w.ruler)
	} else if len(at.marks) > 0 {
		said = "lay out " + at.marks[0]
	}
	switch {
	case said == "":
		return ""
	case b.Part.DryFit:
		return "next: dry fit, then " + said
	}
	return "next: " + said
}

// remarks are what else is to be known of a piece, the weightiest first.
func (w *labelWriter) remarks(b cutplan.Blank, at place, asCut bool) []string {
	said := []string{strings.Join(append([]string{b.Part.Material}, at.into...), "; ")}
	add := func(s string) {
		if s != "" {
			said = append(said, s)
		}
	}
	if b.Spare > 0 {
		add(fmt.Sprintf("holds %d wanted and %d spare", b.Holds(), b.Spare))
	}
	if asCut {
		add("finished as cut")
	}
	add(note(b.Part))
	if at.face != "" && !at.inside { // of the inside the picture tells
		add("label on the " + at.face)
	}
	if len(at.edging) > 0 {
		edges := make([]string, len(at.edging))
		for i, e := range at.edging {
			edges[i] = e.String()
		}
		add("edging on: " + strings.Join(edges, ", "))
	}
	if at.marks != nil {
		add("lay out: " + strings.Join(at.marks, ", "))
	}
	return said
}
