package report

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"sawbill/nest/cutplan"
	"sawbill/report/internal/paper"
	"sawbill/stock"
)

// cuttingBill lists the blanks of a plan, counts them, and says which layouts hold
// them.
func cuttingBill(p *cutplan.Plan, r stock.Ruler) listing {
	unit, layouts := unit(r), layoutsOf(p)
	l := listing{columns: []heading{
		{"mark", marks}, {"part", words}, {"count", figures}, {"cut to" + unit, marks},
		{"finished" + unit, sizes}, {"material", words}, {"allowances", words}, {"layout", words},
	}}
	from := p.Thicknesses()
	for i, b := range p.Bill {
		more := allowances(b, r)
		if b.Spare > 0 {
			more += fmt.Sprintf("; %d spare", b.Spare)
		}
		l.add(b.Mark, b.Name(), strconv.Itoa(b.Count), sawnSize(b, from[i], r), partSize(b.Part, r), b.Part.Material, more, ranges(layouts[i]))
	}
	return l.withNotes(p.Bill)
}

// paperBill is the cutting bill to have beside the saw. How a blank becomes larger than its
// part is left to the screen, and to the milling.
func paperBill(p *cutplan.Plan, r stock.Ruler) paper.Table {
	l := cuttingBill(p, r)
	for i, b := range p.Bill {
		if b.Spare > 0 {
			l.rows[i][billCount] += fmt.Sprintf(" (%d spare)", b.Spare)
		}
	}
	l.drop(billAllowances)
	return in(l.table(), 9)
}

// Columns of the cutting bill.
const (
	billCount      = 2
	billAllowances = 6
)

// whereCut is the cutting bill in brief: where each blank is found.
func whereCut(p *cutplan.Plan, r stock.Ruler) listing {
	l := listing{columns: []heading{
		{"mark", marks}, {"part", words}, {"count", figures}, {"cut to" + unit(r), sizes}, {"layout", words},
	}}
	layouts, from := layoutsOf(p), p.Thicknesses()
	for i, b := range p.Bill {
		l.add(b.Mark, b.Name(), strconv.Itoa(b.Count), sawnSize(b, from[i], r), ranges(layouts[i]))
	}
	return l
}

// layoutsOf lists the layouts that hold each blank, counted from 1.
func layoutsOf(p *cutplan.Plan) [][]int {
	all := make([][]int, len(p.Bill))
	for i, l := range p.Layouts {
		for _, n := range l.Leaves() {
			if n.Use == cutplan.Part && !slices.Contains(all[n.Blank], i+1) {
				all[n.Blank] = append(all[n.Blank], i+1)
			}
		}
	}
	return all
}

// withNotes adds a column of what is to be cut late and of the maker's remarks, a
// row for each blank, if there are any.
func (l listing) withNotes(bill []cutplan.Blank) listing {
	if !slices.ContainsFunc(bill, func(b cutplan.Blank) bool { return note(b.Part) != "" }) {
		return l
	}
	l.columns = append(l.columns, heading{"note", words})
	for i, b := range bill {
		l.rows[i] = append(l.rows[i], note(b.Part))
	}
	return l
}

// note is what the maker remarks of a part, and whether it is best cut after a
// dry fit.
func note(p stock.Part) string {
	switch {
	case !p.DryFit:
		return p.Note
	case p.Note == "":
		return afterDryFit
	}
	return afterDryFit + "; " + p.Note
}

const afterDryFit = "after the dry fit"

// sawnSize is a blank as it comes off the saw: as thick as its stock, whatever is planed
// off later.
func sawnSize(b cutplan.Blank, from []stock.Length, r stock.Ruler) string {
	if len(from) == 1 && from[0] > b.Thickness {
		b.Thickness = from[0]
	}
	return blankSize(b, r)
}

func blankSize(b cutplan.Blank, r stock.Ruler) string {
	return r.Size(b.Length, b.Width) + " x " + r.Print(b.Thickness)
}

func partSize(p stock.Part, r stock.Ruler) string {
	return r.Size(p.Length, p.Width) + " x " + r.Print(p.Thickness)
}

// allowances says what the blank has more than its parts: "edges 2 x 1.5, end
// 10", and of several parts in one piece the kerfs that will part them.
func allowances(b cutplan.Blank, r stock.Ruler) string {
	var said []string
	for _, d := range b.How {
		for _, t := range d.Sum[1:] {
			one := t.Label + " " + r.Print(t.Value)
			if t.Times > 1 {
				one = fmt.Sprintf("%ss %d x %s", t.Label, t.Times, r.Print(t.Value))
			}
			said = append(said, one)
		}
	}
	if said == nil {
		return "none"
	}
	return strings.Join(said, ", ")
}
