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

// setupRow is what comes off alike at one setup, whatever it comes off.
type setupRow struct {
	of    cutplan.Setup
	first bool // of its setup
	how   string
	off   string
	left  string // what needs no further cut along it
	parts string // those of it that are parts
	cuts  []cutplan.SetupCut
	count int // cuts, with the repeats of their layouts
}

// setupRows words the setups of one material.
func setupRows(say teller, g cutplan.Gathered) []setupRow {
	var all []setupRow
	for _, setup := range g.Setups {
		from := len(all)
		for _, c := range setup.Cuts {
			row := setupRow{of: setup, how: minding(say.plan, c, say.ruler)}
			switch l := say.plan.Layouts[c.Layout]; {
			case c.Step.Trim && c.Step.Number < len(say.plan.Steps(l)) && say.plan.Steps(l)[c.Step.Number].Trim:
				continue // the last trim cut tells the size
			case c.Step.Trim:
				row.how, row.off = howTrimmed(say.plan, l, say.ruler), "trimmed: "+say.ruler.Size(c.Step.Off.Length, c.Step.Off.Width)
			default:
				row.off = unnamed(say).piece(c.Step.Off, at(c.Layout, c.Step.OffNode)...)
			}
			n := slices.IndexFunc(all[from:], func(r setupRow) bool { return r.how == row.how && r.off == row.off })
			if n < 0 {
				n = len(all) - from
				row.first = n == 0
				all = append(all, row)
			}
			of := &all[from+n]
			of.cuts = append(of.cuts, c)
			of.count += say.plan.Layouts[c.Layout].Repeat
		}
		for i := range all[from:] {
			all[from+i].name(say)
		}
	}
	return all
}

// numbers are the row's cuts; of trim it has the last ones, and those before belong to it.
func (r setupRow) numbers() []cutOf {
	var all []cutOf
	for _, c := range r.cuts {
		for n := 1; r.of.Trim && n < c.Step.Number; n++ {
			all = append(all, cutOf{c.Layout, n})
		}
		all = append(all, cutOf{c.Layout, c.Step.Number})
	}
	return all
}

// name tells the leftovers of a row, when all its cuts are known.
func (r *setupRow) name(say teller) {
	if r.of.Trim {
		return
	}
	type like struct {
		said   string
		size   cutplan.Size
		pieces []located
		count  int
	}
	var off []located
	var left []like
	for _, c := range r.cuts {
		off = append(off, at(c.Layout, c.Step.OffNode)...)
		node := at(c.Layout, c.Step.LeftNode)
		if node == nil || c.Step.Left == (cutplan.Size{}) || node[0].node.Use == cutplan.Waste {
			continue
		}
		said := unnamed(say).piece(c.Step.Left, node...)
		n := slices.IndexFunc(left, func(l like) bool { return l.said == said })
		if n < 0 {
			n = len(left)
			left = append(left, like{said: said, size: c.Step.Left})
		}
		left[n].pieces = append(left[n].pieces, node...)
		left[n].count += say.plan.Layouts[c.Layout].Repeat
	}
	r.off = say.piece(r.cuts[0].Step.Off, off...)
	var said, parts []string
	for _, l := range left {
		what := say.piece(l.size, l.pieces...)
		if l.count > 1 {
			what = fmt.Sprintf("%d x %s", l.count, what)
		}
		said = append(said, what)
		if l.pieces[0].node.Use == cutplan.Part {
			parts = append(parts, what)
		}
	}
	r.left, r.parts = strings.Join(said, "; "), strings.Join(parts, "; ")
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

// howTrimmed is how the stock of l is trimmed.
func howTrimmed(p *cutplan.Plan, l cutplan.Layout, r stock.Ruler) string {
	for _, s := range p.Steps(l) {
		if s.Trim && s.Breakdown() {
			return how(s, l.Stock, r)
		}
	}
	return how(p.Steps(l)[0], l.Stock, r)
}

// minding is how c is cut, and what to mind.
func minding(p *cutplan.Plan, c cutplan.SetupCut, r stock.Ruler) string {
	l := p.Layouts[c.Layout]
	said := how(c.Step, l.Stock, r)
	for _, h := range hazardsOf(p, l, c.Step) {
		if brief := h.brief(); brief != "" {
			said += "; " + brief
		}
	}
	return said
}

// setting is the figure to set, or to measure.
func (r setupRow) setting(ruler stock.Ruler) string {
	figure := ruler.Print(r.of.Setting)
	switch {
	case !r.first:
		return ""
	case r.of.Trim:
		return "trim " + figure
	case r.of.Guide == cutplan.Marked:
		return "measure " + figure
	}
	return r.of.Guide.String() + " " + figure
}

// inHand names the pieces by layout and cut: "layout 1: 8, rest of 11". What a
// cut leaves for the next one in this row is not named again.
func (r setupRow) inHand(p *cutplan.Plan) string {
	type pieces struct {
		layouts []int
		said    string
		times   int
	}
	var all []pieces
	for from := 0; from < len(r.cuts); {
		to := from
		for to < len(r.cuts) && r.cuts[to].Layout == r.cuts[from].Layout {
			to++
		}
		layout := r.cuts[from].Layout
		now := pieces{[]int{layout + 1}, held(r.cuts[from:to], kindWord(p.Layouts[layout].Stock)), p.Layouts[layout].Repeat}
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

// held names the pieces that cuts of one layout divide.
func held(cuts []cutplan.SetupCut, whole string) string {
	var freed, rests []int
	stockItself := false
	here := map[int]bool{}
	for _, c := range cuts {
		s := c.Step
		here[s.Number] = true
		switch {
		case s.Remainder && here[s.InHand]:
		case s.Remainder:
			rests = append(rests, s.InHand)
		case s.Level <= 1:
			stockItself = true
		default:
			freed = append(freed, s.InHand)
		}
	}
	var said []string
	if stockItself {
		said = append(said, whole)
	}
	if freed != nil {
		said = append(said, ranges(freed))
	}
	if rests != nil {
		said = append(said, "rest of "+ranges(rests))
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
	for _, c := range r.cuts {
		all = append(all, c.Layout+1)
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
			if row.count > 1 {
				off = fmt.Sprintf("%d x %s", row.count, off)
			}
			if row.parts != "" {
				off += "; left: " + row.parts
			}
			material, round := "", ""
			if row.of.Round != last {
				material, round = g.Material, roundName(row.of.Round)
				last = row.of.Round
			}
			l.add(material, round, row.setting(r), row.how, off, ranges(row.layouts()))
		}
	}
	return l
}
