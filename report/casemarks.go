package report

import (
	"slices"
	"strings"

	"sawbill/report/internal/diagram"
	"sawbill/report/internal/paper"
	"sawbill/stock"
	"sawbill/stock/casework"
)

// marksHeading is over the marks of a case; those of crosscuts are on boards.
const marksHeading = "Marks on the parts"

// aboutCaseMarks says how to read them.
const aboutCaseMarks = "Measure every position from the edge that is named, not from the mark before it. " +
	"What has a width begins there and reaches away from that edge. Where a second edge is named below, measure from both."

// uprightHead is the heading and what is said below it, in mm.
const uprightHead = 30.0

const aboutUprights = "Each face is seen from the space beside it. Figures beside it are from the bottom end; " +
	"of what has a width, to its lower edge. Figures below it are holes for pins or dowels, mortises, and where slides begin, from the front edge. Hatched is cut away; dashed, a panel stands there."

// markPages lists what is laid out on the parts of a case.
func markPages(b *paper.Book, o Options) {
	if len(o.Case.Marks) == 0 {
		return
	}
	b.Page("marks on the parts")
	b.Heading(marksHeading)
	b.Paragraph(aboutCaseMarks)
	b.Table(caseMarks(o.Case, o.Ruler).table())
	uprightPages(b, o)
}

// uprightPages draws the sides and the partitions with what is marked on them.
func uprightPages(b *paper.Book, o Options) {
	rows, scale := diagram.Uprights(o.Case, o.Ruler, b.Width(), b.Height()-uprightHead)
	if len(rows) == 0 {
		return
	}
	b.Page("marks on the uprights")
	b.Heading("Sides and partitions, " + scale)
	b.Paragraph(aboutUprights)
	for _, row := range rows {
		b.Picture(row)
		b.Space(4)
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
		cells := []string{name, k.On, k.What, k.From, "", sizeOrNone(k.Width, r), sizeOrNone(k.Depth, r), k.Note}
		for at := range slices.Chunk(k.At, marksInRow) {
			cells[4] = printAll(at, r)
			l.add(cells...)
			cells = make([]string, len(cells))
		}
		if k.Across.From != "" {
			l.add("", "", "", k.Across.From, printAll(k.Across.At, r), "", "", "")
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
