package report

import (
	"fmt"
	"strconv"
	"strings"

	"sawbill/nest/choice"
)

// ComparisonCSV is a line for each choice of each material that buys otherwise, with decimal points
// and no units in the cells. What is not known is empty.
func ComparisonCSV(c *choice.Comparison) []byte {
	var table csvTable
	table.row("material", "choice", "buy", "on hand used", "cost", "at least", "worth of what is kept", "pieces",
		"sellers", "yield", "waste", "kept", "weight in kg", "cuts", "setups", "verdict")
	for _, m := range c.Materials {
		numbers, again := numbersOf(m)
		for i, of := range m.Choices {
			if again[i] {
				continue
			}
			cost, bound, worth, weight := "", "", "", ""
			if of.Priced() && !onlyEstimated(of) {
				cost, bound, worth = of.Plan.Cost.String(), of.Plan.Bound.String(), of.Worth.String()
			}
			if of.Weight > 0 {
				weight = fmt.Sprintf("%.1f", of.Weight)
			}
			share := func(s float64) string { return strconv.FormatFloat(s, 'f', 4, 64) }
			table.row(m.Name, strconv.Itoa(numbers[i]), purchases(of), strconv.FormatBool(of.OnHand), cost, bound, worth,
				strconv.Itoa(of.Pieces), strings.Join(of.Sellers, "; "), share(of.Plan.Totals.All.Yield), share(of.Plan.Totals.All.Waste),
				strconv.Itoa(of.Offcuts), weight, strconv.Itoa(of.Cuts), strconv.Itoa(of.Setups), verdict(m, i))
		}
	}
	return table.bytes()
}
