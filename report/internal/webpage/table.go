package webpage

import (
	"bytes"
	"fmt"
	"strconv"
	"strings"

	"sawbill/report/internal/drawing"
	"sawbill/report/internal/paper"
)

// Table writes t. The roles are those that its elements have anyhow: a style that
// makes blocks of them takes them away.
func (p *Page) Table(t paper.Table) {
	if len(t.Rows) == 0 {
		return
	}
	out := p.out()
	classes := make([]string, len(t.Columns))
	steps := ""
	for i, c := range t.Columns {
		classes[i] = class(t, c)
		if c.Number {
			steps = ` class="steps"`
		}
	}
	named := ""
	if p.contents != nil {
		named = ` aria-labelledby="` + p.section().id + `-h"`
	}
	fmt.Fprintf(out, `<table role="table"%s%s>`+"\n"+`<thead role="rowgroup"><tr role="row">`, steps, named)
	if t.Times > 0 {
		out.WriteString(`<th role="columnheader" scope="col">done</th>`)
	}
	for i, c := range t.Columns {
		fmt.Fprintf(out, `<th role="columnheader" scope="col"%s>%s</th>`, attribute("class", classes[i]), escape(c.Head))
	}
	out.WriteString("</tr></thead>\n" + `<tbody role="rowgroup">` + "\n")
	for i, row := range t.Rows {
		p.row(out, t, classes, i, row)
	}
	out.WriteString("</tbody>\n</table>\n")
}

func (p *Page) row(out *bytes.Buffer, t paper.Table, classes []string, i int, row []string) {
	total := i >= len(t.Rows)-t.Total
	joined := i < len(t.Joined) && t.Joined[i] || row[0] == ""
	of := ""
	switch {
	case total:
		of = "total"
	case joined:
		of = "joined"
	}
	fmt.Fprintf(out, `<tr role="row"%s>`, attribute("class", of))
	if t.Times > 0 {
		out.WriteString(`<td role="cell" class="done">`)
		if !total {
			p.ticks(out, t, row)
		}
		out.WriteString("</td>")
	}
	for c, cell := range row {
		label, said := attribute("data-label", t.Columns[c].Head), escape(cell)
		switch {
		case t.Columns[c].Number:
			said = "<b>" + said + "</b>"
		case cell == "":
			label = ""
		}
		if c == 0 && cell != "" {
			fmt.Fprintf(out, `<th role="rowheader" scope="row"%s%s>%s</th>`, attribute("class", classes[c]), label, said)
		} else {
			fmt.Fprintf(out, `<td role="cell"%s%s>%s</td>`, attribute("class", classes[c]), label, said)
		}
	}
	out.WriteString("</tr>\n")
}

// mostBoxes of a row: more than that are not told apart, and one box must do.
const mostBoxes = 12

// ticks writes a box for each time that a row is done.
func (p *Page) ticks(out *bytes.Buffer, t paper.Table, row []string) {
	name := "done: " + strings.TrimSpace(t.Columns[0].Head+" "+row[0])
	if t.Times == 1 || t.Times > mostBoxes {
		out.WriteString(p.box(name))
		return
	}
	for n := range t.Times {
		out.WriteString(p.box(name + ", piece " + strconv.Itoa(n+1)))
	}
}

// class tells the style of a column's cells.
func class(t paper.Table, c paper.Column) string {
	var all []string
	if c.Number {
		all = append(all, "number")
	}
	if c.Size > t.Size {
		all = append(all, "big")
	}
	if c.Face == drawing.Bold {
		all = append(all, "bold")
	}
	if c.Align == drawing.Right {
		all = append(all, "right")
	}
	if !c.Wrap {
		all = append(all, "whole")
	}
	return strings.Join(all, " ")
}

// attribute is one of an element, with the space before it; none where it would be
// empty.
func attribute(name, value string) string {
	if value == "" {
		return ""
	}
	return " " + name + `="` + escape(value) + `"`
}
