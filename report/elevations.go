package report

import (
	"sawbill/nest/cutplan"
	"sawbill/report/internal/elevation"
	"sawbill/report/internal/paper"
)

// Elevation is a picture of a case.
type Elevation struct {
	View string // "front", "side", "section", "plan"
	SVG  []byte
}

// drawn is the case with the marks of the bill.
func drawn(bill []cutplan.Blank, o Options) elevation.Subject {
	return elevation.Subject{Case: o.Case, Marks: billMarks(o.Case, bill), Ruler: o.Ruler}
}

// elevationWidth and elevationHeight are the room for a picture of its own, mm.
const elevationWidth, elevationHeight = 190, 190

// Elevations draws the case of a plan from all sides, to scale; nil if its parts
// came from none.
func Elevations(p *cutplan.Plan, o Options) []Elevation {
	if o.Case == nil {
		return nil
	}
	s := drawn(p.Bill, o)
	if !s.Drawable() {
		return nil
	}
	of := captionStart(p, Identity(p, o), o)
	var all []Elevation
	for _, v := range elevation.Views {
		d, scale := s.Fit(v, elevationWidth, elevationHeight)
		all = append(all, Elevation{v.Name(), d.SVG(of + ", " + v.Name() + ", " + elevation.ScaleText(scale))})
	}
	return all
}

// aboutElevations says how they are to be read.
const aboutElevations = "What is cut is hatched, thin panels black; dashed edges are hidden, " +
	"those of drawers left out. Letters are the marks of the parts; 1 and 2 show where the sections lie; crossed circles are handles. Side and section 1-1 are seen from the right, section 2-2 from above."

// elevationPage draws the case on a page of its own.
func elevationPage(b *paper.Book, bill []cutplan.Blank, o Options) {
	s := drawn(bill, o)
	if !s.Drawable() {
		return
	}
	b.Page("elevations")
	b.Heading("Elevations")
	const lines = 28 // mm for the heading and the paragraph
	picture, scale := s.Sheet(b.Width(), b.Height()-lines)
	b.Paragraph("The case at " + elevation.ScaleText(scale) + ". " + aboutElevations)
	b.Picture(picture)
}
