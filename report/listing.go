package report

import (
	"fmt"
	"io"
	"strings"
	"unicode/utf8"

	"sawbill/report/internal/drawing"
	"sawbill/report/internal/paper"
	"sawbill/stock"
)

// listing is a table that is shown both as text and on paper.
type listing struct {
	columns []heading
	rows    [][]string
	total   int // so many rows at the end are sums
}

// heading is a column of a listing.
type heading struct {
	word string
	kind columnKind
}

type columnKind int

const (
	words   columnKind = iota // left, may wrap on paper
	figures                   // right
	sizes                     // left, never wraps
	marks                     // left, bold on paper
	ticks                     // a box on paper where a cell has one
)

func (l *listing) add(cells ...string) { l.rows = append(l.rows, cells) }

// text writes the listing in aligned columns.
func (l listing) text(w io.Writer) error {
	widths := make([]int, len(l.columns))
	measure := func(i int, s string) { widths[i] = max(widths[i], utf8.RuneCountInString(s)) }
	for i, c := range l.columns {
		measure(i, c.word)
		for _, row := range l.rows {
			measure(i, row[i])
		}
	}
	head := make([]string, len(l.columns))
	for i, c := range l.columns {
		head[i] = c.word
	}
	for _, row := range append([][]string{head}, l.rows...) {
		var line strings.Builder
		for i, cell := range row {
			pad := strings.Repeat(" ", widths[i]-utf8.RuneCountInString(cell))
			line.WriteString("  ")
			if l.columns[i].kind == figures {
				line.WriteString(pad + cell)
			} else {
				line.WriteString(cell + pad)
			}
		}
		if _, err := fmt.Fprintln(w, strings.TrimRight(line.String(), " ")); err != nil {
			return err
		}
	}
	return nil
}

// table is the listing on paper.
func (l listing) table() paper.Table {
	t := paper.Table{Rows: l.rows, Total: l.total, Size: 9.5}
	for _, c := range l.columns {
		column := paper.Column{Head: c.word}
		switch c.kind {
		case figures:
			column.Align = drawing.Right
		case words:
			column.Wrap = true
		case marks:
			column.Face = drawing.Bold
		case ticks:
			column.Tick = true
		}
		t.Columns = append(t.Columns, column)
	}
	return t
}

// unit is what a heading says of the figures below it.
func unit(r stock.Ruler) string { return " (" + r.Units.String() + ")" }

func unitName(r stock.Ruler) string {
	if r.Units == stock.Inches {
		return "inches"
	}
	return "millimeters"
}
