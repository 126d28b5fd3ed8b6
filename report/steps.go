package report

import (
	"slices"

	"sawbill/nest/cutplan"
	"sawbill/report/internal/drawing"
	"sawbill/report/internal/paper"
	"sawbill/stock"
)

// stepTable is the order of work of layout i. That of a board has a column of
// running marks.
func stepTable(p *cutplan.Plan, i int, steps []cutplan.Step, names offcutNames, r stock.Ruler) paper.Table {
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
	add := func(run run, off, left string) {
		row := []string{run.numbers(), run.inHand(kindWord(l.Stock), r), how(run.first(), l.Stock, r), run.setting(l, r), off, left}
		if s := run.first(); board && (s.Cut == cutplan.Rip || s.Trim || s.Breakdown()) {
			row = slices.Insert(row, markColumn, "")
		} else if board {
			row = slices.Insert(row, markColumn, run.marks(r))
		}
		t.Rows = append(t.Rows, row)
		var numbers []int
		for _, s := range run.steps {
			numbers = append(numbers, s.Number)
		}
		t.Ticks = append(t.Ticks, stepTicks(p, i, numbers))
	}
	runs := runsOf(steps)
	for n, run := range runs {
		s, last := run.first(), run.last()
		if s.Trim {
			t.Joined = append(t.Joined, false)
			add(run, "trimmed: "+r.Size(last.Off.Length, last.Off.Width), "waste")
			continue
		}
		// Rows of one setup belong together: fence or stop stays where it is.
		before := cutplan.Step{Setting: -1}
		if n > 0 {
			before = runs[n-1].last()
		}
		t.Joined = append(t.Joined, s.Guide == before.Guide && s.Cut == before.Cut && s.Setting == before.Setting)
		off := say.piece(s.Off, run.pieces(i, func(s cutplan.Step) *cutplan.Node { return s.OffNode })...)
		add(run, run.times(off), leftOf(run, i, say))
	}
	if board {
		return sized(t, 9) // several boards share a page
	}
	return sized(t, 9.5)
}

// leftOf says what remains beyond the cut, of each piece where they are several.
func leftOf(r run, layout int, say teller) string {
	last := r.last()
	if last.Left == (cutplan.Size{}) {
		return "nothing"
	}
	of := run{steps: []cutplan.Step{last}}
	if r.kind == parallel {
		of = r
	}
	nodes := of.pieces(layout, func(s cutplan.Step) *cutplan.Node { return s.LeftNode })
	said := say.piece(last.Left, nodes...)
	if scrap := nodes != nil && nodes[0].node.Use == cutplan.Waste; r.kind == parallel && !scrap {
		said += " each"
	}
	return said
}

// pieces are the nodes of the run's steps, as far as they have any.
func (r run) pieces(layout int, node func(cutplan.Step) *cutplan.Node) []located {
	var all []located
	for _, s := range r.steps {
		if n := node(s); n != nil {
			all = append(all, located{layout, n})
		}
	}
	return all
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

// how says rip or crosscut, and what leads it where that is not a matter of
// course. For trim the setting beside it is what falls off, the blade's kerf
// included, since nobody sets a fence for it.
func how(s cutplan.Step, of stock.Stock, r stock.Ruler) string {
	said := s.Cut.String()
	switch {
	case s.Trim:
		said = "trim " + trimmedOff(of, r)
	case s.Cut == cutplan.Rip && s.Guide == cutplan.Stop:
		said = "rip, at a stop"
	case s.Cut == cutplan.Crosscut && s.Guide == cutplan.Fence:
		said = "crosscut, by the fence"
	}
	if s.Breakdown() {
		said += ", BREAKDOWN"
	}
	return said
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
