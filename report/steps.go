package report

import (
	"slices"

	"sawbill/nest/cutplan"
	"sawbill/report/internal/drawing"
	"sawbill/report/internal/paper"
	"sawbill/stock"
)

const settingColumn = 3

// stepTable is the order of work of one layout.
func stepTable(p *cutplan.Plan, l cutplan.Layout, steps []cutplan.Step, r stock.Ruler) paper.Table {
	t := paper.Table{Columns: []paper.Column{
		{Head: "cut", Number: true},
		{Head: "piece in hand", Wrap: true},
		{Head: "how", Wrap: true},
		{Head: "fence or stop", Align: drawing.Right, Face: drawing.Bold},
		{Head: "comes off", Wrap: true, Face: drawing.Bold},
		{Head: "left", Wrap: true},
	}}
	runs := runsOf(steps)
	for i, run := range runs {
		// Rows of one setup belong together: the fence stays where it is.
		s, last := run.first(), run.last()
		t.Joined = append(t.Joined, i > 0 && s.Cut == runs[i-1].last().Cut && s.Setting == runs[i-1].last().Setting)
		over := left(p, last, r)
		if scrap := last.LeftNode != nil && last.LeftNode.Use == cutplan.Waste; run.kind == parallel && !scrap && last.Left != (cutplan.Size{}) {
			over += " each"
		}
		t.Rows = append(t.Rows, []string{
			run.numbers(), run.inHand(l.Stock.Kind, r), how(s), r.Print(s.Setting),
			run.times(comesOff(p, s, r)), over,
		})
	}
	return sized(t, 9.5)
}

// sized sets the type of the steps; the settings, which are read from the saw,
// are larger.
func sized(t paper.Table, size float64) paper.Table {
	t.Size = size
	t.Columns = slices.Clone(t.Columns)
	t.Columns[settingColumn].Size = size + 2
	return t
}

func how(s cutplan.Step) string {
	said := s.Cut.String()
	if s.Trim {
		said = "trim " + said
	}
	if s.Breakdown {
		said += ", BREAKDOWN"
	}
	return said
}

func comesOff(p *cutplan.Plan, s cutplan.Step, r stock.Ruler) string {
	if s.Trim {
		return "trimmed: " + r.Size(s.Off.Length, s.Off.Width)
	}
	return piece(p, s.OffNode, s.Off, r)
}

func left(p *cutplan.Plan, s cutplan.Step, r stock.Ruler) string {
	switch {
	case s.Left == cutplan.Size{}:
		return "nothing"
	case s.Trim:
		return "waste"
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
		said := b.Mark + " " + shortened(b.Part.Name) + ", " + r.Size(b.Length, b.Width)
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
