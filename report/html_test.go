package report

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"regexp"
	"strings"
	"testing"

	"sawbill/nest/cutplan"
	"sawbill/report/internal/diagram"
	"sawbill/report/internal/samples"
	"sawbill/report/internal/webpage"
	"sawbill/stock"
)

// pageText is what a page says, read back by an XML reader; sizes may be kept
// together by spaces that do not break.
func pageText(t *testing.T, page []byte) string {
	t.Helper()
	d := xml.NewDecoder(bytes.NewReader(page))
	var said strings.Builder
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			return spaced(said.String())
		}
		if err != nil {
			t.Fatal(err)
		}
		switch token := token.(type) {
		case xml.CharData:
			said.Write(token)
		case xml.EndElement:
			said.WriteByte('\n')
		}
	}
}

func spaced(s string) string { return strings.Join(strings.Fields(s), " ") }

func TestThePageHoldsEveryPartSizeAndStep(t *testing.T) {
	plans := []*cutplan.Plan{bench(), incomplete(), {}}
	for seed := range uint64(15) {
		p := samples.Random(seed)
		plans = append(plans, &p)
	}
	for i, p := range plans {
		for _, r := range []stock.Ruler{{}, inches} {
			text := pageText(t, HTML(p, Options{Ruler: r}))
			for _, want := range append(wanted(p, r), title(p), "plan "+Identity(p, Options{})) {
				if len(p.Layouts) > 0 && !strings.Contains(text, spaced(want)) {
					t.Fatalf("plan %d in %s: the page lacks %q", i, r.Units, want)
				}
			}
		}
	}
}

// What has a heading on paper has the same on the page.
func TestThePageHasEveryHeadingOfThePaper(t *testing.T) {
	const headingSize = 13 // pt, of the paper
	p := bench()
	p.Bill[0].Part.DryFit = true
	for _, o := range []Options{{}, {Case: chest()}, {Case: markedCase()}} {
		text := pageText(t, HTML(p, o))
		headings := 0
		for _, page := range lay(p, whole(o)).Pages {
			for _, said := range page.Texts() {
				if said.Size != headingSize || strings.HasPrefix(said.String, "Sides and partitions") {
					continue // each says the scale of its own room
				}
				headings++
				if !strings.Contains(text, spaced(said.String)) {
					t.Errorf("the page lacks %q", said.String)
				}
			}
		}
		if headings < 8 {
			t.Errorf("%d headings on paper", headings)
		}
	}
}

// A layout on the page is the drawing that the paper has where it is given the
// same room, mark by mark. It brings the fonts, so that its texts carry no lengths.
func TestThePageDrawsAsThePaperDoes(t *testing.T) {
	p := bench()
	page := HTML(p, Options{})
	for i := range p.Layouts {
		v := view(p, i, namesOf(p, Identity(p, Options{})), nil, stock.Ruler{})
		d := diagram.New(v, webpage.New("", "", "").Width(), layoutHigh)
		_, drawn, _ := bytes.Cut(d.SVG(""), []byte("</title>\n"))
		drawn = regexp.MustCompile(` textLength="[^"]*" lengthAdjust="[^"]*"`).ReplaceAll(drawn, nil)
		drawn = bytes.TrimSuffix(drawn, []byte("</svg>\n")) // shapes to light may follow
		if !bytes.Contains(page, drawn) {
			t.Errorf("layout %d is not on the page as it is drawn", i+1)
		}
	}
}

// What is drawn on the page is as wide as paper allows, so that it is printed to
// the scale that it states.
func TestPicturesOfThePageFitPaper(t *testing.T) {
	page := webpage.New("", "", "")
	for _, o := range []Options{{Paper: A4}, {Paper: Letter}} {
		const margins = 2 * 12 // mm, of the style
		if room := o.Paper.size().Width - margins; page.Width() > room {
			t.Errorf("a picture may be %v mm wide, and the paper has %v", page.Width(), room)
		}
	}
}

func TestEqualPlansGiveEqualPages(t *testing.T) {
	if !bytes.Equal(HTML(bench(), Options{}), HTML(bench(), Options{})) {
		t.Error("two pages of one plan differ")
	}
}

func TestAHundredLayoutsStaySmall(t *testing.T) {
	p := bench()
	for len(p.Layouts) < 100 {
		p.Layouts = append(p.Layouts, bench().Layouts...)
	}
	if n := len(HTML(p, Options{})); n > 31e5 {
		t.Errorf("%d layouts take %d bytes", len(p.Layouts), n)
	}
}

func TestPage(t *testing.T) {
	p := bench()
	p.Layouts = p.Layouts[2:3]
	p.Layouts[0].Repeat = 2
	golden(t, "plan.html", HTML(p, Options{}))
}
