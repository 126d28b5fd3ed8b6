package webpage

import (
	"bytes"
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

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
	kind := "wide"
	switch {
	case t.Times > 0:
		kind = "wide work"
	case len(t.Columns) <= fewColumns:
		kind = ""
	}
	for i, c := range t.Columns {
		classes[i] = class(t, i)
		if c.Number {
			kind = strings.TrimSpace(kind + " steps")
		}
	}
	named := ""
	if p.contents != nil {
		named = ` aria-labelledby="` + p.section().id + `-h"`
	}
	fmt.Fprintf(out, `<table role="table"%s%s>`+"\n"+`<thead role="rowgroup"><tr role="row">`, attribute("class", kind), named)
	if t.Times > 0 {
		out.WriteString(`<th role="columnheader" scope="col">done</th>`)
	}
	for i, c := range t.Columns {
		if c.Tick {
			continue // the boxes stand in a column of their own
		}
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
	joined := i < len(t.Joined) && t.Joined[i] || row[lead(t)] == ""
	of := ""
	switch {
	case total:
		of = "total"
	case joined:
		of = "joined"
	}
	fmt.Fprintf(out, `<tr role="row"%s>`, attribute("class", of))
	if t.Times > 0 {
		boxes, over, class := "", "", "done"
		if !total {
			all := p.ticksOf(t, i)
			for n, tick := range all {
				id, box := p.box(tick)
				boxes += box
				if n == 0 {
					// It lies over the whole row: a touch anywhere ticks the box.
					over = `<label class="row" for="` + id + `" aria-hidden="true"></label>`
				}
			}
			boxes += over
			if len(all) > 1 {
				class = "done many"
			}
		}
		out.WriteString(`<td role="cell" class="` + class + `">` + boxes + "</td>")
	}
	for c, cell := range row {
		if t.Columns[c].Tick {
			continue
		}
		label, said := attribute("data-label", t.Columns[c].Head), escape(unbroken(cell))
		switch {
		case t.Columns[c].Number:
			said = "<b>" + said + "</b>"
		case cell == "":
			label = ""
		}
		if c == lead(t) && cell != "" {
			fmt.Fprintf(out, `<th role="rowheader" scope="row"%s%s>%s</th>`, attribute("class", classes[c]), label, said)
		} else {
			fmt.Fprintf(out, `<td role="cell"%s%s>%s</td>`, attribute("class", classes[c]), label, said)
		}
	}
	out.WriteString("</tr>\n")
}

// lead is the column that names the row.
func lead(t paper.Table) int {
	return slices.IndexFunc(t.Columns, func(c paper.Column) bool { return !c.Tick })
}

// fewColumns fit a narrow screen side by side.
const fewColumns = 3

// Spaces within a size: "24 13/16 x 11 9/16".
var (
	mixed = regexp.MustCompile(`(\d) (\d+/\d)`)
	times = regexp.MustCompile(`(\d) x (≈?\d)`)
)

// unbroken keeps the figures of a size together; a line may end before an "x".
func unbroken(cell string) string {
	const noBreak = "\u00a0"
	cell = mixed.ReplaceAllString(cell, "$1"+noBreak+"$2")
	// Twice, for a figure between two may have one digit.
	for range 2 {
		cell = times.ReplaceAllString(cell, "$1 x"+noBreak+"$2")
	}
	return cell
}

// mostBoxes of a row: more than that are not told apart, and one box must do.
const mostBoxes = 12

// ticksOf are the boxes of row i: one for each time that it is done.
func (p *Page) ticksOf(t paper.Table, i int) []paper.Tick {
	if i < len(t.Ticks) && t.Ticks[i] != nil {
		if all := t.Ticks[i]; len(all) <= mostBoxes {
			return all
		}
		one := paper.Tick{Name: t.Ticks[i][0].Name + " and all others"}
		for _, tick := range t.Ticks[i] {
			one.Keys = append(one.Keys, tick.Keys...)
		}
		return []paper.Tick{one}
	}
	name := rowName(t, t.Rows[i])
	if t.Times == 1 || t.Times > mostBoxes {
		return []paper.Tick{{Name: name}}
	}
	var all []paper.Tick
	for n := range t.Times {
		all = append(all, paper.Tick{Name: name + ", piece " + strconv.Itoa(n+1)})
	}
	return all
}

// rowName tells a row by its first cell and the next one that says anything: "buy 2, birch 18".
func rowName(t paper.Table, row []string) string {
	of := lead(t)
	name := strings.TrimSpace(t.Columns[of].Head + " " + row[of])
	for _, cell := range row[of+1:] {
		if cell != "" {
			return name + " " + cell
		}
	}
	return name
}

// longestWord is the longest, in characters, that may ask for its width; a longer
// one is broken where there is too little.
const longestWord = 24

// class tells the style of a column.
func class(t paper.Table, column int) string {
	c := t.Columns[column]
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
	if slices.ContainsFunc(t.Rows, func(row []string) bool {
		return slices.ContainsFunc(strings.Fields(row[column]), func(w string) bool { return utf8.RuneCountInString(w) > longestWord })
	}) {
		all = append(all, "long")
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

// Natural is always so: the type of a table is the style's, and its columns give
// way to the screen.
func (p *Page) Natural(paper.Table) bool { return true }
