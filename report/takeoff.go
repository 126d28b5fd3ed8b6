package report

import (
	"fmt"
	"strconv"
	"strings"

	"sawbill/stock"
	"sawbill/stock/casework"
)

const takeoffHeading = "What else it takes"

// takeoff lists what a case takes besides its parts, and on what that rests.
func takeoff(c *casework.Case, r stock.Ruler) (listing, []string) {
	l := listing{columns: []heading{{"what", words}, {"how much", words}, {"of", words}}}
	t := c.TakeOff()
	var notes []string
	weights(&l, c, t, r)
	if t.Weight > 0 {
		said := "all parts"
		switch {
		case t.Unweighed != nil && t.Finished > 0:
			said = "without " + strings.Join(t.Unweighed, ", ") + " and the measured drawers"
		case t.Unweighed != nil:
			said = "without " + strings.Join(t.Unweighed, ", ")
		case t.Finished > 0:
			said = "without the measured drawers"
		}
		l.add("weight", t.Weight.PrintUnit(r.Units), said)
	}
	if g := t.Center; g != nil {
		below := "the floor"
		if c.Hung {
			below = "its lower edge"
		}
		l.add("center of gravity", r.Print(g[casework.X])+", "+r.Print(g[casework.Y])+", "+r.Print(g[casework.Z]),
			"from the left, from the front, from "+below+unit(r))
	}
	if len(c.Parts) > 0 {
		notes = append(notes, finishing(&l, c, t, r)...)
	}
	if t.Edging > 0 {
		l.add("edging", runLength(t.Edging, r), "front edges of sheets that show, fronts and doors all round, where no strip is, and 10 % to spare")
	}
	for _, h := range c.Hardware {
		l.add(h.Name, strconv.Itoa(h.Count), h.How)
	}
	if t.Unweighed != nil {
		notes = append(notes, fmt.Sprintf("Weights of %s are not told: give each a wood or a density in a [[material]].", strings.Join(t.Unweighed, ", ")))
	}
	if t.Weight > 0 {
		notes = append(notes, "Weights are estimates, of sizes before joints are cut, without hardware and finish: "+densities(c)+".")
	}
	return l, notes
}

// weights lists those of the sub-assemblies, without what has none.
func weights(l *listing, c *casework.Case, t casework.Takeoff, r stock.Ruler) {
	each := make(map[int]stock.Grams)
	for _, w := range t.Weights {
		each[w.Part] = w.Each
	}
	for _, u := range c.Units() {
		var one stock.Grams
		for _, it := range u.Items {
			one += each[it.Part] * stock.Grams(it.Count)
		}
		if one == 0 {
			continue
		}
		of := ""
		if u.Count > 1 {
			of = one.PrintUnit(r.Units) + " each"
		}
		l.add("weight of "+unitTitle(u), (one * stock.Grams(u.Count)).PrintUnit(r.Units), of)
	}
}

// finishing lists the surfaces and what finish they take.
func finishing(l *listing, c *casework.Case, t casework.Takeoff, r stock.Ruler) []string {
	f := c.Finish
	l.add("surface outside", t.Surfaces.Outside.PrintUnit(r.Units), counted(f.Outside, "coat"))
	l.add("surface inside", t.Surfaces.Inside.PrintUnit(r.Units), counted(f.Inside, "coat"))
	l.add("surface that wears", t.Surfaces.Wear.PrintUnit(r.Units), counted(f.Wear, "coat"))
	reach := fmt.Sprintf("%d m2 per liter and coat", f.Coverage)
	if f.Units == stock.Inches {
		reach = fmt.Sprintf("%d ft2 per US gallon and coat", f.Coverage)
	}
	l.add("finish", fmt.Sprintf("%s %ss", finishVolume(c, t), f.Unit()), reach)
	return []string{"What wears is the upper face of all that lies level; outside is what else is seen straight on from in front, from the sides or from above; " +
		"inside is the rest, the rear and the underside too. Faces that touch another piece are not counted. Labels differ in what they cover, and porous wood takes more."}
}

// finishVolume writes tenths: "1.3".
func finishVolume(c *casework.Case, t casework.Takeoff) string {
	tenths := c.Finish.Tenths(t.Surfaces)
	return fmt.Sprintf("%d.%d", tenths/10, tenths%10)
}

// runLength writes a length to buy, rounded up: "4.2 m", or "13.8 ft".
func runLength(l stock.Length, r stock.Ruler) string {
	whole, name := 1000*stock.Millimeter, "m"
	if r.Units == stock.Inches {
		whole, name = stock.Foot, "ft"
	}
	tenths := (10*l + whole - 1) / whole
	return fmt.Sprintf("%d.%d %s", tenths/10, tenths%10, name)
}

// densities tells by which densities the parts were weighed, and whose they are.
func densities(c *casework.Case) string {
	var said []string
	told := make(map[string]bool)
	for _, p := range c.Parts {
		if d := c.Materials[p.Material].Density; d.Known() && !told[p.Material] {
			told[p.Material] = true
			said = append(said, fmt.Sprintf("%s %.0f kg/m3 (%s)", p.Material, d.Value, d.Source))
		}
	}
	return strings.Join(said, "; ")
}

// caseTakes writes what a case takes.
func (w *writer) caseTakes(o Options) {
	if o.Case == nil {
		return
	}
	l, notes := takeoff(o.Case, o.Ruler)
	w.listing(takeoffHeading, l)
	if len(l.rows) == 0 && len(notes) > 0 {
		w.line("\n%s", takeoffHeading)
	}
	for _, n := range notes {
		w.line("  %s", n)
	}
}

// takeoffPage prints what a case takes, and its checks.
func takeoffPage(b document, o Options) {
	if o.Case == nil || len(o.Case.Parts) == 0 {
		return
	}
	l, notes := takeoff(o.Case, o.Ruler)
	b.Heading(takeoffHeading)
	if len(l.rows) > 0 {
		b.Table(in(l.table(), 8.5)) // the checks below it are long
	}
	for _, n := range notes {
		b.Paragraph(n)
	}
	checksOnPaper(b, o.Case)
}
