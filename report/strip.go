package report

import (
	"strings"

	"sawbill/nest/cutplan"
	"sawbill/report/internal/drawing"
	"sawbill/report/internal/strip"
	"sawbill/stock"
)

// stripOf is the order of work of layout i in small pictures. It tells what the table of its
// steps tells: pictures show which way the cut runs, the waste, and what is cut on.
func stripOf(p *cutplan.Plan, i int, names offcutNames, r stock.Ruler) []strip.Card {
	say := teller{p, names, r}
	var cards []strip.Card
	rows := p.StepRows(i)
	trims := trimRows(rows)
	for n := 0; n < len(rows); n++ {
		row := rows[n]
		c := strip.Card{Number: cutNumbers(row), Piece: say.pictured(row)}
		c.Guide, c.Setting = splitSetting(settingOf(row, r))
		line := func(bold bool, ways ...string) { c.Lines = append(c.Lines, strip.Line{Ways: ways, Bold: bold}) }
		switch {
		case n == 0 && trimsTogether(rows[:trims]):
			n = trims - 1
			c.Number += "–" + cutNumbers(rows[n])
			_, c.Setting = splitSetting(sawnOff(rows[:trims], r))
			c.Piece = say.picturedTrim(rows[:trims])
			line(false, strings.TrimPrefix(allTrim(rows[:trims], r), "trim "))
			if root := rows[n].Off.Node; trims < 4 || root == nil || root.Use != cutplan.Split { // else both far sides are cut to a size, which is that of the next piece in hand
				line(true, say.off(rows[n]))
			}
		case row.Trim:
			line(false, how(row))
			line(true, say.off(row))
		default:
			if marked(row) {
				c.Warning = "BREAKDOWN"
			}
			if marks := marksOf(row, r); marks != "" && p.Layouts[i].Stock.Kind == stock.Board {
				c.Note = "mark " + marks
			}
			hand := handOf(row, kindWord(p.Layouts[i].Stock), r)
			line(false, hand, strings.TrimPrefix(strings.TrimPrefix(hand, "piece "), "pieces "))
			off := say.off(row)
			line(true, off, say.briefly(off, row.Off.Node))
			if left := row.Pieces[0].Last().Left.Node; left != nil && (left.Use == cutplan.Part || left.Use == cutplan.Offcut) {
				said := "left: " + say.leftOf(row)
				line(left.Use == cutplan.Part, said, say.briefly(said, left))
			}
		}
		cards = append(cards, c)
	}
	return cards
}

// briefly leaves out of what is said of a piece what the diagram tells as well: the name
// of a part, the size of an offcut.
func (t teller) briefly(said string, n *cutplan.Node) string {
	if n == nil {
		return said
	}
	switch n.Use {
	case cutplan.Part:
		b := t.plan.Bill[n.Blank]
		return strings.Replace(said, b.Mark+" "+shortened(b.Name()), b.Mark, 1)
	case cutplan.Offcut:
		return strings.Replace(said, "keep "+t.ruler.Size(n.Length, n.Width), "keep", 1)
	}
	return said
}

// trimRows counts the rows of trim, which come first.
func trimRows(rows []cutplan.Row) int {
	for n, row := range rows {
		if !row.Trim {
			return n
		}
	}
	return len(rows)
}

// splitSetting parts the word of a setting from its figure: "saw off", "10".
func splitSetting(said string) (word, figure string) {
	for _, word := range []string{"saw off", "fence", "stop", "mark"} {
		if figure, ok := strings.CutPrefix(said, word+" "); ok {
			return word, figure
		}
	}
	return "", said
}

// pictured is the first piece of a row with its cuts.
func (t teller) pictured(r cutplan.Row) strip.Piece {
	if r.Trim {
		return t.picturedTrim([]cutplan.Row{r})
	}
	h := r.Pieces[0]
	p := strip.Piece{Length: float64(h.Size.Length), Width: float64(h.Size.Width)}
	last := 0.0
	for n, c := range h.Cuts {
		at := float64(c.Here)
		p.Cuts = append(p.Cuts, strip.Cut{Along: r.Cut, At: at, Waste: r.Waste, Guide: r.Guide, Guided: n == 0})
		p.Zones = append(p.Zones, strip.Zone{Area: between(r.Cut, last, at, p), Label: t.short(h.Layout, c.Off.Node)})
		last = at
	}
	left := h.Last().Left
	p.Zones = append(p.Zones, strip.Zone{
		Area: between(r.Cut, last, along(r.Cut, p), p), Label: t.short(h.Layout, left.Node), Waste: left.Node != nil && left.Node.Use == cutplan.Waste,
	})
	return p
}

// picturedTrim is a piece of stock from which trim is cut by rows.
func (t teller) picturedTrim(rows []cutplan.Row) strip.Piece {
	size := rows[0].Pieces[0].Size
	p := strip.Piece{Length: float64(size.Length), Width: float64(size.Width)}
	var gone [2]float64 // off the reference side, by direction
	for _, r := range rows {
		now := r.Pieces[0].Size
		long, at := float64(now.Length), float64(r.Setting)
		if r.Cut == cutplan.Rip {
			long = float64(now.Width)
		}
		if r.SawOff == (r.Waste == cutplan.Far) {
			at = long - at
		}
		at += gone[r.Cut]
		p.Cuts = append(p.Cuts, strip.Cut{Along: r.Cut, At: at, Waste: r.Waste, Guide: r.Guide, Guided: !r.SawOff})
		from, to := at, along(r.Cut, p)
		if r.Waste == cutplan.Near {
			from, to, gone[r.Cut] = 0, at, at
		}
		p.Zones = append(p.Zones, strip.Zone{Area: between(r.Cut, from, to, p), Waste: true})
	}
	if kept := rows[len(rows)-1].Off.Node; kept != nil {
		p.Zones = append(p.Zones, strip.Zone{Area: drawing.Rect{W: p.Length, H: p.Width}, Label: t.short(rows[0].Pieces[0].Layout, kept)})
	}
	return p
}

// between is the part of a piece between two cuts in a direction.
func between(c cutplan.Cut, from, to float64, p strip.Piece) drawing.Rect {
	if c == cutplan.Rip {
		return drawing.Rect{Y: from, W: p.Length, H: to - from}
	}
	return drawing.Rect{X: from, W: to - from, H: p.Width}
}

// along is the side of a piece across which a cut's settings are measured.
func along(c cutplan.Cut, p strip.Piece) float64 {
	if c == cutplan.Rip {
		return p.Width
	}
	return p.Length
}

// short is what to write on a piece in a small picture; empty for what is cut on.
func (t teller) short(layout int, n *cutplan.Node) string {
	switch {
	case n == nil:
		return ""
	case n.Use == cutplan.Part:
		return t.plan.Bill[n.Blank].Mark
	case n.Use == cutplan.Offcut:
		return "keep"
	}
	return ""
}
