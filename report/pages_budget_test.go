package report

import (
	"slices"
	"strings"
	"testing"

	"sawbill/report/internal/drawing"
	"sawbill/stock"
)

// pageBudget is how many pages the examples may take together, as most people print them.
// Before pages could be chosen they took 191.
const pageBudget = 127

func TestTheExamplesKeepToTheirPages(t *testing.T) {
	for _, paper := range []Paper{A4, Letter} {
		sum := 0
		for _, e := range examples(t) {
			n := len(lay(e.plan, Options{Paper: paper, Case: e.design, Ruler: stock.Ruler{Units: e.units}}).Pages)
			t.Logf("%s: %d", e.name, n)
			sum += n
		}
		if sum > pageBudget {
			t.Errorf("the examples take %d pages, %d are allowed", sum, pageBudget)
		}
	}
}

// No page is less than a third full but the last of its kind.
func TestNoPageIsNearlyEmptyButTheLastOfItsKind(t *testing.T) {
	for _, e := range examples(t) {
		for _, paper := range []Paper{A4, Letter} {
			o := Options{Paper: paper, Case: e.design, Ruler: stock.Ruler{Units: e.units}}
			pages := lay(e.plan, o).Pages
			for i, page := range pages[:len(pages)-1] {
				if full := fullness(page); full < 1.0/3 && kindOf(page) == kindOf(pages[i+1]) {
					t.Errorf("%s on %v in %s, page %d (%s) is %.0f %% full", e.name, o.Paper, o.Ruler.Units, i+1, kindOf(page), 100*full)
				}
			}
		}
	}
}

// kindOf is the kind of a page: what its running head names last.
func kindOf(page drawing.Drawing) string {
	section := page.Texts()[0].String
	if at := strings.LastIndex(section, ", "); at >= 0 {
		section = section[at+2:]
	}
	return section
}

// fullness is how far down the body of a page there is something, as a share of it.
func fullness(page drawing.Drawing) float64 {
	const head, foot = 20.0, 15.0 // mm, of the page
	lowest := head
	note := func(y float64) {
		if y < page.Height-foot+0.1 {
			lowest = max(lowest, y)
		}
	}
	for _, m := range page.Marks {
		switch m := m.(type) {
		case drawing.Line:
			note(max(m.From.Y, m.To.Y))
		case drawing.Polygon:
			for _, p := range m.Points {
				note(p.Y)
			}
		case drawing.Text:
			note(m.Box().Bottom())
		}
	}
	return (lowest - head) / (page.Height - head - foot)
}

// Cautions take half a page at the most, of examples and all they may hold.
func TestCautionsTakeHalfAPage(t *testing.T) {
	for _, e := range examples(t) {
		for _, o := range papers {
			o.Case, o.Pages = e.design, SawPages
			for _, page := range lay(e.plan, o).Pages {
				if high := heightOfCautions(page); high > page.Height/2 {
					t.Errorf("%s on %v in %s: %.0f mm of cautions", e.name, o.Paper, o.Ruler.Units, high)
				}
			}
		}
	}
}

// heightOfCautions is how far they reach on their page, in mm; 0 where there are none.
func heightOfCautions(page drawing.Drawing) float64 {
	from, to := 0.0, 0.0
	for _, text := range page.Texts() {
		switch {
		case text.String == cautionsHeading:
			from = text.Box().Y
		case text.String == deferral && from > 0 && to == 0:
			to = text.Box().Bottom()
		}
	}
	return to - from
}

// What concerns this plan stands before what holds at every saw.
func TestCautionsOfThisPlanComeFirst(t *testing.T) {
	for _, e := range examples(t) {
		var headings []string
		for _, b := range blocks(e.plan, Options{Case: e.design}) {
			headings = append(headings, b.heading)
		}
		if headings[0] != "In this plan" || slices.Index(headings, atTheSaw.heading) != len(headings)-1 {
			t.Errorf("%s: %q", e.name, headings)
		}
	}
}
