package report

import (
	"slices"
	"strings"

	"sawbill/nest/cutplan"
	"sawbill/report/internal/marksheet"
	"sawbill/stock"
	"sawbill/stock/casework"
)

// marksHeading is over the marks of a case; those of crosscuts are on boards.
const marksHeading = "Marks on the parts"

// marksHead is what the heading and the words below it take, in mm.
const marksHead = 24.0

// aboutCaseMarks says how to read the figures.
const aboutCaseMarks = "Measure every position from the edge with the circle, not from the mark before. " +
	"Hatched is cut away, narrow cuts drawn wider; dashed, a panel stands. A slide begins at its wedge and lies along its line. " +
	"A wide line beside an edge is edging. Alike faces are drawn once; zigzag lines leave out a stretch."

// aboutMarksLeft says how to read the table of what the figures leave out.
const aboutMarksLeft = "What the figures have no room for, in full. " +
	"What has a width begins at its position and reaches away from the edge. Where a second edge is named below, measure from both."

// markPages draws what is laid out on the parts of a case, and lists what has no
// room in the figures; show puts a row of them in the document.
func markPages(b document, bill []cutplan.Blank, o Options, show func(marksheet.Row)) {
	if len(o.Case.Marks) == 0 {
		return
	}
	b.Page("marks on the parts")
	b.Heading(marksHeading)
	s := marksheet.Subject{Case: o.Case, Letters: billMarks(o.Case, bill), Ruler: o.Ruler}
	sheet := s.Draw(b.Width(), b.Height())
	rows := sheet.Rows(marksheet.Paper{Width: b.Width(), Height: b.Height(), Left: b.Height() - marksHead})
	if len(rows) > 0 {
		b.Paragraph(aboutCaseMarks)
	}
	for _, row := range rows {
		show(row)
	}
	if len(sheet.Left) > 0 {
		left := *o.Case
		left.Marks = sheet.Left
		b.Paragraph(aboutMarksLeft)
		b.Table(caseMarks(&left, o.Ruler).table())
	}
}

// marksInRow is how many positions stand in one row; further ones go below.
const marksInRow = 6

// caseMarks lists what is laid out on the parts. Every position is rounded by
// itself.
func caseMarks(c *casework.Case, r stock.Ruler) listing {
	l := listing{columns: []heading{
		{"part", words}, {"where", words}, {"mark", words}, {"from the", words}, {"at" + unit(r), words},
		{"wide", figures}, {"deep", figures}, {"note", words},
	}}
	part := ""
	for _, k := range c.Marks {
		name := c.Parts[k.Part].Name
		if name == part {
			name = "" // once for all of its marks
		} else {
			part = name
		}
		note := k.Note
		if k.Diameter > 0 {
			note = strings.TrimSuffix("diameter "+r.Print(k.Diameter)+", "+note, ", ")
		}
		cells := []string{name, k.On, k.What, k.From.String(), "", sizeOrNone(k.Width, r), sizeOrNone(k.Depth, r), note}
		for at := range slices.Chunk(k.At, marksInRow) {
			cells[4] = printAll(at, r)
			l.add(cells...)
			cells = make([]string, len(cells))
		}
		if !k.Across.From.None() {
			l.add("", "", "", k.Across.From.String(), printAll(k.Across.At, r), "", "", "")
		}
		if len(k.Spacers) > 0 {
			l.add("", "", "spacers", "", printAll(k.Spacers, r), "", "", "")
		}
	}
	return l
}

func printAll(lengths []stock.Length, r stock.Ruler) string {
	said := make([]string, len(lengths))
	for i, l := range lengths {
		said[i] = r.Print(l)
	}
	return strings.Join(said, ", ")
}

func sizeOrNone(l stock.Length, r stock.Ruler) string {
	if l == 0 {
		return ""
	}
	return r.Print(l)
}
