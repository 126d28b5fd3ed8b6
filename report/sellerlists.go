package report

import (
	"fmt"
	"io"
	"strconv"
	"strings"

	"sawbill/nest/choice"
	"sawbill/nest/cutplan"
	"sawbill/stock"
)

// sellerList is what is bought from one seller, in the order of the job's materials.
type sellerList struct {
	cutplan.Receipt
	tax     stock.Share
	instead []string // of each line, what to take where it is sold out; may be empty
}

// sellerLists are what plans of one job buy, by seller, those first of whom the first
// material is bought. The replacements are by offer.
func sellerLists(tax stock.Share, instead map[stock.Stock]string, plans ...*cutplan.Plan) []sellerList {
	var all []sellerList
	for _, r := range cutplan.Receipts(tax, plans...) {
		list := sellerList{Receipt: r, tax: tax}
		for _, l := range r.Lines {
			list.instead = append(list.instead, instead[l.Stock])
		}
		all = append(all, list)
	}
	return all
}

// bestLists are what the best choice of each material buys.
func bestLists(c *choice.Comparison) []sellerList {
	var plans []*cutplan.Plan
	instead := make(map[stock.Stock]string)
	for _, m := range c.Materials {
		plan := m.Best().Plan
		plans = append(plans, plan)
		for i, said := range substitutes(m) {
			instead[plan.Buy[i].Stock] = said
		}
	}
	return sellerLists(c.Job.Tax, instead, plans...)
}

// planLists are what a plan buys.
func planLists(p *cutplan.Plan, o Options) []sellerList {
	instead := make(map[stock.Stock]string)
	for _, r := range o.Instead {
		instead[r.Offer] = ifOut(r.Offer, insteadOf(choice.Choice{Plan: r.Plan, RelaxedSources: r.RelaxedSources}, r.Extra))
	}
	return sellerLists(p.Job.Tax, instead, p)
}

func (e sellerList) heading() string {
	if e.Seller == "" {
		return "Buy"
	}
	return "Buy at " + e.Seller
}

// list has a box to tick for each line, the sum, and the tax with what is paid.
func (e sellerList) list(r stock.Ruler) listing {
	l := listing{total: 1, columns: []heading{
		{"", ticks}, {"buy", figures}, {"stock", words}, {"size" + unit(r), sizes}, {"material", words},
		{"each", figures}, {"cost", figures},
	}}
	pieces := 0
	var buy []cutplan.Purchase // of each row
	for _, b := range e.Lines {
		pieces += b.Count
		buy = append(buy, b.Purchase)
		l.add(tickBox, strconv.Itoa(b.Count), b.Stock.Name, stockSize(b.Stock, r), b.Stock.Material, price(b.Stock.Price), price(b.Cost))
		for _, d := range b.Cuts {
			buy = append(buy, cutplan.Purchase{})
			l.add(tickBox, "", cutsOfEach(d, b.Count)+" "+d.Cut.String()+" to "+piecesOf(d, r)+", "+counted(d.Count*d.Cuts(), "cut"), "", b.Stock.Material, "", price(d.Cost))
		}
	}
	l.add("", strconv.Itoa(pieces), "in all", "", "", "", price(e.Net))
	if e.Tax > 0 {
		l.total += 2
		l.add("", "", fmt.Sprintf("tax, %s %%", stock.Money(e.tax)), "", "", "", price(e.Tax))
		l.add("", "", "to pay", "", "", "", price(e.Paid()))
	}
	return l.withBoardFeet(buy)
}

// tickBox is a box to tick as text.
const tickBox = "[ ]"

// paid is a sentence on what all lists cost together; empty where one says it, or nothing
// has a price.
func paid(all []sellerList) string {
	var net, tax stock.Money
	for _, e := range all {
		net, tax = net+e.Net, tax+e.Tax
	}
	switch {
	case len(all) < 2 || net == 0:
		return ""
	case tax == 0:
		return fmt.Sprintf("At all sellers together: %s.", net)
	}
	return fmt.Sprintf("At all sellers together: %s, of it tax %s.", net+tax, tax)
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
	all := bestLists(c)
	if len(all) == 0 && len(estimatesOf(c)) == 0 {
		w.line("\nNothing has to be bought.")
	}
	for _, e := range all {
		w.listing(e.heading(), e.list(o.Ruler))
		w.instead(e)
	}
	w.estimated(c)
	if said := totalCost(c); said != "" {
		w.line("\n%s", said)
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

// instead writes what to take where something on a list is sold out.
func (w *writer) instead(e sellerList) {
	for _, said := range e.instead {
		if said != "" {
			w.line("  %s", said)
		}
	}
}

// totalCost is what all lists of a comparison cost together.
func totalCost(c *choice.Comparison) string {
	said := paid(bestLists(c))
	if said != "" && len(estimatesOf(c)) > 0 {
		said = strings.TrimSuffix(said, ".") + "; without what is sold by the board foot."
	}
	return said
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
	for _, e := range bestLists(c) {
		for i, l := range e.Lines {
			s := l.Stock
			table.row(e.Seller, s.Material, strconv.Itoa(l.Count), s.Name, s.Length.Decimal(), s.Width.Decimal(), s.Thickness.Decimal(),
				known(s.Price), known(l.Cost), e.instead[i])
			for _, d := range l.Cuts {
				table.row(e.Seller, s.Material, strconv.Itoa(d.Count*d.Cuts()), "cuts: "+d.Cut.String()+" to "+piecesOf(d, stock.Ruler{}), "", "", "",
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
