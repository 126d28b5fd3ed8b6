package webpage

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"regexp"
	"slices"
	"strings"
	"testing"

	"sawbill/report/internal/drawing"
	"sawbill/report/internal/paper"
)

// element is one of a page, with its attributes.
type element struct {
	name string
	at   map[string]string
}

// read takes a page apart as XML, strictly: what is not closed or quoted is an
// error. The text leaves out style and script.
func read(t *testing.T, page []byte) (elements []element, text string) {
	t.Helper()
	d := xml.NewDecoder(bytes.NewReader(page))
	var said strings.Builder
	var open []string
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			return elements, strings.Join(strings.Fields(said.String()), " ")
		}
		if err != nil {
			t.Fatal(err)
		}
		switch token := token.(type) {
		case xml.StartElement:
			e := element{token.Name.Local, make(map[string]string)}
			for _, a := range token.Attr {
				e.at[a.Name.Local] = a.Value
			}
			elements, open = append(elements, e), append(open, e.name)
		case xml.EndElement:
			open = open[:len(open)-1]
		case xml.CharData:
			if !slices.Contains(open, "style") && !slices.Contains(open, "script") {
				said.Write(token)
				said.WriteByte(' ')
			}
		}
	}
}

// wild is a name that breaks what does not escape it.
const wild = `</style><script>alert("a|b")</script> & 'c' \22 } --> ]]>`

// full is a page with everything on it, named name.
func full(name string) []byte {
	var d drawing.Drawing
	d.Width, d.Height = 50, 20
	d.Text(drawing.Text{At: drawing.Point{X: 1, Y: 5}, String: name, Size: 9})
	p := New(name, name, name)
	p.Page("first")
	p.Title(name)
	p.Strong(name)
	p.Heading("Buy")
	p.Table(paper.Table{Times: 1, Total: 1, Columns: []paper.Column{{Head: name}, {Head: "b"}, {Head: "c"}, {Head: "d"}},
		Rows: [][]string{{name, "24 13/16 x 11", "", "4"}, {"8", "in all", "", "5"}}})
	p.Page("second")
	for range 2 {
		p.Heading("Layout 1: " + name)
		p.Paragraph(name)
		p.Figure(Figure{Name: name, Description: name, Wide: d, Narrow: d})
		p.Table(paper.Table{Times: 3, Joined: []bool{false, true}, Columns: []paper.Column{{Head: "cut", Number: true}, {Head: "setting", Size: 11}},
			Rows: [][]string{{"1", "20"}, {"2–3", name}}})
		p.Picture(d)
	}
	p.Heading("Sides, 1 : 10")
	p.Subheading(name)
	p.Items([]string{name, name})
	p.Work([]string{name})
	return p.Bytes()
}

func TestNamesCannotBreakThePage(t *testing.T) {
	plain, _ := read(t, full("plain"))
	elements, text := read(t, full(wild))
	if len(elements) != len(plain) {
		t.Errorf("%d elements with wild names, %d with plain ones", len(elements), len(plain))
	}
	if n, want := strings.Count(text, wild), 19; n < want {
		t.Errorf("the wild name is read back %d times, want %d at least", n, want)
	}
}

// ownFont is a font that is part of the page.
var ownFont = regexp.MustCompile(`url\(data:font/woff;base64,[A-Za-z0-9+/=]+\)`)

// Nothing in the page, nor in its style or script, asks for anything beyond it.
func TestThePageAsksForNothingElse(t *testing.T) {
	page := full("plain")
	if n := len(ownFont.FindAll(page, -1)); n != 2 {
		t.Errorf("%d fonts in the page, want two", n)
	}
	page = bytes.Replace(ownFont.ReplaceAll(page, nil), []byte("font-src data:"), nil, 1)
	for _, bad := range regexp.MustCompile(`(?i)[a-z]+:?//[a-z]|url\(|@import|fetch|XMLHttp|\bsrc=|data:|javascript:|<link|<iframe|<object`).FindAll(page, -1) {
		t.Errorf("the page has %q", bad)
	}
	elements, _ := read(t, page)
	for _, e := range elements {
		if to, isLink := e.at["href"]; isLink && !strings.HasPrefix(to, "#") {
			t.Errorf("a link leads to %q", to)
		}
	}
}

func TestEveryReferenceHasItsElementAndEveryIdIsUnique(t *testing.T) {
	elements, _ := read(t, full("plain"))
	ids := make(map[string]int)
	for _, e := range elements {
		if id := e.at["id"]; id != "" {
			ids[id]++
		}
	}
	for id, n := range ids {
		if n > 1 {
			t.Errorf("id %q stands %d times", id, n)
		}
	}
	for _, e := range elements {
		for _, name := range []string{"for", "aria-labelledby", "aria-describedby"} {
			if to := e.at[name]; to != "" && ids[to] == 0 {
				t.Errorf("%s of %s names %q, which is not there", name, e.name, to)
			}
		}
		if to := strings.TrimPrefix(e.at["href"], "#"); to != "" && ids[to] == 0 {
			t.Errorf("a link leads to %q, which is not there", to)
		}
	}
	for _, want := range []string{"layout-1", "layout-1-2", "sides-1-10"} {
		if ids[want] == 0 {
			t.Errorf("no section has the id %q", want)
		}
	}
}

// What WCAG 2.2 asks of such a page, as far as it can be read off its elements: the
// language (3.1.1), headings in order (1.3.1), heads of tables (1.3.1), names of
// pictures (1.1.1) and of boxes (4.1.2). From memory.
func TestThePageCanBeReadAloud(t *testing.T) {
	elements, _ := read(t, full("plain"))
	level, inLabel := 0, map[string]bool{}
	for _, e := range elements {
		if e.name == "label" {
			inLabel[e.at["for"]] = true
		}
	}
	for i, e := range elements {
		switch e.name {
		case "html":
			if e.at["lang"] != "en" {
				t.Error("the language is not told")
			}
		case "h1", "h2", "h3":
			now := int(e.name[1] - '0')
			if now > level+1 || now == 1 && level > 0 {
				t.Errorf("h%d follows h%d", now, level)
			}
			level = now
		case "th":
			if e.at["scope"] == "" || e.at["role"] == "" {
				t.Errorf("a head of a table without scope or role: %v", e.at)
			}
		case "svg":
			if elements[i+1].name != "title" || elements[i+2].name != "desc" || e.at["role"] != "img" {
				t.Error("a picture without a name or a description")
			}
		case "input":
			if e.at["aria-label"] == "" && elements[i-1].name != "label" {
				t.Errorf("a box without a name: %v", e.at)
			}
		}
	}
	if level == 0 {
		t.Error("no headings")
	}
}

func TestARowHasABoxForEachTimeItIsDone(t *testing.T) {
	for times, want := range map[int]int{0: 0, 1: 1, 3: 3, mostBoxes: mostBoxes, mostBoxes + 1: 1} {
		p := New("a", "b", "c")
		p.Heading("h")
		p.Table(paper.Table{Times: times, Columns: []paper.Column{{Head: "cut"}}, Rows: [][]string{{"1"}}})
		if got := bytes.Count(p.Bytes(), []byte(`class="tick"`)); got != want {
			t.Errorf("done %d times: %d boxes, want %d", times, got, want)
		}
	}
}

func TestFiguresOfASizeStayTogether(t *testing.T) {
	for in, want := range map[string]string{
		"A shelf, ≈24 13/16 x 11 9/16": "A shelf, ≈24_13/16 x_11_9/16",
		"≈11 9/16":                     "≈11_9/16",
		"whole sheet 2440 x 1220 x 18": "whole sheet 2440 x_1220 x_18",
		"3 x E leg, 860.5 x ≈95":       "3 x E leg, 860.5 x_≈95",
		"6 x 5 x 4, turned":            "6 x_5 x_4, turned",
		"box x 3 of 4":                 "box x 3 of 4",
	} {
		if got := strings.ReplaceAll(unbroken(in), "\u00a0", "_"); got != want {
			t.Errorf("%q becomes %q, want %q", in, got, want)
		}
	}
}
