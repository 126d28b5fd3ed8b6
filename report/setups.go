package report

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"sawbill/nest/cutplan"
	"sawbill/stock"
)

// The order of work of the whole shop, worded once for paper and text.

// aboutSetups says how the setups are meant.
const aboutSetups = "All cuts of the plan once more, gathered so that fence and stop are set as seldom as the order allows. Work from the top down and finish a round before the next. Pencil layout and cut number (2/14) on every piece as it comes off, and its mark on every part; the pieces in hand are told by them. Tick what is done."

// setupRow is a row of the setups in words.
type setupRow struct {
	cutplan.Row
	how   string
	off   string
	left  string // what needs no further cut along it
	parts string // those of it that are parts
}

// setupRows words the setups of one material.
func setupRows(say teller, g cutplan.Gathered) []setupRow {
	var all []setupRow
	steps := map[int][]cutplan.Step{} // by layout
	for _, r := range say.plan.SetupRows(g) {
		row := setupRow{Row: r, how: how(r) + minding(say.plan, r, steps), off: say.offEach(r)}
		row.left, row.parts = say.leftovers(r)
		all = append(all, row)
	}
	return all
}

// offEach is what comes off at each cut of a row; nothing where trim goes on.
func (t teller) offEach(r cutplan.Row) string {
	if r.Trim && r.Off.Node == nil {
		return ""
	}
	if r.Trim && r.Off.Node.Use == cutplan.Split {
		return t.trimmed(r.Pieces[0].Layout, r.Off)
	}
	var off []located
	for _, h := range r.Pieces {
		for _, c := range h.Cuts {
			off = append(off, at(h.Layout, c.Off.Node)...)
		}
	}
	return t.piece(r.Off.Size, off...)
}

// leftovers tells what the cuts of a row leave that is worth a name, and the parts of it.
func (t teller) leftovers(r cutplan.Row) (left, parts string) {
	type like struct {
		said   string
		size   cutplan.Size
		pieces []located
		count  int
	}
	var all []like
	for _, h := range r.Pieces {
		last := h.Last().Left
		if last.Node == nil || last.Node.Use == cutplan.Waste {
			continue
		}
		node := located{h.Layout, last.Node}
		said := unnamed(t).piece(last.Size, node)
		n := slices.IndexFunc(all, func(l like) bool { return l.said == said })
		if n < 0 {
			n = len(all)
			all = append(all, like{said: said, size: last.Size})
		}
		all[n].pieces = append(all[n].pieces, node)
		all[n].count += t.plan.Layouts[h.Layout].Repeat
	}
	var leftSaid, partsSaid []string
	for _, l := range all {
		what := t.piece(l.size, l.pieces...)
		if l.count > 1 {
			what = fmt.Sprintf("%d x %s", l.count, what)
		}
		leftSaid = append(leftSaid, what)
		if l.pieces[0].node.Use == cutplan.Part {
			partsSaid = append(partsSaid, what)
		}
	}
	return strings.Join(leftSaid, "; "), strings.Join(partsSaid, "; ")
}

// unnamed words leftovers without their names, which no two have in common.
func unnamed(say teller) teller {
	say.names = offcutNames{}
	return say
}

func at(layout int, n *cutplan.Node) []located {
	if n == nil {
		return nil
	}
	return []located{{layout, n}}
}

// minding is what to mind at the cuts of a row; steps are those of layouts asked for before.
func minding(p *cutplan.Plan, r cutplan.Row, steps map[int][]cutplan.Step) string {
	var said []string
	for _, h := range r.Pieces {
		l := p.Layouts[h.Layout]
		if steps[h.Layout] == nil {
			steps[h.Layout] = p.Steps(l)
		}
		for _, c := range h.Cuts {
			for _, hazard := range hazardsOf(p, l, steps[h.Layout][c.Number-1]) {
				if brief := hazard.brief(); brief != "" && !slices.Contains(said, brief) {
					said = append(said, brief)
				}
			}
		}
	}
	if said == nil {
		return ""
	}
	return "; " + strings.Join(said, "; ")
}

// setting is the figure to set, to measure or to saw off; empty where fence or stop stays.
func (r setupRow) setting(ruler stock.Ruler) string {
	if r.Stays {
		return ""
	}
	return settingOf(r.Row, ruler)
}

// inHand names the pieces by layout and cut: "layout 1: 8, rest of 11". Where a piece gets
// several cuts, it says how many: "6, 7 (2 cuts each), rest of 9".
func (r setupRow) inHand(p *cutplan.Plan) string {
	type pieces struct {
		layouts []int
		said    string
		times   int
	}
	var all []pieces
	several := slices.ContainsFunc(r.Pieces, func(h cutplan.Held) bool { return len(h.Cuts) > 1 })
	for from := 0; from < len(r.Pieces); {
		to := from
		for to < len(r.Pieces) && r.Pieces[to].Layout == r.Pieces[from].Layout {
			to++
		}
		layout := r.Pieces[from].Layout
		now := pieces{[]int{layout + 1}, held(r.Pieces[from:to], kindWord(p.Layouts[layout].Stock), several), p.Layouts[layout].Repeat}
		if last := len(all) - 1; last >= 0 && all[last].said == now.said && all[last].times == now.times {
			all[last].layouts = append(all[last].layouts, layout+1)
		} else {
			all = append(all, now)
		}
		from = to
	}
	var said []string
	for _, of := range all {
		words := "layout "
		if len(of.layouts) > 1 {
			words = "layouts "
		}
		words += ranges(of.layouts)
		if of.times > 1 {
			words += fmt.Sprintf(", all %d", of.times)
		}
		said = append(said, words+": "+of.said)
	}
	return strings.Join(said, "; ")
}

// held names pieces of one layout, in their order, with their cuts if counted. Numbers are
// those of pieces, until rests are named: after these, pieces are called so.
func held(pieces []cutplan.Held, whole string, counted bool) string {
	var said []string
	rests := false
	for from := 0; from < len(pieces); {
		h, to := pieces[from], from
		var by []int
		for to < len(pieces) && pieces[to].Stock == h.Stock && pieces[to].Rest == h.Rest && len(pieces[to].Cuts) == len(h.Cuts) {
			by = append(by, pieces[to].By)
			to++
		}
		what := ranges(by)
		several := ""
		if len(by) > 1 {
			several = "s"
		}
		switch {
		case h.Stock:
			what = whole
		case h.Rest:
			what, rests = "rest"+several+" of "+what, true
		case rests:
			what, rests = "piece"+several+" "+what, false
		}
		if counted {
			cuts := "1 cut"
			if n := len(h.Cuts); n > 1 {
				cuts = strconv.Itoa(n) + " cuts"
			}
			if len(by) > 1 {
				cuts += " each"
			}
			what += " (" + cuts + ")"
		}
		said = append(said, what)
		from = to
	}
	return strings.Join(said, ", ")
}

// roundName is the round for a column, told where it begins.
func roundName(round int) string {
	if round == 0 {
		return "trim"
	}
	return strconv.Itoa(round)
}

// layouts are those of the row's cuts, counted from 1.
func (r setupRow) layouts() []int {
	var all []int
	for _, h := range r.Pieces {
		all = append(all, h.Layout+1)
	}
	slices.Sort(all)
	return slices.Compact(all)
}

// savings says what gathering saves; empty where it saves nothing.
func savings(p *cutplan.Plan) string {
	apart, gathered := p.Settings()
	if gathered >= apart {
		return ""
	}
	return fmt.Sprintf("Gathered, fence and stop are set %s; layout by layout %s: %d saved.", often(gathered), often(apart), apart-gathered)
}

func often(n int) string {
	if n == 1 {
		return "once"
	}
	return strconv.Itoa(n) + " times"
}

func gatheredName(g cutplan.Gathered, r stock.Ruler) string {
	name := fmt.Sprintf("%s, %s thick", g.Material, r.PrintUnit(g.Thickness))
	if g.Late {
		name += ", " + afterDryFit
	}
	return name
}

// setupList is the setups as text.
func setupList(p *cutplan.Plan, names offcutNames, r stock.Ruler) listing {
	l := listing{columns: []heading{
		{"material", words}, {"round", words}, {"set" + unit(r), words}, {"how", words}, {"comes off", words}, {"layout", words},
	}}
	for _, g := range p.Setups() {
		last := -1
		for _, row := range setupRows(teller{p, names, r}, g) {
			off := row.off
			if row.Count > 1 && off != "" {
				off = fmt.Sprintf("%d x %s", row.Count, off)
			}
			if row.parts != "" {
				off += "; left: " + row.parts
			}
			material, round := "", ""
			if row.Round != last {
				material, round = g.Material, roundName(row.Round)
				last = row.Round
			}
			l.add(material, round, row.setting(r), row.how, off, ranges(row.layouts()))
		}
	}
	return l
}
