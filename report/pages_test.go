package report

import "testing"

// No page is turned to for a line or two: beyond its head and foot, which are of four
// texts, every page of the examples says four lines at least: a paragraph of that
// length may run over whole.
func TestNoPageStandsForALineOrTwo(t *testing.T) {
	const head, fewest = 4, 4
	for _, e := range examples(t) {
		for _, o := range papers {
			o.Case = e.design
			for n, page := range lay(e.plan, whole(o)).Pages {
				if said := len(page.Texts()) - head; said < fewest {
					t.Errorf("%s on %v in %s, page %d says %d lines", e.name, o.Paper, o.Ruler.Units, n+1, said)
				}
			}
		}
	}
}

// whole asks for all pages.
func whole(o Options) Options {
	o.Pages = AllPages
	return o
}
