package drawing

import (
	"bytes"
	"time"

	"github.com/jung-kurt/gofpdf"
)

// fontNames are what the PDF calls the two faces.
var fontNames = [...]string{Regular: "Go", Bold: "GoBold"}

// epoch is the date in every PDF: equal drawings give equal bytes.
var epoch = time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC)

// PDF writes the pages as one document. The only errors are those of the PDF
// writer itself.
func PDF(title string, pages []Drawing) ([]byte, error) {
	f := gofpdf.NewCustom(&gofpdf.InitType{UnitStr: "mm", SizeStr: "A4"})
	f.SetCatalogSort(true)
	f.SetCreationDate(epoch)
	f.SetModificationDate(epoch)
	f.SetTitle(title, true)
	f.SetProducer("Sawbill", false)
	f.SetMargins(0, 0, 0)
	f.SetAutoPageBreak(false, 0)
	for face, name := range fontNames {
		// The writer changes the bytes that it is given.
		f.AddUTF8FontFromBytes(name, "", bytes.Clone(ttf[face]))
	}
	for _, page := range pages {
		orientation := "P"
		if page.Width > page.Height {
			orientation = "L"
		}
		// For a page that lies across, the writer swaps the two sizes.
		size := gofpdf.SizeType{Wd: min(page.Width, page.Height), Ht: max(page.Width, page.Height)}
		f.AddPageFormat(orientation, size)
		f.SetLineCapStyle("butt")
		f.SetLineJoinStyle("miter")
		w := pdfPage{f}
		for _, m := range page.Marks {
			w.mark(m)
		}
	}
	var out bytes.Buffer
	if err := f.Output(&out); err != nil {
		return nil, err
	}
	return out.Bytes(), nil
}

type pdfPage struct{ f *gofpdf.Fpdf }

func (w pdfPage) mark(m Mark) {
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
			w.f.Circle(m.Centre.X, m.Centre.Y, m.Radius, how)
		}
	case Hatch:
		for _, l := range m.Lines() {
			w.line(l)
		}
	case Text:
		w.text(m)
	}
}

func (w pdfPage) line(l Line) {
	w.pen(l.Pen)
	w.f.Line(l.From.X, l.From.Y, l.To.X, l.To.Y)
}

func (w pdfPage) pen(p Pen) {
	w.f.SetLineWidth(styles[p].width)
	w.f.SetDashPattern(styles[p].dash, 0)
}

// area sets pen and fill and returns the writer's word for what to do.
func (w pdfPage) area(p Pen, fill Fill) string {
	how := ""
	switch fill {
	case White:
		w.f.SetFillColor(255, 255, 255)
		how = "F"
	case Black:
		w.f.SetFillColor(0, 0, 0)
		how = "F"
	}
	if p != NoPen {
		w.pen(p)
		how += "D"
	}
	return how
}

func (w pdfPage) text(t Text) {
	if t.Ground {
		b := t.Box()
		w.f.SetFillColor(255, 255, 255)
		w.f.Rect(b.X, b.Y, b.W, b.H, "F")
	}
	shade := 0
	if t.Reversed {
		shade = 255
	}
	w.f.SetTextColor(shade, shade, shade)
	w.f.SetFont(fontNames[t.Face], "", t.Size)
	along := 0.0
	switch t.Align {
	case Centre:
		along = t.Width() / 2
	case Right:
		along = t.Width()
	}
	if !t.Turned {
		w.f.Text(t.At.X-along, t.At.Y, t.String)
		return
	}
	w.f.TransformBegin()
	w.f.TransformRotate(90, t.At.X, t.At.Y)
	w.f.Text(t.At.X-along, t.At.Y, t.String)
	w.f.TransformEnd()
}
