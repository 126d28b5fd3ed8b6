package report

import (
	"fmt"
	"slices"
	"strconv"

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
	for i, s := range steps {
		// Rows of one setup belong together: the fence stays where it is.
		t.Joined = append(t.Joined, i > 0 && s.Cut == steps[i-1].Cut && s.Setting == steps[i-1].Setting)
		t.Rows = append(t.Rows, []string{
			strconv.Itoa(s.Number), inHand(s, l.Stock.Kind, r), how(s), r.Print(s.Setting),
			comesOff(p, s, r), left(p, s, r),
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

func inHand(s cutplan.Step, kind stock.Kind, r stock.Ruler) string {
	size := r.Size(s.Piece.Length, s.Piece.Width)
	switch {
	case s.InHand == 0:
		return fmt.Sprintf("whole %s %s", kind, size)
	case s.Rest:
		return fmt.Sprintf("rest of %d: %s", s.InHand, size)
	}
	return fmt.Sprintf("piece from %d: %s", s.InHand, size)
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
