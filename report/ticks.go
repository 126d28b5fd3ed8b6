package report

import (
	"fmt"
	"strconv"

	"sawbill/nest/cutplan"
	"sawbill/report/internal/paper"
)

// What is ticked off on a screen. A cut has one key for each piece of stock that its layout
// divides, as progress reports it: "2/1:5" is cut 5 of the first piece of layout 2. The
// steps and the setups share these keys, and with them their ticks.

// cutOf names a cut of a plan.
type cutOf struct{ layout, number int } // index into Plan.Layouts; number as printed

// numbersIn lists the cuts of a row.
func numbersIn(r cutplan.Row) []cutOf {
	var all []cutOf
	for _, h := range r.Pieces {
		for _, c := range h.Cuts {
			all = append(all, cutOf{h.Layout, c.Number})
		}
	}
	return all
}

func cutKey(layout, copy, number int) string {
	return fmt.Sprintf("%d/%d:%d", layout+1, copy+1, number)
}

// keysOf are the keys of a cut in all pieces of stock.
func keysOf(p *cutplan.Plan, c cutOf) []string {
	var all []string
	for copy := range p.Layouts[c.layout].Repeat {
		all = append(all, cutKey(c.layout, copy, c.number))
	}
	return all
}

// stepTicks are the boxes of a row of steps: one for each piece of stock.
func stepTicks(p *cutplan.Plan, layout int, cuts []cutOf) []paper.Tick {
	l := p.Layouts[layout]
	numbers := make([]int, len(cuts))
	for i, c := range cuts {
		numbers[i] = c.number
	}
	word := "cut "
	if len(numbers) > 1 {
		word = "cuts "
	}
	all := make([]paper.Tick, l.Repeat)
	for copy := range all {
		t := paper.Tick{Name: "layout " + strconv.Itoa(layout+1) + ", " + word + ranges(numbers)}
		if l.Repeat > 1 {
			t.Name += fmt.Sprintf(", %s %d of %d", kindWord(l.Stock), copy+1, l.Repeat)
		}
		for _, n := range numbers {
			t.Keys = append(t.Keys, cutKey(layout, copy, n))
		}
		all[copy] = t
	}
	return all
}

// setupTick is the box of a row of setups, named by what is set and the cuts.
func setupTick(p *cutplan.Plan, set string, cuts []cutOf) []paper.Tick {
	t := paper.Tick{Name: "setups, " + set}
	for i, c := range cuts {
		switch {
		case i > 0 && cuts[i-1].layout == c.layout:
			t.Name += ", " + strconv.Itoa(c.number)
		default:
			t.Name += fmt.Sprintf("; layout %d, cut %d", c.layout+1, c.number)
		}
		t.Keys = append(t.Keys, keysOf(p, c)...)
	}
	return []paper.Tick{t}
}
