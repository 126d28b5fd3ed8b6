package report

import (
	"fmt"
	"slices"
	"strings"

	"sawbill/nest/cutplan"
	"sawbill/report/internal/drawing"
	"sawbill/report/internal/paper"
	"sawbill/stock"
)

// stepTable is the order of work of layout i. That of a board has a column of
// running marks.
func stepTable(p *cutplan.Plan, i int, names offcutNames, r stock.Ruler) paper.Table {
	l := p.Layouts[i]
	board := l.Stock.Kind == stock.Board
	t := paper.Table{Times: l.Repeat, Columns: []paper.Column{
		{Head: "cut", Number: true},
		{Head: "piece in hand", Wrap: true},
		{Head: "how", Wrap: true},
		{Head: setting, Align: drawing.Right, Face: drawing.Bold, Wrap: true},
		{Head: "comes off", Wrap: true, Face: drawing.Bold},
		{Head: "left", Wrap: true},
	}}
	if board {
		t.Columns = slices.Insert(t.Columns, markColumn, paper.Column{Head: "mark", Align: drawing.Right, Wrap: true})
	}
	say := teller{p, names, r}
	rows := p.StepRows(i)
	trims := slices.IndexFunc(rows, func(row cutplan.Row) bool { return !row.Trim })
	if trims < 0 {
		trims = len(rows)
	}
	for n := 0; n < len(rows); n++ {
		row, numbers := rows[n], numbersIn(rows[n])
		cells := []string{cutNumbers(row), handOf(row, kindWord(l.Stock), r), how(row), bare(settingOf(row, r)), say.off(row), say.leftOf(row)}
		if n == 0 && trimsTogether(rows[:trims]) {
			for n = 1; n < trims; n++ {
				numbers = append(numbers, numbersIn(rows[n])...)
			}
			n = trims - 1
			cells[0] += "–" + cutNumbers(rows[n])
			cells[2], cells[3], cells[4] = allTrim(rows[:trims], r), sawnOff(rows[:trims], r), say.off(rows[n])
		}
		if board {
			cells = slices.Insert(cells, markColumn, marksOf(row, r))
		}
		t.Rows = append(t.Rows, cells)
		t.Joined = append(t.Joined, row.Stays) // fence or stop stays where it is
		t.Ticks = append(t.Ticks, stepTicks(p, i, numbers))
	}
	if board {
		return sized(t, 9) // several boards share a page
	}
	return sized(t, 9.5)
}

// bare is a setting without the word that stands over its column.
func bare(setting string) string {
	return strings.TrimPrefix(strings.TrimPrefix(setting, "fence "), "stop ")
}

// trimsTogether reports whether all trim can be told in a line: as much is sawn off the
// reference edge and end, and then the far sides are cut to a size.
func trimsTogether(rows []cutplan.Row) bool {
	if len(rows) < 2 || !rows[0].SawOff {
		return false
	}
	for i, r := range rows {
		if r.SawOff != (r.Waste == cutplan.Near) || r.SawOff && (!rows[max(i-1, 0)].SawOff || r.Setting != rows[0].Setting) {
			return false
		}
	}
	return true
}

// allTrim is how all trim is cut: "trim reference edge and end; far edge to 1210, far end to
// 2430; BREAKDOWN: both edges".
func allTrim(rows []cutplan.Row, ruler stock.Ruler) string {
	said := "trim " + sideName(rows[0].Cut, cutplan.Near)
	var far []string
	for i, r := range rows {
		switch {
		case !r.SawOff:
			far = append(far, sideName(r.Cut, cutplan.Far)+" to "+ruler.Print(r.Setting))
		case i > 0:
			said += " and end"
		}
	}
	if far != nil {
		said += "; " + strings.Join(far, ", ")
	}
	return said + trimBeyondTheSaw(rows)
}

// trimBeyondTheSaw says which sides are trimmed with a guided saw.
func trimBeyondTheSaw(rows []cutplan.Row) string {
	var sides []string
	of := map[cutplan.Cut]int{}
	for _, r := range rows {
		if marked(r) {
			sides = append(sides, sideName(r.Cut, r.Waste))
			of[r.Cut]++
		}
	}
	switch {
	case sides == nil:
		return ""
	case len(sides) == len(rows):
		return "; all BREAKDOWN"
	case len(sides) == 2 && of[cutplan.Rip] == 2:
		return "; BREAKDOWN: both edges"
	case len(sides) == 2 && of[cutplan.Crosscut] == 2:
		return "; BREAKDOWN: both ends"
	}
	return "; BREAKDOWN: " + strings.Join(sides, ", ")
}

func marked(r cutplan.Row) bool { return r.Guide == cutplan.Marked }

// sawnOff is what falls off the reference edge and end.
func sawnOff(rows []cutplan.Row, ruler stock.Ruler) string {
	said := settingOf(rows[0], ruler)
	if len(rows) > 1 && rows[1].SawOff {
		said += " each"
	}
	return said
}

// off is what comes off at the cuts of a row.
func (t teller) off(r cutplan.Row) string {
	if r.Trim {
		return t.trimmed(r.Pieces[0].Layout, r.Off)
	}
	var pieces []located
	for _, h := range r.Pieces {
		for _, c := range h.Cuts {
			pieces = append(pieces, at(h.Layout, c.Off.Node)...)
		}
	}
	said := t.piece(r.Off.Size, pieces...)
	if r.Count > 1 {
		said = fmt.Sprintf("%d x %s", r.Count, said)
	}
	return said
}

// trimmed says what trim keeps: a size, until nothing more is to be trimmed.
func (t teller) trimmed(layout int, kept cutplan.Freed) string {
	switch size := t.ruler.Size(kept.Size.Length, kept.Size.Width); {
	case kept.Node == nil:
		return size
	case kept.Node.Use == cutplan.Split:
		return "trimmed: " + size
	}
	return t.piece(kept.Size, located{layout, kept.Node})
}

// leftOf says what remains beyond the cuts of a row, of each piece where they are several.
func (t teller) leftOf(r cutplan.Row) string {
	last := r.Pieces[0].Last().Left
	switch {
	case r.Trim:
		return "waste"
	case last.Size == (cutplan.Size{}):
		return "nothing"
	}
	var pieces []located
	for _, h := range r.Pieces {
		pieces = append(pieces, at(h.Layout, h.Last().Left.Node)...)
	}
	said := t.piece(last.Size, pieces...)
	if len(r.Pieces) > 1 && said != "waste" {
		said += " each"
	}
	return said
}

const (
	setting    = "fence or stop"
	markColumn = 3
)

// sized sets the type of the steps; the settings, which are read from the saw,
// are larger.
func sized(t paper.Table, size float64) paper.Table {
	t.Size = size
	t.Columns = slices.Clone(t.Columns)
	at := slices.IndexFunc(t.Columns, func(c paper.Column) bool { return c.Head == setting })
	t.Columns[at].Size = size + 2
	return t
}

// how says rip or crosscut, and what leads it where that is not a matter of course. Of
// trim it says which side falls off, and how the blade lies.
func how(r cutplan.Row) string {
	said := r.Cut.String()
	switch {
	case r.Trim && r.SawOff:
		said = "trim " + sideName(r.Cut, r.Waste)
	case r.Trim && r.Guide == cutplan.Fence:
		said = fmt.Sprintf("trim %s, %s on the fence", sideName(r.Cut, r.Waste), sideName(r.Cut, r.Waste.Opposite()))
	case r.Trim && r.Waste == cutplan.Near:
		said = fmt.Sprintf("trim %s, measured from the %s", sideName(r.Cut, r.Waste), sideName(r.Cut, r.Waste.Opposite()))
	case r.Trim:
		said = "trim " + sideName(r.Cut, r.Waste)
	case r.Cut == cutplan.Rip && r.Guide == cutplan.Stop:
		said = "rip at a stop, not the fence"
	case r.Cut == cutplan.Crosscut && r.Guide == cutplan.Fence:
		said = "crosscut, by the fence"
	}
	if marked(r) {
		said += ", BREAKDOWN"
	}
	return said
}

// sideName is a side that a cut is parallel to: "reference edge", "far end".
func sideName(c cutplan.Cut, s cutplan.Side) string {
	side := "edge"
	if c == cutplan.Crosscut {
		side = "end"
	}
	if s == cutplan.Near {
		return "reference " + side
	}
	return "far " + side
}

// longestName of a part among the steps, in characters: the cutting bill has
// all of it.
const longestName = 32

func shortened(name string) string {
	if runes := []rune(name); len(runes) > longestName {
		return string(runes[:longestName-1]) + "…"
	}
	return name
}

// teller says what a piece is.
type teller struct {
	plan  *cutplan.Plan
	names offcutNames
	ruler stock.Ruler
}

// piece names what a cut frees, or several cuts that free the like of it; nothing
// is known of a piece that is only to be cut further along.
func (t teller) piece(size cutplan.Size, pieces ...located) string {
	measure := t.ruler.Size(size.Length, size.Width)
	if len(pieces) == 0 {
		return measure
	}
	switch n := pieces[0].node; n.Use {
	case cutplan.Part:
		b := t.plan.Bill[n.Blank]
		said := b.Mark + " " + shortened(b.Name()) + ", " + t.ruler.Size(b.Length, b.Width)
		if n.Turned {
			said += ", turned"
		}
		return said
	case cutplan.Offcut:
		return "keep " + measure + ", write " + t.names.said(pieces...)
	case cutplan.Waste:
		return "waste"
	}
	return "piece " + measure
}
