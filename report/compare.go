package report

import (
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"

	"sawbill/nest/choice"
	"sawbill/stock"
)

// Comparison writes each material of a job under its choices, the best first,
// what the whole job costs, and what to take where something is sold out. The
// error is that of to.
func Comparison(to io.Writer, c *choice.Comparison, o Options) error {
	w := &writer{w: to}
	w.line("%s", withWhatIf(comparisonTitle(c), o))
	for _, m := range c.Materials {
		w.listing(m.Name, choices(m))
		for _, s := range slices.Concat(leftOut(m), substitutes(m), breakEvens(m)) {
			w.line("  %s", s)
		}
	}
	w.listing("The whole job", wholeJob(c))
	w.estimated(c)
	return w.err
}

func comparisonTitle(c *choice.Comparison) string {
	if c.Job.Title == "" {
		return "What could be bought"
	}
	return c.Job.Title + ": what could be bought"
}

// choices is a line for each choice that gives every blank, and for the first
// where none does. Weights are left out where they are not known.
func choices(m choice.Material) listing {
	l := listing{columns: []heading{
		{"choice", figures}, {"buy", words}, {"cost", figures}, {"less kept", figures}, {"at least", figures}, {"pieces", figures},
		{"yield", figures}, {"waste", figures}, {"keep", figures}, {weightUnit(m), figures}, {"cuts", figures}, {"setups", figures}, {"", words},
	}}
	numbers, again := numbersOf(m)
	for i, c := range m.Choices {
		if i > 0 && !c.Plan.Complete() {
			break
		}
		if again[i] {
			continue
		}
		weight := "-"
		if c.Weight > 0 {
			weight = fmt.Sprintf("%.1f", weighed(m, c))
		}
		l.add(strconv.Itoa(numbers[i]), purchases(c), costOf(c), c.Net().String(), boundOf(c), strconv.Itoa(c.Pieces),
			percent(c.Plan.Totals.All.Yield), percent(c.Plan.Totals.All.Waste), strconv.Itoa(c.Offcuts),
			weight, strconv.Itoa(c.Cuts), strconv.Itoa(c.Setups), verdict(m, i))
	}
	const net, weights = 3, 9
	if m.Best().Weight == 0 {
		l.drop(weights)
	}
	if !slices.ContainsFunc(m.Choices, func(c choice.Choice) bool { return c.Worth > 0 }) {
		l.drop(net)
	}
	return l
}

// weightUnit is that of the job, as elsewhere in what it is told.
func weightUnit(m choice.Material) string {
	if m.Best().Plan.Job.Units == stock.Inches {
		return "lb"
	}
	return "kg"
}

func weighed(m choice.Material, c choice.Choice) float64 {
	if weightUnit(m) == "lb" {
		return stock.Grams(1000 * c.Weight).Pounds()
	}
	return c.Weight
}

// drop takes a column out.
func (l *listing) drop(column int) {
	l.columns = slices.Delete(l.columns, column, column+1)
	for i := range l.rows {
		l.rows[i] = slices.Delete(l.rows[i], column, column+1)
	}
}

// numbersOf numbers the choices from 1, in their order. One that buys the same as one
// before it has its number again, and is shown no more.
func numbersOf(m choice.Material) (numbers []int, again []bool) {
	n := 0
	for i, c := range m.Choices {
		alike := slices.IndexFunc(m.Choices[:i], func(o choice.Choice) bool {
			return c.Plan.Complete() && o.OnHand == c.OnHand && purchases(o) == purchases(c)
		})
		again = append(again, alike >= 0)
		if alike < 0 {
			n++
			numbers = append(numbers, n)
		} else {
			numbers = append(numbers, numbers[alike])
		}
	}
	return numbers, again
}

func percent(share float64) string { return fmt.Sprintf("%.1f %%", 100*share) }

func costOf(c choice.Choice) string {
	if !c.Priced() || onlyEstimated(c) {
		return "-"
	}
	return c.Plan.Cost.String()
}

func boundOf(c choice.Choice) string {
	if !c.Priced() || onlyEstimated(c) {
		return "-"
	}
	return c.Plan.Bound.String()
}

// onlyEstimated reports whether nothing is bought but by the board foot, which no cost counts.
func onlyEstimated(c choice.Choice) bool { return len(c.Plan.Estimates) > 0 && len(c.Plan.Buy) == 0 }

// purchases says what a choice buys: "3 x short at North; 1 x long; 2 cuts by the seller".
func purchases(c choice.Choice) string {
	var all []string
	for _, b := range c.Plan.Buy {
		all = append(all, fmt.Sprintf("%d x %s", b.Count, offerName(b.Stock)))
	}
	if cuts := cutsAtSeller(c.Plan); cuts > 0 {
		all = append(all, counted(cuts, "cut")+" by the seller")
	}
	for _, e := range c.Plan.Estimates {
		all = append(all, fmt.Sprintf("%s board feet of %s", feet(e), lumber(e.Rough)))
	}
	switch {
	case len(all) > 0:
		return strings.Join(all, "; ")
	case len(c.Offers) > 0 && !c.Plan.Complete():
		return "nothing of " + offerNames(c)
	}
	return "nothing"
}

// offerNames are the offers of a choice, whether it buys of them or not.
func offerNames(c choice.Choice) string {
	var all []string
	for _, s := range c.Plan.Job.Stock {
		if !s.OnHand {
			all = append(all, offerName(s))
		}
	}
	return strings.Join(all, " or ")
}

func offerName(s stock.Stock) string {
	if s.Seller == "" {
		return s.Name
	}
	return s.Name + " at " + s.Seller
}

// morePlaning is said of a choice that cuts what is much thicker than need be.
const morePlaning = "needs more planing"

// verdict is what is to be thought of choice i: nothing that is not proven.
func verdict(m choice.Material, i int) string {
	c := m.Choices[i]
	var said []string
	switch {
	case !c.Plan.Complete():
		said = append(said, fmt.Sprintf("%s missing", counted(c.Unplaced(), "blank")))
	case !c.Priced():
		said = append(said, "no prices given")
	case len(c.Plan.Estimates) > 0:
		said = append(said, "an estimate")
	case i == 0 && bestOfAll(m):
		said = append(said, "best")
	case i == 0:
		said = append(said, "best found")
	case c.DominatedBy >= 0:
		numbers, _ := numbersOf(m)
		said = append(said, fmt.Sprintf("%d is better", numbers[c.DominatedBy]))
	}
	if c.RelaxedSources {
		said = append(said, morePlaning)
	}
	if !c.OnHand && slices.ContainsFunc(m.Choices, func(o choice.Choice) bool { return o.OnHand }) {
		said = append(said, "nothing on hand used")
	}
	return strings.Join(said, ", ")
}

// bestOfAll reports whether no other choice can cost less than the first. Where what is
// kept counts nothing is proven: another plan may keep more.
func bestOfAll(m choice.Material) bool {
	return m.Best().Plan.Job.Worth == 0 && !slices.ContainsFunc(m.Choices, func(c choice.Choice) bool {
		return c.Plan.Complete() && !c.RelaxedSources && (!c.Priced() || c.Plan.Bound < m.Best().Plan.Cost)
	})
}

// wholeJob adds up the materials.
func wholeJob(c *choice.Comparison) listing {
	l := listing{columns: []heading{{"bought", words}, {"cost", figures}, {"at least", figures}, {"", words}}}
	line := func(name string, t choice.Total) {
		note := ""
		for i, m := range c.Materials {
			of := m.Choices[t.Choices[i]]
			switch {
			case !of.Plan.Complete():
				note = "not complete"
			case !of.Priced() && note == "":
				note = "without what has no price"
			case len(of.Plan.Estimates) > 0 && note == "":
				note = "without what is sold by the board foot"
			}
		}
		l.add(name, t.Cost.String(), t.Bound.String(), note)
	}
	line("the best of each material", c.Best())
	if sellers := c.Sellers(); len(sellers) > 1 {
		for _, s := range sellers {
			if t, can := c.From(s); can {
				line("all at "+s, t)
			}
		}
	}
	return l
}
