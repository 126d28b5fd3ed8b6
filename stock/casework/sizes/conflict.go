package sizes

import (
	"fmt"
	"slices"
	"strings"

	"sawbill/stock"
	"sawbill/stock/casework/design"
	"sawbill/stock/casework/internal/wording"
)

// refusal is a size that was given and does not hold what must go in.
type refusal struct {
	at    design.Place
	size  string // "height"
	of    string // "height of opening 1"
	cause string // after the size: "200 mm is given, but the drawers need ..."
	need  stock.Length
	least bool // more will do
}

// conflict reports which sizes cannot all hold, at once and with one remedy: those
// that agree with the first, and those against it. Outside sizes are compared
// outside, so that the numbers are those that were written.
func (r *Sizes) conflict(x axis, with, against []claim) {
	first := with[0]
	if !x.outside.Set && !x.inside.Set {
		for _, c := range against {
			r.tellRefused(c, c)
			r.In.Fault(c.at, fmt.Sprintf("%s needs an inside %s of %s, but %s needs %s", c.of, x.name, r.In.Print(c.size.Total()),
				first.of, r.In.Print(first.size.Total())), "leave out one "+x.name+" in the smaller of the two, or add an open space to it")
		}
		return
	}
	size := func(c claim) stock.Length { return c.size.Total() }
	said, how := "inside "+x.name, func(c claim) string { return r.In.Explained(c.size) }
	if x.outside.Set {
		said = "outside " + x.name
		size = func(c claim) stock.Length { return c.size.Total() + x.ends.Total() }
		how = func(c claim) string { return "inside it is " + r.In.Explained(c.size) }
	}
	var needs, leave []string
	besides := ""
	for _, c := range against {
		needs = append(needs, fmt.Sprintf("%s needs %s: %s", c.of, r.In.Print(size(c)), how(c)))
		for _, f := range c.refused {
			besides += "; and as " + f.of + " " + f.cause
			leave = append(leave, f.of)
		}
	}
	cause := fmt.Sprintf("%s %s is given, but %s", said, r.In.Print(size(first)), strings.Join(needs, "; "))
	if x.outside.Set {
		cause += ", and leaves " + r.In.Explained(first.size)
	}
	cause += besides
	r.In.Fault(first.at, cause, r.reconcile(x, with, against, leave))
}

// reconcile words what makes all sizes hold. Where those against the first agree
// with one another, what is given for the whole gives way to them.
func (r *Sizes) reconcile(x axis, with, against []claim, leave []string) string {
	wanted := decisive(against)
	var given []claim // for the whole
	for _, c := range append(slices.Clone(with), against...) {
		whole := c.of == "outside_"+x.name || c.of == "inside_"+x.name
		switch {
		case whole && !slices.ContainsFunc(against, func(other claim) bool { return other.of == c.of }):
			given = append(given, c)
		case !c.allows(wanted.size.Total()):
			return "keep one of " + wording.Alternatives(names(append(with, against...))) + ", and leave out or change the others"
		}
	}
	more, both, alone := "", "leave out one of the two", len(given) == 1 && len(against) == 1
	if wanted.least {
		more = " or more"
	}
	if wanted.least || !alone {
		both = "leave " + wording.Many(len(given), "it", "them") + " out"
	}
	var make []string
	for i, c := range given {
		need := wanted.size.Total()
		if i == 0 && x.outside.Set {
			need += x.ends.Total()
		}
		make = append(make, c.of+" "+r.In.Print(need)+more)
	}
	if leave != nil {
		return "make " + wording.And(make) + " or leave " + wording.Many(len(given), "it", "them") + " out, and leave out the " + wording.And(leave)
	}
	return "make " + wording.And(make) + ", or " + both
}

func names(of []claim) (all []string) {
	for _, c := range of {
		all = append(all, c.of)
	}
	return all
}

// tellRefused reports the sizes that a line refuses, though it agrees with the claim that settles
// it.
func (r *Sizes) tellRefused(c, settling claim) {
	for _, f := range c.refused {
		need, more := f.need, ""
		switch {
		case f.least && !settling.least && len(c.refused) == 1 && c.fixed:
			need += settling.size.Total() - c.size.Total() // all that the line has for it
		case f.least:
			more = " or more,"
		}
		r.In.Fault(f.at, f.size+" "+f.cause, "make it "+r.In.Print(need)+more+" or leave it out")
	}
}
