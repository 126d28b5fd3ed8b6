package report

import (
	"bytes"
	"fmt"
	"strings"
	"testing"

	"sawbill/report/internal/drawing"
)

var changed = []string{"without back", "height 2 mm less"}

const saidOfChanged = "what if: without back, height 2 mm less"

// A plan of a what-if says so wherever it might be taken for the plan of the job: in its
// code, in the title line, in plan.json, and on every page and picture.
func TestWhatIfIsSaidEverywhere(t *testing.T) {
	p, plain, asked := bench(), Options{Case: chest()}, Options{Case: chest(), WhatIf: changed}
	code := Identity(p, asked)
	if code == Identity(p, plain) {
		t.Error("the code is that of the plain plan")
	}
	if f := JSON(p, asked); !bytes.Contains(f, []byte("\"what_if\": [\n    \"without back\",\n    \"height 2 mm less\"\n  ]")) {
		t.Error("plan.json does not say it")
	}
	if bytes.Contains(JSON(p, plain), []byte("what_if")) {
		t.Error("plan.json of a plain plan speaks of what if")
	}
	var summary bytes.Buffer
	if err := Summary(&summary, p, asked); err != nil {
		t.Fatal(err)
	}
	if first, _, _ := strings.Cut(summary.String(), "\n"); first != "Potting bench, plan "+code+", "+saidOfChanged {
		t.Errorf("the title line is %q", first)
	}
	page := string(HTML(p, asked))
	for _, part := range []string{"title", "strong"} {
		_, said, _ := strings.Cut(page, "<"+part+">")
		if said, _, _ = strings.Cut(said, "</"+part+">"); !strings.HasSuffix(said, saidOfChanged) {
			t.Errorf("<%s> of the page says %q", part, said)
		}
	}
	pictures := LayoutSVGs(p, asked)
	for _, e := range Elevations(p, asked) {
		pictures = append(pictures, e.SVG)
	}
	for i, picture := range pictures {
		if !bytes.Contains(picture, []byte("plan "+code+", "+saidOfChanged)) {
			t.Errorf("picture %d does not say it", i+1)
		}
	}
	doc := lay(p, whole(asked))
	if !strings.HasSuffix(doc.Title, saidOfChanged) {
		t.Errorf("the PDF is titled %q", doc.Title)
	}
	for i, page := range doc.Pages {
		if !says(page, saidOfChanged) {
			t.Errorf("page %d does not say it", i+1)
		}
	}
	labeled := 0
	for _, page := range doc.Pages {
		for _, text := range page.Texts() {
			if text.String == "what if: Potting bench" {
				labeled++
			}
		}
	}
	if want := len(labels(p, namesOf(p, code), asked)); labeled != want {
		t.Errorf("%d of %d labels say it", labeled, want)
	}
}

func TestListsSayWhatIf(t *testing.T) {
	asked := Options{WhatIf: changed}
	c := fiveShelves(t)
	for title, write := range map[string]func(*bytes.Buffer) error{
		"Potting bench":                 func(b *bytes.Buffer) error { return PartList(b, bench().Job, asked) },
		"Shelves: what could be bought": func(b *bytes.Buffer) error { return Comparison(b, c, asked) },
		"Shelves: shopping list":        func(b *bytes.Buffer) error { return ShoppingList(b, c, asked) },
	} {
		var b bytes.Buffer
		if err := write(&b); err != nil {
			t.Fatal(err)
		}
		if first, _, _ := strings.Cut(b.String(), "\n"); first != title+", "+saidOfChanged {
			t.Errorf("%q, want %q and what if", first, title)
		}
	}
	for _, picture := range [][]byte{CostSVG(c, asked), YieldSVG(c, asked)} {
		if !bytes.Contains(picture, []byte("what could be bought, "+saidOfChanged)) {
			t.Error("a chart does not say it")
		}
	}
	data, _, err := ComparisonPDF(c, asked)
	if err != nil {
		t.Fatal(err)
	}
	if text := readBack(t, data); strings.Count(text, folded(saidOfChanged)) < 3 { // on both pages, and below the title
		t.Errorf("compare.pdf says it too rarely:\n%s", text)
	}
}

// A long list of changes is cut short at the head of a page, and told whole on the
// first one; nothing lies over anything.
func TestLongWhatIfKeepsToThePage(t *testing.T) {
	var many []string
	for i := range 30 {
		many = append(many, fmt.Sprintf("%d pieces of long shelf behind the left door %d", i+2, i+1))
	}
	p := bench()
	for _, o := range []Options{{WhatIf: many}, {WhatIf: many, Paper: Letter, Ruler: inches, Case: chest()}} {
		for i, page := range lay(p, whole(o)).Pages {
			if err := drawing.CheckWriting(page); err != nil {
				t.Errorf("page %d: %v", i+1, err)
			}
			if !says(page, "what if: 2 pieces of long shelf") {
				t.Errorf("page %d does not say it", i+1)
			}
			if i == 0 && !says(page, "door 30") {
				t.Error("the first page does not say all of it")
			}
		}
	}
}

// says reports whether a text of the page holds what is wanted.
func says(page drawing.Drawing, wanted string) bool {
	for _, text := range page.Texts() {
		if strings.Contains(text.String, wanted) {
			return true
		}
	}
	return false
}
