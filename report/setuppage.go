package report

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"sawbill/nest/cutplan"
	"sawbill/report/internal/drawing"
	"sawbill/report/internal/paper"
	"sawbill/stock"
)

// settingSize is that of what is read from the saw, pt.
const settingSize = 12

// setupPage is the order of work of the whole shop, to be ticked off. There is
// none where nothing is cut.
func setupPage(b document, p *cutplan.Plan, names offcutNames, r stock.Ruler) {
	gathered := p.Setups()
	if len(gathered) == 0 {
		return
	}
	b.Page("setups")
	b.Heading("Setups")
	b.Paragraph(aboutSetups)
	if saved := savings(p); saved != "" {
		b.Strong(saved)
	}
	for _, l := range p.Layouts {
		if l.Stock.IsSection() {
			b.Paragraph("Before all else cut boards apart at their defects, as their layouts say.")
			break
		}
	}
	said := aboutSetting(gathered)
	if slices.ContainsFunc(p.Layouts, func(l cutplan.Layout) bool { return l.Stock.Kind == stock.Sheet }) {
		said = strings.TrimSpace("Panels lie good face up at the saw. " + said)
	}
	if said != "" {
		b.Paragraph(said)
	}
	b.Paragraph(deferral) // ahead of the tables, behind which it could come to stand alone on a page
	for _, g := range gathered {
		b.Heading(gatheredName(g, r))
		b.Table(setupTable(teller{p, names, r}, g))
	}
	truingTable(b, p, r)
}

// aboutSetting says how the figures are meant that no fence or stop is set to.
func aboutSetting(gathered []cutplan.Gathered) string {
	var trim, marked bool
	for _, g := range gathered {
		for _, s := range g.Setups {
			trim = trim || s.Trim
			marked = marked || slices.ContainsFunc(s.Cuts, func(c cutplan.SetupCut) bool { return c.Step.Breakdown() })
		}
	}
	var said []string
	if trim {
		said = append(said, "Saw off: the kerf is part of the figure, the blade on the waste side.")
	}
	if trim || marked {
		said = append(said, "Mark: measured from the reference edge or end of the piece in hand; the blade cuts beyond the mark.")
	}
	if marked {
		said = append(said, "BREAKDOWN: beyond the saw; good face down, or up under a splinter guard.")
	}
	return strings.Join(said, " ")
}

func setupTable(say teller, g cutplan.Gathered) paper.Table {
	t := paper.Table{Size: 8.5, Times: 1, Columns: []paper.Column{
		{Head: "done", Tick: true},
		{Head: "round"},
		{Head: "set to", Size: settingSize, Face: drawing.Bold},
		{Head: "how", Wrap: true},
		{Head: "pieces in hand", Wrap: true},
		{Head: "cuts", Align: drawing.Right},
		{Head: "comes off, each", Wrap: true, Face: drawing.Bold},
		{Head: "left in the end", Wrap: true},
	}}
	round := -1
	for _, row := range setupRows(say, g) {
		name := ""
		if row.Round != round {
			round = row.Round
			name = roundName(round)
		}
		t.Joined = append(t.Joined, row.Stays)
		t.Rows = append(t.Rows, []string{"", name, row.setting(say.ruler), row.how, row.inHand(say.plan),
			strconv.Itoa(row.Count), row.off, row.left})
		t.Ticks = append(t.Ticks, setupTick(say.plan, settingOf(row.Row, say.ruler), numbersIn(row.Row)))
	}
	return t
}

// aboutTruing says when edges are trued.
const aboutTruing = "Ripped over-wide, edges are trued against the fence or on the jointer: one edge of each piece, then the piece turned and the other. Where faces are planed, that comes first: Milling has all steps of a blank."

// truingTable is the fence settings at which edges are trued, if any are.
func truingTable(b document, p *cutplan.Plan, r stock.Ruler) {
	t := paper.Table{Size: 8.5, Times: 1, Columns: []paper.Column{
		{Head: "done", Tick: true},
		{Head: "set to", Size: settingSize, Face: drawing.Bold},
		{Head: "edge", Wrap: true},
		{Head: "pieces", Wrap: true, Face: drawing.Bold},
		{Head: "comes off", Align: drawing.Right},
	}}
	for _, s := range p.Truings() {
		var pieces []string
		for _, of := range s.Blanks {
			blank := p.Bill[of.Blank]
			pieces = append(pieces, fmt.Sprintf("%d x %s %s", of.Count, blank.Mark, shortened(blank.Name())))
		}
		edge := "the first"
		if s.Edge > 1 {
			edge = "turned, the other"
		}
		t.Rows = append(t.Rows, []string{"", "fence " + r.Print(s.Setting), edge, strings.Join(pieces, ", "), r.Print(s.Off)})
	}
	if t.Rows == nil {
		return
	}
	b.Heading("Edges to true")
	b.Paragraph(aboutTruing)
	b.Table(t)
}
