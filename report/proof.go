package report

import (
	"fmt"
	"strings"

	"sawbill/nest/cutplan"
	"sawbill/stock"
)

// proof says in one sentence what is bought, what it costs, and whether less
// could do: nothing that is not proven.
func proof(p *cutplan.Plan) string {
	if len(p.Layouts) == 0 && len(p.Estimates) > 0 && p.Complete() {
		return "Nothing is cut yet: the lumber is still to be bought and measured."
	}
	if len(p.Layouts)+len(p.Bill) == 0 {
		return "Nothing is left to be cut."
	}
	if len(p.Layouts) == 0 {
		return "Nothing can be cut."
	}
	if len(p.Buy) == 0 && len(p.Estimates) > 0 {
		return "What is on hand is cut; what it does not give is estimated."
	}
	if len(p.Buy) == 0 {
		return "Nothing has to be bought: what is on hand is enough for this plan."
	}
	var unpriced []string
	for _, b := range p.Buy {
		if b.Stock.Price == 0 {
			unpriced = append(unpriced, b.Stock.Name)
		}
	}
	bought, cost, bound := pieces(p.Buy), beforeTax(p, p.Cost), p.Bound
	switch {
	case len(unpriced) == len(p.Buy):
		return bought + ", no prices given" + proofOfArea(p)
	case len(unpriced) > 0:
		return fmt.Sprintf("%s, %s without %s, for which no price is given.", bought, cost, strings.Join(unpriced, ", "))
	case !p.Complete():
		return fmt.Sprintf("%s, %s, for the blanks that are cut; the whole job costs %s at least.", bought, cost, bound)
	case p.Proven():
		return fmt.Sprintf("%s, %s: no plan%s can cost less.", bought, cost, boardRule(p))
	}
	less := "a plan for " + bound.String()
	if n := fewestPieces(p); n > 0 {
		less = fmt.Sprintf("%d for %s", n, bound)
	}
	return fmt.Sprintf("%s, %s; %s may be possible (bound %s): %s", bought, cost, less, bound, betterPlan(p))
}

// beforeTax is an amount to which tax is added, if any is.
func beforeTax(p *cutplan.Plan, m stock.Money) string {
	if p.Job.Tax == 0 {
		return m.String()
	}
	return m.String() + " before tax"
}

// boardRule says of a plan what the bound takes for granted beside what a saw
// can do.
func boardRule(p *cutplan.Plan) string {
	switch p.BoardRule() {
	case stock.FirstCrosscut:
		return " that crosscuts its boards first"
	case stock.FirstRip:
		return " that rips its boards first"
	}
	return ""
}

// betterPlan is what may find a cheaper plan.
func betterPlan(p *cutplan.Plan) string {
	if len(p.Job.TooLarge()) > 0 {
		return "a longer --limit may find it, but only a few of the cuts that a seller can make are tried."
	}
	return "a longer --limit may find it."
}

// fewestPieces is how many pieces the bound pays for where all that can be bought
// has one price; 0 where that says nothing, or it pays for cuts by the seller too.
func fewestPieces(p *cutplan.Plan) int {
	if len(p.Job.TooLarge()) > 0 {
		return 0
	}
	each := p.Buy[0].Stock.Price
	for _, s := range p.Job.Stock {
		if !s.OnHand && s.Price != each {
			return 0
		}
	}
	if p.Bound%each != 0 {
		return 0
	}
	return int(p.Bound / each)
}

// proofOfArea ends the sentence of a plan without prices.
func proofOfArea(p *cutplan.Plan) string {
	if !p.Complete() {
		return ", for the blanks that are cut."
	}
	var area, bound int64
	oneSize, proven := true, true
	bought := map[string]bool{}
	for _, u := range p.Unpriced {
		area, bound = area+u.Area, bound+u.Bound
		oneSize = oneSize && u.OneSize
		proven = proven && u.Area == u.Bound
		for _, s := range u.Stock {
			bought[s.Name] = true
		}
	}
	for _, b := range p.Buy {
		if !bought[b.Stock.Name] { // other stock for the same blanks has a price
			return "."
		}
	}
	switch {
	case proven && oneSize:
		return ": no plan" + boardRule(p) + " can do with fewer."
	case proven:
		return ": no plan" + boardRule(p) + " can do with less area."
	case oneSize && bound > 0:
		return fmt.Sprintf("; %d may be possible (bound %d): %s", bound, bound, betterPlan(p))
	}
	return "; a plan with less area may be possible: " + betterPlan(p)
}

// pieces counts what is bought: "2 sheets and 5 boards".
func pieces(buy []cutplan.Purchase) string {
	var sheets, boards int
	for _, b := range buy {
		if b.Stock.Kind == stock.Sheet {
			sheets += b.Count
		} else {
			boards += b.Count
		}
	}
	switch {
	case boards == 0:
		return counted(sheets, "sheet")
	case sheets == 0:
		return counted(boards, "board")
	}
	return counted(sheets, "sheet") + " and " + counted(boards, "board")
}

func counted(n int, word string) string {
	if n == 1 {
		return "1 " + word
	}
	return fmt.Sprintf("%d %ss", n, word)
}
