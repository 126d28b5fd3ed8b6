// Package paper lays out pages: headings, paragraphs, tables and pictures, one
// below the other, each page with a running head and "page n of m". It knows no
// plans; what is laid out is a list of [drawing.Drawing].
package paper

import (
	"fmt"
	"slices"
	"strings"

	"sawbill/report/internal/drawing"
)

// Size is a format of paper, upright, in millimeters.
type Size struct{ Width, Height float64 }

// The two formats: A4 of ISO 216, and Letter, 8 1/2 x 11 in.
var (
	A4     = Size{210, 297}
	Letter = Size{215.9, 279.4}
)

// Layout of a page, in mm.
const (
	sideMargin = 12.0
	headBase   = 13.0 // base line of the running head
	top        = 20.0 // where the body begins
	noteHigh   = 4.4  // of the note below the running head
	footRoom   = 15.0 // below the body
)

const (
	bodySize = 10.0 // pt
	headSize = 9.0
)

// Book is a run of pages as it is filled.
type Book struct {
	size     Size
	title    string // running head, left
	identity string // what tells it from others of that title; may be empty
	section  string // of what comes next
	note     string // below the running head; may be empty
	foot     string
	across   bool // pages lie on their side
	pages    []drawing.Drawing
	sections [][]string // of each page: its running head, right
	y        float64    // where the next thing goes

	again  drawing.Drawing // at the head of each page that goes on
	shares int             // so many of the next sections share the page
	joined bool            // the next section goes on with the page

	bookmarks []drawing.Bookmark
	part      bool // sections are below a bookmark of their part
	began     bool // the section has its bookmark
}

// New starts a book. The title runs at the head of every page, foot at its end with
// the identity, which tells the book from others of the same title.
func New(size Size, title, identity, foot string) *Book {
	return &Book{size: size, title: title, identity: identity, foot: foot}
}

// Note puts a line of its own below the running head of every page, cut short where it
// is too long. It must come before the first page.
func (b *Book) Note(s string) { b.note = s }

// Page starts a new page, headed by section. Where sections share a page it goes on with
// the page that is begun.
func (b *Book) Page(section string) {
	b.section, b.began, b.again = section, b.part, drawing.Drawing{}
	switch {
	case b.joined:
		b.joined = false
	case b.shares > 0:
		b.shares--
	default:
		b.turn()
		return
	}
	b.Space(betweenSections)
	last := len(b.sections) - 1
	if !slices.Contains(b.sections[last], section) {
		b.sections[last] = append(b.sections[last], section)
	}
}

// betweenSections is the room between two on one page, mm.
const betweenSections = 4.0

// Share lets the next so many sections go on with the page that is begun. Such pages stay
// upright.
func (b *Book) Share(sections int) { b.shares = sections }

// Join lays out a section, on the page that is begun if all of it fits there.
func (b *Book) Join(lay func(*Book)) {
	b.joined = b.Joins(lay)
	lay(b)
	b.joined = false
}

// Joins reports whether a section fits on the page that is begun. It lays it out to measure it.
func (b *Book) Joins(lay func(*Book)) bool {
	if b.across || len(b.pages) == 0 || b.page().Width > b.page().Height {
		return false
	}
	trial := &Book{size: b.size, note: b.note, pages: make([]drawing.Drawing, 1), sections: make([][]string, 1), y: b.y, joined: true}
	lay(trial)
	return len(trial.pages) == 1
}

// Repeat puts a drawing at the head of each page that goes on with the section, until the
// next section or another call. A drawing without height ends it.
func (b *Book) Repeat(d drawing.Drawing) { b.again = d }

// Part gathers the sections from the next page on below one bookmark; without a
// title each has its own again.
func (b *Book) Part(title string) {
	b.part = title != ""
	if b.part {
		b.bookmarks = append(b.bookmarks, drawing.Bookmark{Title: title, Page: len(b.pages)})
	}
}

// Lie turns the pages from the next one on: upright, or across, on their side. All
// measures are of such a page at once.
func (b *Book) Lie(across bool) {
	if b.across != across && b.shares == 0 {
		b.across = across
		b.size.Width, b.size.Height = b.size.Height, b.size.Width
	}
}

// mark sets a bookmark where the next thing goes: the first of a section stands for
// the section, others are below it.
func (b *Book) mark(title string) {
	level := 0
	if b.began {
		level = 1
	}
	b.began = true
	b.bookmarks = append(b.bookmarks, drawing.Bookmark{Title: title, Level: level, Page: len(b.pages) - 1, Y: b.y})
}

// turn starts a page that continues the section.
func (b *Book) turn() {
	b.pages = append(b.pages, drawing.Drawing{Width: b.size.Width, Height: b.size.Height})
	b.sections = append(b.sections, []string{b.section})
	b.y = b.top()
	if b.again.Height > 0 {
		b.Picture(b.again)
	}
}

// headed is a page with its running head, which is read first.
func (b *Book) headed(page drawing.Drawing, sections []string) drawing.Drawing {
	d := drawing.Drawing{Width: page.Width, Height: page.Height}
	right, width := d.Width-sideMargin, d.Width-2*sideMargin
	section := drawing.Shorten(strings.Join(sections, ", "), drawing.Regular, headSize, width/2)
	d.Text(drawing.Text{At: drawing.Point{X: right, Y: headBase}, String: section, Size: headSize, Align: drawing.Right})
	room := width - drawing.Width(section, drawing.Regular, headSize) - 6
	title := drawing.Shorten(b.title, drawing.Bold, headSize, room)
	d.Text(drawing.Text{At: drawing.Point{X: sideMargin, Y: headBase}, String: title, Size: headSize, Face: drawing.Bold})
	if b.note != "" {
		d.Text(drawing.Text{At: drawing.Point{X: sideMargin, Y: headBase + noteHigh}, Size: headSize, Face: drawing.Bold,
			String: drawing.Shorten(b.note, drawing.Bold, headSize, width)})
	}
	rule := b.top() - top + headBase + 2
	d.Line(drawing.Point{X: sideMargin, Y: rule}, drawing.Point{X: right, Y: rule}, drawing.Narrow)
	d.Place(page, drawing.Point{})
	return d
}

func (b *Book) page() *drawing.Drawing { return &b.pages[len(b.pages)-1] }

// Pages counts the pages begun.
func (b *Book) Pages() int { return len(b.pages) }

// Width is how wide the body is, in mm.
func (b *Book) Width() float64 { return b.size.Width - 2*sideMargin }

// Height is how high the body is that the next section finds, in mm: of an empty page, or
// an equal share of what is left where sections share one.
func (b *Book) Height() float64 {
	if b.shares > 0 {
		return b.Room()/float64(b.shares) - betweenSections
	}
	return b.whole()
}

// whole is how high the body of an empty page is, in mm.
func (b *Book) whole() float64 { return b.bottom() - b.top() }

// Room is what is left of this page, in mm.
func (b *Book) Room() float64 { return b.bottom() - b.y }

// top is where the body of a page begins.
func (b *Book) top() float64 {
	if b.note != "" {
		return top + noteHigh
	}
	return top
}

func (b *Book) bottom() float64 { return b.size.Height - footRoom }

// Need turns the page unless so many millimeters are left, or it is empty.
func (b *Book) Need(height float64) {
	if b.Room() < height && b.y > b.top() {
		b.turn()
	}
}

// Keep is Need for what may be higher than a page: no more than an empty page has is
// asked for.
func (b *Book) Keep(height float64) { b.Need(min(height, b.whole())) }

// Space leaves room, except at the top of a page.
func (b *Book) Space(height float64) {
	if b.y > b.top() {
		b.y += height
	}
}

// Title writes the name of the whole, and below it the note, which is not cut short here.
func (b *Book) Title(s string) {
	b.text(s, drawing.Bold, 20, 3)
	if b.note != "" {
		b.text(b.note, drawing.Bold, 13, 0)
	}
	b.y += 2
}

// headingRoom is a heading with the first lines of what follows.
const headingRoom = 25.0

// Heading writes a heading and keeps it with what follows.
func (b *Book) Heading(s string) {
	b.Space(4)
	b.Need(headingRoom)
	b.mark(s)
	b.text(s, drawing.Bold, 13, 6)
	b.y += 0.8
}

// Subheading writes a heading below another.
func (b *Book) Subheading(s string) {
	b.Space(2)
	b.Need(headingRoom)
	b.text(s, drawing.Bold, 11, 3)
	b.y += 0.6
}

// Paragraph writes running text.
func (b *Book) Paragraph(s string) {
	b.text(s, drawing.Regular, bodySize, 0)
	b.y += 1.2
}

// ParagraphHeight is what Paragraph takes where it need not be divided, in mm.
func (b *Book) ParagraphHeight(s string) float64 {
	return float64(len(drawing.Wrap(s, drawing.Regular, bodySize, b.Width())))*drawing.LineHeight(bodySize) + 1.2
}

// Strong writes running text that must not be missed.
func (b *Book) Strong(s string) {
	b.text(s, drawing.Bold, bodySize+1, 0)
	b.y += 1.2
}

// Items writes a numbered list.
func (b *Book) Items(items []string) {
	const indent = 7.0
	for i, item := range items {
		lines := drawing.Wrap(item, drawing.Regular, bodySize, b.Width()-indent)
		b.Need(float64(len(lines)) * drawing.LineHeight(bodySize))
		number := drawing.Point{X: sideMargin + indent - 2, Y: b.y + drawing.Rise(bodySize)}
		b.page().Text(drawing.Text{At: number, String: fmt.Sprintf("%d", i+1), Size: bodySize, Align: drawing.Right})
		for _, l := range lines {
			b.line(l, drawing.Regular, bodySize, indent)
		}
		b.y += 0.8
	}
}

// Work writes a numbered list of what is done one after another.
func (b *Book) Work(steps []string) { b.Items(steps) }

// keptTogether is the most lines of a paragraph that is not parted by a page's end.
const keptTogether = 8

// text wraps s. It is cut short after most lines; 0 is no limit.
func (b *Book) text(s string, face drawing.Face, size float64, most int) {
	lines := drawing.Wrap(s, face, size, b.Width())
	if most > 0 && len(lines) > most {
		lines = lines[:most]
		lines[most-1] = drawing.Shorten(lines[most-1]+" …", face, size, b.Width())
	}
	if len(lines) <= keptTogether {
		b.Need(float64(len(lines)) * drawing.LineHeight(size))
	}
	for _, l := range lines {
		b.line(l, face, size, 0)
	}
}

func (b *Book) line(s string, face drawing.Face, size, indent float64) {
	b.Need(drawing.LineHeight(size))
	rise := max(drawing.Rise(size), drawing.RiseOf(s, face, size))
	at := drawing.Point{X: sideMargin + indent, Y: b.y + rise}
	b.page().Text(drawing.Text{At: at, String: s, Size: size, Face: face})
	b.y += max(drawing.LineHeight(size), drawing.HeightOf(s, face, size)+0.2)
}

// Picture puts a drawing as wide as the body, or less, on the page.
func (b *Book) Picture(p drawing.Drawing) {
	b.Need(p.Height)
	b.page().Place(p, drawing.Point{X: sideMargin, Y: b.y})
	b.y += p.Height
}

// Sheet adds a page that is all drawing, without head and foot: for paper that is printed
// already. It is upright.
func (b *Book) Sheet(p drawing.Drawing) {
	b.Lie(false)
	b.pages = append(b.pages, drawing.Drawing{Width: b.size.Width, Height: b.size.Height})
	b.sections = append(b.sections, nil)
	b.page().Place(p, drawing.Point{})
	b.y, b.again = b.bottom(), drawing.Drawing{}
}

// Close ends the book: every page gets its head and foot.
func (b *Book) Close() drawing.Document {
	of := ""
	if b.identity != "" {
		of = "plan " + b.identity + ", "
	}
	for i := range b.pages {
		if b.sections[i] == nil {
			continue // a sheet
		}
		d := b.headed(b.pages[i], b.sections[i])
		y := d.Height - 7
		number := fmt.Sprintf("%spage %d of %d", of, i+1, len(b.pages))
		d.Text(drawing.Text{At: drawing.Point{X: d.Width - sideMargin, Y: y}, String: number,
			Size: headSize, Align: drawing.Right})
		room := d.Width - 2*sideMargin - drawing.Width(number, drawing.Regular, headSize) - 6
		d.Text(drawing.Text{At: drawing.Point{X: sideMargin, Y: y},
			String: drawing.Shorten(b.foot, drawing.Regular, headSize, room), Size: headSize})
		b.pages[i] = d
	}
	return drawing.Document{Title: b.title, Subject: strings.TrimSuffix(of, ", "), Pages: b.pages, Bookmarks: b.bookmarks}
}
