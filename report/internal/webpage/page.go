// Package webpage writes one page for a screen: headings, paragraphs, tables and
// pictures, one below the other, with a list of contents. It is filled like a
// [paper.Book] and knows no more of plans than that does.
//
// The page is one file that asks for nothing else: style, script and pictures are
// part of it. It is black on white as the paper is. On a narrow screen the rows of
// a table become blocks, each cell with the head of its column; pictures fit the
// screen and grow at a touch. Diagrams are there twice, for wide and for narrow
// screens: a drawing that shrinks takes its writing along, down to 3 pixels on a phone.
// The page brings the fonts that its drawings are measured in.
//
// What is to be done has a box to tick, and a touch anywhere in its row ticks it. A few
// lines of script keep the ticks, light the cut to make now in its drawing, and write the
// command that reports what is ticked; all else works without.
//
// It is well-formed as HTML and as XML, and equal content gives equal bytes.
package webpage

import (
	"bytes"
	_ "embed"
	"encoding/base64"
	"encoding/xml"
	"fmt"
	"maps"
	"math"
	"slices"
	"strconv"
	"strings"

	"sawbill/report/internal/drawing"
	"sawbill/report/internal/paper"
)

//go:embed style.css
var style string

// script has no "<" nor "&", which HTML and XML would read differently.
//
//go:embed script.js
var script string

// Page is a page as it is filled.
type Page struct {
	title    string
	identity string
	foot     string
	report   string       // the command that reports ticks, may be empty
	note     string       // below the title, may be empty
	lead     bytes.Buffer // what stands before the first heading
	body     bytes.Buffer
	contents []entry
	turn     bool // the next heading starts a page when printed
	pictures int
	boxes    int
	ids      map[string]bool
	names    map[string]bool // of boxes
}

// entry is a line of the contents.
type entry struct{ id, heading string }

// New starts a page. The identity of what it shows tells it from others of the
// same title; the foot says how to read it.
func New(title, identity, foot string) *Page {
	return &Page{title: title, identity: identity, foot: foot, ids: make(map[string]bool), names: make(map[string]bool)}
}

// Note puts a line below the title, which stands in the page's name too.
func (p *Page) Note(s string) { p.note = s }

// Reports gives the command that reports what was ticked, to which the page adds the keys
// of boxes, behind a flag.
func (p *Page) Reports(command string) { p.report = command }

// Page lets what follows start a new page when it is printed.
func (p *Page) Page(string) { p.turn = true }

// Space does nothing: the style has its own.
func (p *Page) Space(float64) {}

// The room for a picture is what a printed page has, in mm.
const width, height = 186, 230

// Width is how wide a picture may be, in mm.
func (p *Page) Width() float64 { return width }

// Height is how high a picture may be, in mm.
func (p *Page) Height() float64 { return height }

// Title does nothing: it stands at the head already.
func (p *Page) Title(string) {}

// out is where the next thing goes.
func (p *Page) out() *bytes.Buffer {
	if p.contents == nil {
		return &p.lead
	}
	return &p.body
}

// Heading starts a section, which the contents list.
func (p *Page) Heading(s string) {
	class := ""
	if p.turn && p.contents != nil {
		class = ` class="turn"`
	}
	p.turn = false
	if p.contents != nil {
		p.body.WriteString("</section>\n")
	}
	id := p.id(s)
	p.contents = append(p.contents, entry{id, s})
	fmt.Fprintf(&p.body, `<section id="%s" aria-labelledby="%s-h"%s>`+"\n", id, id, class)
	fmt.Fprintf(&p.body, `<h2 id="%s-h">%s</h2>`+"\n", id, escape(s))
}

// id makes one of a heading: of "Layout 2: oak" it is "layout-2".
func (p *Page) id(heading string) string {
	heading, _ = parted(heading)
	return p.unique(heading)
}

// unique makes an id of words, unlike all others.
func (p *Page) unique(said string) string {
	words := strings.FieldsFunc(strings.ToLower(said), func(r rune) bool {
		return (r < 'a' || r > 'z') && (r < '0' || r > '9')
	})
	base := strings.Join(words, "-")
	if base == "" {
		base = "section"
	}
	id := base
	for n := 2; p.ids[id]; n++ {
		id = base + "-" + strconv.Itoa(n)
	}
	p.ids[id] = true
	return id
}

// parted divides a heading at its first colon; not "1 : 10".
func parted(heading string) (short, rest string) {
	if at := strings.Index(heading, ": "); at > 0 && heading[at-1] != ' ' {
		return heading[:at], heading[at:]
	}
	return heading, ""
}

// section is what is being filled.
func (p *Page) section() entry { return p.contents[len(p.contents)-1] }

// Subheading heads a part of a section.
func (p *Page) Subheading(s string) { p.element("h3", s) }

// Paragraph writes running text.
func (p *Page) Paragraph(s string) { p.element("p", s) }

// Strong writes running text that must not be missed.
func (p *Page) Strong(s string) {
	fmt.Fprintf(p.out(), "<p><strong>%s</strong></p>\n", escape(s))
}

func (p *Page) element(name, s string) {
	fmt.Fprintf(p.out(), "<%s>%s</%s>\n", name, escape(s), name)
}

// Items writes a numbered list.
func (p *Page) Items(items []string) {
	p.list(items, func(s string) string { return escape(s) })
}

// Work writes a numbered list of what is done one after another, with a box for each.
func (p *Page) Work(steps []string) {
	p.list(steps, func(s string) string {
		_, box := p.box(paper.Tick{Name: s})
		return "<label>" + box + " <span>" + escape(s) + "</span></label>"
	})
}

func (p *Page) list(items []string, content func(string) string) {
	if len(items) == 0 {
		return
	}
	out := p.out()
	out.WriteString("<ol>\n")
	for _, s := range items {
		out.WriteString("<li>" + content(s) + "</li>\n")
	}
	out.WriteString("</ol>\n")
}

// box is one to tick, with its id. Its name is unlike all others of the page. Without keys
// it has one of its own, which is made of its name: so a page that is written anew with a
// line more keeps its ticks.
func (p *Page) box(t paper.Tick) (id, box string) {
	name := t.Name
	for n := 2; p.names[name]; n++ {
		name = t.Name + ", " + strconv.Itoa(n)
	}
	p.names[name] = true
	p.boxes++
	id = "t" + strconv.Itoa(p.boxes)
	keys := strings.Join(t.Keys, " ")
	if keys == "" {
		keys = p.unique("done " + name)
	}
	return id, fmt.Sprintf(`<input class="tick" type="checkbox" id="%s" data-keys="%s" aria-label="%s"/>`, id, escape(keys), escape(name))
}

// Picture puts a drawing on the page, named by the section that it is in and told
// by what is written in it.
func (p *Page) Picture(d drawing.Drawing) {
	p.Figure(Figure{Name: p.section().heading, Wide: d})
}

// written is what is written in a drawing.
func written(d drawing.Drawing) string {
	var said []string
	for _, t := range d.Texts() {
		said = append(said, t.String)
	}
	return strings.Join(said, ", ")
}

// Narrow is how wide a drawing should be for a narrow screen, in mm: its smallest
// writing can then be read on it.
const Narrow = 82

// pixelsPerMM is how large a drawing is shown at least, in pixels of the screen to a mm.
// Its smallest writing is then 11 pixels high.
const pixelsPerMM = 11 / (drawing.SmallestSize * 25.4 / 72)

// Figure is a picture that fits the screen.
type Figure struct {
	Name        string
	Description string // to who cannot see it; "" is what is written in it
	Wide        drawing.Drawing
	// Narrow is the same drawn for a narrow screen; empty: there is none.
	Narrow drawing.Drawing
	// Stays keeps the picture in sight while what follows in its section is read.
	Stays bool
	// WideShapes and NarrowShapes lie on the drawings, and are seen when their time comes.
	WideShapes, NarrowShapes []Shape
}

// Shape is a place in a drawing that belongs to things that are done.
type Shape struct {
	drawing.Rect
	// Keys are those of boxes, as [paper.Tick] has them.
	Keys []string
	// Line shapes are lit while one of the things is to be done now; others are veiled
	// once all are done.
	Line bool
}

// Figure puts a picture on the page. A touch shows the wide one, larger.
func (p *Page) Figure(f Figure) {
	p.pictures++
	if f.Description == "" {
		f.Description = written(f.Wide)
	}
	id := "picture-" + strconv.Itoa(p.pictures)
	out := p.out()
	class := ""
	if f.Narrow.Marks != nil {
		class = "two"
	}
	if f.Stays {
		class = strings.TrimSpace(class + " stays")
	}
	fmt.Fprintf(out, `<figure%s><input class="larger" type="checkbox" id="%s" aria-label="%s"/>`+"\n", attribute("class", class), id, escape("larger: "+f.Name))
	fmt.Fprintf(out, `<div class="picture"><label for="%s">`+"\n", id)
	writeDrawing(out, f.Wide, id+"-w", f, f.WideShapes)
	if f.Narrow.Marks != nil {
		writeDrawing(out, f.Narrow, id+"-n", f, f.NarrowShapes)
	}
	fmt.Fprintf(out, "</label></div>\n"+`<label class="zoom" for="%s" aria-hidden="true"></label></figure>`+"\n", id)
}

// writeDrawing writes a drawing with its shapes, and how wide it is shown at least.
func writeDrawing(out *bytes.Buffer, d drawing.Drawing, id string, f Figure, shapes []Shape) {
	fmt.Fprintf(out, `<span class="drawn" style="--least: %dpx">`+"\n", int(math.Ceil(d.Width*pixelsPerMM)))
	svg := d.InlineSVG(id, f.Name, f.Description)
	if len(shapes) > 0 {
		svg = bytes.TrimSuffix(svg, []byte("</svg>\n"))
		for _, s := range shapes {
			class := "piece"
			if s.Line {
				class = "line"
			}
			svg = fmt.Appendf(svg, `<path class="%s" data-keys="%s" d="M%.1f %.1fh%.1fv%.1fh-%.1f"/>`+"\n",
				class, escape(strings.Join(s.Keys, " ")), s.X, s.Y, s.W, s.H, s.W)
		}
		svg = append(svg, "</svg>\n"...)
	}
	out.Write(svg)
	out.WriteString("</span>\n")
}

// fonts are the style of the fonts that the page's drawings are measured in, with the
// characters of its texts.
func fonts(texts ...[]byte) string {
	seen := map[rune]bool{}
	for _, text := range texts {
		for _, r := range string(text) {
			seen[r] = true
		}
	}
	var b strings.Builder
	for _, f := range drawing.WebFonts(string(slices.Sorted(maps.Keys(seen)))) {
		weight := "normal"
		if f.Bold {
			weight = "bold"
		}
		fmt.Fprintf(&b, "@font-face { font-family: %s; font-weight: %s; src: url(data:font/woff;base64,%s) format(\"woff\") }\n",
			quoted(f.Family), weight, base64.StdEncoding.EncodeToString(f.WOFF))
	}
	return b.String()
}

// Bytes closes the page.
func (p *Page) Bytes() []byte {
	var b bytes.Buffer
	name, note := p.title+", plan "+p.identity, ""
	if p.note != "" {
		name += ", " + p.note
		note = "<p><strong>" + escape(p.note) + "</strong></p>\n"
	}
	b.WriteString("<!DOCTYPE html>\n")
	fmt.Fprintf(&b, `<html lang="en" data-plan="%s"%s>`+"\n<head>\n", escape(p.identity), attribute("data-report", p.report))
	b.WriteString(`<meta charset="utf-8"/>` + "\n" +
		`<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; font-src data:; script-src 'unsafe-inline'"/>` + "\n" +
		`<meta name="viewport" content="width=device-width, initial-scale=1"/>` + "\n")
	fmt.Fprintf(&b, "<title>%s</title>\n", escape(name))
	fmt.Fprintf(&b, "<style>\n%s%s%s</style>\n</head>\n<body>\n",
		fonts([]byte(always+name+p.foot), p.lead.Bytes(), p.body.Bytes()), style, printedFoot(name))
	fmt.Fprintf(&b, "<header>\n<h1>%s</h1>\n<p>plan <b>%s</b></p>\n%s<p>%s</p>\n</header>\n", escape(p.title), escape(p.identity), note, escape(p.foot))
	p.navigation(&b)
	b.WriteString("<main>\n")
	b.Write(p.lead.Bytes())
	b.Write(p.body.Bytes())
	if p.contents != nil {
		b.WriteString("</section>\n")
	}
	fmt.Fprintf(&b, "</main>\n<script>\n%s</script>\n</body>\n</html>\n", script)
	return b.Bytes()
}

// always are characters that every page has: those of its script and of commands.
const always = " !\"#$%\u0026'()*+,-./0123456789:;\u003c=\u003e?@ABCDEFGHIJKLMNOPQRSTUVWXYZ[\\]^_`abcdefghijklmnopqrstuvwxyz{|}~\u00a0"

// navigation writes the contents. What stands behind a colon in a heading is left
// out where there is little room.
func (p *Page) navigation(b *bytes.Buffer) {
	if p.contents == nil {
		return
	}
	b.WriteString(`<nav aria-label="Contents">` + "\n<ul>\n")
	for _, e := range p.contents {
		short, rest := parted(e.heading)
		fmt.Fprintf(b, `<li><a href="#%s">%s`, e.id, escape(short))
		if rest != "" {
			fmt.Fprintf(b, `<span class="rest">%s</span>`, escape(rest))
		}
		b.WriteString("</a></li>\n")
	}
	b.WriteString("</ul>\n</nav>\n")
}

// printedFoot is the style of what stands at the foot of every printed page.
func printedFoot(name string) string {
	return "@page { @bottom-left { content: " + quoted(name) + "; font: 8pt sans-serif } }\n"
}

// quoted is s as a string of a style sheet: all but plain letters and figures by
// their numbers (CSS Syntax, 4.3.7), so that none can end it.
func quoted(s string) string {
	var b strings.Builder
	b.WriteByte('"')
	for _, r := range s {
		switch {
		case r == ' ' || '0' <= r && r <= '9' || 'a' <= r && r <= 'z' || 'A' <= r && r <= 'Z':
			b.WriteRune(r)
		case r == 0:
			b.WriteString(`\fffd `)
		default:
			fmt.Fprintf(&b, `\%x `, r)
		}
	}
	b.WriteByte('"')
	return b.String()
}

// escape is s as text, or as an attribute in quotes.
func escape(s string) string {
	var b strings.Builder
	// A builder takes every write.
	_ = xml.EscapeText(&b, []byte(s))
	return b.String()
}
