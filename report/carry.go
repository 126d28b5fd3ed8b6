package report

import (
	"fmt"
	"io"
	"slices"
	"strconv"

	"sawbill/nest/choice"
	"sawbill/nest/cutplan"
	"sawbill/stock"
)

// errand is what is bought from one seller, in the order of the job's materials.
type errand struct {
	seller string // empty where it makes no difference
	lines  []errandLine
	cost   stock.Money
}

type errandLine struct {
	cutplan.Purchase
	substitute string
	cuts       []cutplan.Division // none where it is carried as it is
}

// errands are what the best choice of each material buys, by seller, those first
// of whom the first material is bought.
func errands(c *choice.Comparison) []errand {
	var all []errand
	for _, m := range c.Materials {
		instead := substitutes(m)
		for i, b := range m.Best().Plan.Buy {
			at := slices.IndexFunc(all, func(e errand) bool { return e.seller == b.Stock.Seller })
			if at < 0 {
				at = len(all)
				all = append(all, errand{seller: b.Stock.Seller})
			}
			line := errandLine{Purchase: b}
			if i < len(instead) {
				line.substitute = instead[i]
			}
			for _, d := range m.Best().Plan.AtSeller {
				if d.Stock.Name == b.Stock.Name {
					line.cuts = append(line.cuts, d)
					all[at].cost += d.Cost
				}
			}
			all[at].lines = append(all[at].lines, line)
			all[at].cost += b.Cost
		}
	}
	return all
}

func (e errand) heading() string {
	if e.seller == "" {
		return "Buy"
	}
	return "Buy at " + e.seller
}

// list is the errand with a box to tick for each line, and the sum.
func (e errand) list(r stock.Ruler) listing {
	l := listing{total: 1, columns: []heading{
		{"", words}, {"buy", figures}, {"stock", words}, {"size" + unit(r), sizes}, {"material", words},
		{"each", figures}, {"cost", figures},
	}}
	pieces := 0
	var buy []cutplan.Purchase // of each row
	for _, b := range e.lines {
		pieces += b.Count
		buy = append(buy, b.Purchase)
		l.add("[ ]", strconv.Itoa(b.Count), b.Stock.Name, stockSize(b.Stock, r), b.Stock.Material, price(b.Stock.Price), price(b.Cost))
		for _, d := range b.cuts {
			buy = append(buy, cutplan.Purchase{})
			l.add("[ ]", "", ofThem(d, b.Count)+" "+d.Cut.String()+" to "+piecesOf(d, r), "", b.Stock.Material, "", price(d.Cost))
		}
	}
	l.add("", strconv.Itoa(pieces), "in all", "", "", "", price(e.cost))
	return l.withBoardFeet(buy)
}

// ofThem says how many of those bought a division is of.
func ofThem(d cutplan.Division, bought int) string {
	if d.Count == bought {
		return "of each"
	}
	return fmt.Sprintf("%d of them", d.Count)
}

// ShoppingList writes what to buy for the best choice of each material, by
// seller, with what to take where something is sold out. The error is that of to.
func ShoppingList(to io.Writer, c *choice.Comparison, o Options) error {
	w := &writer{w: to}
	heading := "Shopping list"
	if c.Job.Title != "" {
		heading = c.Job.Title + ": shopping list"
	}
	w.line("%s", withWhatIf(heading, o))
	all := errands(c)
	if len(all) == 0 && len(estimatesOf(c)) == 0 {
		w.line("\nNothing has to be bought.")
	}
	for _, e := range all {
		w.listing(e.heading(), e.list(o.Ruler))
		for _, b := range e.lines {
			if b.substitute != "" {
				w.line("  %s", b.substitute)
			}
		}
	}
	w.estimated(c)
	if len(all) > 1 || c.Job.Tax > 0 && c.Best().Cost > 0 {
		w.line("\n%s", totalSaid(c))
	}
	for _, m := range c.Materials {
		if p := m.Best().Plan; !p.Complete() {
			w.line("\n%s: %s", m.Name, missing(p))
		}
	}
	return w.err
}

// estimated writes what to ask for by the board foot.
func (w *writer) estimated(c *choice.Comparison) {
	if asked := estimatesOf(c); len(asked) > 0 {
		w.listing(estimatesHeading, estimates(asked))
		w.line("  %s", aboutEstimates)
	}
}

// totalSaid is what all errands cost, with tax if there is any.
func totalSaid(c *choice.Comparison) string {
	cost := c.Best().Cost
	said := fmt.Sprintf("Total %s", cost)
	if t := c.Job.Tax; t > 0 {
		said += fmt.Sprintf("; with %s %% tax, %s, it is %s", stock.Money(t), t.Of(cost), cost+t.Of(cost))
	}
	if len(estimatesOf(c)) > 0 {
		said += "; without what is sold by the board foot"
	}
	return said + "."
}

// ShoppingListCSV is the list for a spreadsheet, sizes in exact millimeters. What
// has no price has none in its cells.
func ShoppingListCSV(c *choice.Comparison) []byte {
	var table csvTable
	table.row("seller", "material", "count", "stock", "length (mm)", "width (mm)", "thickness (mm)", "each", "cost", "if it is out")
	known := func(m stock.Money) string {
		if m == 0 {
			return ""
		}
		return fmt.Sprint(m)
	}
	for _, e := range errands(c) {
		for _, l := range e.lines {
			s := l.Stock
			table.row(e.seller, s.Material, strconv.Itoa(l.Count), s.Name, s.Length.Decimal(), s.Width.Decimal(), s.Thickness.Decimal(),
				known(s.Price), known(l.Cost), l.substitute)
			for _, d := range l.cuts {
				table.row(e.seller, s.Material, strconv.Itoa(d.Count*d.Cuts()), "cuts: "+d.Cut.String()+" to "+piecesOf(d, stock.Ruler{}), "", "", "",
					"", known(d.Cost), "")
			}
		}
	}
	for _, e := range estimatesOf(c) {
		table.row("", e.Rough.Material, "", fmt.Sprintf("%s board feet of %s, %s: an estimate", feet(e), lumber(e.Rough), e.Rough.Grade), "", "", "",
			known(e.Rough.Price), "", "")
	}
	return table.bytes()
}
