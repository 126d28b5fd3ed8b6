package report

import (
	"bytes"
	"cmp"
	"fmt"
	"io"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/ledongthuc/pdf"

	"sawbill/stock"
)

// pdfLine is a straight line of a PDF page in mm, up from the lower left corner.
type pdfLine struct{ x1, y1, x2, y2 float64 }

func (l pdfLine) level() bool     { return l.y1 == l.y2 }
func (l pdfLine) length() float64 { return math.Hypot(l.x2-l.x1, l.y2-l.y1) }

var straight = regexp.MustCompile(`(?m)^(-?[\d.]+) (-?[\d.]+) m (-?[\d.]+) (-?[\d.]+) l S$`)

// linesOf reads the lines of a page from its own operators.
func linesOf(t *testing.T, page pdf.Page) []pdfLine {
	t.Helper()
	data, err := io.ReadAll(page.V.Key("Contents").Reader())
	if err != nil {
		t.Fatal(err)
	}
	var all []pdfLine
	for _, found := range straight.FindAllSubmatch(data, -1) {
		var at [4]float64
		for i := range at {
			points, err := strconv.ParseFloat(string(found[i+1]), 64)
			if err != nil {
				t.Fatal(err)
			}
			at[i] = points * 25.4 / 72 // a point is 1/72 in: ISO 32000-1, 8.3.2.3
		}
		all = append(all, pdfLine{at[0], at[1], at[2], at[3]})
	}
	return all
}

// pdfWords is a line of writing with its beginning, in mm.
type pdfWords struct {
	x, y float64
	said string
}

// wordsOn are the lines of writing of a page.
func wordsOn(page pdf.Page) []pdfWords {
	var all []pdfWords
	end := 0.0
	for _, g := range page.Content().Text {
		x, y := g.X*25.4/72, g.Y*25.4/72
		if n := len(all); n > 0 && all[n-1].y == y && math.Abs(x-end) < 0.2 {
			all[n-1].said += g.S
		} else {
			all = append(all, pdfWords{x, y, g.S})
		}
		end = x + g.W*25.4/72
	}
	return all
}

// fineness is what a PDF's hundredths of a point, and sums of two, may be out by, in mm.
const fineness = 0.012

// Whoever prints the sticks, cuts out the strips and joins those of one number finds each slide
// and each pin as far from the end as the figure beside it says; and the line to measure is 100
// mm or 4 in long. All is read from the PDF, by a reader that knows no more than the paper.
func TestSticksAreTrueInThePDF(t *testing.T) {
	measured, joints := 0, 0
	for _, e := range examples(t) {
		if e.design == nil {
			continue
		}
		for _, paper := range []Paper{A4, Letter} {
			o := Options{Case: e.design, Paper: paper, Ruler: stock.Ruler{Units: e.units}, Pages: StickPages}
			data, _, err := PDF(e.plan, o)
			if err != nil {
				t.Fatal(err)
			}
			r, err := pdf.NewReader(bytes.NewReader(data), int64(len(data)))
			if err != nil {
				t.Fatal(err)
			}
			var strips []paperStrip
			for n := range r.NumPage() {
				page := r.Page(n + 1)
				lines, words := linesOf(t, page), wordsOn(page)
				if !slices.ContainsFunc(words, func(w pdfWords) bool { return strings.HasPrefix(w.said, "Print at 100 %") }) {
					continue // not of sticks: there are none
				}
				long, said := 100.0, "Measure: this line 100 mm"
				if e.units == stock.Inches {
					long, said = 101.6, "Measure: this line 4 in"
				}
				if !slices.ContainsFunc(words, func(w pdfWords) bool { return strings.HasPrefix(w.said, said) }) ||
					!slices.ContainsFunc(lines, func(l pdfLine) bool { return l.level() && math.Abs(l.length()-long) < fineness }) {
					t.Errorf("%s on %v, page %d: no line of %.1f mm to measure", e.name, paper, n+1, long)
				}
				strips = append(strips, stripsOf(t, lines, words)...)
			}
			m, j := joinedStrips(t, fmt.Sprintf("%s on %v", e.name, paper), strips, e.units)
			measured, joints = measured+m, joints+j
		}
	}
	if measured < 100 || joints < 20 {
		t.Errorf("%d positions and %d joints are measured", measured, joints)
	}
}

// paperStrip is a strip as it is cut out.
type paperStrip struct {
	foot, top int // joining numbers; 0 for an end
	long      float64
	ticks     []float64 // above the foot, from below
	figures   []string  // likewise
}

const paperStripWide = 29.0

// stripsOf finds the strips of a page: between two level lines, or above one, of their width.
func stripsOf(t *testing.T, lines []pdfLine, words []pdfWords) []paperStrip {
	t.Helper()
	type end struct{ x, y float64 }
	var ends []end
	for _, l := range lines {
		if l.level() && math.Abs(l.length()-paperStripWide) < fineness {
			ends = append(ends, end{min(l.x1, l.x2), l.y1})
		}
	}
	slices.SortFunc(ends, func(a, b end) int {
		return cmp.Or(cmp.Compare(math.Round(a.x), math.Round(b.x)), cmp.Compare(a.y, b.y))
	})
	var all []paperStrip
	for i := 0; i < len(ends); i++ {
		foot, s := ends[i], paperStrip{long: math.Inf(1)}
		if i+1 < len(ends) && math.Abs(ends[i+1].x-foot.x) < 1 {
			i++
			s.long = ends[i].y - foot.y
		}
		for _, l := range lines {
			if l.level() && math.Abs(l.x1-foot.x) < fineness && math.Abs(l.length()-8) < fineness {
				s.ticks = append(s.ticks, l.y1-foot.y)
			}
		}
		slices.SortFunc(words, func(a, b pdfWords) int { return cmp.Compare(a.y, b.y) })
		for _, w := range words {
			if w.x < foot.x || w.x > foot.x+paperStripWide {
				continue
			}
			number, isJoint := strings.CutPrefix(w.said, "join ")
			switch n, _ := strconv.Atoi(number); {
			case isJoint && w.y < foot.y:
				s.foot = n
			case isJoint:
				s.top = n
			case strings.HasSuffix(w.said, " slide") || strings.HasSuffix(w.said, " pin"):
				s.figures = append(s.figures, w.said)
			}
		}
		slices.Sort(s.ticks)
		if len(s.ticks) != len(s.figures) {
			t.Fatalf("%d ticks, %d figures %q", len(s.ticks), len(s.figures), s.figures)
		}
		all = append(all, s)
	}
	return all
}

// joinedStrips lays strips of one number over one another and compares each tick with its
// figure. It returns how many positions and joints there are.
func joinedStrips(t *testing.T, name string, strips []paperStrip, units stock.Units) (measured, joints int) {
	t.Helper()
	for _, s := range strips {
		if s.foot != 0 {
			continue
		}
		from := 0.0
		for {
			for i, at := range s.ticks {
				figure, _, _ := strings.Cut(s.figures[i], " slide")
				figure, _, _ = strings.Cut(figure, " pin")
				rounded := 0.0
				if exact, ok := strings.CutPrefix(figure, "H"); ok { // the reader's ≈
					figure, rounded = exact, 25.4/64
				}
				want, err := stock.ParseLength(figure, units)
				if err != nil {
					t.Fatal(err)
				}
				if off := from + at - float64(want)/float64(stock.Millimeter); math.Abs(off) > fineness+rounded {
					t.Errorf("%s: %s lies %.3f mm from the end", name, s.figures[i], from+at)
				}
				measured++
			}
			if s.top == 0 {
				break
			}
			next := slices.IndexFunc(strips, func(o paperStrip) bool { return o.foot == s.top })
			if next < 0 {
				t.Fatalf("%s: no strip begins with join %d", name, s.top)
			}
			from, s = from+s.long, strips[next]
			joints++
		}
	}
	return measured, joints
}
