package drawing

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"strconv"
	"strings"
)

// SVG writes the drawing as one picture, a millimeter to the unit. Each text
// carries its measured length, so that another font in the viewer cannot make
// it run into its neighbors.
func (d *Drawing) SVG(title string) []byte {
	var b bytes.Buffer
	w, h := number(d.Width), number(d.Height)
	fmt.Fprintf(&b, `<svg xmlns="http://www.w3.org/2000/svg" width="%smm" height="%smm" viewBox="0 0 %s %s">`+"\n",
		w, h, w, h)
	fmt.Fprintf(&b, "<title>%s</title>\n", escape(title))
	d.svgMarks(&b, true)
	b.WriteString("</svg>\n")
	return b.Bytes()
}

// InlineSVG writes the same picture as an element of a page that brings the fonts of
// [WebFonts]: its texts need not carry their lengths. The id, unique on the
// page, begins those of its title and of its description, by which it is told to
// who cannot see it.
func (d *Drawing) InlineSVG(id, title, description string) []byte {
	var b bytes.Buffer
	w, h := number(d.Width), number(d.Height)
	fmt.Fprintf(&b, `<svg width="%smm" height="%smm" viewBox="0 0 %s %s" role="img" aria-labelledby="%s-t" aria-describedby="%s-d">`+"\n",
		w, h, w, h, id, id)
	fmt.Fprintf(&b, "<title id=\"%s-t\">%s</title>\n", id, escape(title))
	fmt.Fprintf(&b, "<desc id=\"%s-d\">%s</desc>\n", id, escape(description))
	d.svgMarks(&b, false)
	b.WriteString("</svg>\n")
	return b.Bytes()
}

// svgMarks writes all that is drawn, on its paper. Texts that are measured carry their
// lengths.
func (d *Drawing) svgMarks(b *bytes.Buffer, measured bool) {
	fmt.Fprintf(b, `<rect width="%s" height="%s" fill="#fff"/>`+"\n", number(d.Width), number(d.Height))
	b.WriteString(`<g font-family="Go, Arial, Helvetica, sans-serif" xml:space="preserve">` + "\n")
	for _, m := range d.Marks {
		svgMark(b, m, measured)
	}
	b.WriteString("</g>\n")
}

func svgMark(b *bytes.Buffer, m Mark, measured bool) {
	switch m := m.(type) {
	case Line:
		fmt.Fprintf(b, `<path d="%s"%s/>`+"\n", segment(m), stroke(m.Pen))
	case Polygon:
		points := make([]string, len(m.Points))
		for i, p := range m.Points {
			points[i] = number(p.X) + "," + number(p.Y)
		}
		fmt.Fprintf(b, `<polygon points="%s" fill="%s"%s/>`+"\n",
			strings.Join(points, " "), paint(m.Fill), stroke(m.Pen))
	case Disc:
		fmt.Fprintf(b, `<circle cx="%s" cy="%s" r="%s" fill="%s"%s/>`+"\n",
			number(m.Center.X), number(m.Center.Y), number(m.Radius), paint(m.Fill), stroke(m.Pen))
	case Hatch:
		var path strings.Builder
		for _, l := range m.Lines() {
			path.WriteString(segment(l))
		}
		if path.Len() > 0 {
			fmt.Fprintf(b, `<path d="%s"%s/>`+"\n", path.String(), stroke(Fine))
		}
	case Text:
		svgText(b, m, measured)
	}
}

func svgText(b *bytes.Buffer, t Text, measured bool) {
	if t.Ground {
		r := t.Box()
		fmt.Fprintf(b, `<rect x="%s" y="%s" width="%s" height="%s" fill="#fff"/>`+"\n",
			number(r.X), number(r.Y), number(r.W), number(r.H))
	}
	fmt.Fprintf(b, `<text x="%s" y="%s" font-size="%s"`, number(t.At.X), number(t.At.Y), number(t.Size*mmPerPoint))
	if measured {
		fmt.Fprintf(b, ` textLength="%s" lengthAdjust="spacingAndGlyphs"`, number(t.Width()))
	}
	if t.Face == Bold {
		b.WriteString(` font-weight="bold"`)
	}
	switch t.Align {
	case Center:
		b.WriteString(` text-anchor="middle"`)
	case Right:
		b.WriteString(` text-anchor="end"`)
	}
	if t.Turned {
		fmt.Fprintf(b, ` transform="rotate(-90 %s %s)"`, number(t.At.X), number(t.At.Y))
	}
	if t.Reversed {
		b.WriteString(` fill="#fff"`)
	}
	b.WriteString(">")
	svgRuns(b, t)
	b.WriteString("</text>\n")
}

// wideFamily is the wide font, or one drawn to the same widths.
const wideFamily = "DejaVu Sans, Verdana, sans-serif"

// svgRuns writes the letters of t, and in which font. A mark stays with its letter,
// over which the viewer sets it.
func svgRuns(b *bytes.Buffer, t Text) {
	wide := false
	for _, r := range set(t.String, t.Face).runs {
		if next := r.font == faces[t.Face].wide; next != wide && !r.mark {
			if wide = next; wide {
				fmt.Fprintf(b, `<tspan font-family="%s">`, wideFamily)
			} else {
				b.WriteString("</tspan>")
			}
		}
		b.WriteString(escape(r.text))
	}
	if wide {
		b.WriteString("</tspan>")
	}
}

func segment(l Line) string {
	return "M" + number(l.From.X) + " " + number(l.From.Y) + "L" + number(l.To.X) + " " + number(l.To.Y)
}

func stroke(p Pen) string {
	if p == NoPen {
		return ""
	}
	s := styles[p]
	out := ` stroke="#000" stroke-width="` + number(s.width) + `"`
	if s.dash != nil {
		on := make([]string, len(s.dash))
		for i, v := range s.dash {
			on[i] = number(v)
		}
		out += ` stroke-dasharray="` + strings.Join(on, " ") + `"`
	}
	return out
}

func paint(f Fill) string {
	switch f {
	case White:
		return "#fff"
	case Gray:
		return "#ddd"
	case Black:
		return "#000"
	}
	return "none"
}

func number(v float64) string { return strconv.FormatFloat(round(v), 'f', -1, 64) }

func escape(s string) string {
	var b bytes.Buffer
	// A buffer takes every write.
	_ = xml.EscapeText(&b, []byte(s))
	return b.String()
}
