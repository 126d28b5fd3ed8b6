package report

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"sawbill/nest/recut"
	"sawbill/stock"
)

// jobChanges says what is changed in a job under way, and what becomes of pieces cut already.
func jobChanges(o Options) []string {
	t := o.Rest.Result.JobChanges
	var added, dropped, counts, larger, smaller []string
	for _, c := range t.Changed {
		size := c.Is.Name + " to " + o.Ruler.Size(c.Is.Length, c.Is.Width)
		switch {
		case c.Was.Count == 0:
			added = append(added, fmt.Sprintf("%d %s, %s", c.Is.Count, c.Is.Name, o.Ruler.Size(c.Is.Length, c.Is.Width)))
			continue
		case c.Is.Count == 0:
			dropped = append(dropped, c.Was.Name)
			continue
		case c.Was.Count != c.Is.Count:
			counts = append(counts, fmt.Sprintf("%d %s, not %d", c.Is.Count, c.Is.Name, c.Was.Count))
		}
		trimmed := slices.ContainsFunc(t.Trim, func(d recut.Changed) bool { return d.Is.Name == c.Is.Name })
		switch {
		case c.Is.Length == c.Was.Length && c.Is.Width == c.Was.Width || trimmed:
		case c.Is.Length <= c.Was.Length && c.Is.Width <= c.Was.Width:
			smaller = append(smaller, size)
		default:
			larger = append(larger, size+", not "+o.Ruler.Size(c.Was.Length, c.Was.Width))
		}
	}
	var said []string
	add := func(heading string, all []string, between string) {
		if len(all) > 0 {
			said = append(said, heading+": "+strings.Join(all, between)+".")
		}
	}
	add("Added to the job", added, "; ")
	add("Dropped from the job", dropped, ", ")
	add("Wanted now", counts, "; ")
	add("Changed", larger, "; ")
	for _, m := range t.ThicknessChanges {
		said = append(said, fmt.Sprintf("%s measures %s, not %s.", m.Material, o.Ruler.PrintUnit(m.Is), o.Ruler.Print(m.Was)))
	}
	if t.Kerf != t.WasKerf {
		said = append(said, fmt.Sprintf("The kerf is %s, not %s.", o.Ruler.PrintUnit(t.Kerf), o.Ruler.Print(t.WasKerf)))
	}
	var trim, unfit, unused []string
	for _, c := range t.Trim {
		trim = append(trim, fmt.Sprintf("%d %s to %s", c.Good, c.Is.Name, o.Ruler.Size(c.Is.Length, c.Is.Width)))
	}
	add("Trim what is cut already", trim, ", ")
	add("Smaller than planned", smaller, ", ")
	for _, u := range t.Unfit {
		unfit = append(unfit, fmt.Sprintf("%d %s %s, cut as %s, wanted as %s", u.Count, u.Mark, u.Name(), sizeAndGrain(u.Part, o.Ruler), sizeAndGrain(u.Is, o.Ruler)))
	}
	add("No longer good", unfit, "; ")
	for _, s := range t.Unused {
		pieces := ""
		if s.Count > 1 {
			pieces = strconv.Itoa(s.Count) + " x "
		}
		unused = append(unused, pieces+s.Name+", "+stockSize(s, o.Ruler))
	}
	add("Cut and not wanted, so now on hand; write on it", unused, "; ")
	return said
}

// sizeAndGrain is the size of a part, with its grain where that is not along its length.
func sizeAndGrain(p stock.Part, r stock.Ruler) string {
	size := r.Size(p.Length, p.Width) + " x " + r.Print(p.Thickness)
	if p.Grain == stock.GrainWidth {
		size += ", grain along the width"
	}
	return size
}
