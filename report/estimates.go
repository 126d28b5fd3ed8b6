package report

import (
	"fmt"
	"strconv"
	"strings"

	"sawbill/nest/choice"
	"sawbill/nest/cutplan"
	"sawbill/stock"
)

// What a plan says of lumber that is sold by the board foot: how much to ask
// for, and how little that is certain.

const estimatesHeading = "Ask for, by the board foot: an estimate"

// estimates is how much rough lumber to ask for.
func estimates(of []cutplan.Estimate) listing {
	l := listing{columns: []heading{
		{"board feet", marks}, {"lumber", words}, {"grade", words}, {"net", figures},
		{"yield (%)", sizes}, {"each", figures}, {"cost", figures},
	}}
	for _, e := range of {
		l.add(feet(e), lumber(e.Rough), e.Rough.Grade.String(), e.Net.String(),
			span(strings.TrimSuffix(e.LeastYield.String(), " %"), strings.TrimSuffix(e.UsualYield.String(), " %")), price(e.Rough.Price), estimatedCost(e))
	}
	return l
}

// feet are the board feet to ask for, "3 to 4".
func feet(e cutplan.Estimate) string { return span(strconv.Itoa(e.Least), strconv.Itoa(e.Usual)) }

// estimatedCost is what so much lumber costs, "19.20 to 25.60".
func estimatedCost(e cutplan.Estimate) string {
	return span(price(e.Rough.Price.Times(e.Least)), price(e.Rough.Price.Times(e.Usual)))
}

func lumber(r stock.Rough) string { return r.Quarter.String() + " " + r.Material }

// span is "42 to 50", or one figure where both are the same.
func span(from, to string) string {
	if from == to {
		return from
	}
	return from + " to " + to
}

// estimateNotes say what the boards must give, and what the figures are worth.
func estimateNotes(p *cutplan.Plan, r stock.Ruler) []string {
	if len(p.Estimates) == 0 {
		return nil
	}
	var notes []string
	graded := false
	for _, e := range p.Estimates {
		graded = graded || e.Rough.Yield == stock.Yield{}
		var blanks []string
		for _, w := range e.Blanks {
			b := p.Bill[w.Blank]
			blanks = append(blanks, fmt.Sprintf("%s %s (%d)", b.Mark, b.Part.Name, w.Count))
		}
		notes = append(notes, fmt.Sprintf("%s: some boards at least %s long, and some %s wide or blanks glued up%s. For %s.",
			lumber(e.Rough), r.PrintUnit(e.Longest), r.PrintUnit(e.Widest), beyondGrade(e.Estimate, r), strings.Join(blanks, ", ")))
	}
	notes = append(notes, "An estimate, and not in the costs above: boards differ. Net are the board feet of the blanks at the rough thickness.")
	if graded {
		notes = append(notes, "The lower figure takes the least yield that the grade promises in clear face cuttings, judged on the poorer face (NHLA rules), the higher one what is usual.")
	}
	return append(notes, "Buy, measure the boards, and enter each as a [[board]] on hand: then they are planned.")
}

// estimatesOf are those of the best choices, which no costs here count.
func estimatesOf(c *choice.Comparison) (all []cutplan.Estimate) {
	for _, m := range c.Materials {
		all = append(all, m.Best().Plan.Estimates...)
	}
	return all
}

// aboutEstimates goes below the estimates of a comparison.
const aboutEstimates = "An estimate, and not in the costs here: boards differ. The plan says what they must give."

// beyondGrade warns where the least board of the grade would be too small.
func beyondGrade(e stock.Estimate, r stock.Ruler) string {
	length, width := e.Rough.Grade.LeastBoard()
	if e.Longest <= length && e.Widest <= width {
		return ""
	}
	return fmt.Sprintf(" (boards of this grade may be as small as %s x %s)", r.Print(length), r.PrintUnit(width))
}
