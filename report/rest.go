package report

import (
	"fmt"
	"slices"
	"strings"

	"sawbill/nest/cutplan"
	"sawbill/nest/recut"
	"sawbill/stock/casework"
)

// Rest tells that a plan is of the rest of another.
type Rest struct {
	Of     string // the code of that other
	Result *recut.Result
	Ways   []recut.Ways
}

// restNotes is what a plan of the rest does with the plan before.
func restNotes(o Options) []string {
	if o.Rest == nil {
		return nil
	}
	r := o.Rest.Result
	said := []string{fmt.Sprintf("The rest of plan %s: marks are as they were, layouts and cuts are numbered anew.", o.Rest.Of)}
	if len(r.Lacking) > 0 {
		said = append(said, "What had no place any more: "+countedBlanks(r.Lacking)+".")
	}
	said = append(said, jobChanges(o)...)
	said = append(said, savedNotes(o)...)
	switch {
	case len(r.Replanned) == 0 && r.GoesOn == 0:
	case len(r.Replanned) == 0 && len(r.Lacking) == 0 && len(r.Changed) == 0:
		said = append(said, "No blank lacks a place: it is what remains of that plan.")
	case len(r.Replanned) == 0:
		said = append(said, "All else goes on as it was planned.")
	default:
		var names []string
		for _, p := range r.Replanned {
			name := p.Stock.Name
			if p.Layout >= 0 && !strings.HasPrefix(name, o.Rest.Of) {
				name = fmt.Sprintf("layout %d (%s)", p.Layout+1, name)
			}
			if !slices.Contains(names, name) {
				names = append(names, name)
			}
		}
		last := "nothing else was planned to be cut"
		if r.GoesOn > 0 {
			last = "all else goes on as it was planned"
		}
		said = append(said, fmt.Sprintf("Cut otherwise than was planned: %s; %s.", strings.Join(names, "; "), last))
	}
	return said
}

// savedNotes says which spoiled blanks are good by new sizes.
func savedNotes(o Options) []string {
	saved := o.Rest.Result.Saved
	if len(saved) == 0 {
		return nil
	}
	return []string{"Spoiled, and good by the new sizes: " + countedBlanks(saved) + "; trim what is larger."}
}

// countedBlanks is "1 C side, 2 D shelf".
func countedBlanks(blanks []cutplan.Blank) string {
	var said []string
	for _, b := range blanks {
		said = append(said, fmt.Sprintf("%d %s %s", b.Count, b.Mark, b.Name()))
	}
	return strings.Join(said, ", ")
}

// waiting is what cannot be cut now, and what it waits for.
func waiting(p *cutplan.Plan, o Options) []string {
	if o.Rest == nil || o.Rest.Result.Waiting == nil {
		return nil
	}
	w := o.Rest.Result.Waiting
	if len(w.Blanks) == 0 {
		return []string{"Nothing has to wait: all can be cut without it."}
	}
	var blanks []cutplan.Blank
	late := map[string]bool{}
	for _, u := range w.Blanks {
		b := p.Bill[u.Blank]
		b.Count = u.Count
		blanks = append(blanks, b)
		late[b.Part.Name] = true
	}
	said := []string{"Must wait: " + countedBlanks(blanks) + "."}
	if units := unitsBy(o.Case, late); units != "" {
		said = append(said, units)
	}
	if len(w.Buy) > 0 {
		var buy []string
		for _, b := range w.Buy {
			buy = append(buy, fmt.Sprintf("%d %s", b.Count, b.Stock.Name))
		}
		cost := ""
		if w.Cost > 0 {
			cost = ", " + w.Cost.String()
		}
		said = append(said, "The least to buy for them: "+strings.Join(buy, ", ")+cost+".")
	}
	return said
}

// unitsBy tells which sub-assemblies of a case can be put together without the parts
// that are late.
func unitsBy(c *casework.Case, late map[string]bool) string {
	if c == nil {
		return ""
	}
	var now, then []string
	for _, u := range c.Units() {
		to := &now
		if slices.ContainsFunc(u.Items, func(it casework.Item) bool { return late[c.Parts[it.Part].Name] }) {
			to = &then
		}
		*to = append(*to, u.Name)
	}
	switch {
	case len(now) == 0:
		return "No sub-assembly can be put together before."
	case len(then) == 0:
		return ""
	}
	return fmt.Sprintf("Can be put together now: %s; not before they are there: %s.", strings.Join(now, ", "), strings.Join(then, ", "))
}

// remaining is o with only those marks of the case that are laid out on parts of p.
func (o Options) remaining(p *cutplan.Plan) Options {
	c := *o.Case
	c.Marks = slices.DeleteFunc(slices.Clone(c.Marks), func(k casework.Mark) bool {
		of := c.Parts[k.Part]
		return !slices.ContainsFunc(p.Bill, func(b cutplan.Blank) bool { return b.Part.Name == of.Name && b.Part.From == of.From })
	})
	o.Case = &c
	return o
}
