package drawing

import (
	"bytes"
	"fmt"
	"math"
	"strings"
	"time"

	"github.com/jung-kurt/gofpdf"

	"sawbill/report/internal/pdfa"
)

// epoch is the date in every PDF: equal drawings give equal bytes.
var epoch = time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC)

// Document is pages with what a reader's list of contents shows of them.
type Document struct {
	Title string
	// Subject tells the document from others of the same title.
	Subject   string
	Keywords  []string // what it is to be found by, beyond its title
	Pages     []Drawing
	Bookmarks []Bookmark // in the order of the pages
}

// Bookmark is a place in a document.
type Bookmark struct {
	Title string
	Level int     // 0, or one more than that of a bookmark before it
	Page  int     // index into the pages
	Y     float64 // from the top, mm
}

// PDF writes a document for archives too: PDF/A-2b. The only errors are those of the PDF
// writer itself.
func PDF(d Document) ([]byte, error) {
	f := gofpdf.NewCustom(&gofpdf.InitType{UnitStr: "mm", SizeStr: "A4"})
	f.SetCatalogSort(true)
	f.SetCreationDate(epoch)
	f.SetModificationDate(epoch)
	about := pdfa.Info{Title: basic(d.Title), Subject: basic(d.Subject), Keywords: basic(strings.Join(d.Keywords, ", ")),
		Creator: "Sawbill", Producer: producer, Date: epoch}
	f.SetTitle(about.Title, true)
	f.SetSubject(about.Subject, true)
	f.SetKeywords(about.Keywords, true)
	f.SetCreator(about.Creator, false)
	f.SetProducer(about.Producer, false)
	f.SetMargins(0, 0, 0)
	f.SetAutoPageBreak(false, 0)
	w := pdfPage{f: f, embedded: make(map[*typeface]bool)}
	bookmarks := d.Bookmarks
	for i, page := range d.Pages {
		orientation := "P"
		if page.Width > page.Height {
			orientation = "L"
		}
		// For a page that lies across, the writer swaps the two sizes.
		size := gofpdf.SizeType{Wd: min(page.Width, page.Height), Ht: max(page.Width, page.Height)}
		f.AddPageFormat(orientation, size)
		w.pen, w.fill, w.face = NoPen, NoFill, nil
		f.SetLineCapStyle("butt")
		f.SetLineJoinStyle("miter")
		w.font(faces[Regular].usual, 10) // bookmarks are written in the encoding of the font
		for ; len(bookmarks) > 0 && bookmarks[0].Page == i; bookmarks = bookmarks[1:] {
			// The writer counts from the foot of the last page, whichever the bookmark is on.
			y := bookmarks[0].Y + d.Pages[len(d.Pages)-1].Height - page.Height
			f.Bookmark(basic(bookmarks[0].Title), bookmarks[0].Level, y)
		}
		for _, m := range page.Marks {
			w.mark(m)
		}
	}
	var out bytes.Buffer
	if err := f.Output(&out); err != nil {
		return nil, err
	}
	return pdfa.Archived(out.Bytes(), about)
}

// basic is s without the characters beyond the basic plane, which the writer does
// not encode.
func basic(s string) string {
	return strings.Map(func(r rune) rune {
		if r > 0xFFFF {
			return Replacement
		}
		return r
	}, s)
}

// pdfPage writes the marks of a page. What is set already is not said again, which
// saves time and bytes.
type pdfPage struct {
	f *gofpdf.Fpdf
	// embedded fonts: only those that are used, for the wide ones are large.
	embedded map[*typeface]bool
	pen      Pen       // NoPen: not known
	fill     Fill      // NoFill: not known
	face     *typeface // nil: not known
	size     float64   // of the face, points
}

// font sets the font, and embeds it if it is new.
func (w *pdfPage) font(t *typeface, size float64) {
	if !w.embedded[t] {
		w.embedded[t] = true
		// The writer changes the bytes that it is given.
		w.f.AddUTF8FontFromBytes(t.name, "", bytes.Clone(t.ttf))
	}
	if w.face != t || w.size != size {
		w.face, w.size = t, size
		w.f.SetFont(t.name, "", size)
	}
}

func (w *pdfPage) mark(m Mark) {
	switch m := m.(type) {
	case Line:
		w.line(m)
	case Polygon:
		points := make([]gofpdf.PointType, len(m.Points))
		for i, p := range m.Points {
			points[i] = gofpdf.PointType{X: p.X, Y: p.Y}
		}
		if how := w.area(m.Pen, m.Fill); how != "" {
			w.f.Polygon(points, how)
		}
	case Disc:
		if how := w.area(m.Pen, m.Fill); how != "" {
			w.disc(m)
			w.f.DrawPath(how)
		}
	case Hatch:
		for _, l := range m.Lines() {
			w.line(l)
		}
	case Text:
		w.text(m)
	}
}

func (w *pdfPage) line(l Line) {
	w.draw(l.Pen)
	w.f.Line(l.From.X, l.From.Y, l.To.X, l.To.Y)
}

// disc is the outline of m: a Bézier curve for each quarter, less than a thousandth
// of the radius off. It is put in the words of PDF itself, to a hundredth of a point
// as all else: with the writer's curves, of five decimals, large documents are a
// twentieth larger.
func (w *pdfPage) disc(m Disc) {
	ratio := w.f.GetConversionRatio()
	_, height := w.f.GetPageSize()
	x, y := m.Center.X*ratio, (height-m.Center.Y)*ratio
	radius := m.Radius * ratio
	reach := radius * 4 / 3 * (math.Sqrt2 - 1)
	var path strings.Builder
	fmt.Fprintf(&path, "%.2f %.2f m\n", x+radius, y)
	for _, from := range []Point{{1, 0}, {0, 1}, {-1, 0}, {0, -1}} {
		to := Point{-from.Y, from.X}
		fmt.Fprintf(&path, "%.2f %.2f %.2f %.2f %.2f %.2f c\n",
			x+from.X*radius+to.X*reach, y+from.Y*radius+to.Y*reach,
			x+to.X*radius+from.X*reach, y+to.Y*radius+from.Y*reach,
			x+to.X*radius, y+to.Y*radius)
	}
	path.WriteString("h")
	w.f.RawWriteStr(path.String())
}

// draw sets the pen of lines.
func (w *pdfPage) draw(p Pen) {
	if w.pen == p {
		return
	}
	w.pen = p
	w.f.SetLineWidth(styles[p].width)
	w.f.SetDashPattern(styles[p].dash, 0)
}

// grayShade is the lightness of gray, of 255.
const grayShade = 0xdd

// ink sets what areas and letters are filled with.
func (w *pdfPage) ink(fill Fill) {
	if w.fill == fill {
		return
	}
	w.fill = fill
	shade := 0
	switch fill {
	case White:
		shade = 255
	case Gray:
		shade = grayShade
	}
	w.f.SetFillColor(shade, shade, shade)
	w.f.SetTextColor(shade, shade, shade)
}

// area sets pen and fill and returns the writer's word for what to do.
func (w *pdfPage) area(p Pen, fill Fill) string {
	how := ""
	if fill != NoFill {
		w.ink(fill)
		how = "F"
	}
	if p != NoPen {
		w.draw(p)
		how += "D"
	}
	return how
}

func (w *pdfPage) text(t Text) {
	if t.Ground {
		b := t.Box()
		w.ink(White)
		w.f.Rect(b.X, b.Y, b.W, b.H, "F")
	}
	w.ink(Black)
	if t.Reversed {
		w.ink(White)
	}
	along := 0.0
	switch t.Align {
	case Center:
		along = t.Width() / 2
	case Right:
		along = t.Width()
	}
	runs := set(t.String, t.Face).runs
	if !t.Turned {
		w.runs(runs, t, along)
		return
	}
	// The font that is set within the turn is lost behind it, of which the writer does
	// not know: it must be the same before and after.
	w.font(runs[0].font, t.Size)
	w.f.TransformBegin()
	w.f.TransformRotate(90, t.At.X, t.At.Y)
	w.runs(runs, t, along)
	w.f.TransformEnd()
	w.font(runs[0].font, t.Size)
}

// runs writes the letters of a text, which begins so far before its point.
func (w *pdfPage) runs(runs []run, t Text, along float64) {
	mm := t.Size * mmPerPoint
	for _, r := range runs {
		w.font(r.font, t.Size)
		w.f.Text(t.At.X-along+r.x*mm, t.At.Y-r.y*mm, r.text)
	}
}
