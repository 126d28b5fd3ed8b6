package paper

import (
	"slices"
	"strings"
	"testing"

	"sawbill/report/internal/drawing"
)

// rows is a table of so many.
func rows(n int) Table {
	t := Table{Columns: []Column{{Head: "cut"}}}
	for range n {
		t.Rows = append(t.Rows, []string{"7"})
	}
	return t
}

// picture is a box of a height with a word in it.
func picture(word string, height float64) drawing.Drawing {
	d := drawing.Drawing{Width: 50, Height: height}
	d.Text(drawing.Text{At: drawing.Point{X: 1, Y: 6}, String: word, Size: 9})
	return d
}

// holding lists the pages that hold a text, counted from 1.
func holding(pages []drawing.Drawing, word string) (on []int) {
	for i, p := range pages {
		if slices.ContainsFunc(p.Texts(), func(t drawing.Text) bool { return t.String == word }) {
			on = append(on, i+1)
		}
	}
	return on
}

// A picture that repeats is on every page that goes on with its section, above the rows,
// and on none of another section; nothing lies over anything.
func TestAPictureIsRepeatedWhereItsTableGoesOn(t *testing.T) {
	b := New(A4, "job", "", "")
	b.Page("layout 1")
	b.Picture(picture("diagram", 120))
	b.Repeat(picture("diagram", 120))
	b.Table(rows(60))
	b.Page("layout 2")
	b.Table(rows(80))
	pages := b.Close().Pages
	if got := holding(pages, "diagram"); !slices.Equal(got, []int{1, 2, 3}) {
		t.Errorf("the diagram is on pages %v of %d", got, len(pages))
	}
	if got := holding(pages, "layout 2"); !slices.Equal(got, []int{4, 5}) {
		t.Errorf("layout 2 is on pages %v", got)
	}
	for i, p := range pages {
		if err := drawing.CheckWriting(p); err != nil {
			t.Errorf("page %d: %v", i+1, err)
		}
	}
}

// A section joins the page before if all of it fits there, and only then; the head of the
// page names both.
func TestASectionJoinsAPageThatHasRoomForIt(t *testing.T) {
	for _, test := range []struct {
		before, joins, pages int
	}{{10, 10, 1}, {10, 45, 2}, {45, 10, 2}, {10, 90, 3}, {0, 10, 1}} {
		b := New(A4, "job", "", "")
		if test.before > 0 {
			b.Page("saw")
			b.Table(rows(test.before))
		}
		b.Join(func(b *Book) {
			b.Page("bench")
			b.Heading("Milling")
			b.Table(rows(test.joins))
		})
		pages := b.Close().Pages
		if len(pages) != test.pages {
			t.Errorf("%d and %d rows take %d pages, want %d", test.before, test.joins, len(pages), test.pages)
		}
		if both := holding(pages, "saw, bench"); (len(both) == 1) != (test.before > 0 && test.pages == 1) {
			t.Errorf("%d and %d rows: both are named on pages %v", test.before, test.joins, both)
		}
	}
}

// Sections that share a page find equal shares of what is left of it, and never one on its
// side.
func TestSectionsShareAPage(t *testing.T) {
	b := New(A4, "job", "", "")
	b.Page("store")
	b.Table(rows(10))
	b.Share(2)
	room := b.Room()
	if b.Lie(true); b.Width() > A4.Width || b.Height() != room/2-betweenSections {
		t.Errorf("a section finds %.0f x %.0f mm of %.0f", b.Width(), b.Height(), room)
	}
	b.Page("layout 1")
	b.Heading("first")
	room = b.Room()
	if b.Height() != room-betweenSections {
		t.Errorf("the last section finds %.0f mm of %.0f", b.Height(), room)
	}
	b.Page("layout 2")
	b.Heading("second")
	b.Page("marks")
	b.Heading("third")
	pages := b.Close().Pages
	if len(pages) != 2 || len(holding(pages[:1], "second")) != 1 || len(holding(pages[:1], "store, layout 1, layout 2")) != 1 {
		t.Errorf("%d pages", len(pages))
	}
}

func TestPagesSayTheirTitleFirst(t *testing.T) {
	b := New(Letter, "job", "", "")
	b.Page("one")
	b.Paragraph("text")
	var said []string
	for _, text := range b.Close().Pages[0].Texts() {
		said = append(said, text.String)
	}
	if got := strings.Join(said, "|"); got != "one|job|text|page 1 of 1|" && got != "one|job|text|page 1 of 1" {
		t.Error(got)
	}
}
