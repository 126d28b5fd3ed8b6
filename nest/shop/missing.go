package shop

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"sawbill/nest/progress"
	"sawbill/stock"
	"sawbill/stock/fault"
)

// Missing records that stock or a material is not there and not for sale: "NAME" is all of
// it, "NAME=2" two pieces. The error is of type [fault.Faults].
func (r *Rest) Missing(written string) error {
	wrong := func(cause, remedy string) error {
		return fault.Faults{{File: "--missing " + written, Cause: cause, Remedy: remedy}}
	}
	name, number, counted := written, "", false
	if !r.has(written) {
		if at := strings.LastIndex(written, "="); at >= 0 {
			name, number, counted = strings.TrimSpace(written[:at]), strings.TrimSpace(written[at+1:]), true
		}
	}
	if !r.has(name) {
		remedy := "take a stock or a material of the plan"
		var known []string
		for _, s := range r.of.plan.Plan.Job.Stock {
			known = append(known, s.Name, s.Material)
		}
		if several := containing(known, name); len(several) > 1 {
			remedy = "it may be " + strings.Join(several, " or ") + ": take one of these"
		} else if near, ok := stock.Nearest(name, known); ok {
			remedy = fmt.Sprintf("did you mean %q?", near)
		}
		return wrong(fmt.Sprintf("there is no stock or material %q", name), remedy)
	}
	var count int
	if counted {
		n, err := strconv.Atoi(number)
		if err != nil || n < 0 {
			return wrong(fmt.Sprintf("%q is no count", number), "give a whole number, or the name alone for all of it")
		}
		if several := r.uncut(name); n > 0 && len(several) > 1 {
			return wrong(fmt.Sprintf("%q may be %s", name, strings.Join(quoted(several), " or ")), "take one of these names; without a number it is all of them")
		}
		count = n
	} else {
		count = r.state.Uncut(name)
		r.there = slices.DeleteFunc(r.there, func(s stock.Stock) bool { return progress.GoesBy(s, name) })
	}
	if count > 0 {
		if err := r.state.Apply(progress.Event{Word: "missing", Value: fmt.Sprintf("%s=%d", name, count)}); err != nil {
			why := err.(fault.Fault)
			return wrong(why.Cause, why.Remedy)
		}
	}
	r.missing = append(r.missing, name)
	return nil
}

// has reports whether the plan has stock of a name or material.
func (r *Rest) has(name string) bool {
	return slices.ContainsFunc(r.of.plan.Plan.Job.Stock, func(s stock.Stock) bool { return progress.GoesBy(s, name) })
}

// uncut lists the stock of a name or material that is not all cut. Each name
// stands once, as for stock on hand.
func (r *Rest) uncut(name string) []string {
	var all []string
	for _, p := range r.state.Pieces(r.of.plan.Code) {
		if p.Layout >= 0 && p.Kind == progress.Uncut && progress.GoesBy(p.Stock, name) && !slices.Contains(all, p.Stock.Name) {
			all = append(all, p.Stock.Name)
		}
	}
	return all
}

// containing returns the names that contain the text, each once and in quotes.
func containing(known []string, text string) []string {
	var all []string
	for _, name := range known {
		if strings.Contains(strings.ToLower(name), strings.ToLower(text)) {
			all = append(all, name)
		}
	}
	slices.Sort(all)
	return quoted(slices.Compact(all))
}

func quoted(names []string) []string {
	var all []string
	for _, name := range names {
		all = append(all, fmt.Sprintf("%q", name))
	}
	return all
}
