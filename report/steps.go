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
		if run.first().Trim {
			t.Joined = append(t.Joined, false)
			t.Rows = append(t.Rows, trimRow(l.Stock, run, r))
			continue
		}
		// Rows of one setup belong together: the fence stays where it is.
		s, last := run.first(), run.last()
		t.Joined = append(t.Joined, i > 0 && s.Cut == runs[i-1].last().Cut && s.Setting == runs[i-1].last().Setting)
		over := left(p, last, r)
		if scrap := last.LeftNode != nil && last.LeftNode.Use == cutplan.Waste; run.kind == parallel && !scrap && last.Left != (cutplan.Size{}) {
			over += " each"
		}
		t.Rows = append(t.Rows, []string{
			run.numbers(), run.inHand(l.Stock.Kind, r), how(run), r.Print(s.Setting),
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

// trimRow tells of all trim cuts at once: the setting is what falls off, the
// blade's kerf included, since nobody sets a fence for it.
func trimRow(s stock.Stock, run run, r stock.Ruler) []string {
	where := "off every edge"
	if s.Kind == stock.Board {
		where = "off both ends"
	}
	done := run.last().Off
	return []string{
		run.numbers(), run.inHand(s.Kind, r), marked("trim "+where, run), r.Print(s.Trim),
		"trimmed: " + r.Size(done.Length, done.Width), "waste",
	}
}

func how(run run) string { return marked(run.first().Cut.String(), run) }

func marked(said string, run run) string {
	if run.breakdown() {
		return said + ", BREAKDOWN"
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
