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

// sellerList is what is bought from one seller, in the order of the job's materials.
type sellerList struct {
	seller string // empty where it makes no difference
	lines  []sellerLine
	cost   stock.Money
}

type sellerLine struct {
	cutplan.Purchase
	substitute string
	cuts       []cutplan.Division // none where it is carried as it is
}

// sellerLists are what the best choice of each material buys, by seller, those first
// of whom the first material is bought.
func sellerLists(c *choice.Comparison) []sellerList {
	var all []sellerList
	for _, m := range c.Materials {
		instead := substitutes(m)
		for i, b := range m.Best().Plan.Buy {
			at := slices.IndexFunc(all, func(e sellerList) bool { return e.seller == b.Stock.Seller })
			if at < 0 {
				at = len(all)
				all = append(all, sellerList{seller: b.Stock.Seller})
			}
			line := sellerLine{Purchase: b}
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

func (e sellerList) heading() string {
	if e.seller == "" {
		return "Buy"
	}
	return "Buy at " + e.seller
}

// list has a box to tick for each line, and the sum.
func (e sellerList) list(r stock.Ruler) listing {
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
			l.add("[ ]", "", cutsOfEach(d, b.Count)+" "+d.Cut.String()+" to "+piecesOf(d, r), "", b.Stock.Material, "", price(d.Cost))
		}
	}
	l.add("", strconv.Itoa(pieces), "in all", "", "", "", price(e.cost))
	return l.withBoardFeet(buy)
}

// cutsOfEach says how many of the pieces bought are cut this way.
func cutsOfEach(d cutplan.Division, bought int) string {
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
	all := sellerLists(c)
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
		w.line("\n%s", totalCost(c))
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

// totalCost is the cost of all lists, with tax if there is any.
func totalCost(c *choice.Comparison) string {
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
	for _, e := range sellerLists(c) {
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
