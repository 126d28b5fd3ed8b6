package report

import (
	"fmt"
	"strings"

	"sawbill/nest/recut"
	"sawbill/stock"
)

const waysHeading = "What else could save it"

// waysToSave tells of each spoiled blank what else could be done than to cut another.
func waysToSave(o Options) []string {
	if o.Rest == nil {
		return nil
	}
	r := o.Ruler
	var said []string
	for _, w := range o.Rest.Ways {
		named := fmt.Sprintf("%s %s, %s left: ", w.Blank.Mark, w.Blank.Part.Name, r.Size(w.Left.Length, w.Left.Width))
		if w.Enough {
			said = append(said, named+fmt.Sprintf("the finished part is %s: it is in it still, with less to trim. Say --good %s if that is enough.", r.Size(w.Blank.Part.Length, w.Blank.Part.Width), w.Blank.Mark))
		}
		if len(w.Others) > 0 {
			said = append(said, named+"what is left would give "+blanksAnyOf(w)+".")
		}
		for _, s := range w.SizeChanges {
			said = append(said, named+sizeChange(s, r))
		}
		if w.Splice != nil {
			said = append(said, named+splice(w.Splice, r))
		}
	}
	if len(said) > 0 {
		said = append(said, "sawbill recut --smaller plans with a size that is less; of a piece that you keep or splice say sawbill progress --good.")
	}
	return said
}

func blanksAnyOf(w recut.Ways) string {
	var names []string
	for _, b := range w.Others {
		names = append(names, b.Mark+" "+b.Name())
	}
	return strings.Join(names, " or ")
}

// sizeChange tells of a change of sizes and its consequences.
func sizeChange(s recut.SizeChange, r stock.Ruler) string {
	first := s.Parts[0]
	by, what := first.Was.Length-first.Is.Length, "shorter"
	if by <= 0 {
		by, what = first.Was.Width-first.Is.Width, "narrower"
	}
	all := "it"
	switch n := first.Was.Count; {
	case n == 2:
		all = "both " + first.Was.Name + " pieces"
	case n > 2:
		all = fmt.Sprintf("all %d %s pieces", n, first.Was.Name)
	}
	said := fmt.Sprintf("make %s %s %s", all, r.PrintUnit(by), what)
	if s.Size == "" {
		return said + trimmedDown(first, r) + ", if what meets it allows that."
	}
	said += fmt.Sprintf(": the case loses %s of %s, %s instead of %s", r.PrintUnit(s.Was-s.Is), s.Size, r.Print(s.Is), r.Print(s.Was)) + trimmedDown(first, r)
	var others []string
	for _, c := range s.Parts[1:] {
		others = append(others, fmt.Sprintf("%s to %s", c.Was.Name, r.Size(c.Is.Length, c.Is.Width))+trimmedDown(c, r))
	}
	if len(others) > 0 {
		said += "; with it " + strings.Join(others, ", ")
	}
	return said + "."
}

// trimmedDown tells of parts that are cut already.
func trimmedDown(c recut.Changed, r stock.Ruler) string {
	if c.Good == 0 {
		return ""
	}
	return fmt.Sprintf(" (%d cut already: trim to %s)", c.Good, r.Size(c.Is.Length, c.Is.Width))
}

// splice tells of a splice and its consequences.
func splice(s *recut.Splice, r stock.Ruler) string {
	said := "splice it"
	if s.Unknown {
		said = "if it is hidden, splice it"
	}
	said += fmt.Sprintf(": %s of it and a piece %s", r.PrintUnit(s.Back), r.Size(s.Length, s.Width))
	if s.From != "" {
		said += " from " + s.From
	}
	if s.Overlap > 0 {
		said += fmt.Sprintf(", by a glued scarf joint %s long (1 in %d)", r.PrintUnit(s.Overlap), recut.ScarfSlope)
	} else {
		said += ", butted, with a plate glued over the joint behind"
	}
	return said + ": it shows, and is weaker: not where it carries a load, or where a joint or a fitting goes."
}
