package report

import (
	"fmt"
	"slices"
	"strings"

	"sawbill/nest/cutplan"
	"sawbill/stock"
)

// The way from the blanks to the parts, worded once for paper and text.

// millingHelp says how the table is to be read.
const millingHelp = "In this order. A setting is the size that is left: the thickness at the planer, the width at the fence, the length at the stop. An edge is trued on the jointer, or by a skim at the fence. Turn: the other edge goes to the fence, the other face up at the planer. " +
	"True a face and an edge before anything rests on them."

// milling lists the steps of every blank that needs any, by the thicknesses of
// the stock that each comes from. Blanks that are milled alike share a row, and so a
// setting.
func milling(bill []cutplan.Blank, from [][]stock.Length, r stock.Ruler) listing {
	type row struct {
		from, how    string
		marks, names []string
	}
	var rows []row
	for i, b := range bill {
		for _, thickness := range from[i] {
			steps := b.Milling(thickness)
			if len(steps) == 0 {
				continue
			}
			of, how := r.Print(thickness), millingSteps(steps, r)
			at := slices.IndexFunc(rows, func(n row) bool { return n.from == of && n.how == how })
			if at < 0 {
				at = len(rows)
				rows = append(rows, row{from: of, how: how})
			}
			add(&rows[at].marks, b.Mark)
			add(&rows[at].names, b.Name())
		}
	}
	l := listing{columns: []heading{
		{"mark", marks}, {"blank", words}, {"from" + unit(r), sizes}, {"milling" + unit(r), words},
	}}
	for _, n := range rows {
		l.add(strings.Join(n.marks, ", "), namesInShort(n.names), n.from, n.how)
	}
	return l
}

// withoutMarks drops the column of marks, which a job that is not planned has not.
func (l listing) withoutMarks() listing {
	at := slices.IndexFunc(l.columns, func(h heading) bool { return h.word == "mark" })
	l.columns = slices.Delete(l.columns, at, at+1)
	for i := range l.rows {
		l.rows[i] = slices.Delete(l.rows[i], at, at+1)
	}
	return l
}

// sourcesOf lists, for each blank, the thicknesses of the stock of a job that has
// room for it, and of its rough lumber.
func sourcesOf(j stock.Job, bill []cutplan.Blank) [][]stock.Length {
	all := make([][]stock.Length, len(bill))
	for i, b := range bill {
		for _, s := range j.Boards(b.Blank) {
			if s.HasRoom(b.Blank) {
				all[i] = append(all[i], s.Thickness)
			}
		}
		slices.Sort(all[i])
		all[i] = slices.Compact(all[i])
	}
	return all
}

// millingSteps says steps of one kind in one phrase: "plane to 21, turn, 20".
func millingSteps(steps []stock.Milling, r stock.Ruler) string {
	var said []string
	each, ofEach := "", ""
	for len(steps) > 0 {
		n := 1
		for n < len(steps) && steps[n].Operation == steps[0].Operation {
			n++
		}
		first := steps[0]
		at := r.Print(first.Setting)
		for _, s := range steps[1:n] {
			at += ", turn, " + r.Print(s.Setting)
		}
		switch first.Operation {
		case stock.Plane:
			said = append(said, "plane"+each+" to "+at)
		case stock.TrueEdge:
			edges := "an edge"
			if n > 1 {
				edges = "the edges"
			}
			said = append(said, "true "+edges+" at "+at)
		case stock.Resaw:
			said = append(said, resawn(first, r))
			if first.Pieces > 1 {
				each, ofEach = " each", " of each"
			}
		case stock.SquareEnd:
			said = append(said, squared(first, r))
		case stock.CutToLength:
			phrase := "stop at " + at
			if first.Pieces > 1 {
				phrase += fmt.Sprintf(", %d off%s", first.Pieces, ofEach)
			}
			said = append(said, phrase)
		case stock.CutMiter:
			ends := "one end, long point at "
			if n > 1 {
				ends = "both ends, long points at "
			}
			said = append(said, "miter "+ends+r.Print(steps[n-1].Setting))
		}
		steps = steps[n:]
	}
	return strings.Join(said, "; ")
}

// squared says how an end is squared: "square one end, 5 off at most". What comes off more is
// missing at the other end.
func squared(m stock.Milling, r stock.Ruler) string {
	if m.Off == 0 {
		return "square one end"
	}
	return "square one end, " + r.Print(m.Off) + " off at most"
}

// resawn says a step of the resaw: "resaw into 2 at 8", "resaw 8 off, keep the rest, 26.4".
func resawn(m stock.Milling, r stock.Ruler) string {
	said := fmt.Sprintf("resaw into %d at %s", m.Pieces, r.Print(m.Setting))
	if m.Pieces == 1 {
		said = "resaw " + r.Print(m.Setting) + " off"
	} else if m.Rest > 0 {
		said = fmt.Sprintf("resaw %d off at %s", m.Pieces, r.Print(m.Setting))
	}
	if m.Rest > 0 {
		said += ", keep the rest, " + r.Print(m.Rest)
	}
	return said
}

// resaws reports whether anything of a bill is resawn.
func resaws(bill []cutplan.Blank, from [][]stock.Length) bool {
	for i, b := range bill {
		for _, thickness := range from[i] {
			if slices.ContainsFunc(b.Milling(thickness), func(m stock.Milling) bool { return m.Operation == stock.Resaw }) {
				return true
			}
		}
	}
	return false
}

// truing says at which fence settings the over-wide blanks of a layout are trued:
// "J to be ripped at 62, then true the edges at 61, turn, 60". It is empty where
// there are none; all other milling is in its own table.
func truing(p *cutplan.Plan, l cutplan.Layout, r stock.Ruler) string {
	marks := map[string][]string{}
	var sequences []string
	for _, n := range l.Leaves() {
		if n.Use != cutplan.Part {
			continue
		}
		b := p.Bill[n.Blank]
		edges := slices.DeleteFunc(b.Milling(l.Stock.Thickness), func(m stock.Milling) bool { return m.Operation != stock.TrueEdge })
		if len(edges) == 0 {
			continue
		}
		said := r.Print(b.Width) + ", " + millingSteps(edges, r)
		if marks[said] == nil {
			sequences = append(sequences, said)
		}
		if !slices.Contains(marks[said], b.Mark) {
			marks[said] = append(marks[said], b.Mark)
		}
	}
	if sequences == nil {
		return ""
	}
	for i, said := range sequences {
		sequences[i] = strings.Join(marks[said], ", ") + " at " + said
	}
	return "ripped over-wide, to be trued after (see Milling): " + strings.Join(sequences, "; ")
}

// millingPage is the table on paper, with its cautions.
func millingPage(b document, p *cutplan.Plan, r stock.Ruler) {
	from := p.Thicknesses()
	l := milling(p.Bill, from, r)
	if len(l.rows) == 0 {
		return
	}
	b.Page("milling")
	b.Heading("Milling")
	b.Paragraph(millingHelp)
	t := l.table()
	t.Times = 1
	b.Items(millingCautions(p.Bill, from)) // ahead of the table, behind which they could come to stand alone
	b.Paragraph(deferral)
	b.Table(t)
}

// millingCautions are the cautions that apply to a bill, from stock of these thicknesses.
func millingCautions(bill []cutplan.Blank, from [][]stock.Length) []string {
	said := atThePlaner
	if resaws(bill, from) {
		said = slices.Concat(said, atTheResaw)
	}
	return said
}
