package report

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"sawbill/nest/cutplan"
	"sawbill/stock"
	"sawbill/stock/casework"
)

// Headings of what a case is put together from, and how.
const (
	unitsHeading    = "Sub-assemblies"
	assemblyHeading = "Assembly"
)

// assemblyCautions go with putting a case together.
var assemblyCautions = []string{
	"Have help to lift and turn the case, and clamp it only as hard as closes the joints.",                     // common practice, no source
	"Air the room while you glue and finish, and wear what the maker of the product asks for.",                 // makers' data sheets
	"Rags with oil finish can catch fire by themselves: dry them spread out outdoors, or drown them in water.", // common practice; makers' data sheets
}

// billMarks are the marks of the parts of a case in the bill, by part.
func billMarks(c *casework.Case, bill []cutplan.Blank) []string {
	marks := make([]string, len(c.Parts))
	for i, p := range c.Parts {
		var all []string
		for _, b := range bill {
			if b.Part.From == p.From && b.Part.Name == p.Name && b.Mark != "" {
				all = append(all, b.Mark)
			}
		}
		marks[i] = strings.Join(all, ", ")
	}
	return marks
}

// units lists what each sub-assembly is made of, with the marks of the bill if it
// has any.
func units(c *casework.Case, bill []cutplan.Blank, r stock.Ruler) listing {
	l := listing{columns: []heading{
		{"sub-assembly", words}, {"mark", marks}, {"part", words}, {"count", figures}, {"finished" + unit(r), sizes},
	}}
	marked := billMarks(c, bill)
	for _, u := range c.Units() {
		name := unitTitle(u)
		if u.Items == nil {
			l.add(name, "", "finished, width x depth x height", "1", r.Size(u.Finished[casework.X], u.Finished[casework.Y])+" x "+r.Print(u.Finished[casework.Z]))
		}
		for _, it := range u.Items {
			p := c.Parts[it.Part]
			l.add(name, marked[it.Part], p.Name, strconv.Itoa(it.Count), partSize(p, r))
			name = ""
		}
	}
	return l
}

// unitTitle is what a sub-assembly is called: "drawers 1, 2 (x 2)".
func unitTitle(u casework.Unit) string {
	if u.Drawers == nil {
		return u.Name
	}
	numbers := make([]string, len(u.Drawers))
	for i, n := range u.Drawers {
		numbers[i] = strconv.Itoa(n)
	}
	if u.Count == 1 {
		return u.Name + " " + numbers[0]
	}
	return fmt.Sprintf("%ss %s (x %d)", u.Name, strings.Join(numbers, ", "), u.Count)
}

// assemblyLines are the steps, each with its sub-assembly.
func assemblyLines(c *casework.Case) []string {
	lines := make([]string, len(c.Assembly))
	for i, s := range c.Assembly {
		lines[i] = s.Unit + ": " + s.Text
	}
	return lines
}

// assemblyText writes sub-assemblies and steps.
func assemblyText(w *writer, c *casework.Case, bill []cutplan.Blank, r stock.Ruler) {
	w.listing(unitsHeading, units(c, bill, r).withoutMarks())
	if len(c.Assembly) == 0 {
		return
	}
	w.line("\n%s", assemblyHeading)
	for _, caution := range slices.Concat(assemblyCautions, []string{deferral}) {
		w.line("  %s", caution)
	}
	for i, line := range assemblyLines(c) {
		w.line("  %2d  %s", i+1, line)
	}
}

// assemblyPage has the same on paper.
func assemblyPage(b document, c *casework.Case, bill []cutplan.Blank, r stock.Ruler) {
	if l := units(c, bill, r); len(l.rows) > 0 {
		b.Heading(unitsHeading)
		t := l.table()
		t.Joined = make([]bool, len(l.rows))
		for i, row := range l.rows {
			t.Joined[i] = row[0] == ""
		}
		b.Table(t)
	}
	if len(c.Assembly) == 0 {
		return
	}
	b.Heading(assemblyHeading)
	for _, caution := range slices.Concat(assemblyCautions, []string{deferral}) {
		b.Paragraph(caution)
	}
	b.Work(assemblyLines(c))
}
