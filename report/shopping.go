package report

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"

	"sawbill/nest/cutplan"
	"sawbill/stock"
)

// This file words the shopping list and the use of material once, for paper and text.

// withBoardFeet adds a column before the prices, and its sum, if anything is sold by the board foot.
// The first rows are the purchases of buy, in order; a zero purchase stands for a row without one.
// The sums follow.
func (l listing) withBoardFeet(buy []cutplan.Purchase) listing {
	var sum stock.Volume
	some := false
	feet := make([]string, len(l.rows))
	for i, b := range buy {
		feet[i] = "-"
		if v, byFoot := b.Measured(); byFoot {
			some, sum = true, sum.Plus(v)
			feet[i] = v.BoardFeet().String()
		}
	}
	if !some {
		return l
	}
	feet[len(buy)] = sum.BoardFeet().String()
	before := slices.IndexFunc(l.columns, func(h heading) bool { return h.word == "each" })
	l.columns = slices.Insert(l.columns, before, heading{"board feet", figures})
	for i := range l.rows {
		l.rows[i] = slices.Insert(l.rows[i], before, feet[i])
	}
	return l
}

// price leaves out what is not known.
func price(m stock.Money) string {
	if m == 0 {
		return "-"
	}
	return m.String()
}

func stockSize(s stock.Stock, r stock.Ruler) string {
	return r.Size(s.Length, s.Width) + " x " + r.Print(s.Thickness)
}

// shares says where the material goes.
func shares(t cutplan.Totals) []string {
	line := func(of string, s cutplan.Shares) string {
		return fmt.Sprintf("Yield%s %.1f %%, kept as offcuts %.1f %%, waste with kerf, trim and allowances %.1f %%.",
			of, 100*s.Yield, 100*s.Offcut, 100*s.Waste)
	}
	none := cutplan.Shares{}
	if t.Sheets == none || t.Boards == none {
		if t.All == none {
			return nil
		}
		return []string{line("", t.All)}
	}
	return []string{line(" of the sheets", t.Sheets), line(" of the boards", t.Boards)}
}

// fromTheRack is the stock on hand that the plan cuts.
func fromTheRack(p *cutplan.Plan, r stock.Ruler) listing {
	l := listing{columns: []heading{
		{"take", figures}, {"on hand", words}, {"size" + unit(r), sizes}, {"material", words}, {"layout", words},
	}}
	type line struct {
		stock   stock.Stock
		count   int
		layouts []int
	}
	var lines []line
	for i, lay := range p.Layouts {
		if !lay.Stock.OnHand {
			continue
		}
		of := boardOf(lay.Stock)
		at := slices.IndexFunc(lines, func(n line) bool { return n.stock == of })
		switch {
		case at < 0:
			at = len(lines)
			lines = append(lines, line{stock: of, count: lay.Repeat})
		case !lay.Stock.IsSection(): // sections are of one board
			lines[at].count += lay.Repeat
		}
		lines[at].layouts = append(lines[at].layouts, i+1)
	}
	for _, n := range lines {
		l.add(strconv.Itoa(n.count), n.stock.Name, stockSize(n.stock, r), n.stock.Material, ranges(n.layouts))
	}
	return l
}

// kept is what is left that is worth keeping, the largest first, with what to
// write on it.
func kept(p *cutplan.Plan, names offcutNames, r stock.Ruler) listing {
	type piece struct {
		material                 string
		thickness, length, width stock.Length
	}
	of := map[piece][]located{}
	layouts := map[piece][]int{}
	var pieces []piece
	for _, kept := range p.Offcuts() {
		lay := p.Layouts[kept.Layout].Stock
		k := piece{lay.Material, lay.Thickness, kept.Node.Length, kept.Node.Width}
		if of[k] == nil {
			pieces = append(pieces, k)
		}
		of[k] = append(of[k], located{kept.Layout, &kept.Node})
		if !slices.Contains(layouts[k], kept.Layout+1) {
			layouts[k] = append(layouts[k], kept.Layout+1)
		}
	}
	slices.SortStableFunc(pieces, func(a, b piece) int {
		return cmp.Or(cmp.Compare(a.material, b.material), cmp.Compare(a.thickness, b.thickness),
			cmp.Compare(b.length*b.width, a.length*a.width), cmp.Compare(b.length, a.length))
	})
	l := listing{columns: []heading{
		{"keep", figures}, {"size" + unit(r), sizes}, {"material", words}, {"layout", words}, {"write on it", words},
	}}
	for _, k := range pieces {
		l.add(strconv.Itoa(len(names.numbers(of[k]...))), r.Size(k.length, k.width)+" x "+r.Print(k.thickness), k.material,
			ranges(layouts[k]), names.said(of[k]...))
	}
	return l
}

// unplaced is what could not be cut, and why.
func unplaced(p *cutplan.Plan, r stock.Ruler) listing {
	l := listing{columns: []heading{
		{"missing", figures}, {"mark", marks}, {"part", words}, {"blank" + unit(r), sizes}, {"why", words},
	}}
	for _, u := range p.Unplaced {
		b := p.Bill[u.Blank]
		l.add(strconv.Itoa(u.Count), b.Mark, b.Name(), blankSize(b, r), u.Reason)
	}
	return l
}

// missing is a sentence for a plan that is not complete.
func missing(p *cutplan.Plan) string {
	n := 0
	for _, u := range p.Unplaced {
		n += u.Count
	}
	if n == 1 {
		return "NOT COMPLETE: 1 blank could not be cut."
	}
	return fmt.Sprintf("NOT COMPLETE: %d blanks could not be cut.", n)
}
