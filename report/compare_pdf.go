package report

import (
	"fmt"
	"strings"

	"sawbill/nest/choice"
	"sawbill/report/internal/chart"
	"sawbill/report/internal/drawing"
	"sawbill/report/internal/paper"
)

const chartWidth = 180 // mm, of a picture of its own

// ComparisonPDF is the shopping list to carry, with what was compared behind it.
// The warnings name characters that the page's fonts lack.
func ComparisonPDF(c *choice.Comparison, o Options) ([]byte, []string, error) {
	b := paper.New(o.Paper.size(), comparisonTitle(c), "", aboutSizes(o.Ruler))
	b.Note(whatIf(o))
	shoppingPage(b, c, o)
	for _, m := range c.Materials {
		b.Page("choices")
		comparisonPage(b, m)
	}
	laid := b.Close()
	laid.Title = withWhatIf(laid.Title, o)
	data, err := drawing.PDF(laid)
	if err != nil {
		return nil, nil, fmt.Errorf("writing the PDF: %w", err)
	}
	var warned []string
	for _, w := range warnings(laid.Pages) {
		warned = append(warned, strings.Replace(w, "plan.pdf", "compare.pdf", 1))
	}
	return data, warned, nil
}

func shoppingPage(b document, c *choice.Comparison, o Options) {
	b.Page("shopping list")
	b.Title(comparisonTitle(c))
	for _, e := range bestLists(c) {
		toBuy(b, e, o.Ruler)
	}
	if asked := estimatesOf(c); len(asked) > 0 {
		b.Heading(estimatesHeading)
		b.Table(estimates(asked).table())
		b.Paragraph(aboutEstimates)
	}
	for _, m := range c.Materials {
		if p := m.Best().Plan; !p.Complete() {
			b.Strong(m.Name + ": " + missing(p))
		}
	}
	if said := totalCost(c); said != "" {
		b.Strong(said)
	}
	b.Heading("The whole job")
	b.Table(wholeJob(c).table())
}

func comparisonPage(b document, m choice.Material) {
	b.Heading(m.Name)
	table := choices(m).table()
	table.Size = 8
	b.Table(table)
	for _, s := range append(leftOut(m), breakEvens(m)...) {
		b.Paragraph(s)
	}
	for _, of := range []chart.Group{costs(m), yields(m)} {
		if len(of.Bars) > 0 { // without prices there is no cost
			b.Picture(chart.Draw([]chart.Group{of}, b.Width()))
		}
	}
}

// CostSVG is a picture of what each choice costs, and how much of it is proven.
func CostSVG(c *choice.Comparison, o Options) []byte {
	return charted(c, costs, withWhatIf(comparisonTitle(c), o)+", cost")
}

// YieldSVG is a picture of the share of the stock that becomes parts.
func YieldSVG(c *choice.Comparison, o Options) []byte {
	return charted(c, yields, withWhatIf(comparisonTitle(c), o)+", yield")
}

func charted(c *choice.Comparison, of func(choice.Material) chart.Group, title string) []byte {
	var groups []chart.Group
	for _, m := range c.Materials {
		if g := of(m); len(g.Bars) > 0 {
			groups = append(groups, g)
		}
	}
	d := chart.Draw(groups, chartWidth)
	return d.SVG(title)
}

func costs(m choice.Material) chart.Group {
	g := chart.Group{Heading: m.Name + ", cost: hatched is what no plan can do without"}
	numbers, again := numbersOf(m)
	for i, c := range m.Choices {
		if c.Plan.Complete() && c.Priced() && !onlyEstimated(c) && !again[i] {
			g.Bars = append(g.Bars, chart.Bar{Name: fmt.Sprintf("%d: %s", numbers[i], purchases(c)),
				Amount: float64(c.Plan.Cost), Proven: float64(c.Plan.Bound), Text: c.Plan.Cost.String(), Best: i == 0})
		}
	}
	return g
}

func yields(m choice.Material) chart.Group {
	g := chart.Group{Heading: m.Name + ", yield", Full: 1}
	numbers, again := numbersOf(m)
	for i, c := range m.Choices {
		if c.Plan.Complete() && !again[i] {
			share := c.Plan.Totals.All.Yield
			g.Bars = append(g.Bars, chart.Bar{Name: fmt.Sprintf("%d: %s", numbers[i], purchases(c)),
				Amount: share, Proven: share, Text: percent(share), Best: i == 0})
		}
	}
	return g
}
