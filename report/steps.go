package report

import (
	"slices"

	"sawbill/nest/cutplan"
	"sawbill/report/internal/drawing"
	"sawbill/report/internal/paper"
	"sawbill/stock"
)

// stepTable is the order of work of one layout. That of a board has a column of
// running marks.
func stepTable(p *cutplan.Plan, l cutplan.Layout, steps []cutplan.Step, r stock.Ruler) paper.Table {
	board := l.Stock.Kind == stock.Board
	t := paper.Table{Times: l.Repeat, Columns: []paper.Column{
		{Head: "cut", Number: true},
		{Head: "piece in hand", Wrap: true},
		{Head: "how", Wrap: true},
		{Head: setting, Align: drawing.Right, Face: drawing.Bold},
		{Head: "comes off", Wrap: true, Face: drawing.Bold},
		{Head: "left", Wrap: true},
	}}
	if board {
		t.Columns = slices.Insert(t.Columns, markColumn, paper.Column{Head: "mark", Align: drawing.Right, Wrap: true})
	}
	add := func(run run, at, mark, off, left string) {
		row := []string{run.numbers(), run.inHand(kindWord(l.Stock), r), how(run, l.Stock.Kind), at, off, left}
		if board {
			row = slices.Insert(row, markColumn, mark)
		}
		t.Rows = append(t.Rows, row)
	}
	runs := runsOf(steps)
	for i, run := range runs {
		s, last := run.first(), run.last()
		if s.Trim {
			t.Joined = append(t.Joined, false)
			add(run, r.Print(l.Stock.Trim), "", "trimmed: "+r.Size(last.Off.Length, last.Off.Width), "waste")
			continue
		}
		// Rows of one setup belong together: the fence stays where it is.
		t.Joined = append(t.Joined, i > 0 && s.Cut == runs[i-1].last().Cut && s.Setting == runs[i-1].last().Setting)
		over := left(p, last, r)
		if scrap := last.LeftNode != nil && last.LeftNode.Use == cutplan.Waste; run.kind == parallel && !scrap && last.Left != (cutplan.Size{}) {
			over += " each"
		}
		add(run, r.Print(s.Setting), run.marks(r), run.times(comesOff(p, s, r)), over)
	}
	if board {
		return sized(t, 9) // several boards share a page
	}
	return sized(t, 9.5)
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

// how says rip or crosscut. For trim the setting beside it is what falls off,
// the blade's kerf included, since nobody sets a fence for it.
func how(run run, kind stock.Kind) string {
	said := run.first().Cut.String()
	switch {
	case run.first().Trim && kind == stock.Board:
		said = "trim off both ends"
	case run.first().Trim:
		said = "trim off every edge"
	}
	if run.breakdown() {
		said += ", BREAKDOWN"
	}
	return said
}

func comesOff(p *cutplan.Plan, s cutplan.Step, r stock.Ruler) string {
	return piece(p, s.OffNode, s.Off, r)
}

func left(p *cutplan.Plan, s cutplan.Step, r stock.Ruler) string {
	if s.Left == (cutplan.Size{}) {
		return "nothing"
	}
	return piece(p, s.LeftNode, s.Left, r)
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

// piece names what a cut frees.
func piece(p *cutplan.Plan, n *cutplan.Node, size cutplan.Size, r stock.Ruler) string {
	measure := r.Size(size.Length, size.Width)
	if n == nil {
		return measure
	}
	switch n.Use {
	case cutplan.Part:
		b := p.Bill[n.Blank]
		said := b.Mark + " " + shortened(b.Name()) + ", " + r.Size(b.Length, b.Width)
		if n.Turned {
			said += ", turned"
		}
		return said
	case cutplan.Offcut:
		return "keep " + measure
	case cutplan.Waste:
		return "waste"
	}
	return "piece " + measure
}
